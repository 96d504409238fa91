import { EDGE_PATTERNS, edgePatternOf } from '../draft/hatches';
import { PARCEL_LINE } from '../draft/parcelLine';
import { edgeKey } from '../words/edgeWords';
import { pathOf, pathOfRings } from './drawn';
import { frameBox, groundBounds, type MapInput, MM_PER_PX, mapRooms, ratioOn, toPaper } from './mapFrame';
import { drawMargin } from './mapMargin';
import { scaleWords } from './paper';
import { besideLine } from './placeBeside';
import type { Box } from './placeLabels';
import { textWidthMm } from './textWidth';
import type { Drawn, MapPage, Paper } from './types';
import { drawVesselGround, drawWalkLines, drawWalkSigns } from './walkDrawn';
import { drawZoneLabels, drawZones } from './zonesDrawn';

/**
 * The map of zones on a paper, or that of a walk, as plain shapes in mm: north up, at a true scale.
 * @returns null when the yard has nothing to draw
 */
export function mapPage(
  input: MapInput,
  paper: Paper,
  title: readonly (readonly [string, string])[],
): MapPage | null {
  const { yard, derived, visit, options, walk } = input;
  const bounds = groundBounds(yard, derived);
  if (!bounds) return null;
  const { ratio, asAsked } = ratioOn(paper, bounds, input);
  const { frame, margin } = mapRooms(paper);
  const toMm = toPaper(frame, bounds, ratio);
  const { plane } = derived.measured;
  const size = options.bigType ? 3.6 : 2.9;
  const small = size * 0.85;
  const scale = { toMm, ratio };

  const zones = drawZones(input, toMm, size);
  const ground: Drawn[] = [...zones.drawn];
  if (walk) {
    const within = [...new Set(walk.dose.walks.map(({ zoneId }) => zoneId))].flatMap(
      (id) => visit?.treated.get(id)?.planeParts ?? derived.measured.zones.get(id)?.netPlaneParts ?? [],
    );
    ground.push(...drawVesselGround(walk, within, scale));
  }
  for (const zone of visit?.treated.values() ?? []) {
    for (const strip of zone.strips) {
      const parts = strip.parts.map((rings) => rings.map((ring) => ring.map((p) => toMm(plane.toPlane(p)))));
      ground.push({ type: 'area', d: pathOfRings(parts), hatch: 'no-apply', strokeMm: 0.5, paper: true });
    }
  }
  for (const ring of yard.parcel?.parts.flat() ?? []) {
    const line = ring.map((p) => toMm(plane.toPlane(p)));
    ground.push(...cased(pathOf(line, false), PARCEL_LINE, 0.5, 'parcel'));
  }
  const edges = visit?.rinseEdges ?? [];
  for (const edge of edges) {
    const pattern = EDGE_PATTERNS[edgePatternOf(edge)];
    ground.push(...cased(pathOf(edge.planeLine.map(toMm), false), pattern, 0.7, `edge-${pattern.id}`));
  }
  if (walk) ground.push(...drawWalkLines(walk, scale));
  const taken: Box[] = [];
  for (const mark of yard.marks) {
    const [x, y] = toMm(plane.toPlane(mark.position));
    ground.push({ type: 'mark', kind: mark.kind, x, y });
    taken.push({ x, y, halfW: 2.2, halfH: 2.2 });
  }
  const within = frameBox(frame);
  const signs = walk
    ? drawWalkSigns(walk, scale, [...taken, ...outsideOf(within)], small, yard.settings.units)
    : null;
  taken.push(...(signs?.boxes ?? []));
  const ticks = signs?.ticks ?? [];
  for (const edge of edges) {
    const text = edgeKey(edge);
    const half = { halfW: textWidthMm(text, small, true) / 2 + 0.7, halfH: small * 0.68 };
    const box = besideLine(edge.planeLine.map(toMm), half, [...taken, ...ticks], within);
    taken.push(box);
    ground.push({ type: 'badge', shape: 'square', ...box, sizeMm: small, text });
  }
  const labels = drawZoneLabels(zones, [...taken, ...ticks], within, size);
  ground.push(...(signs?.drawn ?? []), ...labels.drawn);
  ground.push(...(signs?.rest([...taken, ...labels.boxes, ...outsideOf(within)]) ?? []));

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
    title: walk ? `Passes of ${walk.name} on ${yard.name}` : `Zone map of ${yard.name}`,
    ...drawnMargin,
  };
}

/** A line with a casing of paper beneath. @param pattern widths in px of the screen */
function cased(
  d: string,
  pattern: { readonly width: number; readonly dash: readonly number[] },
  casingMm: number,
  role: string,
): Drawn[] {
  const widthMm = pattern.width * MM_PER_PX;
  const dashMm = pattern.dash.map((n) => n * MM_PER_PX);
  return [
    { type: 'line', d, widthMm: widthMm + casingMm, dashMm: [], role: 'under' },
    { type: 'line', d, widthMm, dashMm, role },
  ];
}

/** All round the frame is taken: four boxes that keep tags inside it. */
function outsideOf({ x, y, halfW, halfH }: Box): Box[] {
  const far = 500;
  return [
    { x: x - halfW - far, y, halfW: far, halfH: far * 2 },
    { x: x + halfW + far, y, halfW: far, halfH: far * 2 },
    { x, y: y - halfH - far, halfW: far * 2, halfH: far },
    { x, y: y + halfH + far, halfW: far * 2, halfH: far },
  ];
}
