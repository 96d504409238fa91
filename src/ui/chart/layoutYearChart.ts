import { unitChoices } from '../../units/choices';
import { formatNumber } from '../../units/format';
import type { UnitSystem } from '../../yard/types';
import { MONTH_NAMES } from '../../yard/yearDay';

/** A year of nitrogen on one class of ground: everything in kg/m² by month, January first. */
export interface YearChartData {
  /** in the order they are stacked, the first lowest. */
  readonly products: readonly { readonly id: string; readonly name: string }[];
  /** [month][product]; what is not done yet. */
  readonly planned: readonly (readonly number[])[];
  readonly done: readonly (readonly number[])[];
  /** twelve values; null: no need is known. */
  readonly needKgPerM2: readonly number[] | null;
  /** growth potential, 0 to 1, twelve values; null: no climate is known. */
  readonly growth: readonly number[] | null;
  /** most N of the year; null: no cap. */
  readonly capKgPerM2: number | null;
}

/** A piece of a bar. Lengths in px. */
export interface Segment {
  readonly product: number;
  readonly isDone: boolean;
  readonly valueKgPerM2: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** whether its product's letter stands in it. */
  readonly hasLetter: boolean;
}

/** One mark of a scale: its place and its words. */
export interface Tick {
  readonly y: number;
  readonly words: string;
}

/** The chart as plain places, px from the upper left. */
export interface YearChartLayout {
  readonly width: number;
  readonly height: number;
  /** of the ground of the plot. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly unit: string;
  readonly ticks: readonly Tick[];
  readonly growthTicks: readonly Tick[];
  readonly months: readonly { readonly x: number; readonly words: string }[];
  readonly segments: readonly Segment[];
  /** SVG path of the stepped line; null without a need. */
  readonly needPath: string | null;
  /** SVG path of the growth curve; null without a climate. */
  readonly growthPath: string | null;
}

const TOP = 26;
const BOTTOM = 22;
const LEFT = 38;
/** Room at the right for the scale of growth, and without one. */
const RIGHT = 40;
const BARE_RIGHT = 8;
/** Share of a month's room that its bar takes. */
const BAR = 0.66;
/** Room of a month from which its name stands with three letters, px. */
const NAME_PX = 30;
const MOST_TICKS = 5;
/** Least width and height of a piece that its letter stands in, px: letters one above the other keep apart. */
const LETTER_WIDTH = 12;
const LETTER_HEIGHT = 17;

/**
 * Lays out the chart of a year: bars by month with what is done below what is planned, each stacked by product in
 * the order given; the need as a stepped line on the same scale; the growth potential as a curve on a scale of its
 * own, 0 to 100 % over the whole height.
 * @param size of the whole drawing, px
 */
export function layoutYearChart(
  data: YearChartData,
  size: { readonly width: number; readonly height: number },
  units: UnitSystem,
): YearChartLayout {
  const { width, height } = size;
  const unit = unitChoices('mass-per-area', units)[0];
  if (!unit) throw new Error('no unit for nutrients per area');
  const right = width - (data.growth ? RIGHT : BARE_RIGHT);
  const bottom = height - BOTTOM;
  const step = (right - LEFT) / 12;
  const { top: most, ticks } = scaleFor(unit.fromSI(highest(data)));
  const y = (kgPerM2: number) => bottom - (unit.fromSI(kgPerM2) / most) * (bottom - TOP);
  const yOfGrowth = (growth: number) => bottom - growth * (bottom - TOP);
  return {
    width,
    height,
    left: LEFT,
    right,
    top: TOP,
    bottom,
    unit: unit.label,
    ticks: ticks.map((value) => ({ y: y(unit.toSI(value)), words: formatNumber(value) })),
    growthTicks: data.growth
      ? [0, 0.5, 1].map((value) => ({ y: yOfGrowth(value), words: `${value * 100}\u00a0%` }))
      : [],
    months: MONTH_NAMES.map((name, month) => ({
      x: LEFT + (month + 0.5) * step,
      words: name.slice(0, step >= NAME_PX ? 3 : 1),
    })),
    segments: MONTH_NAMES.flatMap((_, month) => stack(data, month, LEFT + month * step, step, y)),
    needPath: data.needKgPerM2 ? stepPath(data.needKgPerM2.map(y), step) : null,
    growthPath: data.growth ? curvePath(data.growth.map(yOfGrowth), step) : null,
  };
}

