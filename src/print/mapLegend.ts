import {
  EDGE_PATTERNS,
  type EdgePatternId,
  edgePatternOf,
  type HatchId,
  hatchIdOfZone,
} from '../draft/hatches';
import { PARCEL_LINE } from '../draft/parcelLine';
import { VESSEL_HATCH_IDS, type VesselHatchId } from '../draft/vesselHatches';
import {
  sampleOfLine,
  WALK_LINE_IDS,
  WALK_LINES,
  type WalkLineId,
  type WalkSymbolId,
  walkLineOf,
} from '../draft/walkLines';
import { DOWNHILL_SIGN_WORDS } from '../words/edgeWords';
import { vesselNoun } from '../words/markWords';
import { WALK_KEY_WORDS } from '../words/passWords';
import { MARK_WORDS, MATERIAL_WORDS, zoneWords } from '../words/zoneWords';
import type { MarkKind } from '../yard/types';
import { drawLine, drawRect, drawText } from './drawn';
import { type MapInput, MM_PER_PX, type PrintedWalk, type Room } from './mapFrame';
import { fitText } from './textWidth';
import type { Drawn } from './types';

const EDGE_WORDS: Record<EdgePatternId, string> = {
  rinse: 'Rinse toward turf',
  sweep: 'Sweep, then rinse',
  'near-drain': 'Near drain, water',
};
const INSET = 2;
/** Width and height of a sample, and of the symbols of marks, mm. */
const SAMPLE_MM = 8;
const SYMBOL_MM = 4.4;

type Badge = Extract<Drawn, { type: 'badge' }>['shape'];
/** A sign and what it stands for. */
export type Entry = { readonly words: string } & (
  | { readonly hatch: HatchId | VesselHatchId }
  | { readonly edge: EdgePatternId }
  | { readonly walk: WalkLineId }
  | { readonly mark: MarkKind }
  | { readonly sign: WalkSymbolId }
  | { readonly badge: Badge; readonly text: string }
  | { readonly parcel: true }
);

/** What is on the map, each sign once. On the map of a walk zones and the property are told by their labels alone. */
export function legendOf({ yard, visit, walk }: MapInput): Entry[] {
  const entries = new Map<string, Entry>();
  const add = (id: string, entry: Entry) => {
    if (!entries.has(id)) entries.set(id, entry);
  };
  if (walk) for (const entry of walkLegend(walk)) entries.set(JSON.stringify(entry), entry);
  for (const zone of walk ? [] : yard.zones) {
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
  if (visit?.rinseEdges.some(({ downhill }) => downhill))
    add('downhill', { badge: 'square', text: 'E1▼', words: DOWNHILL_SIGN_WORDS });
  for (const mark of yard.marks) add(`mark-${mark.kind}`, { mark: mark.kind, words: MARK_WORDS[mark.kind] });
  if (yard.parcel && !walk) add('parcel', { parcel: true, words: 'Property line' });
  return [...entries.values()];
}

function walkLegend({ dose, coat, way, hose }: PrintedWalk): Entry[] {
  const legs = dose.legs.filter((leg) => leg.coat === coat);
  const lines = WALK_LINE_IDS.filter((id) =>
    id === 'hose' ? hose.some(({ lengthM }) => lengthM > 0) : legs.some((leg) => walkLineOf(leg) === id),
  ).map((walk): Entry => ({ walk, words: WALK_KEY_WORDS[walk] }));
  const { vessels } = dose;
  const marks = dose.marks.filter(({ legIndex }) => dose.legs[legIndex]?.coat === coat);
  // each hatch once, with the numbers of all that have it
  const grounds = VESSEL_HATCH_IDS.flatMap((hatch, i): Entry | [] => {
    const own = vessels.filter((_, n) => n % VESSEL_HATCH_IDS.length === i);
    const [first] = own;
    if (!first || vessels.length < 2) return [];
    const noun = vesselNoun(first.kind, way).replace(/^./, (letter) => letter.toUpperCase());
    return { hatch, words: `${noun} ${own.map(({ number }) => number).join(', ')}` };
  });
  return [
    { sign: 'start', words: 'Start' },
    { sign: 'end', words: 'End' },
    { badge: 'disc', text: '1', words: 'Zones in order' },
    ...lines,
    ...grounds,
    ...(marks.some(({ left }) => left > 0)
      ? [{ badge: 'tag', text: '1 ½', words: 'One half left' } as const]
      : []),
    ...(marks.some(({ left }) => left === 0)
      ? [{ badge: 'out', text: '1 out', words: 'Runs out' } as const]
      : []),
  ];
}

/** The legend in its room. */
export function drawLegend(room: Room, entries: readonly Entry[], columns: number): Drawn[] {
  const drawn: Drawn[] = [drawText(room.x + INSET, room.y + 4.8, 2.9, 'On this map', { bold: true })];
  const lines = Math.ceil(entries.length / columns);
  const pitch = Math.min(4.8, (room.height - 7) / Math.max(1, lines));
  const width = (room.width - INSET) / columns;
  const size = columns > 1 ? 2.35 : 2.5;
  entries.forEach((entry, i) => {
    const x = room.x + INSET + Math.floor(i / lines) * width;
    const y = room.y + 6.6 + (i % lines) * pitch;
    drawn.push(sampleOf(entry, x, y, pitch - 1));
    const words = fitText(entry.words, width - SAMPLE_MM - 2, size);
    drawn.push(drawText(x + SAMPLE_MM + 1.6, y + (pitch - 1) / 2 + 0.9, size, words));
  });
  return drawn;
}

function sampleOf(entry: Entry, x: number, y: number, height: number): Drawn {
  const middle = { x: x + SAMPLE_MM / 2, y: y + height / 2 };
  if ('hatch' in entry) return drawRect(x, y, SAMPLE_MM, height, 0.25, entry.hatch);
  if ('mark' in entry) return { type: 'mark', kind: entry.mark, ...middle, scale: symbolScale(height) };
  if ('sign' in entry) return { type: 'sign', sign: entry.sign, ...middle, scale: symbolScale(height) };
  if ('badge' in entry) {
    const halfH = Math.min(1.7, height / 2);
    const halfW = entry.badge === 'disc' ? halfH : SAMPLE_MM / 2;
    return {
      type: 'badge',
      shape: entry.badge,
      ...middle,
      halfW,
      halfH,
      sizeMm: Math.min(2.3, height * 0.72),
      text: entry.text,
    };
  }
  const pattern =
    'parcel' in entry ? PARCEL_LINE : 'edge' in entry ? EDGE_PATTERNS[entry.edge] : WALK_LINES[entry.walk];
  const role = 'parcel' in entry ? 'parcel' : 'edge' in entry ? `edge-${entry.edge}` : `walk-${entry.walk}`;
  const dash = pattern.dash.map((n) => n * MM_PER_PX);
  const ends = [
    [x, middle.y],
    [x + SAMPLE_MM, middle.y],
  ] as const;
  const line = drawLine(ends, pattern.width * MM_PER_PX, role, dash);
  if (line.type !== 'line' || !('walk' in entry)) return line;
  return {
    ...line,
    d: sampleOfLine(entry.walk, x, middle.y, SAMPLE_MM),
    isRound: entry.walk === 'carry',
  };
}

/** Symbols shrink with their row, so that none lies on the next. */
const symbolScale = (height: number) => Math.min(1, (height + 0.7) / SYMBOL_MM);
