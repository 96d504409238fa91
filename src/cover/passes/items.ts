import type { XY } from '../../measure/types';
import type { Cell } from './cells';
import { distanceOf } from './frame';
import { endOf, lengthOfRow, type Row, reverseRow, reverseWork, startOf, type Work } from './work';

/** One way of walking an item of a tour. */
export interface Choice {
  readonly start: XY;
  readonly end: XY;
  /** straight ways inside included, m. */
  readonly lengthM: number;
  /** the same from its end, by its place in the item's choices. */
  readonly reverse: number;
  readonly rows: () => Row[];
}

/** A cell or a lap, walked in one go. */
export interface Item {
  readonly kind: 'cell' | 'lap';
  /** laps and passes alone, m. */
  readonly workingM: number;
  readonly choices: readonly Choice[];
}

/** The four ways to walk a cell: from the first row or the last, along it or back. */
export function itemOfCell(cell: Pick<Cell, 'rows'>): Item {
  const back = cell.rows.toReversed();
  const lay = (rows: readonly Row[], isTurned: boolean): Row[] =>
    rows.map((row, i) => ((i % 2 === 1) === isTurned ? row : reverseRow(row)));
  const choiceOf = (rows: readonly Row[], isTurned: boolean, reverse: number): Choice => {
    const laid = lay(rows, isTurned);
    const lengthM = laid.reduce((sum, row, i) => {
      const before = laid[i - 1];
      return sum + lengthOfRow(row) + (before ? distanceOf(endOfRow(before), startOfRow(row)) : 0);
    }, 0);
    const [first, last] = [laid[0] as Row, laid.at(-1) as Row];
    return { start: startOfRow(first), end: endOfRow(last), lengthM, reverse, rows: () => laid };
  };
  // with an even count of rows the way back begins on the side where it ended
  const isEven = cell.rows.length % 2 === 0;
  const reverses = isEven ? [2, 3, 0, 1] : [3, 2, 1, 0];
  return {
    kind: 'cell',
    workingM: cell.rows.flat().reduce((sum, work) => sum + work.lengthM, 0),
    choices: [
      choiceOf(cell.rows, false, reverses[0] as number),
      choiceOf(cell.rows, true, reverses[1] as number),
      choiceOf(back, false, reverses[2] as number),
      choiceOf(back, true, reverses[3] as number),
    ],
  };
}

export const startOfRow = (row: Row): XY => startOf(row[0] as Work);
export const endOfRow = (row: Row): XY => endOf(row.at(-1) as Work);

/** Places where a lap may begin: its longest sides' middles, from where the next lap lies straight across, and its corners. */
const MIDDLES = 6;

/**
 * A closed lap, begun at the middle of a long side or at a corner, either way round.
 * @param work its line ends where it begins
 * @param starts the most places looked at
 */
export function itemOfLap(work: Work, starts: number): Item {
  const corners = work.line.length - 1;
  const step = Math.max(1, Math.ceil(corners / Math.max(1, starts - MIDDLES)));
  const choices: Choice[] = [];
  const add = (at: XY, make: () => Work) => {
    for (const isBack of [false, true]) {
      const reverse = choices.length + (isBack ? -1 : 1);
      const rows = () => [[isBack ? reverseWork(make()) : make()]];
      choices.push({ start: at, end: at, lengthM: work.lengthM, reverse, rows });
    }
  };
  const sides = work.line.slice(1).map((end, i) => ({ i, lengthM: distanceOf(work.line[i] as XY, end) }));
  for (const { i } of sides.sort((a, b) => b.lengthM - a.lengthM).slice(0, Math.min(MIDDLES, starts))) {
    const [a, b] = [work.line[i] as XY, work.line[i + 1] as XY];
    const at: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    add(at, () => beginAt({ ...work, line: work.line.toSpliced(i + 1, 0, at) }, i + 1));
  }
  if (starts > MIDDLES)
    for (let i = 0; i < corners; i += step) add(work.line[i] as XY, () => beginAt(work, i));
  return { kind: 'lap', workingM: work.lengthM, choices };
}

/** An open stretch by itself, either way. */
export function itemOfWork(work: Work): Item {
  const [start, end, { lengthM }] = [startOf(work), endOf(work), work];
  return {
    kind: work.kind === 'lap' ? 'lap' : 'cell',
    workingM: lengthM,
    choices: [
      { start, end, lengthM, reverse: 1, rows: () => [[work]] },
      { start: end, end: start, lengthM, reverse: 0, rows: () => [[reverseWork(work)]] },
    ],
  };
}

/** A closed lap begun at another of its corners. */
export function beginAt(work: Work, corner: number): Work {
  if (corner === 0) return work;
  const line = [...work.line.slice(corner), ...work.line.slice(1, corner + 1)];
  let fromM = 0;
  for (let i = 1; i <= corner; i++) fromM += distanceOf(work.line[i - 1] as XY, work.line[i] as XY);
  const all = work.knots.at(-1)?.areaM2 ?? 0;
  // laps take on ground evenly between knots
  const before = areaAt(work, fromM);
  const later = work.knots.filter((knot) => knot.atM > fromM);
  const earlier = work.knots.filter((knot) => knot.atM <= fromM);
  const knots = [
    { atM: 0, areaM2: 0 },
    ...later.map((knot) => ({ atM: knot.atM - fromM, areaM2: knot.areaM2 - before })),
    ...earlier
      .filter((knot) => knot.atM > 0)
      .map((knot) => ({ atM: knot.atM + work.lengthM - fromM, areaM2: knot.areaM2 + all - before })),
    { atM: work.lengthM, areaM2: all },
  ].filter((knot, i, list) => i === 0 || i === list.length - 1 || knot.atM < work.lengthM - 1e-9);
  return { ...work, line, knots };
}

/** Ground that a stretch has taken on at a place along it. */
function areaAt({ knots }: Work, atM: number): number {
  for (let i = 1; i < knots.length; i++) {
    const [a, b] = [knots[i - 1], knots[i]];
    if (!a || !b || atM > b.atM) continue;
    return b.atM > a.atM ? a.areaM2 + ((b.areaM2 - a.areaM2) * (atM - a.atM)) / (b.atM - a.atM) : a.areaM2;
  }
  return knots.at(-1)?.areaM2 ?? 0;
}
