import { planeAreaOf, unionOf } from '../../measure/clip';
import type { XY } from '../../measure/types';
import { formatArea } from '../../units/format';
import type { Issue, UnitSystem } from '../../yard/types';
import { closeMarks } from '../marks/closeMarks';
import { tooManyFills } from '../marks/mostVessels';
import { runOutMarks } from '../marks/runOutMarks';
import { shortVessels } from '../marks/shortVessels';
import { sweptKnots } from '../marks/sweptKnots';
import { walkProgress } from '../marks/walkProgress';
import { type Outline, outlineOf } from '../outline';
import type { CoverDose, CoverInput, CoverZone, DoseCoverage, Leg, ZonePasses, ZoneWalk } from '../passTypes';
import { type CarryGround, type CarryHow, createCarryGround, standingObstacles } from './carryGround';
import { type ChosenStop, chooseStops, type RoundEnds, type StopChoice } from './chooseStops';
import { dryWay, easyWay } from './dryWay';
import { hoseReach } from './hoseReach';
import { mergeWalks } from './mergeWalks';
import { isShut, overWet } from './overWet';
import {
  headingOf,
  leftOut,
  type PlanPasses,
  type StopGround,
  stopGrounds,
  stopPlans,
  type Variety,
} from './stopPlans';

/** What the walk of one dose hangs on, beside the dose. */
export type CoverSite = Pick<CoverInput, 'obstacles' | 'property' | 'start' | 'end' | 'hose' | 'units'>;

/** With more pieces of ground than this, only two walks are tried of each. */
const MOST_CORNERED = 6;
/** Legs whose ends are this near are joined as they are, m. */
const JOINED_M = 1e-6;

/** One zone and coat: what was laid on its pieces. */
interface Laid {
  readonly zoneId: string;
  readonly coat: 1 | 2;
  readonly passes: ZonePasses[];
}

/**
 * The whole walk of one dose: zones in the order of a short walk, ways between them with the applicator shut, and
 * where each vessel runs out. A dose that stays wet has its second coat as a second round, once all has had the
 * first; of a dry one both coats of a piece of ground are walked one after the other.
 * @param plan lays the passes of one piece of ground
 */
export function coverDose(dose: CoverDose, site: CoverSite, plan: PlanPasses): DoseCoverage {
  const ground = createCarryGround(
    standingObstacles(site.obstacles, dose.zones),
    unionOf(dose.zones.flatMap(({ keepOff }) => keepOff)),
    site.property ?? null,
  );
  const { stops: grounds, tiny } = stopGrounds(dose.zones, dose.spacingM);
  const stops = grounds.map((each) => ({ ground: each, outline: outlineOf([each.part]) }));
  const variety: Variety = stops.length > MOST_CORNERED ? 'there-and-back' : 'corners';
  const walk = new Walk(dose, ground);
  const isTwoRounds = dose.coats === 2 && dose.staysWet;
  const rounds: (1 | 2)[][] = isTwoRounds ? [[1], [2]] : [dose.coats === 2 ? [1, 2] : [1]];
  const headings = new Map<StopGround, number | null>();
  rounds.forEach((coats, round) => {
    const choices = stops.flatMap((stop): StopChoice[] => {
      const across = headings.get(stop.ground) ?? null;
      const tried = stopPlans(stop.ground, dose, coats, across, variety, plan);
      if (tried.plans.length > 0) return [{ ...stop, plans: tried.plans, across }];
      for (const { coat, passes } of tried.walks) walk.note(stop.ground, coat, passes);
      return [];
    });
    const isLast = round === rounds.length - 1;
    const ends: RoundEnds = { start: walk.at ?? site.start, end: isLast ? site.end : null };
    if (choices.length === 0) return;
    if (walk.at === null) walk.at = site.start;
    for (const chosen of chooseStops(choices, dose, coats, ends, ground, plan)) {
      headings.set(chosen.choice.ground, headingOf(chosen.plan));
      walk.add(chosen);
    }
    if (isLast && site.end) walk.carryTo(site.end, coats.at(-1) ?? 1);
  });
  for (const coat of dose.coats === 2 ? ([1, 2] as const) : ([1] as const))
    for (const piece of tiny) walk.note(piece, coat, leftOut(piece, dose.spacingM));
  return finish(walk, dose, site, ground, tiny);
}

/** A walk as it is put together. */
class Walk {
  readonly legs: Leg[] = [];
  readonly laid: Laid[] = [];
  readonly told = new Map<CarryHow, number>();
  at: XY | null = null;
  private wet: Outline[] = [];
  private coat: 1 | 2 = 1;

  constructor(
    private readonly dose: CoverDose,
    private readonly ground: CarryGround,
  ) {}

  note({ zone }: StopGround, coat: 1 | 2, passes: ZonePasses): void {
    const known = this.laid.find((each) => each.zoneId === zone.zoneId && each.coat === coat);
    if (known) known.passes.push(passes);
    else this.laid.push({ zoneId: zone.zoneId, coat, passes: [passes] });
  }

  add({ choice, plan }: ChosenStop): void {
    const { zoneId } = choice.ground.zone;
    for (const { coat, passes } of plan.walks) {
      this.note(choice.ground, coat, passes);
      if (coat !== this.coat) this.wet = [];
      this.coat = coat;
      for (const leg of passes.legs) {
        this.carryTo(leg.line[0] as XY, coat);
        this.legs.push({ ...leg, zoneId, coat });
        this.at = leg.line.at(-1) as XY;
      }
    }
    this.wet.push(choice.outline);
  }

