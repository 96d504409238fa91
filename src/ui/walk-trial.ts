import type { Trial } from '../map/types';
import type { Position } from '../yard/types';
import type { WalkRecorder } from './walk-recorder';

/** The walk as the map draws it: the line walked, the outline so far, corners by number, the last position in its circle. */
export function trialOfWalk(recorder: WalkRecorder): Trial | null {
  const { draft, last, accepted } = recorder;
  if (!draft) return null;
  const result = recorder.result();
  const track = accepted.map(({ position }) => position);
  const lines: Trial['lines'][number][] = [];
  if (track.length > 1) lines.push({ points: track, isClosed: false, style: 'faint' });
  if (result?.ok) lines.push({ points: result.outline.ring.slice(0, -1), isClosed: true, style: 'main' });
  const corners = draft.mode === 'corners' ? cornersOf(recorder) : [];
  const circles: Trial['circles'][number][] = [];
  if (last?.fix.accuracyM) {
    const style = last.fault ? 'warn' : 'main';
    circles.push({ at: last.fix.position, radiusM: last.fix.accuracyM, style });
  }
  return {
    lines,
    points: corners.map((at, i) => ({ at, label: String(i + 1), style: 'main' as const })),
    circles,
  };
}

/** Corners taken, also before there are enough of them for an outline: plain means, for the map alone. */
function cornersOf(recorder: WalkRecorder): Position[] {
  const result = recorder.result();
  if (result?.ok) return result.outline.corners.map(({ position }) => position);
  return (recorder.draft?.stands ?? []).flatMap(({ fromMs, toMs }) => {
    const near = recorder.accepted.filter(
      ({ timeMs }) => timeMs !== null && timeMs >= fromMs && timeMs <= toMs,
    );
    if (near.length === 0) return [];
    const mean = (axis: 0 | 1) => near.reduce((sum, { position }) => sum + position[axis], 0) / near.length;
    return [[mean(0), mean(1)] as const];
  });
}
