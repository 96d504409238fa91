import type { VisitCoverage } from '../cover/passTypes';
import type { MapPort, Tool, Trial } from '../map/types';
import type { DerivedVisit, YardSession } from '../session/types';
import type { Issue, Position, UnitSystem, Yard } from '../yard/types';

/** The parts of the job that have a screen; each can be opened at any time. */
export const STEPS = [
  'measure',
  'need',
  'shelf',
  'season',
  'visit',
  'passes',
  'buy',
  'sheet',
  'yards',
] as const;
export type Step = (typeof STEPS)[number];

/** Ways of getting at an area, beside drawing; each has a form of its own in the Measure panel. */
export const WAYS = ['picture', 'tape', 'plat', 'walk', 'corners', 'file', 'parcel'] as const;
export type Way = (typeof WAYS)[number];

/** State of the screen that is not in the document. */
export interface ViewState {
  readonly step: Step;
  readonly selectedZoneIds: readonly string[];
  readonly visitId: string | null;
  /** dose of that visit whose passes are shown; null: the first. */
  readonly doseId: string | null;
  readonly productId: string | null;
  readonly tool: Tool;
  /** the way whose form is open in the Measure panel; null: the list of zones. */
  readonly way: Way | null;
  /** what is open in the panel asks for the broad panel of a wide screen, whatever the step. */
  readonly isBroad: boolean;
}

/** The walks of the visit in hand: laid out in a worker, so they come a moment later. */
export type CoverageState =
  | { readonly state: 'none' }
  /** `before`: what was last laid out of the same visit, to be shown meanwhile. */
  | { readonly state: 'working'; readonly before: VisitCoverage | null }
  | { readonly state: 'ready'; readonly coverage: VisitCoverage }
  | { readonly state: 'failed'; readonly message: string };

/**
 * What every panel gets as its `app` property. A panel also gets `rev`, a number that grows at each
 * change, so that Lit renders again; it reads from `app` and calls it, and keeps no copy.
 */
export interface App {
  readonly session: YardSession;
  readonly view: ViewState;
  /** null until the map is up. */
  readonly map: MapPort | null;
  readonly units: UnitSystem;
  /** the visit that `view.visitId` names, derived; null when none. */
  readonly visit: DerivedVisit | null;
  /** the walks of that visit, on the screens that show them. */
  readonly coverage: CoverageState;
  setView(change: Partial<ViewState>): void;
  dispatch(label: string, edit: (yard: Yard) => Yard, mergeKey?: string): void;
  /** a message beside the map, until dismissed or replaced. */
  tell(issue: Issue): void;
  /** shows a passing drawing on the map; null takes it away. It goes by itself when another way or step is opened. */
  setTrial(trial: Trial | null): void;
  /**
   * Lets the person point at one place of the map.
   * @param words what to point at, as a sentence
   * @returns null when given up (Escape, another tool)
   */
  pick(words: string): Promise<Position | null>;
  newId(prefix: string): string;
  /** YYYY-MM-DD of the device's clock. */
  today(): string;
}
