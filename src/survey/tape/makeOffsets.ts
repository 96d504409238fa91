import type { XY } from '../../measure/types';
import { formatLength } from '../../units/format';
import type { Issue, UnitSystem } from '../../yard/types';
import { propagateSigma } from '../propagateSigma';
import { closeRing, pathLength } from './geometry';
import { scaleSigmaM2 } from './makeTapeShape';
import { bendsOf, edgePlaces, type OffsetRule, piecesFor } from './offsetOutline';
import { areStationsEqual, parabolicArea, simpsonArea, trapezoidArea } from './offsetRules';
import type { DimensionLine, TapeError, TapeShape } from './types';

/** Where the offsets lie, looking along the base line: one side, both sides, or whole widths across it. */
export type OffsetSide = 'left' | 'right' | 'both' | 'across';

/** One station of the base line, m; `line` is its line in the typed table, from 1. */
export interface OffsetRow {
  readonly stationM: number;
  /** to the left of the line (or the only one), m, 0 or more. */
  readonly offsetM: number;
  /** to the right, m; used for `both` alone. */
  readonly otherM: number;
  readonly line: number;
}

/** One rule's result, or why it does not apply. */
export type RuleResult =
  | {
      readonly ok: true;
      readonly rule: OffsetRule;
      readonly areaM2: number;
      readonly areaSigmaM2: number;
      readonly randomSigmaM2: number;
      /** what the rule did at the end of the table; empty for nothing. */
      readonly note: string;
    }
  | { readonly ok: false; readonly rule: OffsetRule; readonly why: string };

export type OffsetsResult =
  | { readonly ok: true; readonly rules: readonly RuleResult[]; readonly isEqual: boolean }
  | { readonly ok: false; readonly issues: readonly Issue[] };

const RULES = { trapezoid: trapezoidArea, simpson: simpsonArea, parabolic: parabolicArea } as const;
/** Widths below this are none, m. */
const NO_WIDTH_M = 1e-6;

function widthsOf(rows: readonly OffsetRow[], side: OffsetSide): number[] {
  return rows.map((row) => row.offsetM + (side === 'both' ? row.otherM : 0));
}

/**
 * Areas from offsets along a base line by every rule that applies, each with its error.
 * @param rows two or more, stations rising
 */
export function measureOffsets(
  rows: readonly OffsetRow[],
  side: OffsetSide,
  error: TapeError,
  system: UnitSystem,
): OffsetsResult {
  const issues = checkRows(rows, side, system);
  if (issues.length > 0) return { ok: false, issues };
  const isEqual = areStationsEqual(rows.map((row) => row.stationM));
  const intervals = rows.length - 1;
  const result = (rule: OffsetRule, note = ''): RuleResult => {
    const areaM2 = RULES[rule](
      rows.map((row) => row.stationM),
      widthsOf(rows, side),
    );
    const randomSigmaM2 = sigmaOf(rows, side, rule, error);
    const areaSigmaM2 = Math.hypot(randomSigmaM2, scaleSigmaM2(areaM2, error));
    return { ok: true, rule, areaM2, areaSigmaM2, randomSigmaM2, note };
  };
  const odd = intervals % 2 === 1;
  const few = 'It needs three stations or more.';
  return {
    ok: true,
    isEqual,
    rules: [
      result('trapezoid'),
      intervals < 2
        ? { ok: false, rule: 'simpson', why: few }
        : isEqual
          ? result(
              'simpson',
              odd ? `${intervals} intervals are an odd number: the last one by the trapezoid rule.` : '',
            )
          : { ok: false, rule: 'simpson', why: 'The stations are not equally spaced.' },
      intervals < 2
        ? { ok: false, rule: 'parabolic', why: few }
        : isEqual && !odd
          ? { ok: false, rule: 'parabolic', why: 'At equal spacing it is Simpson’s rule.' }
          : result(
              'parabolic',
              odd ? 'The last interval lies under the parabola of the last three offsets.' : '',
            ),
    ],
  };
}

/** The first station is where the tape is held: it has no error of its own. */
function sigmaOf(rows: readonly OffsetRow[], side: OffsetSide, rule: OffsetRule, error: TapeError): number {
  const count = rows.length;
  const s = error.readingSigmaM;
  const sides = side === 'both' ? 2 : 1;
  const readings = [
    ...rows.map((row) => row.stationM),
    ...rows.map((row) => row.offsetM),
    ...(sides === 2 ? rows.map((row) => row.otherM) : []),
  ];
  return propagateSigma(
    (all) =>
      RULES[rule](
        all.slice(0, count),
        all
          .slice(count, 2 * count)
          .map((offset, i) => offset + (sides === 2 ? (all[2 * count + i] ?? 0) : 0)),
      ),
    readings,
    readings.map((_, i) => (i === 0 ? 0 : s)),
  );
}

