import type { RunOutMark } from '../cover/passTypes';
import { vesselGround } from '../cover/vesselGround';
import { arrowSigns, type MarkSign, markSigns, walkEnds, zoneSigns } from '../cover/walkSigns';
import { freePlace, placeTags, type Box as TagBox, type WantedTag } from '../draft/placeTags';
import { vesselHatchOf } from '../draft/vesselHatches';
import { WALK_LINE_IDS, WALK_LINES, walkLineOf } from '../draft/walkLines';
import type { PlaneRings, XY } from '../measure/types';
import { formatLength } from '../units/format';
import { markSign } from '../words/markWords';
import type { UnitSystem } from '../yard/types';
import { drawLine, drawText, pathOf, pathOfRings } from './drawn';
import { MM_PER_PX, type PrintedWalk } from './mapFrame';
import type { Box, Mm } from './placeLabels';
import { textWidthMm } from './textWidth';
import type { Drawn } from './types';

/** Nearest that two arrows may come, and their half size, mm. */
const ARROWS_APART_MM = 8;
const ARROW_MM = 0.85;
/** Least half length of a mark's line, mm. */
const TICK_MM = 1.8;
/** Passes nearer to each other than this carry no quarters, mm. */
const CLOSE_MM = 1.4;
const TICK_BOX_MM = 0.6;
const LINE_PX_MM = MM_PER_PX * 1.15;
/** mm of paper to a px of the distances at which tags look for room. */
const TAG_UNIT = 0.22;

/** Plane to paper, and its scale. */
export interface PaperScale {
  readonly toMm: (at: XY) => Mm;
  readonly ratio: number;
}

/** The ground that each vessel does, in its light hatch. @param within ground that the drawing keeps to */
export function drawVesselGround(
  { dose, coat, swathM }: PrintedWalk,
  within: readonly PlaneRings[],
  { toMm }: PaperScale,
): Drawn[] {
  return vesselGround(dose, coat, swathM, within).map(({ vessel, parts }) => ({
    type: 'area',
    d: pathOfRings(parts.map((rings) => rings.map((ring) => ring.map(toMm)))),
    hatch: vesselHatchOf(vessel),
    strokeMm: 0.12,
    paper: true,
  }));
}

/** Passes, laps, turns and ways of the page's coat, arrows on them, and as far as the hose reaches. */
export function drawWalkLines({ dose, coat, hose }: PrintedWalk, { toMm, ratio }: PaperScale): Drawn[] {
  const drawn: Drawn[] = [];
  const legs = dose.legs.filter((leg) => leg.coat === coat);
  for (const { at, lengthM } of hose) {
    if (!(lengthM > 0)) continue;
    const [x, y] = toMm(at);
    const r = (lengthM * 1000) / ratio;
    const d = `M${x - r} ${y}A${r} ${r} 0 1 0 ${x + r} ${y}A${r} ${r} 0 1 0 ${x - r} ${y}Z`;
    drawn.push(...ruled(d, 'hose'));
  }
  for (const id of WALK_LINE_IDS) {
    const own = legs.filter((leg) => walkLineOf(leg) === id);
    if (own.length > 0)
      drawn.push(...ruled(own.map(({ line }) => pathOf(line.map(toMm), false)).join(''), id));
  }
  const mPerMm = ratio / 1000;
  for (const { at, way } of arrowSigns(legs, ARROWS_APART_MM * mPerMm)) {
    const [x, y] = toMm(at);
    const [u, v] = [way[0] * ARROW_MM, -way[1] * ARROW_MM];
    const head: Mm[] = [
      [x + u, y + v],
      [x - u - 0.62 * v, y - v + 0.62 * u],
      [x - u + 0.62 * v, y - v - 0.62 * u],
    ];
    drawn.push({ type: 'area', d: pathOf(head, true), hatch: null, strokeMm: -1, paper: false });
  }
  return drawn;
}

