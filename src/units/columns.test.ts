import { describe, expect, it } from 'vitest';
import type { Amount } from '../yard/types';
import { formatAmounts, formatAreas, formatCuts, formatZoneAreas } from './columns';
import { KG_PER_LB, L_PER_FLOZ, M2_PER_SQFT } from './factors';
import { formatAreaOfPm, formatEntry } from './format';

const plain = (texts: readonly string[]) => texts.map((text) => text.replaceAll('\u00a0', ' '));
const numberOf = (text: string) => Number(text.replaceAll(',', '').match(/[\d.]+/)?.[0]);
const inSqFt = ({ areaM2, sigmaM2 }: { areaM2: number; sigmaM2: number }) => ({
  areaM2: areaM2 * M2_PER_SQFT,
  sigmaM2: sigmaM2 * M2_PER_SQFT,
});
const flOz = (value: number): Amount => ({ unit: 'L', value: value * L_PER_FLOZ });
const lb = (value: number): Amount => ({ unit: 'kg', value: value * KG_PER_LB });

describe('rows and their total', () => {
  it('stand in the unit of the rows', () => {
    const column = formatAmounts([83.5, 33.1, 25.7].map(flOz), flOz(142.3), 'us');
    expect(plain(column.parts)).toEqual(['83.5 fl oz', '33.1 fl oz', '25.7 fl oz']);
    expect(plain([column.total ?? ''])).toEqual(['142.3 fl oz']);
  });
  it('a small row beside a large one is in the large one’s unit and does not vanish', () => {
    const column = formatAmounts([lb(7.2), lb(0.012)], lb(7.212), 'us');
    expect(plain(column.parts)).toEqual(['7.200 lb', '0.012 lb']);
    expect(plain([column.total ?? ''])).toEqual(['7.212 lb']);
    expect(plain(formatAmounts([lb(7.2), lb(0.00001)], lb(7.20001), 'us').parts)[1]).toBe('under 0.0001 lb');
  });
  it('drop zeros that no row needs', () => {
    expect(plain(formatAmounts([flOz(16)], flOz(16), 'us').parts)).toEqual(['16 fl oz']);
    expect(plain(formatAreas([3200 * M2_PER_SQFT], 3200 * M2_PER_SQFT, 0, 'us').parts)).toEqual([
      '3,200 sq ft',
    ]);
  });
  it('without a total each row is rounded alone, in one unit', () => {
    const column = formatAmounts([flOz(200), flOz(64)], null, 'us');
    expect(plain(column.parts)).toEqual(['1.56 gal', '0.50 gal']);
    expect(column.total).toBeNull();
  });
  it('are as coarse as the ± of the total asks for', () => {
    const areas = [14362, 527.4].map((area) => area * M2_PER_SQFT);
    const { parts, total } = formatAreas(areas, 14889.4 * M2_PER_SQFT, 60 * M2_PER_SQFT, 'us');
    expect(plain([...parts, total ?? ''])).toEqual(['14,360 sq ft', '530 sq ft', '14,890 sq ft']);
  });
  it('areas of zones read as they do on the map, each rounded by itself', () => {
    // 450 and 150 m² are 4,843.76 and 1,614.59 sq ft (1 sq ft = 0.09290304 m², NIST SP 811), 6,458.35 together
    const zones = (...areas: readonly [number, number][]) =>
      areas.map(([areaM2, sigmaM2]) => ({ areaM2, sigmaM2 }));
    const column = formatZoneAreas(zones([450, 2], [150, 2]), 600, 2, 'us');
    expect(plain([...column.parts, column.total ?? ''])).toEqual([
      '4,844 sq ft',
      '1,615 sq ft',
      '6,458 sq ft',
    ]);
    expect(plain([formatAreaOfPm(150, 2, 'us')])).toEqual(['1,615 sq ft']);
    expect(column.isOff).toBe(true);
    expect(formatZoneAreas(zones([450, 2], [151, 2]), 601, 2, 'us').isOff).toBe(false);
    // a small zone keeps its digits beside a large one: 527 sq ft, not 530
    const mixed = formatZoneAreas(
      zones([5510, 40], [527, 2]).map(inSqFt),
      6037 * M2_PER_SQFT,
      40 * M2_PER_SQFT,
      'us',
    );
    expect(plain([...mixed.parts, mixed.total ?? ''])).toEqual(['5,510 sq ft', '527.0 sq ft', '6,037 sq ft']);
    // a zone under an acre beside more reads in sq ft as everywhere
    const acres = formatZoneAreas(zones([8000, 60], [50, 1]), 8050, 60, 'us');
    expect(plain(acres.parts)).toEqual([plain([formatAreaOfPm(8000, 60, 'us')])[0], '538 sq ft']);
    expect(acres.isOff).toBe(true);
  });
  it('add up as printed', () => {
    // three thirds: 33.33 each makes 99.99, so one of them is printed 33.34
    const { parts, total } = formatAreas(
      [100 / 3, 100 / 3, 100 / 3].map((a) => a * M2_PER_SQFT),
      100 * M2_PER_SQFT,
      0,
      'us',
    );
    expect(parts.reduce((sum, part) => sum + numberOf(part), 0)).toBeCloseTo(numberOf(total ?? ''), 9);
    const rows = [1.004, 2.004, 3.004, 0.337].map(lb);
    const column = formatAmounts(
      rows,
      { unit: 'kg', value: rows.reduce((sum, row) => sum + row.value, 0) },
      'us',
    );
    expect(column.parts.reduce((sum, part) => sum + numberOf(part), 0)).toBeCloseTo(
      numberOf(column.total ?? ''),
      9,
    );
  });
});

describe('drawn less what cuts it', () => {
  it.each([
    [4000.4, [1005.2], 2995.2, 12],
    [15843, [512.4, 440.9], 14889.7, 60],
    [15843, [512.4, 440.9], 14889.7, 1.1],
    [15843, [950, 3.3], 14889.7, 60],
  ])('%s less %s is the net area as printed', (gross, cuts, net, sigma) => {
    const text = formatCuts(
      gross * M2_PER_SQFT,
      cuts.map((cut) => cut * M2_PER_SQFT),
      net * M2_PER_SQFT,
      sigma * M2_PER_SQFT,
      'us',
    );
    const left = text.cuts.reduce(
      (sum, cut) => sum - (cut.startsWith('under') ? 0 : numberOf(cut)),
      numberOf(text.gross),
    );
    const step = sigma > 50 ? 10 : sigma > 5 ? 1 : 0.1;
    expect(left).toBeCloseTo(Math.round(net / step) * step, 6);
  });
});

describe('the number of an entry field', () => {
  it.each([
    [0.6 / 0.3048, '1.969'],
    [40 * KG_PER_LB, '18.14'],
    [15.141647136, '15.14'],
    [0.01953125, '0.01953'],
    [2.5, '2.5'],
    [12345.67, '12,345.67'],
    [(0.1 * 0.3048) / 0.3048, '0.1'],
    [0, '0'],
    [-12.3456, '-12.3456'],
  ])('%s', (value, text) => {
    expect(formatEntry(value)).toBe(text);
  });
});
