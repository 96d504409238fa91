import type { PlaneRings, XY } from '../../measure/types';
import type { PassOptions } from '../passTypes';
import type { Walkable } from './wayWithin';

/** How passes are to be laid, whatever their order. */
export type LayOptions = Omit<PassOptions, 'lapsFirst'>;

/** Everything that the layouts of one zone share. */
export interface ZoneGround {
  readonly parts: readonly PlaneRings[];
  readonly rings: readonly (readonly XY[])[];
  readonly keepOff: readonly PlaneRings[];
  /** everywhere but the ground to be kept off; null: there is none. */
  readonly shy: Walkable | null;
  readonly walkable: Walkable;
  readonly areaM2: number;
  /** ground that no swath reaches without touching what is kept off, m². */
  readonly unreachableM2: number;
  readonly options: LayOptions;
}