function ruled(d: string, id: (typeof WALK_LINE_IDS)[number]): Drawn[] {
  const { width, dash } = WALK_LINES[id];
  const widthMm = width * LINE_PX_MM;
  const dashMm = dash.map((n) => n * LINE_PX_MM);
  return [
    { type: 'line', d, widthMm: widthMm + 0.35, dashMm: [], role: 'under' },
    { type: 'line', d, widthMm, dashMm, role: `walk-${id}`, isRound: id === 'carry' },
  ];
}

/** Signs of a walk with their texts. `rest` stands where others left room. */
export interface WalkSigns {
  readonly drawn: readonly Drawn[];
  readonly boxes: readonly Box[];
  /** along the lines of marks: texts of the ground keep clear of them. */
  readonly ticks: readonly Box[];
  /** draws the levels of quarters and the length of the hose, clear of all that is taken by then. */
  rest(taken: readonly Box[]): readonly Drawn[];
}

/** Start, end, the order of zones and where vessels run out. @param taken boxes kept clear of @param size of the texts, mm */
export function drawWalkSigns(
  { dose, coat, swathM, hose }: PrintedWalk,
  { toMm, ratio }: PaperScale,
  taken: readonly Box[],
  size: number,
  units: UnitSystem,
): WalkSigns {
  const apartMm = (swathM * 1000) / ratio;
  const half = Math.max(TICK_MM, apartMm / 2);
  const signs = markSigns(dose).filter((sign) => sign.coat === coat);
  const shown = signs.filter(({ mark }) => mark.left === 0 || apartMm >= CLOSE_MM);
  const drawn: Drawn[] = shown.flatMap((sign) => drawTick(sign, toMm, half));
  const spot = (at: XY) => {
    const [x, y] = toMm(at);
    return { x, y };
  };
  const tagOf = (sign: MarkSign, isOptional: boolean): WantedTag => ({
    id: `mark ${dose.marks.indexOf(sign.mark)}`,
    at: spot(sign.mark.at),
    aside: { x: sign.across[0], y: -sign.across[1] },
    width: textWidthMm(markSign(sign.mark), size, true) + 1.4,
    height: size * 1.35,
    reach: half,
    isOptional,
  });
  const firm: WantedTag[] = [];
  const ends = walkEnds(dose.legs.filter((leg) => leg.coat === coat));
  const end = { aside: { x: 1, y: 0 }, width: 4.8, height: 4.8, reach: -2.4, isOptional: false };
  if (ends) firm.push({ ...end, id: 'start', at: spot(ends.start) });
  firm.push(...shown.filter(({ mark }) => mark.left === 0).map((sign) => tagOf(sign, false)));
  if (ends) firm.push({ ...end, id: 'end', at: spot(ends.end) });
  const ticks = shown.flatMap((sign) => tickBoxes(sign, toMm, half));
  const zones = zoneSigns(dose)
    .filter((sign) => sign.coat === coat)
    .map(
      ({ number, entry }): WantedTag => ({
        id: `zone ${number}`,
        at: spot(entry),
        aside: { x: 0, y: -1 },
        width: size * 1.7,
        height: size * 1.7,
        reach: -0.6,
        isOptional: false,
      }),
    );
  const draw = (wanted: readonly WantedTag[], used: readonly Box[]) => {
    const placed = placeTags(wanted, used.map(toTagBox), TAG_UNIT);
    const boxes = placed.map(({ x, y, width, height }) => ({ x, y, halfW: width / 2, halfH: height / 2 }));
    const tags = placed.flatMap((tag, i): Drawn[] => {
      const want = wanted.find(({ id }) => id === tag.id);
      const box = boxes[i] as Box;
      const leader: Drawn[] =
        want && tag.isFar
          ? [0.7, 0.2].map((width, n) =>
              drawLine(
                [
                  [want.at.x, want.at.y],
                  [tag.x, tag.y],
                ],
                width,
                n === 0 ? 'under' : 'leader',
              ),
            )
          : [];
      return [...leader, badgeOf(tag.id, box, size, dose.marks)];
    });
    return { tags, boxes };
  };
  const first = draw(firm, taken);
  const order = draw(zones, [...taken, ...first.boxes, ...ticks]);
  return {
    drawn: [...drawn, ...first.tags, ...order.tags],
    boxes: [...first.boxes, ...order.boxes],
    ticks,
    rest(used) {
      const wanted = [0.5, 0.25, 0.75].flatMap((level) =>
        shown.filter(({ mark }) => mark.left === level).map((sign) => tagOf(sign, true)),
      );
      const quarters = draw(wanted, used);
      const taken = [...used, ...quarters.boxes];
      return [
        ...quarters.tags,
        ...hose.flatMap(({ at, lengthM }) =>
          labelHose(toMm(at), (lengthM * 1000) / ratio, `hose ${formatLength(lengthM, units)}`, size, taken),
        ),
      ];
    },
  };
}

