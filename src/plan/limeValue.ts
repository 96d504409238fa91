import { formatNumber } from '../units/format';
import type { Parsed } from '../units/parse';

/** How much of each size of particle works, by one named rule. */
export interface FinenessTable {
  readonly id: string;
  readonly name: string;
  /** sieves from coarse to fine, meshes to the inch. */
  readonly meshes: readonly number[];
  /** share that works, 0 to 1, of what stays on the coarsest sieve. */
  readonly coarser: number;
  /** share that works, 0 to 1, of what passes each sieve and stays on the next (the last: of all that passes). */
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
    coarser: 0,
    efficiency: [0.4, 0.8, 1],
    source: 'Cornell University, Northeast region soil fertility course, competency area 5, objective 41',
  },
  {
    id: 'mississippi',
    name: 'Mississippi: 10 and 50 mesh',
    meshes: [10, 50],
    coarser: 0,
    efficiency: [0.5, 1],
    source: 'Mississippi State University Extension P3762, Agricultural Limestone’s Neutralizing Value',
  },
  {
    id: 'illinois',
    name: 'Illinois: 8, 30 and 60 mesh, first year',
    meshes: [8, 30, 60],
    coarser: 0.05,
    efficiency: [0.2, 0.5, 1],
    source:
      'Univ. of Illinois, Illinois Agronomy Handbook, limestone quality (sieves as in its worksheet; factors from memory)',
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
 * works. Trade names of the same figure: ECCE, ENV, RNV, effective calcium carbonate.
 * @param ccePct calcium carbonate equivalent, percent; more than 0
 * @param readings what passes each sieve of the table, in any order
 * @returns the percent, or why it cannot be told: a sieve missing, no percent, or more passing a finer sieve
 */
export function effectiveLimePct(
  ccePct: number,
  readings: readonly SieveReading[],
  table: FinenessTable,
): Parsed {
  if (!(ccePct > 0) || !Number.isFinite(ccePct))
    return { ok: false, message: 'The calcium carbonate equivalent must be more than zero.' };
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
    ((100 - (passing[0] ?? 100)) / 100) * table.coarser,
  );
  return { ok: true, value: ccePct * fineness };
}