function checkRows(rows: readonly OffsetRow[], side: OffsetSide, system: UnitSystem): Issue[] {
  const fault = (message: string, line?: number): Issue[] => [
    { code: 'offsets-impossible', severity: 'error', message, place: line === undefined ? {} : { line } },
  ];
  if (rows.length < 2) return fault('Write two stations or more, one a line.');
  const widths = widthsOf(rows, side);
  const inner = widths.findIndex((width, i) => i > 0 && i < rows.length - 1 && width <= NO_WIDTH_M);
  const row = rows[inner];
  if (row) {
    const where = formatLength(row.stationM, system);
    return fault(
      `Line ${row.line}: at ${where} the width is 0, so the ground falls into two pieces there. Measure it as two zones.`,
      row.line,
    );
  }
  if (widths.every((width) => width <= NO_WIDTH_M)) return fault('Every offset is 0: there is no area.');
  return [];
}

/**
 * The outline that one rule measures: straight sides for the trapezoid rule, parabolas for the others,
 * with the rule's own area. The base line runs along x from its first station.
 * @returns an outline; with a note and straight sides where the curve would cross to the other side of the line
 */
export function outlineOffsets(
  rows: readonly OffsetRow[],
  side: OffsetSide,
  result: Extract<RuleResult, { ok: true }>,
): TapeShape {
  const start = rows[0]?.stationM ?? 0;
  const stations = rows.map((row) => row.stationM - start);
  const { upper, lower } = offsetsByEdge(rows, side);
  const made = ringOf(stations, upper, lower, result.rule);
  const notes = [
    ...(result.note ? [result.note] : []),
    ...(side === 'across'
      ? ['Half of each width is drawn on either side of the line; the true outline may lean.']
      : []),
    ...(made.isStraight
      ? [
          'A curve through these offsets would cross the base line: the outline is drawn with straight sides, and its area differs a little.',
        ]
      : []),
  ];
  return {
    ring: made.ring,
    perimeterM: pathLength(made.ring),
    lines: [
      { key: '', from: [0, 0], to: [stations.at(-1) ?? 0, 0], role: 'help' },
      ...rows.map((_, i): DimensionLine => {
        const x = stations[i] ?? 0;
        return { key: String(i + 1), from: [x, -(lower[i] ?? 0)], to: [x, upper[i] ?? 0], role: 'help' };
      }),
    ],
    notes,
    arcs: [],
    areaM2: result.areaM2,
    randomSigmaM2: result.randomSigmaM2,
    areaSigmaM2: result.areaSigmaM2,
  };
}

/** Distances of both edges from the line, m, by station. */
function offsetsByEdge(rows: readonly OffsetRow[], side: OffsetSide): { upper: number[]; lower: number[] } {
  const none = rows.map(() => 0);
  const first = rows.map((row) => row.offsetM);
  if (side === 'left') return { upper: first, lower: none };
  if (side === 'right') return { upper: none, lower: first };
  if (side === 'both') return { upper: first, lower: rows.map((row) => row.otherM) };
  const half = first.map((width) => width / 2);
  return { upper: half, lower: half };
}

function ringOf(
  stations: readonly number[],
  upper: readonly number[],
  lower: readonly number[],
  rule: OffsetRule,
): { ring: XY[]; isStraight: boolean } {
  const [bendsUp, bendsDown] = [bendsOf(stations, upper, rule), bendsOf(stations, lower, rule)];
  const pieces = piecesFor(stations, bendsUp, bendsDown);
  const up = edgePlaces(stations, upper, bendsUp, pieces);
  const down = edgePlaces(stations, lower, bendsDown, pieces);
  const isCrossing = up.some(
    ([, y], i) => i > 0 && i < up.length - 1 && y + (down[i]?.[1] ?? 0) <= NO_WIDTH_M,
  );
  if (isCrossing) return { ...ringOf(stations, upper, lower, 'trapezoid'), isStraight: true };
  const isFlat = (edge: readonly number[]) => edge.every((offset) => offset === 0);
  const ends = (places: readonly XY[], isLine: boolean) =>
    isLine ? places.filter((_, i) => i === 0 || i === places.length - 1) : places;
  const corners = [
    ...ends(down, isFlat(lower)).map(([x, y]): XY => [x, -y]),
    ...ends(up, isFlat(upper)).toReversed(),
  ];
  return { ring: closeRing(withoutRepeats(corners)), isStraight: false };
}

function withoutRepeats(corners: readonly XY[]): XY[] {
  return corners.filter((corner, i) => {
    const before = corners.at(i - 1);
    return !before || Math.hypot(corner[0] - before[0], corner[1] - before[1]) > NO_WIDTH_M;
  });
}
