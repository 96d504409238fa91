import { describe, expect, it } from 'vitest';
import { M_PER_FT } from '../../units/factors';
import { type OffsetLayout, readOffsets } from './readOffsets';

const FEET: OffsetLayout = { side: 'left', spacingM: null, system: 'us' };
const METRES: OffsetLayout = { side: 'left', spacingM: null, system: 'metric' };

function rowsOf(text: string, layout: OffsetLayout): readonly (readonly number[])[] {
  const read = readOffsets(text, layout);
  if (!read.ok) throw new Error(read.issues.map((issue) => issue.message).join(' '));
  const unit = layout.system === 'us' ? M_PER_FT : 1;
  const round = (m: number) => Math.round((m / unit) * 1e6) / 1e6;
  return read.rows.map((row) => [round(row.stationM), round(row.offsetM), round(row.otherM)]);
}

function faults(text: string, layout: OffsetLayout): readonly (readonly [number | undefined, string])[] {
  const read = readOffsets(text, layout);
  return read.ok ? [] : read.issues.map((issue) => [issue.place.line, issue.message]);
}

describe('a table of stations and offsets', () => {
  it.each([
    ['0 12\' 6"'],
    ['0\t12\' 6"'],
    ['0, 12 ft 6 in'],
    ['0 ft 12 ft 6 in'],
    ['0; 12.5'],
    ['0 12 1/2'],
    ['0, 150 in'],
    ['0+00 12.5'],
    ['0 4 yd 6 in'],
  ])('reads %s as 12.5 ft at 0', (line) => {
    expect(rowsOf(line, FEET)).toEqual([[0, 12.5, 0]]);
  });

  it('reads lines with a heading, empty lines and stationing', () => {
    expect(rowsOf('Station Offset\n\n0 8\n50 9.5\r\n1+25 10\n1,250 3', FEET)).toEqual([
      [0, 8, 0],
      [50, 9.5, 0],
      [125, 10, 0],
      [1250, 3, 0],
    ]);
    expect(rowsOf('0 8\n0+125 10 m\n1+020.5 1', METRES)).toEqual([
      [0, 8, 0],
      [125, 10, 0],
      [1020.5, 1, 0],
    ]);
  });

  it('reads offsets alone at one distance, and two sides', () => {
    const layout: OffsetLayout = { side: 'left', spacingM: 3.5, system: 'metric' };
    expect(rowsOf('0.8\n3.6\n4.7', layout)).toEqual([
      [0, 0.8, 0],
      [3.5, 3.6, 0],
      [7, 4.7, 0],
    ]);
    expect(rowsOf('2, 3\n4\' 6" 0', { side: 'both', spacingM: M_PER_FT, system: 'us' })).toEqual([
      [0, 2, 3],
      [1, 4.5, 0],
    ]);
  });

  it('names the line of what cannot be read', () => {
    const [fault] = faults('0 3\n5 4\n9', METRES);
    expect(fault).toEqual([3, 'Line 3: one length where 2 are needed (station, offset).']);
    expect(faults('0 3\n5 4 6', METRES)[0]?.[1]).toContain('3 lengths where 2');
    expect(faults('0 3\n5 four', METRES)[0]?.[0]).toBe(2);
    expect(faults('0 3\n5 -4', METRES)[0]?.[1]).toBe('Line 2: It cannot be less than zero.');
    expect(faults('0 3\n5 4 parsecs', METRES)[0]?.[1]).toContain('parsecs');
    expect(faults('0 3\n5 999999', METRES)[0]?.[1]).toContain('10 km');
  });

  it('wants the stations in order', () => {
    const [fault] = faults('0 3\n5 4\n5 4\n9 1', METRES);
    expect(fault?.[0]).toBe(3);
    expect(fault?.[1]).toContain('does not lie beyond');
    expect(fault?.[1]).toContain('line 2');
  });
});