/** A level line over each month, joined upright. @param ys one a month */
function stepPath(ys: readonly number[], step: number): string {
  return ys
    .map((y, month) => {
      const from = LEFT + month * step;
      return `${month === 0 ? 'M' : 'L'}${px(from)} ${px(y)}H${px(from + step)}`;
    })
    .join('');
}

/**
 * A smooth curve through the middle of every month that never passes beyond its points between them: monotone
 * cubic pieces with the slopes of Fritsch and Butland (1984), the harmonic mean of the two beside a point.
 */
function curvePath(ys: readonly number[], step: number): string {
  const rises = ys.slice(1).map((y, index) => y - (ys[index] ?? y));
  const slopes = ys.map((_, index) => {
    const [before, after] = [rises[index - 1], rises[index]];
    if (before === undefined || after === undefined) return before ?? after ?? 0;
    return before * after > 0 ? (2 * before * after) / (before + after) : 0;
  });
  return ys
    .map((y, month) => {
      const x = LEFT + (month + 0.5) * step;
      if (month === 0) return `M${px(x)} ${px(y)}`;
      const before = ys[month - 1] ?? y;
      const [leave, arrive] = [before + (slopes[month - 1] ?? 0) / 3, y - (slopes[month] ?? 0) / 3];
      return `C${px(x - (2 * step) / 3)} ${px(leave)} ${px(x - step / 3)} ${px(arrive)} ${px(x)} ${px(y)}`;
    })
    .join('');
}

/** Sum of a month over products, kg/m². */
export function sumOfMonth(rows: readonly (readonly number[])[], month: number): number {
  return (rows[month] ?? []).reduce((total, value) => total + value, 0);
}

function highest(data: YearChartData): number {
  const bars = MONTH_NAMES.map((_, month) => sumOfMonth(data.planned, month) + sumOfMonth(data.done, month));
  return Math.max(0, ...bars, ...(data.needKgPerM2 ?? []));
}

/** A round top of the scale and its marks, in the unit shown. */
function scaleFor(most: number): { readonly top: number; readonly ticks: readonly number[] } {
  const least = (most > 0 ? most : 1) / MOST_TICKS;
  const ten = 10 ** Math.floor(Math.log10(least));
  const step =
    [1, 2, 5, 10].map((factor) => factor * ten).find((each) => each >= least * (1 - 1e-9)) ?? 10 * ten;
  const count = Math.max(1, Math.ceil((most > 0 ? most : 1) / step - 1e-9));
  return { top: count * step, ticks: Array.from({ length: count + 1 }, (_, index) => index * step) };
}

function stack(
  data: YearChartData,
  month: number,
  left: number,
  step: number,
  y: (kgPerM2: number) => number,
): readonly Segment[] {
  const segments: Segment[] = [];
  let below = 0;
  for (const isDone of [true, false]) {
    const row = (isDone ? data.done : data.planned)[month] ?? [];
    for (const product of data.products.keys()) {
      const value = row[product] ?? 0;
      if (!(value > 0)) continue;
      const top = y(below + value);
      segments.push({
        product,
        isDone,
        valueKgPerM2: value,
        x: left + (step * (1 - BAR)) / 2,
        y: top,
        width: step * BAR,
        height: y(below) - top,
        hasLetter: false,
      });
      below += value;
    }
  }
  return segments.map((piece) => ({ ...piece, hasLetter: hasLetter(piece, segments) }));
}

/** The letter stands in the taller of what is done and what is planned of a product in one bar. */
function hasLetter(piece: Segment, bar: readonly Segment[]): boolean {
  const twin = bar.find((other) => other !== piece && other.product === piece.product);
  const isTaller =
    twin === undefined || piece.height > twin.height || (piece.height === twin.height && piece.isDone);
  return piece.width >= LETTER_WIDTH && piece.height >= LETTER_HEIGHT && isTaller;
}

function px(value: number): string {
  return String(Number(value.toFixed(2)));
}
