import { DEFAULT_WALK_OPTIONS } from '../survey/walk/walkDefaults';
import { walkFromTrack } from '../survey/walk/walkFromTrack';
import type { Issue, Position, Ring } from '../yard/types';

/** The outline of a walked track. */
export interface WalkedRing {
  /** null: the track gives no outline. */
  readonly ring: Ring | null;
  readonly sigmaM: number | null;
  readonly notes: readonly Pick<Issue, 'code' | 'severity' | 'message'>[];
}

/**
 * Makes the outline of a recorded track as a walk with the phone does: the same positions give the same zone.
 * @param lines the line of the track, degrees; its fixes' times stand in the property `@fixes`
 * @returns null when the feature is no track with times: such a line is drawn, not walked
 */
export function ringOfWalk(
  lines: readonly (readonly Position[])[],
  properties: Readonly<Record<string, unknown>>,
): WalkedRing | null {
  const times = properties['@fixes'];
  const line = lines[0];
  if (!Array.isArray(times) || !line || lines.length !== 1 || times.length !== line.length) return null;
  const timeOf = (item: unknown) => (Array.isArray(item) && typeof item[0] === 'number' ? item[0] : null);
  if (!times.every((item) => timeOf(item) !== null)) return null;
  const fixes = line.map((position, i) => ({ position, timeMs: timeOf(times[i]), accuracyM: null }));
  const walked = walkFromTrack(fixes, DEFAULT_WALK_OPTIONS);
  if (!walked.ok) return { ring: null, sigmaM: null, notes: [{ ...walked.issue, severity: 'warning' }] };
  const { ring, vertexSigmaM } = walked.outline;
  return { ring, sigmaM: vertexSigmaM, notes: walked.notes };
}
