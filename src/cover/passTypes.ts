import type { PlaneRings, XY } from '../measure/types';
import type { Amount, Issue, UnitSystem } from '../yard/types';

/*
 * Passes laid on the ground, in the yard's plane (m). Plain data: it goes to a worker and back.
 */

/** What one stretch of a walk is: a lap beside the outline, a straight pass, the turn to the next, or a way with the applicator shut. */
export const LEG_KINDS = ['lap', 'pass', 'turn', 'carry'] as const;
/** One kind of stretch. */
export type LegKind = (typeof LEG_KINDS)[number];

/** How far the ground is done when so much of a leg is walked. */
export interface LegKnot {
  /** m along the leg, 0 to its length, ascending. */
  readonly atM: number;
  /** plane m² of the zone's ground that the leg has taken on by then, each square metre once over all legs of a coat. */
  readonly areaM2: number;
}

/** One stretch of a walk. */
export interface Leg {
  readonly kind: LegKind;
  /** the zone it works on; null: a way between zones. */
  readonly zoneId: string | null;
  readonly coat: 1 | 2;
  /** two points or more. */
  readonly line: readonly XY[];
  readonly lengthM: number;
  /** of laps and passes: from 0 to all it covers, first at 0 m, last at its length; empty for turns and ways. */
  readonly knots: readonly LegKnot[];
}

/** One zone to be walked: its ground, and what the swath must not touch. */
export interface PassGround {
  /** treated ground (net shape less strips), holes included. */
  readonly parts: readonly PlaneRings[];
  /** no-apply strips beside it: neither swath nor walk enters them. */
  readonly keepOff: readonly PlaneRings[];
}

/** How passes are to be laid. */
export interface PassOptions {
  /** distance between passes where the plan has no overlap to spare: swath · (1 - overlap), m; more than 0. */
  readonly spacingM: number;
  /** what one pass wets or strews, m; at least `spacingM`. */
  readonly swathM: number;
  /** laps along the outline; null: as many as make the shortest walk. */
  readonly headerLaps: number | null;
  /** degrees clockwise from the plane's north, 0 to <180; null: what makes the shortest walk. */
  readonly headingDeg: number | null;
  /** true: laps are walked before the passes (dry product); false: after them, so that the way out is over untreated ground. */
  readonly lapsFirst: boolean;
}

/** The walk over one zone, in order, without the ways to it and from it. */
export interface ZonePasses {
  readonly legs: readonly Leg[];
  /** heading of most passes, degrees clockwise from the plane's north; null: laps alone. */
  readonly headingDeg: number | null;
  /** how it is laid: straight passes, laps round and round, or both. */
  readonly pattern: 'straight' | 'round' | 'both';
  readonly cells: number;
  readonly passes: number;
  readonly turns: number;
  /** all legs, m; of which laps and passes. */
  readonly lengthM: number;
  readonly workingM: number;
  /** shortest walk there could be: area / spacing, m. */
  readonly leastM: number;
  /** plane m²: the ground, what no swath reaches, what is reached more often than the plan's overlap asks, what is reached beyond the ground. */
  readonly areaM2: number;
  readonly missedM2: number;
  readonly doubleM2: number;
  readonly outsideM2: number;
  /** farthest that a swath reaches beyond the ground, m. */
  readonly outsideM: number;
  readonly issues: readonly Issue[];
}

/** One zone of a dose as the coverage is worked out from. */
export interface CoverZone extends PassGround {
  readonly zoneId: string;
  readonly name: string;
  /** area that the dose goes by (geodesic, along the slope where asked), m². */
  readonly areaM2: number;
  /** chosen heading, or null. */
  readonly headingDeg: number | null;
}

/** What a dose is drawn from, one after another as it is used up: a bottle, a bag, a tank load, a hopper fill. */
export interface Vessel {
  readonly kind: 'container' | 'tank-load' | 'hopper-fill';
  /** 1, 2, 3 … of its kind in the order of the dose. */
  readonly number: number;
  /** what it holds when full, and at the start: kg or L of product (of finished spray for a tank load). */
  readonly full: Amount;
  readonly start: Amount;
  /** what the dose takes out of it. */
  readonly taken: Amount;
  /** ground it does, m² of the dose's ground. */
  readonly areaM2: number;
  /** of a container: its pack. */
  readonly packId: string | null;
  /** of a hopper fill or jar: the containers that it comes out of, by their numbers; absent: not known, or a vessel of another kind. */
  readonly from?: readonly number[];
}