  /** The way to a place with the applicator shut, where one is not there yet. */
  carryTo(to: XY, coat: 1 | 2): void {
    const from = this.at;
    if (from && Math.hypot(to[0] - from[0], to[1] - from[1]) > JOINED_M) {
      const wet = this.dose.staysWet ? this.wet : [];
      const way = easyWay(this.ground, dryWay(this.ground, from, to, wet), wet);
      this.told.set(way.how, (this.told.get(way.how) ?? 0) + 1);
      const { line, lengthM } = way;
      this.legs.push({ kind: 'carry', zoneId: null, coat, line, lengthM, knots: [] });
    }
    this.at = to;
  }
}

function finish(
  { legs: walked, laid, told }: Walk,
  dose: CoverDose,
  { hose, units = 'metric' }: CoverSite,
  ground: CarryGround,
  tiny: readonly StopGround[],
): DoseCoverage {
  const { doseId, zones, coats, vessels, staysWet, swathM } = dose;
  const legs = sweptKnots(walked, zones, dose.spacingM);
  const walks = laid.map((each): ZoneWalk => mergeWalks(each.passes, each.zoneId, doseId, each.coat));
  const progress = walkProgress(legs, zones, coats);
  const reach =
    dose.byHose && hose ? hoseReach(progress, hose.bibs, hose.lengthM, ground, units, doseId) : null;
  const marks = runOutMarks(legs, zones, coats, vessels);
  const close = closeMarks(legs, marks, units, { doseId });
  const areaM2 = zones.reduce((sum, zone) => sum + zone.areaM2, 0);
  const short = shortVessels(vessels, areaM2, units, { doseId });
  const many = tooManyFills(dose.tooManyVessels ?? 0, { doseId });
  const issues: Issue[] = [
    ...(coats === 2 && staysWet ? [wetCoats(doseId)] : []),
    ...(dose.isGuarded && dose.headerLaps === 0 ? [guardWithoutLaps(doseId)] : []),
    ...wayIssues(told, doseId),
    ...(reach?.issues ?? []),
    ...(close ? [close] : []),
    ...(short ? [short] : []),
    ...(many ? [many] : []),
  ];
  for (const zone of zones)
    if (!legs.some(({ zoneId }) => zoneId === zone.zoneId)) issues.push(notWalked(zone, doseId, units));
  issues.push(...tinyPieces(tiny, doseId, units));
  const lengthOf = (some: readonly Leg[]): number => some.reduce((sum, { lengthM }) => sum + lengthM, 0);
  return {
    doseId,
    walks,
    legs,
    vessels,
    marks,
    lengthM: lengthOf(legs),
    workingM: lengthOf(legs.filter((leg) => !isShut(leg))),
    overWetM: staysWet ? overWet(legs, swathM) : 0,
    hose: reach?.hose ?? null,
    issues,
  };
}

function wetCoats(doseId: string): Issue {
  const message =
    'Two coats of what goes out wet: the second round begins where the first has dried. Check that the label allows a second coat.';
  return { code: 'two-wet-coats', severity: 'note', message, place: { doseId } };
}

function guardWithoutLaps(doseId: string): Issue {
  const message =
    'The edge guard helps only where you walk along the edge: without laps, passes that end at a drive throw over it. Choose one lap or more.';
  return { code: 'guard-without-laps', severity: 'note', message, place: { doseId } };
}

/** A zone that the walk leaves out. */
function notWalked({ name, zoneId, parts, areaM2 }: CoverZone, doseId: string, units: UnitSystem): Issue {
  const place = { doseId, zoneId };
  const ground = `“${name}” (${formatArea(areaM2, units)})`;
  if (parts.length > 0) {
    const message = `No pass has room on ${ground}: do it by hand.`;
    return { code: 'zone-not-walked', severity: 'warning', message, place };
  }
  const message = `${ground} has no place on the map: it is left out of the walk, and what it takes comes after the last mark.`;
  return { code: 'zone-not-placed', severity: 'note', message, place };
}

/** What is said of pieces that no way leads to: once for each zone. */
function tinyPieces(tiny: readonly StopGround[], doseId: string, units: UnitSystem): Issue[] {
  return [...new Set(tiny.map(({ zone }) => zone))].map((zone): Issue => {
    const parts = tiny.filter((each) => each.zone === zone).map(({ part }) => part);
    const pieces = parts.length === 1 ? 'A small piece' : `${parts.length} small pieces`;
    const message = `${pieces} of “${zone.name}” (${formatArea(planeAreaOf(parts), units)}), cut off from the rest, ${parts.length === 1 ? 'is' : 'are'} left out of the walk: see to ${parts.length === 1 ? 'it' : 'them'} by hand.`;
    return { code: 'pieces-not-walked', severity: 'note', message, place: { doseId, zoneId: zone.zoneId } };
  });
}

/** What is said of ways that are not on open ground. */
function wayIssues(told: ReadonlyMap<CarryHow, number>, doseId: string): Issue[] {
  const issues: Issue[] = [];
  const count = (how: CarryHow): string => {
    const ways = told.get(how) ?? 0;
    return ways === 1 ? 'One way between zones goes' : `${ways} ways between zones go`;
  };
  if (told.has('over-strip'))
    issues.push({
      code: 'way-over-strip',
      severity: 'note',
      message: `${count('over-strip')} over a no-apply strip, as there is none round it: shut the applicator there.`,
      place: { doseId },
    });
  if (told.has('off-property'))
    issues.push({
      code: 'way-off-property',
      severity: 'note',
      message: `${count('off-property')} outside of the property, as none on it leads there.`,
      place: { doseId },
    });
  if (told.has('straight'))
    issues.push({
      code: 'no-way-between',
      severity: 'warning',
      message: `${count('straight')} straight through a house, water or a bed, as nothing leads round: shut the applicator and find your own way.`,
      place: { doseId },
    });
  return issues;
}
