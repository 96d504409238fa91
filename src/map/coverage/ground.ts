import { WALK_INKS } from '../../draft/walkLines';
import type { Ground } from '../patterns';
import type { MapPicture } from '../types';

/** What the walk lies on, and the inks that read there. */
export interface WalkGround {
  readonly ground: Ground;
  readonly theme: 'light' | 'dark';
  readonly ink: string;
  readonly hose: string;
  /** of the casing round every line: more over a picture, so that ink reads on any of it. */
  readonly casing: string;
  readonly casingOpacity: number;
  /** widths are grown by this beneath, px. */
  readonly casingPx: number;
}

/** The ground of a picture of the map. */
export function walkGroundOf({ dark, baseLayer }: Pick<MapPicture, 'dark' | 'baseLayer'>): WalkGround {
  const isPaper = baseLayer.kind === 'grid';
  const theme = dark && isPaper ? 'dark' : 'light';
  const inks = WALK_INKS[theme];
  return {
    ground: isPaper ? theme : 'imagery',
    theme,
    ink: inks.ink,
    hose: inks.hose,
    casing: inks.ground,
    casingOpacity: isPaper ? 0.6 : 0.9,
    casingPx: isPaper ? 2 : 2.4,
  };
}
