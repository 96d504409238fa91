import { formatAreaOfPm } from '../units/format';
import { formatClock } from '../units/formatPace';
import { countLaps, countWords } from '../words/walkWords';
import { zoneKeys, zoneName } from '../words/zoneWords';
import type { Yard } from '../yard/types';
import { drawLine, drawRect, drawText } from './drawn';
import type { MapInput, PrintedWalk, Room } from './mapFrame';
import { drawLegend, legendOf } from './mapLegend';
import { barStep } from './paper';
import { fitText, textWidthMm } from './textWidth';
import type { Drawn, MapPage, Paper } from './types';

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
    const legendWidth = input.walk ? 66 : 47;
    legend = { x: title.x - legendWidth, y: room.y, width: legendWidth, height: room.height };
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
  margin.push(...drawLegend(legend, entries, of.paper.landscape || input.walk ? 2 : 1));
  margin.push(...(input.walk ? drawWalkKey(key, input.walk, input.yard) : drawKey(key, input)));
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

/** Zones in walking order with their passes and the time they take. */
function drawWalkKey(room: Room, { dose, coat, seconds }: PrintedWalk, yard: Yard): Drawn[] {
  const drawn: Drawn[] = [
    drawText(room.x + INSET, room.y + 4.8, 2.9, 'Zones in order', { bold: true }),
    drawText(room.x + room.width - INSET, room.y + 4.8, 2.3, 'passes, laps, time', { anchor: 'end' }),
  ];
  const names = new Map(yard.zones.map((zone) => [zone.id, zoneName(zone)]));
  const keys = zoneKeys(yard);
  const rows = dose.walks
    .map((walk, i) => ({ walk, number: i + 1, time: seconds[i] ?? null }))
    .filter(({ walk }) => walk.coat === coat);
  const pitch = Math.max(2.9, Math.min(4.4, (room.height - 8) / Math.max(1, rows.length)));
  const fits = Math.floor((room.height - 8) / pitch);
  const size = pitch < 3.6 ? 2.3 : 2.6;
  rows.slice(0, rows.length > fits ? fits - 1 : fits).forEach(({ walk, number, time }, i) => {
    const y = room.y + 9.6 + i * pitch;
    const count = countWords(walk.passes, countLaps(walk, dose.legs));
    const figures = time === null ? count : `${count}, ${formatClock(time)}`;
    // the key, as the map has it, stands behind the name: two numbers side by side would read as one
    const key = ` (${keys.get(walk.zoneId) ?? ''})`;
    const left = room.width - 11 - textWidthMm(figures, size) - textWidthMm(key, size);
    const x = room.x + INSET + 2;
    drawn.push({
      type: 'badge',
      shape: 'disc',
      x,
      y: y - 0.9,
      halfW: 1.5,
      halfH: 1.5,
      sizeMm: 2.1,
      text: String(number),
    });
    drawn.push(drawText(x + 2.6, y, size, `${fitText(names.get(walk.zoneId) ?? '', left, size)}${key}`));
    drawn.push(drawText(room.x + room.width - 2, y, size, figures, { anchor: 'end' }));
  });
  if (rows.length > fits)
    drawn.push(
      drawText(room.x + INSET, room.y + 9.6 + (fits - 1) * pitch, 2.3, 'and more: see the table of passes', {
        light: true,
      }),
    );
  return drawn;
}