/** One dose as the coverage is worked out from: all plain data. */
export interface CoverDose {
  readonly doseId: string;
  readonly spacingM: number;
  readonly swathM: number;
  readonly headerLaps: number | null;
  readonly lapsFirst: boolean;
  readonly coats: 1 | 2;
  readonly zones: readonly CoverZone[];
  /** in the order they are used up; areas sum to those of the zones. */
  readonly vessels: readonly Vessel[];
  /** how many vessels it would be, where they are too many to mark; `vessels` is then empty. */
  readonly tooManyVessels?: number;
  /** true: wet ground is walked round where it can be (liquids). */
  readonly staysWet: boolean;
  /** true: it goes out from the garden hose, which must reach. */
  readonly byHose?: boolean;
  /** true: an edge guard is down along the edges; absent: none. */
  readonly isGuarded?: boolean;
}

/** All that the walks of one visit hang on, in the yard's plane. */
export interface CoverInput {
  readonly visitId: string;
  readonly doses: readonly CoverDose[];
  /** what no one walks through: houses, water, beds. */
  readonly obstacles: readonly PlaneRings[];
  /** ground that ways keep to where they can: the property and all that is drawn; absent: they may go anywhere. */
  readonly property?: readonly PlaneRings[];
  /** where the walk begins and ends; null: wherever it is shortest. */
  readonly start: XY | null;
  readonly end: XY | null;
  /** a hose that must reach: hose bibs, and how long it is; null: none, or its length is not told. */
  readonly hose: { readonly bibs: readonly XY[]; readonly lengthM: number } | null;
  /** units of the sentences in issues; absent: metric. */
  readonly units?: UnitSystem;
}

/** Where a vessel stands at a quarter of its full content, or is used up. */
export interface RunOutMark {
  readonly vessel: number;
  /** index in `vessels`, from 0. */
  readonly kind: Vessel['kind'];
  readonly number: number;
  /** share of the full content that is left there: 0.75, 0.5, 0.25; 0: it runs out. */
  readonly left: number;
  readonly at: XY;
  readonly legIndex: number;
  readonly alongM: number;
  readonly zoneId: string;
  /** m² of the dose done by then (of a coat at half the rate: half). */
  readonly doneM2: number;
}

/** One line of the list beside a walk: a mark, or the end of a zone with what should be left there. */
export interface WalkNote {
  /** null: the end of a zone, with no mark right there. */
  readonly mark: RunOutMark | null;
  /** the zone (in this coat) ends here. */
  readonly isZoneEnd: boolean;
  readonly zoneId: string;
  readonly coat: 1 | 2;
  /** the stretch it stands on, and its number of its kind in this zone and coat: pass 7, lap 1. */
  readonly legKind: LegKind;
  readonly legNumber: number;
  /** m² of the dose done by then, and m walked along all legs. */
  readonly doneM2: number;
  readonly walkedM: number;
  /** what is in hand there, index in `vessels`, and the share of its full content that is left; null: no vessels. */
  readonly vessel: number | null;
  readonly left: number | null;
}

/** One zone of a dose, as walked. */
export interface ZoneWalk extends Omit<ZonePasses, 'legs'> {
  readonly zoneId: string;
  readonly coat: 1 | 2;
}

/** One dose as it is walked. */
export interface DoseCoverage {
  readonly doseId: string;
  /** zones and coats in walking order. */
  readonly walks: readonly ZoneWalk[];
  /** everything in order, ways between zones included. */
  readonly legs: readonly Leg[];
  readonly vessels: readonly Vessel[];
  readonly marks: readonly RunOutMark[];
  readonly lengthM: number;
  readonly workingM: number;
  /** walked over ground that is wet by then, m. */
  readonly overWetM: number;
  /** farthest that the hose must reach from the nearest bib, m; ground of the dose beyond its length, m², and in which zones, most first; null: no hose. */
  readonly hose: {
    readonly farthestM: number;
    readonly beyondM2: number;
    readonly beyond: readonly { readonly zoneId: string; readonly areaM2: number }[];
    readonly bib: XY;
  } | null;
  /** of the dose and of the ways between its zones; those of one zone stand in its walk. */
  readonly issues: readonly Issue[];
}

/** The walks of one visit. */
export interface VisitCoverage {
  readonly visitId: string;
  readonly doses: readonly DoseCoverage[];
}
