import type { MapPort, Tool } from '../map/types';
import type { DerivedVisit, YardSession } from '../session/types';
import type { Issue, UnitSystem, Yard } from '../yard/types';

/** The parts of the job that have a screen; each can be opened at any time. */
export const STEPS = ['measure', 'shelf', 'visit', 'sheet', 'yards'] as const;
export type Step = (typeof STEPS)[number];

/** State of the screen that is not in the document. */
export interface ViewState {
  readonly step: Step;
  readonly selectedZoneIds: readonly string[];
  readonly visitId: string | null;
  readonly productId: string | null;
  readonly tool: Tool;
}

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
  setView(change: Partial<ViewState>): void;
  dispatch(label: string, edit: (yard: Yard) => Yard, mergeKey?: string): void;
  /** a message beside the map, until dismissed or replaced. */
  tell(issue: Issue): void;
  newId(prefix: string): string;
  /** YYYY-MM-DD of the device's clock. */
  today(): string;
}
