import { formatDay } from '../units/formatDay';
import type { SoilTest, Yard, Zone } from '../yard/types';
import { bandOf, isLevelFrom, tableOfTest } from './interpretSoil';
import { formatSoil } from './labUnits';
import { LEVEL_WORDS, soilTestName } from './soilNames';
import { usualTable } from './tables';
import { testOfZone } from './testOfZone';
import type { Band, PhosphorusGate, SoilTable } from './types';

/**
 * The table by which excess is judged: the test's own; where that is a floor alone, which names no excess,
 * the usual one of the extractant.
 */
export function tableOfExcess(test: SoilTest): SoilTable | null {
  const own = tableOfTest(test);
  return own === null || own.noPhosphorusFrom !== null ? own : usualTable(test.extractant);
}

const UNTESTED: PhosphorusGate = {
  verdict: 'no-test',
  reason: 'no soil test on file',
  disagreement: null,
  test: null,
};

/** What a test says hangs on nothing else; its words are made once. */
const kept = new WeakMap<SoilTest, PhosphorusGate>();

/**
 * Whether phosphorus may go on a zone, by the soil test that counts on a day (`testOfZone`) of those that have
 * it. Without a test, or where the test says nothing of phosphorus, the verdict is `no-test`.
 * @param day YYYY-MM-DD; null: the newest test
 */
export function phosphorusGate(
  yard: Yard,
  zone: Pick<Zone, 'id'>,
  day: string | null = null,
): PhosphorusGate {
  const test = testOfZone(yard, zone, 'P', day) ?? testOfZone(yard, zone, 'any', day);
  return test === null ? UNTESTED : gateOfTest(test);
}

/**
 * What one test says of phosphorus, by the lab's own word and by the table that reads its figure:
 *
 * | the lab's word | refused |
 * |---|---|
 * | none | where the table calls for none |
 * | very low, low, medium: a need | never: a laboratory's word of a need goes before a table, for it was made for the soils and the method of that report |
 * | high: enough, no need | where the table calls for none: nothing is lost by leaving phosphorus out, and loss to water is a risk |
 * | very high: more than enough | always |
 *
 * So where no need is named, either of the two is enough to refuse (common practice, no source). Where they
 * speak against each other, `disagreement` says so.
 */
function gateOfTest(test: SoilTest): PhosphorusGate {
  const known = kept.get(test);
  if (known !== undefined) return known;
  const gate = judge(test);
  kept.set(test, gate);
  return gate;
}

function judge(test: SoilTest): PhosphorusGate {
  const lab = test.labLevels.P ?? null;
  const mgPerKg = test.mgPerKg.P ?? null;
  const table = tableOfExcess(test);
  const band = table && mgPerKg !== null ? bandOf(table, 'P', mgPerKg) : null;
  if (lab === null && band === null) {
    const name = `the soil test “${soilTestName(test)}”`;
    const reason =
      mgPerKg === null ? `${name} has no phosphorus` : `no table reads the phosphorus of ${name}`;
    return { verdict: 'no-test', reason, disagreement: null, test };
  }
  const byLab = lab === 'very-high';
  const byTable = band !== null && isLevelFrom(band.level, table?.noPhosphorusFrom ?? 'very-high');
  const isNeed = lab !== null && !isLevelFrom(lab, 'high');
  const differ = lab !== null && band !== null && byLab !== byTable;
  const figure = mgPerKg === null ? 'P' : `P ${formatSoil(mgPerKg, test.labUnit)}`;
  const byTableWords = band && table ? `${LEVEL_WORDS[band.level]} by ${table.shortName}` : '';
  const levels = [
    ...(lab === null ? [] : [`${LEVEL_WORDS[lab]} by the lab`]),
    ...(lab === null || differ ? [byTableWords] : []),
    test.date === null ? 'day not told' : `sampled ${formatDay(test.date, true)}`,
  ];
  return {
    verdict: byLab || (byTable && !isNeed) ? 'refused' : 'allowed',
    reason: `${figure} (${levels.join(', ')})`,
    disagreement: differ && table && band ? disagreementWords(test, lab, table, band, isNeed) : null,
    test,
  };
}

function disagreementWords(
  test: SoilTest,
  lab: NonNullable<SoilTest['labLevels']['P']>,
  { shortName }: SoilTable,
  { level }: Band,
  isNeed: boolean,
): string {
  const both = `For “${soilTestName(test)}” the lab and the table disagree: the lab’s word is ${LEVEL_WORDS[lab]}`;
  if (lab === 'very-high')
    return `${both}, more than enough, while ${shortName} has it ${LEVEL_WORDS[level]}; the lab’s word of excess counts.`;
  return isNeed
    ? `${both}, while ${shortName} calls for no phosphorus at this figure (${LEVEL_WORDS[level]}). The lab’s word of a need goes before the table; look at word, figure and method on the report again.`
    : `${both}, which is enough, while ${shortName} calls for no phosphorus at this figure (${LEVEL_WORDS[level]}). Where the lab names no need, the more careful of the two counts.`;
}
