import { EDGE_PATTERNS, edgePatternOf, hatchIdOfZone } from '../draft/hatches';
import { PARCEL_LINE } from '../draft/parcelLine';
import type { XY } from '../measure/types';
import type { Derived, DerivedVisit } from '../session/types';
import { formatAreaOfPm } from '../units/format';
import { edgeKey } from '../words/edgeWords';
import { zoneKeys, zoneName } from '../words/zoneWords';
import type { Yard } from '../yard/types';
import { drawLine, drawText, pathOf, pathOfRings } from './drawn';
import { drawMargin } from './mapMargin';
import { leastRatio, roundRatio, scaleWords } from './paper';
import { type Box, type Mm, placeLabels, ringSize, type Wanted } from './placeLabels';
import { textWidthMm } from './textWidth';
import type { Drawn, MapPage, Paper, SheetOptions } from './types';

/** px of a screen pattern to mm of paper: 1/96 in, drawn somewhat finer. */
const MM_PER_PX = (25.4 / 96) * 0.6;
/** room kept clear between the ground and the map's frame, mm. */
const CLEAR_MM = 4;
const GAP_MM = 3;

export interface MapInput {
  readonly yard: Yard;
  readonly derived: Derived;
  readonly visit: DerivedVisit | null;
  readonly options: SheetOptions;
}

/** Where the map and its margin stand on a paper, mm. */
export function mapRooms(paper: Paper) {
  const m = paper.marginMm;
  const [w, h] = [paper.widthMm - 2 * m, paper.heightMm - 2 * m];
  if (paper.landscape) {
    const side = 70;
    return {
      frame: { x: m, y: m, width: w - side - GAP_MM, height: h },
      margin: { x: m + w - side, y: m, width: side, height: h },
    };
  }
  const foot = 76;
  return {
    frame: { x: m, y: m, width: w, height: h - foot - GAP_MM },
    margin: { x: m, y: m + h - foot, width: w, height: foot },
  };
}

/** Bounds of the property, and all zones and marks on the map, in the plane, m: west, south, east, north; null when there is nothing. */
export function groundBounds(yard: Yard, derived: Derived): readonly [number, number, number, number] | null {
  const { plane } = derived.measured;
  const all = [
    ...yard.zones.flatMap((zone) => (zone.isPlaced ? zone.parts.flatMap((rings) => rings.flat()) : [])),
    ...(yard.parcel?.parts.flatMap((rings) => rings.flat()) ?? []),
    ...yard.marks.map((mark) => mark.position),
  ].map((p) => plane.toPlane(p));
  if (all.length === 0) return null;
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of all) {
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  return [west, south, east, north];
}

/** The scale for a paper: what is asked for when it fits, else the largest round one that does. */
export function ratioOn(
  paper: Paper,
  bounds: readonly [number, number, number, number],
  input: MapInput,
): { ratio: number; asAsked: boolean } {
  const { frame } = mapRooms(paper);
  const ground = [bounds[2] - bounds[0], bounds[3] - bounds[1]] as const;
  const room = [frame.width - 2 * CLEAR_MM, frame.height - 2 * CLEAR_MM] as const;
  const asked = input.options.scale;
  if (asked !== 'auto' && asked > 0 && asked >= leastRatio(ground, room))
    return { ratio: asked, asAsked: true };
  return { ratio: roundRatio(ground, room, input.yard.settings.units), asAsked: asked === 'auto' };
}

/**
 * The zone map on a paper, as plain shapes in mm: north up, at a true scale.
 * @returns null when the yard has nothing to draw
 */
