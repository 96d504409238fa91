import type { Trial } from '../../map/types';
import { createPlane } from '../../measure/plane';
import { zoomOfPixel } from '../../measure/tilePixel';
import type { Position } from '../../yard/types';
import type { WalkRecorder } from './walk-recorder';

/** The walk as the map draws it: the line walked, the outline so far, corners by number, the last position in its circle. */
export function trialOfWalk(recorder: WalkRecorder): Trial | null {
  const { draft, last, state } = recorder;
  if (!draft) return null;
  const result = recorder.result();
  const track = recorder.line().map(({ position }) => position);
  const lines: Trial['lines'][number][] = [];
  if (track.length > 1) lines.push({ points: track, isClosed: false, style: 'faint' });
  if (result?.ok) lines.push({ points: result.outline.ring.slice(0, -1), isClosed: true, style: 'main' });
  const corners = draft.mode === 'corners' ? cornersOf(recorder) : [];
  const circles: Trial['circles'][number][] = [];
  if (state === 'walking' && last?.fix.accuracyM) {
    const style = last.fault ? 'warn' : 'main';
    circles.push({ at: last.fix.position, radiusM: last.fix.accuracyM, style });
  }
  return {
    lines,
    points: corners.map((at, i) => ({ at, label: String(i + 1), style: 'main' as const })),
    circles,
  };
}

/** What a walk should fill of the map, px: it fits a phone held upright. */
const FILL_PX = 220;
const NEAREST_ZOOM = 21;

/** Middle of a walk, and the zoom at which the whole of it is seen; null before it has any place. */
export function viewOfWalk(
  recorder: WalkRecorder,
): { readonly middle: Position; readonly zoom: number } | null {
  const places = recorder.accepted.map(({ position }) => position);
  const first = places[0];
  if (!first) return null;
  const limit = (axis: 0 | 1, pick: (...values: number[]) => number) =>
    places.reduce((so, place) => pick(so, place[axis]), first[axis]);
  const [west, east] = [limit(0, Math.min), limit(0, Math.max)];
  const [south, north] = [limit(1, Math.min), limit(1, Math.max)];
  const middle: Position = [(west + east) / 2, (south + north) / 2];
  const sizeM = Math.max(...createPlane(middle).toPlane([east, north])) * 2;
  const zoom = zoomOfPixel(middle[1], Math.max(sizeM, 1) / FILL_PX);
  return { middle, zoom: Math.min(NEAREST_ZOOM, Math.floor(2 * zoom) / 2) };
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
