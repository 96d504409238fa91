import {
  EDGE_PATTERNS,
  type EdgePatternId,
  edgePatternOf,
  type HatchId,
  hatchIdOfZone,
} from '../draft/hatches';
import { PARCEL_LINE } from '../draft/parcelLine';
import { formatAreaOfPm } from '../units/format';
import { MARK_WORDS, MATERIAL_WORDS, zoneKeys, zoneName, zoneWords } from '../words/zoneWords';
import type { MarkKind } from '../yard/types';
import { drawLine, drawRect, drawText } from './drawn';
import type { MapInput } from './mapPage';
import { barStep } from './paper';
import { fitText, textWidthMm } from './textWidth';
import type { Drawn, MapPage, Paper } from './types';

interface Room {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
const EDGE_WORDS: Record<EdgePatternId, string> = {
  rinse: 'Rinse toward turf',
  sweep: 'Sweep, then rinse',
  'near-drain': 'Near drain, water',
};
const INSET = 2;

/** Title block, scale bar, north arrow, legend and key beside or under the map. Sizes in mm. */
export function drawMargin(of: {
  readonly input: MapInput;
  readonly paper: Paper;
  readonly room: Room;
  readonly ratio: number;
  readonly rows: readonly (readonly [string, string])[];
}): Pick<MapPage, 'bar' | 'margin'> {
  const { input, room, ratio, rows } = of;
  const margin: Drawn[] = [drawRect(room.x, room.y, room.width, room.height, 0.5)];
  const titleHeight = 9 + rows.length * 4.4;
  const scaleHeight = 19;
  const entries = legendOf(input);
  let title: Room;
  let scale: Room;
  let legend: Room;
  let key: Room;
  if (of.paper.landscape) {
    const bottom = room.y + room.height;
    const lines = Math.ceil(entries.length / 2);
    const legendHeight = 7 + lines * 4.6;
    title = { ...room, y: bottom - titleHeight, height: titleHeight };
    scale = { ...room, y: title.y - scaleHeight, height: scaleHeight };
    legend = { ...room, y: scale.y - legendHeight, height: legendHeight };
    key = { ...room, height: legend.y - room.y };
    for (const part of [title, scale, legend]) {
      margin.push(
        drawLine(
          [
            [room.x, part.y],
            [room.x + room.width, part.y],
          ],
          0.3,
        ),
      );
    }
  } else {
    const right = room.x + room.width;
    title = { x: right - 68, y: room.y + scaleHeight, width: 68, height: room.height - scaleHeight };
    scale = { ...title, y: room.y, height: scaleHeight };
    legend = { x: title.x - 47, y: room.y, width: 47, height: room.height };
    key = { x: room.x, y: room.y, width: legend.x - room.x, height: room.height };
    for (const x of [title.x, legend.x]) {
      margin.push(
        drawLine(
          [
            [x, room.y],
            [x, room.y + room.height],
          ],
          0.3,
        ),
      );
    }
    margin.push(
      drawLine(
        [
          [title.x, title.y],
          [right, title.y],
        ],
        0.3,
      ),
    );
  }
  margin.push(...drawTitle(title, rows));
  const bar = drawScale(scale, ratio, input, margin);
  margin.push(...drawLegend(legend, entries, of.paper.landscape ? 2 : 1));
  margin.push(...drawKey(key, input));
  return { bar, margin };
}

function drawTitle(room: Room, rows: readonly (readonly [string, string])[]): Drawn[] {
  const drawn: Drawn[] = [];
  const [first, ...rest] = rows;
  const width = room.width - 2 * INSET;
  if (first) {
    const size = Math.max(3, Math.min(4.4, (4.4 * width) / textWidthMm(first[1], 4.4, true)));
    const text = fitText(first[1], width + 0.01, size, true);
    drawn.push(drawText(room.x + INSET, room.y + 6.6, size, text, { bold: true }));
  }
  rest.forEach(([label, value], i) => {
    const y = room.y + 12.4 + i * 4.4;
    drawn.push(drawText(room.x + INSET, y, 2.5, label, { light: true }));
    drawn.push(drawText(room.x + INSET + 14, y, 2.8, fitText(value, width - 14, 2.8), {}));
  });
  return drawn;
}

function drawScale(room: Room, ratio: number, input: MapInput, into: Drawn[]): MapPage['bar'] {
  const { units } = input.yard.settings;
  const { step, stepM } = barStep(ratio, room.width - 24, units);
  const stepMm = (stepM * 1000) / ratio;
  const x = room.x + INSET + 3;
  const y = room.y + 9;
  for (let i = 0; i < 4; i++) {
    into.push({
      type: 'area',
      d: `M${x + i * stepMm} ${y}h${stepMm}v1.8h${-stepMm}Z`,
      hatch: null,
      strokeMm: i % 2 === 0 ? -1 : 0.25,
      paper: false,
    });
  }
  const unit = units === 'us' ? 'ft' : 'm';
  for (let i = 0; i <= 4; i++) {
    const at = x + i * stepMm;
    into.push(
      drawLine(
        [
          [at, y - 1.2],
          [at, y + 1.8],
        ],
        0.25,
      ),
    );
    const value = Number((i * step).toPrecision(6)).toLocaleString('en-US');
    const words = i === 4 ? `${value} ${unit}` : value;
    if (i % 2 === 0) into.push(drawText(at, y - 1.8, 2.6, words, { anchor: 'middle' }));
  }
  into.push(
    drawText(room.x + INSET, y + 6.6, 2.3, 'True when printed at 100 %: measure the bar.', { light: true }),
  );
  const nx = room.x + room.width - 7;
  const ny = room.y + 13.5;
  into.push(
    drawLine(
      [
        [nx, ny],
        [nx, ny - 9],
      ],
      0.35,
    ),
  );
  into.push({
    type: 'area',
    d: `M${nx} ${ny - 9.5}L${nx - 1.7} ${ny - 4.5}L${nx} ${ny - 5.6}Z`,
    hatch: null,
    strokeMm: -1,
    paper: false,
  });
  into.push({
    type: 'area',
    d: `M${nx} ${ny - 9.5}L${nx + 1.7} ${ny - 4.5}L${nx} ${ny - 5.6}Z`,
    hatch: null,
    strokeMm: 0.2,
    paper: false,
  });
  into.push(drawText(nx, ny + 3, 2.8, 'N', { anchor: 'middle', bold: true }));
  return { x, y, lengthMm: 4 * stepMm, lengthM: 4 * stepM };
}

type Entry =
  | { readonly hatch: HatchId; readonly words: string }
  | { readonly edge: EdgePatternId; readonly words: string }
  | { readonly mark: MarkKind; readonly words: string }
  | { readonly parcel: true; readonly words: string };

/** What is on the map, each sign once. */
function legendOf({ yard, visit }: MapInput): Entry[] {
  const entries: Entry[] = [];
  const seen = new Set<string>();
  const add = (id: string, entry: Entry) => {
    if (!seen.has(id)) entries.push(entry);
    seen.add(id);
  };
  for (const zone of yard.zones) {
    if (!zone.isPlaced) continue;
    const hatch = hatchIdOfZone(zone);
    const words = zone.material ? MATERIAL_WORDS[zone.material] : zoneWords(zone);
    add(hatch, { hatch, words });
  }
  if ([...(visit?.treated.values() ?? [])].some((zone) => zone.strips.length > 0)) {
    add('no-apply', { hatch: 'no-apply', words: 'No-apply strip' });
  }
  for (const edge of visit?.rinseEdges ?? []) {
    const id = edgePatternOf(edge);
    add(`edge-${id}`, { edge: id, words: EDGE_WORDS[id] });
  }
  for (const mark of yard.marks) add(`mark-${mark.kind}`, { mark: mark.kind, words: MARK_WORDS[mark.kind] });
  if (yard.parcel) add('parcel', { parcel: true, words: 'Property line' });
  return entries;
}

function drawLegend(room: Room, entries: readonly Entry[], columns: number): Drawn[] {
  const drawn: Drawn[] = [drawText(room.x + INSET, room.y + 4.8, 2.9, 'On this map', { bold: true })];
  const lines = Math.ceil(entries.length / columns);
  const pitch = Math.min(4.8, (room.height - 7) / Math.max(1, lines));
  const width = (room.width - INSET) / columns;
  entries.forEach((entry, i) => {
    const x = room.x + INSET + Math.floor(i / lines) * width;
    const y = room.y + 6.6 + (i % lines) * pitch;
    const h = pitch - 1;
    if ('hatch' in entry) drawn.push(drawRect(x, y, 8, h, 0.25, entry.hatch));
    else if ('mark' in entry) drawn.push({ type: 'mark', kind: entry.mark, x: x + 4, y: y + h / 2 });
    else {
      const isParcel = 'parcel' in entry;
      const pattern = isParcel ? PARCEL_LINE : EDGE_PATTERNS[entry.edge];
      const k = (25.4 / 96) * 0.6;
      const dash = pattern.dash.map((n) => n * k);
      const ends = [
        [x, y + h / 2],
        [x + 8, y + h / 2],
      ] as const;
      drawn.push(drawLine(ends, pattern.width * k, isParcel ? 'parcel' : `edge-${entry.edge}`, dash));
    }
    drawn.push(drawText(x + 9.6, y + h / 2 + 0.9, 2.5, fitText(entry.words, width - 10, 2.5)));
  });
  return drawn;
}

function drawKey(room: Room, { yard, derived }: MapInput): Drawn[] {
  const drawn: Drawn[] = [drawText(room.x + INSET, room.y + 4.8, 2.9, 'Zones, net area', { bold: true })];
  const keys = zoneKeys(yard);
  // in a narrow room one close column keeps the names whole
  const least = room.width < 75 ? 2.9 : 4;
  const columns = yard.zones.length * least > room.height - 8 ? 2 : 1;
  const pitch = columns === 1 ? Math.min(4, (room.height - 8) / Math.max(1, yard.zones.length)) : 3.2;
  const room1 = Math.floor((room.height - 8) / pitch);
  const perColumn = Math.min(room1, Math.ceil(yard.zones.length / columns));
  const width = (room.width - INSET) / columns;
  const most = perColumn * columns;
  const rows = yard.zones.length > most ? yard.zones.slice(0, most - 1) : yard.zones;
  rows.forEach((zone, i) => {
    const x = room.x + INSET + Math.floor(i / perColumn) * width;
    const y = room.y + 9.4 + (i % perColumn) * pitch;
    const measured = derived.measured.zones.get(zone.id);
    const area = measured ? formatAreaOfPm(measured.netM2, measured.netSigmaM2, yard.settings.units) : '—';
    const size = pitch < 3.6 ? 2.3 : 2.6;
    const areaWidth = textWidthMm(area, size);
    drawn.push(drawText(x + 3.6, y, size, keys.get(zone.id) ?? '', { anchor: 'end', bold: true }));
    drawn.push(drawText(x + 5, y, size, fitText(zoneName(zone), width - 8 - areaWidth, size)));
    drawn.push(drawText(x + width - 2, y, size, area, { anchor: 'end' }));
  });
  if (rows.length < yard.zones.length) {
    const words = `and ${yard.zones.length - rows.length} more: see the table of zones`;
    const at = room.x + INSET + (columns - 1) * width + 5;
    drawn.push(drawText(at, room.y + 9.4 + (perColumn - 1) * pitch, 2.3, words, { light: true }));
  }
  return drawn;
}