export function mapPage(
  input: MapInput,
  paper: Paper,
  title: readonly (readonly [string, string])[],
): MapPage | null {
  const { yard, derived, visit, options } = input;
  const bounds = groundBounds(yard, derived);
  if (!bounds) return null;
  const { ratio, asAsked } = ratioOn(paper, bounds, input);
  const { frame, margin } = mapRooms(paper);
  const k = 1000 / ratio;
  const cx = (bounds[0] + bounds[2]) / 2;
  const cy = (bounds[1] + bounds[3]) / 2;
  const toMm = ([x, y]: XY): Mm => [
    frame.x + frame.width / 2 + (x - cx) * k,
    frame.y + frame.height / 2 - (y - cy) * k,
  ];
  const { plane } = derived.measured;
  const keys = zoneKeys(yard);
  const ground: Drawn[] = [];

  const wanted: Wanted[] = [];
  const labelTexts = new Map<string, string[][]>();
  const size = options.bigType ? 3.6 : 2.9;
  for (const zone of yard.zones) {
    const measured = derived.measured.zones.get(zone.id);
    if (!zone.isPlaced || !measured || measured.netPlaneParts.length === 0) continue;
    const parts = measured.netPlaneParts.map((rings) => rings.map((ring) => ring.map(toMm)));
    ground.push({
      type: 'area',
      d: pathOfRings(parts),
      hatch: hatchIdOfZone(zone),
      strokeMm: 0.35,
      paper: true,
    });
    const key = keys.get(zone.id) ?? '';
    const name = `${key}  ${zoneName(zone)}`;
    const treated = visit?.treated.get(zone.id);
    const area = treated
      ? `treat ${formatAreaOfPm(treated.areaM2, treated.areaSigmaM2, yard.settings.units)}`
      : formatAreaOfPm(measured.netM2, measured.netSigmaM2, yard.settings.units);
    const texts = [[name, area], [name], [key]];
    labelTexts.set(zone.id, texts);
    const forms = texts.map((lines, i) =>
      i === 2
        ? { halfW: Math.max(size * 0.85, textWidthMm(key, size, true) / 2 + 0.8), halfH: size * 0.85 }
        : {
            halfW: Math.max(...lines.map((t, n) => textWidthMm(t, size, n === 0))) / 2 + 0.6,
            halfH: (lines.length * size * 1.25) / 2 + 0.4,
          },
    );
    const left = treated?.planeParts.length ? treated.planeParts : measured.netPlaneParts;
    const shapes = left
      .map((rings) => rings.map((ring) => ring.map(toMm)))
      .sort((a, b) => ringSize(b) - ringSize(a));
    wanted.push({ id: zone.id, parts: shapes.slice(0, 1), forms });
    // further pieces carry the key alone, where it fits
    shapes.slice(1).forEach((shape, n) => {
      labelTexts.set(`${zone.id}/${n}`, [[key]]);
      wanted.push({ id: `${zone.id}/${n}`, parts: [shape], forms: forms.slice(2), optional: true });
    });
  }
  for (const zone of visit?.treated.values() ?? []) {
    for (const strip of zone.strips) {
      const parts = strip.parts.map((rings) => rings.map((ring) => ring.map((p) => toMm(plane.toPlane(p)))));
      ground.push({ type: 'area', d: pathOfRings(parts), hatch: 'no-apply', strokeMm: 0.5, paper: true });
    }
  }
  for (const ring of yard.parcel?.parts.flat() ?? []) {
    const line = ring.map((p) => toMm(plane.toPlane(p)));
    const width = PARCEL_LINE.width * MM_PER_PX;
    const dashMm = PARCEL_LINE.dash.map((n) => n * MM_PER_PX);
    ground.push({ type: 'line', d: pathOf(line, false), widthMm: width + 0.5, dashMm: [], role: 'under' });
    ground.push({ type: 'line', d: pathOf(line, false), widthMm: width, dashMm, role: 'parcel' });
  }
  const edges = visit?.rinseEdges ?? [];
  for (const edge of edges) {
    const pattern = EDGE_PATTERNS[edgePatternOf(edge)];
    const line = edge.planeLine.map(toMm);
    const width = pattern.width * MM_PER_PX;
    ground.push({ type: 'line', d: pathOf(line, false), widthMm: width + 0.7, dashMm: [], role: 'under' });
    const dashMm = pattern.dash.map((n) => n * MM_PER_PX);
    ground.push({ type: 'line', d: pathOf(line, false), widthMm: width, dashMm, role: `edge-${pattern.id}` });
  }
  const taken: Box[] = [];
  for (const mark of yard.marks) {
    const [x, y] = toMm(plane.toPlane(mark.position));
    ground.push({ type: 'mark', kind: mark.kind, x, y });
    taken.push({ x, y, halfW: 2.2, halfH: 2.2 });
  }
  const frameBox = boxOf(frame);
  const small = size * 0.85;
  for (const edge of edges) {
    const text = edgeKey(edge);
    const half = { halfW: textWidthMm(text, small, true) / 2 + 0.7, halfH: small * 0.68 };
    const box = besideLine(edge.planeLine.map(toMm), half, taken, frameBox);
    taken.push(box);
    ground.push({ type: 'badge', shape: 'square', ...box, sizeMm: small, text });
  }
  for (const label of placeLabels(wanted, taken, frameBox)) {
    if (label.leaderTo) {
      ground.push(drawLine([label.leaderTo, [label.x, label.y]], 0.7, 'under'));
      ground.push(drawLine([label.leaderTo, [label.x, label.y]], 0.25, 'leader'));
    }
    const lines = labelTexts.get(label.id)?.[label.form] ?? [];
    if (lines.length === 1 && label.form === (labelTexts.get(label.id)?.length ?? 0) - 1) {
      const { x, y, halfW, halfH } = label;
      ground.push({ type: 'badge', shape: 'round', x, y, halfW, halfH, sizeMm: size, text: lines[0] ?? '' });
      continue;
    }
    lines.forEach((text, i) => {
      const y = label.y - label.halfH + 0.4 + size * (0.98 + i * 1.25);
      ground.push(drawText(label.x, y, size, text, { anchor: 'middle', bold: i === 0, halo: true }));
    });
  }

  const words = scaleWords(ratio, yard.settings.units);
  const rows: [string, string][] = [...title.map(([a, b]): [string, string] => [a, b]), ['Scale', words]];
  if (!asAsked) rows.push(['Note', 'The scale asked for does not fit this paper.']);
  const drawnMargin = drawMargin({ input, paper, room: margin, ratio, rows });
  return {
    type: 'map',
    ratio,
    scaleWords: words,
    frame,
    ground,
    title: `Zone map of ${yard.name}`,
    ...drawnMargin,
  };
}

