import { type BareUnit, type Foot, metresPerBareUnit } from '../../survey/plat/lengths';
import type { CallSigma } from '../../survey/plat/types';
import type { Position, UnitSystem } from '../../yard/types';

/** What the figures were measured with: it suggests how well they are known. */
export const PLAT_SOURCES = ['survey', 'tape'] as const;
export type PlatSource = (typeof PLAT_SOURCES)[number];

/** Round figures in feet for those who read feet: 0.03 ft is 9 mm, 0.15 ft 46 mm. */
const USUAL_IN_FEET_M: Readonly<Record<PlatSource, number>> = { survey: 0.03 * 0.3048, tape: 0.15 * 0.3048 };

/**
 * First guess at one standard deviation of a direction and a length: of a recorded survey, and of one's
 * own tape with corners judged by eye. Common practice, no source.
 */
const USUAL_CALL_SIGMA: Readonly<Record<PlatSource, CallSigma>> = {
  survey: { angleDeg: 30 / 3600, lengthM: 0.01 },
  tape: { angleDeg: 1, lengthM: 0.05 },
};

/** Everything typed into the form of the plat; outlives the form, which may give way to the map. */
export interface PlatDraft {
  readonly text: string;
  readonly foot: Foot;
  /** null: feet or metres, as the yard is shown. */
  readonly bareUnit: BareUnit | null;
  /** what becomes of the gap; null: as fits it. */
  readonly gap: 'spread' | 'side' | null;
  /** point of beginning as typed, and as picked on the map (exact). */
  readonly startText: string;
  readonly picked: Position | null;
  /** direction of the plat's north, degrees clockwise from true north. */
  readonly northDeg: number;
  readonly source: PlatSource;
  /** null: as usual for the source. */
  readonly sigma: CallSigma | null;
  /** corner error as typed, m; null: as reckoned. */
  readonly vertexSigmaM: number | null;
}

const FIRST_DRAFT: PlatDraft = {
  text: '',
  foot: 'international',
  bareUnit: null,
  gap: null,
  startText: '',
  picked: null,
  northDeg: 0,
  source: 'survey',
  sigma: null,
  vertexSigmaM: null,
};

/** How well the calls are known: as typed, else as usual in round figures of the units shown. */
export function sigmaOf({ sigma, source }: PlatDraft, system: UnitSystem): CallSigma {
  if (sigma) return sigma;
  const usual = USUAL_CALL_SIGMA[source];
  return system === 'us' ? { ...usual, lengthM: USUAL_IN_FEET_M[source] } : usual;
}

const drafts = new WeakMap<object, PlatDraft>();

/** @param owner what the draft belongs to: the open yard's session */
export function platDraftOf(owner: object): PlatDraft {
  return drafts.get(owner) ?? FIRST_DRAFT;
}

/** Keeps the draft while its owner lives. */
export function keepPlatDraft(owner: object, draft: PlatDraft): void {
  drafts.set(owner, draft);
}

/** The unit of numbers without one: as chosen, else that of the yard. */
export function bareUnitOf(draft: PlatDraft, system: UnitSystem): BareUnit {
  return draft.bareUnit ?? (system === 'us' ? 'ft' : 'm');
}

/** metres in the foot that the draft's lengths are shown in. */
export function metresPerFoot(draft: PlatDraft): number {
  return metresPerBareUnit('ft', draft.foot);
}
