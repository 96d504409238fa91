/** Upper ends of the classes, as printed to one decimal. */
const CLASSES: readonly (readonly [upTo: number, words: string])[] = [
  [3.4, 'ultra acid'],
  [4.4, 'extremely acid'],
  [5.0, 'very strongly acid'],
  [5.5, 'strongly acid'],
  [6.0, 'moderately acid'],
  [6.5, 'slightly acid'],
  [7.3, 'neutral'],
  [7.8, 'slightly alkaline'],
  [8.4, 'moderately alkaline'],
  [9.0, 'strongly alkaline'],
  [Number.POSITIVE_INFINITY, 'very strongly alkaline'],
];

/**
 * Class of a soil's pH: USDA NRCS, Soil Quality Indicators: pH, 1998, as quoted by Oregon State
 * University ("ultra acid" from memory). Classes are printed to one decimal, so the pH is rounded to one first.
 * @param ph 0 to 14
 */
export function phWords(ph: number): string {
  const rounded = Math.round(ph * 10 + 1e-9) / 10;
  return CLASSES.find(([upTo]) => rounded <= upTo)?.[1] ?? '';
}
