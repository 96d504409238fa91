import { type Box, boxesNear } from '../measure/planeBox';
import type { LocalPlane, PlaneRings, XY } from '../measure/types';
import { stripWidths } from '../yard/stripWidths';
import type { Mark, Settings, Yard, Zone } from '../yard/types';
import { outlineOf } from './outline';
import { areNear, type Segment } from './segments';
import type { NoApplyStrip } from './types';

/** What must be spared, with the width of its no-apply strip. */
export interface StripSource {
  readonly sourceId: string;
  readonly sourceKind: NoApplyStrip['sourceKind'];
  /** its name, or its kind in words when it has none. */
  readonly label: string;
  /** metres; 0 asks for no strip. */
  readonly widthM: number;
  /** a point (drain, well) or a shape (water), in the yard's plane. */
  readonly shape: { readonly point: XY } | { readonly parts: readonly PlaneRings[] };
}

/** A rinse edge this near to a drain, well or water is warned of whatever the strips (common practice, no source). */
export const LEAST_WARN_M = 3;

const WIDTHS: Readonly<Record<NoApplyStrip['sourceKind'], (s: Settings['strips']) => number>> = {
  'storm-drain': (s) => s.stormDrainM,
  well: (s) => s.wellM,
  water: (s) => s.waterM,
};

const WORDS: Readonly<Record<NoApplyStrip['sourceKind'], string>> = {
  'storm-drain': 'the storm drain',
  well: 'the well',
  water: 'the water',
};

const made = new WeakMap<Mark | Zone, { readonly plane: LocalPlane; readonly source: StripSource }>();

/**
 * Drains, wells and water zones of a yard, in document order; those whose strip has no width too, as
 * rinse water must not run to them either. Water counts as it was drawn (gross): only structures take
 * ground from it, and its bank is spared beneath them as well.
 * The widths are the user's: local code decides.
 * @returns the same object for the same mark or zone while the plane and its width stay
 */
export function stripSources(yard: Yard, plane: LocalPlane): StripSource[] {
  const sources: StripSource[] = [];
  const widths = stripWidths(yard);
  const add = (
    from: Mark | Zone,
    kind: StripSource['sourceKind'],
    shapeOf: () => StripSource['shape'],
  ): void => {
    const widthM = Math.max(0, WIDTHS[kind](widths) || 0);
    const kept = made.get(from);
    if (kept?.plane === plane && kept.source.widthM === widthM) {
      sources.push(kept.source);
      return;
    }
    const name = from.name.trim();
    const label = name === '' ? WORDS[kind] : `“${name}”`;
    const source: StripSource = { sourceId: from.id, sourceKind: kind, label, widthM, shape: shapeOf() };
    made.set(from, { plane, source });
    sources.push(source);
  };
  for (const mark of yard.marks) {
    if (mark.kind !== 'storm-drain' && mark.kind !== 'well') continue;
    add(mark, mark.kind, () => ({ point: plane.toPlane(mark.position) }));
  }
  for (const zone of yard.zones) {
    if (zone.kind !== 'water' || !zone.isPlaced) continue;
    add(zone, 'water', () => ({
      parts: zone.parts.map((rings) => rings.map((ring) => ring.map((p) => plane.toPlane(p)))),
    }));
  }
  return sources;
}

/**
 * The sources whose strips may reach shapes in the plane: those with a strip whose box comes within its
 * width of the shapes' box. What is left out reaches none of it.
 * @param parts such as the net shape of a zone
 */
export function sourcesNear(sources: readonly StripSource[], parts: readonly PlaneRings[]): StripSource[] {
  return within(sources, parts, ({ widthM }) => widthM).filter(({ widthM }) => widthM > 0);
}

/** How near to a source a rinse edge is warned of, m: LEAST_WARN_M, or its strip where that is wider. */
export function warnDistanceM({ widthM }: StripSource): number {
  return Math.max(widthM, LEAST_WARN_M);
}

/**
 * The sources that may lie within their warning distance of shapes in the plane, by their boxes.
 * @param leastM those within this distance too, m
 */
export function sourcesToWarn(
  sources: readonly StripSource[],
  parts: readonly PlaneRings[],
  leastM = 0,
): StripSource[] {
  return within(sources, parts, (source) => Math.max(leastM, warnDistanceM(source)));
}

/** The sides of a source whose boxes come within `reachM` of the segment's box; a point is a side of no length. */
export function sidesOfSource({ shape }: StripSource, segment: Segment, reachM: number): readonly Segment[] {
  if ('parts' in shape) return outlineOf(shape.parts).sidesNear(segment, reachM);
  const side: Segment = [shape.point, shape.point];
  return areNear(segment, side, reachM) ? [side] : [];
}

function within(
  sources: readonly StripSource[],
  parts: readonly PlaneRings[],
  reachOf: (source: StripSource) => number,
): StripSource[] {
  const { box } = outlineOf(parts);
  return sources.filter((source) => boxesNear(boxOfShape(source.shape), box, reachOf(source)));
}

function boxOfShape(shape: StripSource['shape']): Box {
  if ('parts' in shape) return outlineOf(shape.parts).box;
  const [x, y] = shape.point;
  return { minX: x, minY: y, maxX: x, maxY: y };
}
