/** The usual cautions of the work; common practice, no source. The label goes before all of them. */
export const CAUTIONS: readonly string[] = [
  'Read the product label first: its rates, its clothing, its waiting times. Where it and this plan differ, follow the label.',
  'Wear gloves and eye protection, and what else the label asks for; wash hands and clothes afterwards.',
  'Keep people and pets off until the ground is dry, or longer where the label says so.',
  'Never toward a storm drain, a well or water: no spray, no sweepings, no rinse water, no leftovers. Nothing goes into a drain.',
  'Not in wind that carries spray, not in the heat of the day, not before heavy rain, not on frozen or soaked ground.',
  'Local code decides on strips, seasons and nutrients. Where a licence is needed, have licensed practice do it.',
];
