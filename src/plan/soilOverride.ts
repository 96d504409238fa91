import { phosphorusGate } from '../soil/phosphorusGate';
import { soilTestName } from '../soil/soilNames';
import { formatNumber } from '../units/format';
import type { Override, SoilTest, Visit, VisitDose, Yard, Zone } from '../yard/types';
import { zoneNames } from '../yard/zoneNames';

/** Code of the refusal, and of the override that sets it aside. */
export const SOIL_REFUSAL = 'soil-phosphorus-excess';

/** Figures that differ by less are the same. */
const SAME = 1e-9;

/** A decision on a dose that the soil refuses, and whether it still holds. */
export interface SoilDecision {
  readonly override: Override;
  /** why it holds no more, one part of a sentence for each reason; empty: it holds. */
  readonly lapses: readonly string[];
}

/**
 * The decision logged for a dose of a product: the last that holds for all the refused zones, else the last
 * that once did.
 * @param refused zones that the soil refuses the dose now
 * @returns null when none is logged
 */
export function decisionOn(
  yard: Yard,
  visit: Visit,
  dose: VisitDose,
  refused: readonly Zone[],
): SoilDecision | null {
  const own = yard.overrides
    .filter(
      (each) =>
        each.code === SOIL_REFUSAL &&
        each.visitId === visit.id &&
        each.doseId === dose.id &&
        each.productId === dose.productId,
    )
    .map((override) => ({ override, lapses: lapsesOf(yard, override, visit, dose, refused) }));
  return own.findLast(({ lapses }) => lapses.length === 0) ?? own.at(-1) ?? null;
}

/**
 * Why a decision does not hold for a dose as it is now: a zone that was no part of it, another use of the label,
 * a larger multiple of its rate, or another soil test or more phosphorus in it than there was. Less ground, a
 * smaller rate and less phosphorus leave it standing.
 */
export function lapsesOf(
  yard: Yard,
  override: Override,
  visit: Visit,
  dose: VisitDose,
  refused: readonly Zone[],
): readonly string[] {
  const lapses: string[] = [];
  const others = refused.filter((zone) => !override.zoneIds.includes(zone.id));
  if (others.length > 0) {
    const names = zoneNames(
      yard,
      others.map((zone) => zone.id),
    );
    lapses.push(`${names} ${others.length === 1 ? 'was' : 'were'} no part of it`);
  }
  if (dose.useId !== override.useId) lapses.push('the dose goes by another use of the label');
  if (dose.rateFactor > override.rateFactor * (1 + SAME))
    lapses.push(`the dose is ${timesWords(dose.rateFactor)} now`);
  const known = refused.filter((zone) => override.zoneIds.includes(zone.id));
  const tests = new Set(known.flatMap((zone) => phosphorusGate(yard, zone, visit.date).test ?? []));
  for (const test of tests) {
    const then = override.soilTests.find(({ id }) => id === test.id);
    if (then === undefined) lapses.push(`the soil test that counts now is “${soilTestName(test)}”`);
    else if (!isNoMore(test, then.pMgPerKg))
      lapses.push(`the soil test “${soilTestName(test)}” has other figures now`);
  }
  return lapses;
}

/** Whether a test has no more phosphorus than it had. @param then mg/kg; null: it had the lab's word alone */
function isNoMore({ mgPerKg: { P } }: SoilTest, then: number | null): boolean {
  return then === null ? P === undefined : P !== undefined && P <= then * (1 + SAME);
}

/** What a decision was for: "Back at the label rate, by the soil test “Lawn soil”". */
export function decisionWords(yard: Yard, { zoneIds, rateFactor, soilTests }: Override): string {
  const ground = zoneIds.length === 0 ? 'ground that is not told' : zoneNames(yard, zoneIds);
  const names = soilTests.map(({ id }) => {
    const test = yard.soilTests.find((each) => each.id === id);
    return test ? `“${soilTestName(test)}”` : 'one that is gone';
  });
  const by = names.length === 0 ? '' : `, by the soil test ${[...new Set(names)].join(', ')}`;
  return `${ground} at ${timesWords(rateFactor)}${by}`;
}

function timesWords(factor: number): string {
  return Math.abs(factor - 1) <= SAME ? 'the label rate' : `${formatNumber(factor, 4)} times the label rate`;
}

/**
 * The log entry of a decision to put a refused dose out all the same, with what it is given for.
 * @param refused zones that the soil refuses the dose
 * @param entry id made by the caller, day of the decision (YYYY-MM-DD) and its reason
 */
export function newSoilOverride(
  yard: Yard,
  visit: Visit,
  dose: VisitDose,
  refused: readonly Zone[],
  entry: Pick<Override, 'id' | 'on' | 'reason'>,
): Override {
  const tests = new Set(refused.flatMap((zone) => phosphorusGate(yard, zone, visit.date).test ?? []));
  return {
    ...entry,
    code: SOIL_REFUSAL,
    visitId: visit.id,
    doseId: dose.id,
    productId: dose.productId,
    zoneIds: refused.map((zone) => zone.id),
    useId: dose.useId,
    rateFactor: dose.rateFactor,
    soilTests: [...tests].map(({ id, mgPerKg }) => ({ id, pMgPerKg: mgPerKg.P ?? null })),
  };
}
