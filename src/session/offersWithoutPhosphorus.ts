import { productsWithoutPhosphorus, type Substitute } from '../plan/withoutPhosphorus';
import { replaceVisit } from '../yard/edits';
import type { Issue, Visit, VisitDose, Yard } from '../yard/types';
import { deriveYard } from './derive';
import type { Derived } from './types';

/** Least share of a label rate that is worth an offer; common practice, no source. */
const LEAST_PCT = 10;
/** Offers that fit which are enough to choose from, and labels tried for them. */
const ENOUGH = 3;
const MOST_TRIED = 6;

/** Warnings that tell how to go about the work, and are no limit, cap or rule. */
const NO_LIMIT: readonly string[] = ['tank-shared', 'zones-overlap', 'use-no-density'];

/** A product offered in place of another, held against the season as it would be with it. */
export interface TriedOffer extends Substitute {
  /** largest share of the label rate up to 1, in whole percent, that nothing speaks against; null: none is. */
  readonly rateFactor: number | null;
  /** what speaks against the label rate; where no share fits, against the least one. Empty: the label rate fits. */
  readonly against: readonly Issue[];
}

const kept = new WeakMap<Derived, Map<string, readonly TriedOffer[]>>();

/**
 * What could take the place of a dose with phosphorus, each tried on the same ground in the visit as it would be:
 * held against the limits of its label, the caps, the hold before the flush, the rules of the place and the soil
 * tests, at this visit and at every other that it bears on. Those that fit at the label rate come first, then
 * those that fit at a smaller share of it, then those that do not fit. Needs the planner (`loadPlanner`).
 */
export function offersWithoutPhosphorus(
  derived: Derived,
  visitId: string,
  doseId: string,
): readonly TriedOffer[] {
  const byDose = kept.get(derived) ?? new Map<string, readonly TriedOffer[]>();
  kept.set(derived, byDose);
  const key = `${visitId} ${doseId}`;
  const known = byDose.get(key);
  if (known !== undefined) return known;
  const made = tryOffers(derived, visitId, doseId);
  byDose.set(key, made);
  return made;
}

function tryOffers(derived: Derived, visitId: string, doseId: string): readonly TriedOffer[] {
  const { yard } = derived;
  const visit = yard.visits.find(({ id }) => id === visitId);
  const dose = visit?.doses.find(({ id }) => id === doseId);
  if (visit === undefined || dose === undefined) return [];
  const without = deriveYard(withDose(yard, visit, doseId, null), derived);
  const before = new Set(heldIssues(without).map(keyOf));
  const speaksAgainst = ({ product, useId }: Substitute, rateFactor: number): readonly Issue[] => {
    const taken: VisitDose = { ...dose, productId: product.id, useId, rateFactor, actual: null };
    const trial = deriveYard(withDose(yard, visit, doseId, taken), without);
    return heldIssues(trial).filter((issue) => !before.has(keyOf(issue)));
  };
  const tried: TriedOffer[] = [];
  for (const offer of productsWithoutPhosphorus(yard, dose).slice(0, MOST_TRIED)) {
    if (tried.filter(({ rateFactor }) => rateFactor !== null).length >= ENOUGH) break;
    tried.push({ ...offer, ...largestThatFits((factor) => speaksAgainst(offer, factor)) });
  }
  const rank = ({ rateFactor, against }: TriedOffer) =>
    rateFactor === null ? 2 : against.length > 0 ? 1 : 0;
  return tried.sort((a, b) => rank(a) - rank(b));
}

function largestThatFits(
  speaksAgainst: (rateFactor: number) => readonly Issue[],
): Pick<TriedOffer, 'rateFactor' | 'against'> {
  const against = speaksAgainst(1);
  if (against.length === 0) return { rateFactor: 1, against };
  const least = speaksAgainst(LEAST_PCT / 100);
  if (least.length > 0) return { rateFactor: null, against: least };
  let [fits, fails] = [LEAST_PCT, 100];
  while (fails - fits > 1) {
    const middle = Math.floor((fits + fails) / 2);
    if (speaksAgainst(middle / 100).length === 0) fits = middle;
    else fails = middle;
  }
  return { rateFactor: fits / 100, against };
}

/** The yard with a dose in place of the one of that id; null: without it. */
function withDose(yard: Yard, visit: Visit, doseId: string, dose: VisitDose | null): Yard {
  const doses = visit.doses.flatMap((one) => (one.id === doseId ? (dose ?? []) : one));
  return replaceVisit(yard, { ...visit, doses });
}

/** Errors and warnings of every visit and of the season. */
function heldIssues(derived: Derived): readonly Issue[] {
  const visits = derived.yard.visits.flatMap(({ id }) => {
    const figures = derived.visit(id)?.figures;
    return figures ? [...figures.issues, ...figures.doses.flatMap(({ issues }) => issues)] : [];
  });
  return [...visits, ...derived.season().issues].filter(
    ({ severity, code }) => severity !== 'note' && !NO_LIMIT.includes(code),
  );
}

/** The sentence holds the figures: where they get worse it is another issue. */
function keyOf({ code, place, message }: Issue): string {
  return `${code} ${place.visitId ?? ''} ${message}`;
}
