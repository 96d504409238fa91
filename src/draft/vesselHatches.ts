import type { Hatch, Inks } from './hatches';

/*
 * Ground that each container, tank load or hopper fill does: light hatches in turn, so that neighbours tell
 * apart without colour. No lines run through: those are the passes.
 */

export const VESSEL_HATCH_IDS = ['vessel-plain', 'vessel-dots', 'vessel-ticks', 'vessel-hooks'] as const;
export type VesselHatchId = (typeof VESSEL_HATCH_IDS)[number];
type VesselHatch = Omit<Hatch, 'id'> & { readonly id: VesselHatchId };

const BARE = { width: 16, height: 16, lines: [], blots: [], dots: [], strokeWidth: 1 } as const;

export const VESSEL_HATCHES: Readonly<Record<VesselHatchId, VesselHatch>> = {
  'vessel-plain': { ...BARE, id: 'vessel-plain', words: 'bare' },
  'vessel-dots': {
    ...BARE,
    id: 'vessel-dots',
    words: 'dots in rows',
    width: 14,
    height: 14,
    dots: [
      [3.5, 3.5, 1.15],
      [10.5, 10.5, 1.15],
    ],
  },
  'vessel-ticks': {
    ...BARE,
    id: 'vessel-ticks',
    words: 'slanting ticks',
    lines: ['M2 6L6 2', 'M10 14L14 10'],
    strokeWidth: 1.2,
  },
  'vessel-hooks': {
    ...BARE,
    id: 'vessel-hooks',
    words: 'hooks',
    width: 18,
    height: 18,
    lines: ['M2 3L4.5 6.5L7 3', 'M11 12L13.5 15.5L16 12'],
    strokeWidth: 1.2,
  },
};

/** Hues: Okabe and Ito 2008, those that no kind of zone has, darkened for ink. */
export const VESSEL_INKS: Readonly<Record<VesselHatchId, { readonly light: Inks; readonly dark: Inks }>> = {
  'vessel-plain': {
    light: { ink: '#6b5f00', tint: '#f0e442' },
    dark: { ink: '#f0e442', tint: '#f0e442' },
  },
  'vessel-dots': {
    light: { ink: '#0b4f71', tint: '#0072b2' },
    dark: { ink: '#7cc4ee', tint: '#0072b2' },
  },
  'vessel-ticks': {
    light: { ink: '#9a3f00', tint: '#d55e00' },
    dark: { ink: '#ff9d5c', tint: '#d55e00' },
  },
  'vessel-hooks': {
    light: { ink: '#3b3f44', tint: '#7b8086' },
    dark: { ink: '#c9cdd1', tint: '#7b8086' },
  },
};

/** The hatch of a vessel. @param index from 0, in the order of the dose */
export function vesselHatchOf(index: number): VesselHatchId {
  return VESSEL_HATCH_IDS[index % VESSEL_HATCH_IDS.length] as VesselHatchId;
}
