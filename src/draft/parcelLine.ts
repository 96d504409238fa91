/**
 * Line of the outline of the property, widths and dashes in px of the screen: a long dash and two short
 * ones, the property line of landscape drawings (common practice, no source).
 */
export const PARCEL_LINE = {
  width: 2.6,
  dash: [28, 4, 6, 4, 6, 4],
  light: '#5a1a6b',
  dark: '#e2b5f0',
} as const;
