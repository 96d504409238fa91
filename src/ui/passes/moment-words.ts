import { type LegNumber, legNumbers } from '../../cover/marks/legNumbers';
import type { WalkMoment } from '../../cover/marks/momentAt';
import type { DoseCoverage } from '../../cover/passTypes';
import { formatPercent } from '../../units/format';
import { formatClock } from '../../units/formatPace';
import { type DoseWay, standWords, vesselName } from '../../words/markWords';
import { amountWords } from '../../words/productWords';
import { groundName } from '../../words/zoneWords';
import type { UnitSystem } from '../../yard/types';
import type { DoseInHand } from './dose-in-hand';
import type { WalkClock } from './walk-clock';

/** Less than this share of a full vessel is called empty. */
const EMPTY = 5e-4;

/** A mark nearer than this is being passed, s. */
const AT_ONCE_S = 0.5;

/** The words of vessels hang on product and applicator. */
export function wayOf({ figures, equipment }: DoseInHand): DoseWay | null {
  return figures && equipment
    ? {
        product: figures.product,
        applicator: equipment.equipment.applicator,
        coats: figures.dose.passes.coats,
      }
    : null;
}

/** What is being done at a moment: "Oak bed lawn, pass 7 of 18", "On the way to Front lawn, shut". */
export function momentWords(hand: DoseInHand, moment: WalkMoment): string {
  const { walk } = hand;
  const legs = walk?.dose.legs ?? [];
  const leg = legs[moment.legIndex];
  if (!walk || !leg) return '';
  const nameOf = (zoneId: string | null) =>
    groundName(walk.from.zones.find((zone) => zone.zoneId === zoneId)?.name ?? '');
  if (moment.isRefilling) {
    const vessel = walk.dose.vessels[moment.vessel ?? 0];
    const way = wayOf(hand);
    return vessel && way ? `Standing: ${vesselName(vessel, way)} is made ready` : 'Standing';
  }
  if (leg.zoneId === null || leg.kind === 'carry') {
    const next = legs.slice(moment.legIndex + 1).find((each) => each.kind === 'pass' || each.kind === 'lap');
    if (!next) return 'On the way out, shut';
    return next.zoneId === leg.zoneId
      ? `${nameOf(next.zoneId)}, on to its next part, shut`
      : `On the way to ${nameOf(next.zoneId)}, shut`;
  }
  const coat = walk.from.coats === 2 ? `, ${leg.coat === 1 ? 'first' : 'second'} coat` : '';
  const place = `${nameOf(leg.zoneId)}${coat}`;
  if (leg.kind === 'turn') return `${place}, turning`;
  const what = leg.kind === 'lap' ? 'lap' : 'pass';
  const counted = numbersOf(walk.dose)[moment.legIndex];
  return `${place}, ${what} ${counted?.number} of ${counted?.of}`;
}

const numbered = new WeakMap<DoseCoverage, readonly LegNumber[]>();

/** Counted once for a walk: the words are asked for at every frame of a play. */
function numbersOf(dose: DoseCoverage): readonly LegNumber[] {
  const numbers = numbered.get(dose) ?? legNumbers(dose.legs);
  numbered.set(dose, numbers);
  return numbers;
}

/** "Bottle 2 of 3: 20 fl oz, 62 % full"; empty where there is no vessel. */
export function vesselLevelWords(hand: DoseInHand, moment: WalkMoment, units: UnitSystem): string {
  const way = wayOf(hand);
  const vessels = hand.walk?.dose.vessels ?? [];
  const vessel = moment.vessel === null ? undefined : vessels[moment.vessel];
  if (!way || !vessel || moment.level === null) return '';
  const name = vesselName(vessel, way);
  const of = vessels.length > 1 ? ` of ${vessels.length}` : '';
  const which = `${name.charAt(0).toUpperCase()}${name.slice(1)}${of}`;
  if (moment.level < EMPTY) return `${which}: empty`;
  const left = { unit: vessel.full.unit, value: moment.level * vessel.full.value };
  return `${which}: ${amountWords(way.product, left, units)}, ${formatPercent(moment.level)} full`;
}

/** "bottle 2 at one half in 1 min 20 s"; null where no mark is ahead. @param second of the walk's clock */
export function nextMarkWords(hand: DoseInHand, clock: WalkClock, second: number): string | null {
  const way = wayOf(hand);
  const at = clock.markSeconds.findIndex((each) => each > second + AT_ONCE_S);
  const mark = clock.timeline.dose.marks[at];
  if (!way || !mark) return null;
  return `${standWords(mark, mark.left, way)} in ${formatClock((clock.markSeconds[at] ?? 0) - second)}`;
}