/** How long the hose is, on its circle: the first place of two dozen that is free, none where all is taken. */
function labelHose([x, y]: Mm, radius: number, text: string, size: number, taken: readonly Box[]): Drawn[] {
  if (!(radius > 0)) return [];
  const places = Array.from({ length: 24 }, (_, i) => {
    const turn = (2 * Math.PI * i) / 24 - Math.PI / 4;
    return { x: x + radius * Math.cos(turn), y: y + radius * Math.sin(turn) };
  });
  const room = { width: textWidthMm(text, size, true) + 1, height: size * 1.3 };
  const box = freePlace(places, room, taken.map(toTagBox));
  if (!box) return [];
  return [drawText(box.x, box.y + size * 0.36, size, text, { anchor: 'middle', bold: true, halo: true })];
}

function badgeOf(id: string, box: Box, sizeMm: number, marks: readonly RunOutMark[]): Drawn {
  if (id === 'start' || id === 'end') return { type: 'sign', sign: id, x: box.x, y: box.y };
  const [sort, number = ''] = id.split(' ');
  if (sort === 'zone') return { type: 'badge', shape: 'disc', ...box, sizeMm, text: number };
  const mark = marks[Number(number)] as RunOutMark;
  return {
    type: 'badge',
    shape: mark.left === 0 ? 'out' : 'tag',
    ...box,
    sizeMm,
    text: markSign(mark),
  };
}

/** A mark's line as a row of small boxes: one box of a slanting line would take the ground beside it too. */
function tickBoxes({ mark, across }: MarkSign, toMm: (at: XY) => Mm, half: number): Box[] {
  const [x, y] = toMm(mark.at);
  const count = Math.max(2, Math.ceil(half / TICK_BOX_MM));
  return Array.from({ length: 2 * count + 1 }, (_, i) => {
    const off = (half * (i - count)) / count;
    return { x: x + across[0] * off, y: y - across[1] * off, halfW: TICK_BOX_MM / 2, halfH: TICK_BOX_MM / 2 };
  });
}

/** A line across the walk: fine for a level on the way, heavy where a vessel runs out. */
function drawTick({ mark, across }: MarkSign, toMm: (at: XY) => Mm, half: number): Drawn[] {
  const [x, y] = toMm(mark.at);
  const [u, v] = [across[0] * half, -across[1] * half];
  const line: Mm[] = [
    [x - u, y - v],
    [x + u, y + v],
  ];
  const width = mark.left === 0 ? 1 : 0.45;
  return [
    drawLine(line, width + 0.6, 'under'),
    drawLine(line, width, mark.left === 0 ? 'run-out' : 'run-level'),
  ];
}

const toTagBox = ({ x, y, halfW, halfH }: Box): TagBox => ({
  x,
  y,
  width: 2 * halfW + 0.5,
  height: 2 * halfH + 0.5,
});
