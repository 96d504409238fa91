import { describe, expect, it } from 'vitest';
import { layoutYearChart, type YearChartData } from './layoutYearChart';

const LB = 0.45359237 / 92.90304;
const none = () => Array.from({ length: 12 }, () => [0, 0]);
const base: YearChartData = {
  products: [
    { id: 'a', name: 'Light liquid 8-0-2' },
    { id: 'b', name: 'Granule 24-0-6' },
  ],
  planned: none(),
  done: none(),
  needKgPerM2: null,
  growth: null,
  capKgPerM2: null,
};
const size = { width: 390, height: 220 };
const lay = (change: Partial<YearChartData> = {}) => layoutYearChart({ ...base, ...change }, size, 'us');

describe('layoutYearChart', () => {
  it('stacks done below planned, products in their order, to scale', () => {
    const done = none().with(3, [0.2 * LB, 0.1 * LB]);
    const planned = none().with(3, [0, 0.3 * LB]);
    const { segments, bottom, top, ticks } = lay({ done, planned });
    expect(segments.map((each) => [each.product, each.isDone])).toEqual([
      [0, true],
      [1, true],
      [1, false],
    ]);
    const most = Number(ticks.at(-1)?.words);
    const perLb = (bottom - top) / most;
    expect(segments.map((each) => each.height / perLb)).toEqual(
      [0.2, 0.1, 0.3].map((value) => expect.closeTo(value, 9)),
    );
    expect(segments[0]?.y).toBeCloseTo(bottom - 0.2 * perLb, 9);
    expect(segments[2]?.y).toBeCloseTo(bottom - 0.6 * perLb, 9);
  });
  it('gives letters to pieces with room for them, and one to done and planned of a product in one bar', () => {
    const lettered = (done: number, planned: number) =>
      lay({
        needKgPerM2: Array<number>(12).fill(LB),
        done: none().with(3, [done * LB, 0]),
        planned: none().with(3, [planned * LB, 0]),
      })
        .segments.filter((each) => each.hasLetter)
        .map((each) => each.isDone);
    // 172 px are 1 lb: 0.08 lb are 14 px, too low for a letter between two edges
    expect(lettered(0.08, 0.5)).toEqual([false]);
    expect(lettered(0.4, 0.2)).toEqual([true]);
    expect(lettered(0.2, 0.4)).toEqual([false]);
    expect(lettered(0.08, 0.02)).toEqual([]);
    expect(lettered(0.4, 0)).toEqual([true]);
  });
  it('leaves out what is nothing', () => expect(lay().segments).toEqual([]));
  it.each([0.03, 0.4, 0.99, 1, 1.01, 7, 13])(
    'has a round scale that holds %d lb in five steps at most',
    (most) => {
      const { ticks } = lay({ needKgPerM2: Array<number>(12).fill(most * LB) });
      const values = ticks.map((tick) => Number(tick.words));
      expect(values[0]).toBe(0);
      expect(values.length).toBeLessThanOrEqual(6);
      expect(values.at(-1) ?? 0).toBeGreaterThanOrEqual(most - 1e-9);
      expect(values.at(-1) ?? 0).toBeLessThanOrEqual(2.01 * most);
    },
  );
  it('has a scale where there is nothing at all', () => expect(lay().ticks.length).toBeGreaterThan(1));
  it('steps the need over the whole of each month', () => {
    const { needPath, left, right, top } = lay({ needKgPerM2: Array<number>(12).fill(LB) });
    expect(needPath?.match(/H/g)?.length).toBe(12);
    expect(needPath?.startsWith(`M${left} ${top}`)).toBe(true);
    expect(needPath?.endsWith(`H${right}`)).toBe(true);
  });
  it('draws growth on its own scale, through every month', () => {
    const growth = [0, 0, 0.1, 0.3, 0.8, 1, 0.7, 0.8, 1, 0.4, 0.1, 0];
    const { growthPath, growthTicks, months, top, bottom } = lay({ growth });
    expect(growthPath?.match(/C/g)?.length).toBe(11);
    expect(growthPath).toContain(`${Number((months[5]?.x ?? 0).toFixed(2))} ${top}`);
    expect(growthTicks.map((tick) => tick.y)).toEqual([bottom, (bottom + top) / 2, top]);
  });
  it('names months by one letter on a phone and by three where there is room', () => {
    expect(
      lay()
        .months.map((month) => month.words)
        .join(''),
    ).toBe('JFMAMJJASOND');
    const wide = layoutYearChart(base, { width: 700, height: 260 }, 'metric');
    expect(wide.months[8]?.words).toBe('Sep');
    expect(wide.unit).toBe('g/m²');
  });
  it('keeps bars within their months and the drawing', () => {
    const planned = Array.from({ length: 12 }, () => [LB, LB]);
    const { segments, left, right, top, bottom } = lay({ planned });
    for (const each of segments) {
      expect(each.x).toBeGreaterThan(left);
      expect(each.x + each.width).toBeLessThan(right);
      expect(each.y).toBeGreaterThanOrEqual(top - 1e-9);
      expect(each.y + each.height).toBeLessThanOrEqual(bottom + 1e-9);
    }
  });
});
