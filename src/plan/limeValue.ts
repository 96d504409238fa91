import { formatNumber } from '../units/format';
import type { Parsed } from '../units/parse';

/** How much of each size of particle works, by one named rule. */
export interface FinenessTable {
  readonly id: string;
  readonly name: string;
  /** sieves from coarse to fine, meshes to the inch. */
  readonly meshes: readonly number[];
  /** share that works, 0 to 1, of what passes each sieve and stays on the next (the last: of all that passes); of what stays on the first, none. */
  readonly efficiency: readonly number[];
  readonly source: string;
}

/**
 * Rules of three states for the year after spreading. Rules of other states differ; the effective value
 * on the label goes before all of them.
 */
export const FINENESS_TABLES: readonly FinenessTable[] = [
  {
    id: 'new-york',
    name: 'New York: 20, 60 and 100 mesh',
    meshes: [20, 60, 100],
    efficiency: [0.4, 0.8, 1],
    source: 'Cornell University, Northeast region soil fertility course, competency area 5, objective 41',
  },
  {
    id: 'mississippi',
    name: 'Mississippi: 10 and 50 mesh',
    meshes: [10, 50],
    efficiency: [0.5, 1],
    source: 'Mississippi State University Extension P3762, Agricultural Limestone’s Neutralizing Value',
  },
  {
    id: 'iowa',
    name: 'Iowa: 4, 8 and 60 mesh',
    meshes: [4, 8, 60],
    // the state adds 0.1, 0.3 and 0.6 of what passes each: 0.1, then 0.4, then all of it by size
    efficiency: [0.1, 0.4, 1],
    source:
      'Sawyer, Iowa State University, in Laboski, Univ. of Wisconsin-Madison, Liming Terminology and Analysis',
  },
];

/** Percent by weight that passes a sieve, 0 to 100. */
export interface SieveReading {
  readonly mesh: number;
  readonly passingPct: number;
}

/**
 * Effective neutralising value of lime, percent of pure calcium carbonate: the calcium carbonate
 * equivalent times a fineness factor, the sum over sizes of share by weight times the share of it that
 * works, times what is left of the weight without its moisture. Trade names of the same figure: ECCE, ENV, RNV, effective calcium carbonate.
 * @param ccePct calcium carbonate equivalent, percent; more than 0
 * @param readings what passes each sieve of the table, in any order
 * @param moisturePct water in the lime as sold, percent of its weight; 0 where the analysis is of lime as sold
 * @returns the percent, or why it cannot be told: a sieve missing, no percent, or more passing a finer sieve
 */
export function effectiveLimePct(
  ccePct: number,
  readings: readonly SieveReading[],
  table: FinenessTable,
  moisturePct = 0,
): Parsed {
  if (!(ccePct > 0) || !Number.isFinite(ccePct))
    return { ok: false, message: 'The calcium carbonate equivalent must be more than zero.' };
  if (!(moisturePct >= 0 && moisturePct < 100))
    return { ok: false, message: 'The moisture must be from 0 to less than 100 %.' };
  const passing: number[] = [];
  for (const mesh of table.meshes) {
    const reading = readings.find((each) => each.mesh === mesh)?.passingPct;
    if (reading === undefined) return { ok: false, message: `Give what passes the ${mesh} mesh sieve.` };
    if (!(reading >= 0 && reading <= 100))
      return { ok: false, message: `What passes the ${mesh} mesh sieve must be from 0 to 100 %.` };
    const before = passing.at(-1);
    if (before !== undefined && reading > before)
      return {
        ok: false,
        message: `More passes the ${mesh} mesh sieve (${formatNumber(reading)} %) than the coarser one before it (${formatNumber(before)} %).`,
      };
    passing.push(reading);
  }
  const fineness = passing.reduce(
    (sum, pct, i) => sum + ((pct - (passing[i + 1] ?? 0)) / 100) * (table.efficiency[i] ?? 0),
    0,
  );
  return { ok: true, value: ccePct * fineness * (1 - moisturePct / 100) };
}
