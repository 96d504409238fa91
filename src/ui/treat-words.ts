import type { NoApplyStrip, RinseEdge } from '../cover/types';

export const SOURCE_WORDS: Readonly<Record<NoApplyStrip['sourceKind'], string>> = {
  'storm-drain': 'storm drain',
  well: 'well',
  water: 'water',
};

/** What to do at an edge of hardscape. */
export const EDGE_WORK_WORDS: Readonly<Record<RinseEdge['treatment'], string>> = {
  'rinse-toward-turf': 'Rinse with plain water, toward the turf.',
  'sweep-then-rinse': 'Sweep or blow back onto the turf first; then rinse what is left, toward the turf.',
};

/** The usual cautions of the work; common practice, no source. The label goes before all of them. */
export const CAUTIONS: readonly string[] = [
  'The label comes first: its rates, its clothing, its waiting times. Where it and this plan differ, follow the label.',
  'Wear the gloves and eye protection the label asks for; wash hands and clothes afterwards.',
  'Keep people and pets off until the ground is dry, or longer where the label says so.',
  'Never toward a storm drain, a well or water: no spray, no sweepings, no rinse water, no leftovers.',
  'Not in wind that carries spray, not in the heat of the day, not before heavy rain, not on frozen or soaked ground.',
  'Local code decides on strips, seasons and phosphorus. Where a licence is needed, have licensed practice do it.',
];