function boxOf(r: { x: number; y: number; width: number; height: number }): Box {
  return { x: r.x + r.width / 2, y: r.y + r.height / 2, halfW: r.width / 2 - 0.5, halfH: r.height / 2 - 0.5 };
}

/** A free box on a line, as near its middle as may be, else beside it, mm; the middle itself when none is free. */
function besideLine(
  line: readonly Mm[],
  half: { halfW: number; halfH: number },
  taken: readonly Box[],
  frame: Box,
): Box {
  for (const off of [0, half.halfH + 1.6, half.halfH + 3, half.halfH + 5, 9, 13]) {
    for (const f of [0.5, 0.35, 0.65, 0.2, 0.8, 0, 1]) {
      const { at, nx, ny } = along(line, f);
      for (const side of [1, -1]) {
        const reach = off === 0 ? 0 : off + Math.abs(nx) * (half.halfW - half.halfH);
        const box = { x: at[0] + nx * reach * side, y: at[1] + ny * reach * side, ...half };
        const within =
          Math.abs(box.x - frame.x) + box.halfW <= frame.halfW &&
          Math.abs(box.y - frame.y) + box.halfH <= frame.halfH;
        const clear = !taken.some(
          (o) =>
            Math.abs(o.x - box.x) < o.halfW + box.halfW + 0.4 &&
            Math.abs(o.y - box.y) < o.halfH + box.halfH + 0.4,
        );
        if (within && clear) return box;
      }
    }
  }
  const { at } = along(line, 0.5);
  return { x: at[0], y: at[1], ...half };
}

function along(line: readonly Mm[], share: number): { at: Mm; nx: number; ny: number } {
  const lengths = line
    .slice(1)
    .map((p, i) => Math.hypot(p[0] - (line[i] as Mm)[0], p[1] - (line[i] as Mm)[1]));
  let left = share * lengths.reduce((a, b) => a + b, 0);
  for (let i = 0; i < lengths.length; i++) {
    const length = lengths[i] as number;
    if (left <= length || i === lengths.length - 1) {
      const a = line[i] as Mm;
      const b = line[i + 1] as Mm;
      const t = length > 0 ? Math.min(1, left / length) : 0;
      const ux = length > 0 ? (b[0] - a[0]) / length : 1;
      const uy = length > 0 ? (b[1] - a[1]) / length : 0;
      return { at: [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])], nx: uy, ny: -ux };
    }
    left -= length;
  }
  return { at: line[0] ?? [0, 0], nx: 0, ny: 1 };
}
