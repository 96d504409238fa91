import { describe, expect, it } from 'vitest';
import { readMonthlyMeans } from './readMonthlyMeans';

const F = [25, 30, 41, 52, 62, 72, 77, 75, 66, 54, 40, 29];
const C = F.map((value) => ((value - 32) * 5) / 9);
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

function means(text: string, system: 'us' | 'metric' = 'us'): readonly number[] {
  const read = readMonthlyMeans(text, system);
  if (!read.ok) throw new Error(read.issues.map((issue) => issue.message).join(' '));
  return read.monthlyMeanC;
}
function fault(text: string, system: 'us' | 'metric' = 'us') {
  const read = readMonthlyMeans(text, system);
  if (read.ok) throw new Error('it was read');
  return read.issues[0];
}
const same = (got: readonly number[], want: readonly number[]) => {
  expect(got.length).toBe(12);
  for (const [index, value] of want.entries()) expect(got[index]).toBeCloseTo(value, 9);
};

describe('twelve numbers', () => {
  it.each([' ', ', ', ';', '\t', '\n', ' / ', ' and '])('parted by %j', (mark) =>
    same(means(F.join(mark)), C),
  );
  it('in °C where the text says so', () => same(means(`${C.join(' ')} °C`), C));
  it('with minus signs of both kinds', () =>
    same(
      means('−5 -2,5 4 10,5 16,5 22 24,5 23,5 19 12 4 −2,5', 'metric'),
      [-5, -2.5, 4, 10.5, 16.5, 22, 24.5, 23.5, 19, 12, 4, -2.5],
    ));
  it('passes over the mean of the year', () => same(means([...F, 51.9].join(' ')), C));
  it('with the month before each', () =>
    same(means(MONTHS.map((name, month) => `${name} ${F[month]}`).join(', ')), C));
  it.each(['', '1 2 3', 'no figures', [...F, 99].join(' ')])('refuses %j', (text) =>
    expect(fault(text)?.message).toMatch(/wanted|pasted/),
  );
  it('finds figures in the wrong unit', () => {
    const issue = fault(F.join(' '), 'metric');
    expect(issue?.message).toMatch(/not possible.*°F/);
  });
  it('refuses both units at once', () => expect(fault(`${F.join(' ')} °F °C`)?.message).toMatch(/both/));
});

describe('tables of months', () => {
  it('down, with one column', () => same(means(MONTHS.map((name, i) => `${name}\t${F[i]}`).join('\n')), C));
  it('down, with highest, mean and lowest', () => {
    const text = `Month,Max,Mean,Min\n${MONTHS.map((name, i) => `${name},${(F[i] ?? 0) + 9},${F[i]},${(F[i] ?? 0) - 9}`).join('\n')}`;
    same(means(text), C);
  });
  it('down, with highest and lowest alone', () => {
    const text = `Month;High;Low\n${MONTHS.map((name, i) => `${name};${(F[i] ?? 0) + 9};${(F[i] ?? 0) - 9}`).join('\n')}`;
    same(means(text), C);
  });
  it('in any order', () =>
    same(
      means(
        MONTHS.map((name, i) => `${name}\t${F[i]}`)
          .reverse()
          .join('\n'),
      ),
      C,
    ));
  it('across, with labels', () => {
    const text = `${MONTHS.join(' ')} Annual\nMean Max. Temperature (F) ${F.map((v) => v + 9).join(' ')} 61\nMean Temperature (F) ${F.join(' ')} 52\nMean Precipitation (in.) ${F.map(() => 2).join(' ')} 24`;
    same(means(text), C);
  });
  it('names a month that is missing', () =>
    expect(
      fault(
        MONTHS.slice(0, 11)
          .map((name, i) => `${name}\t${F[i]}`)
          .join('\n'),
      )?.message,
    ).toMatch(/December/));
  it('names the line of a month that stands twice', () => {
    const issue = fault(`${MONTHS.map((name, i) => `${name}\t${F[i]}`).join('\n')}\nMay\t60`);
    expect(issue?.place.line).toBe(13);
    expect(issue?.message).toMatch(/May stands in line 5 and again in line 13/);
  });
  it('asks which column is the mean', () => {
    const text = `Month,One,Two\n${MONTHS.map((name, i) => `${name},${F[i]},${F[i]}`).join('\n')}`;
    expect(fault(text)?.message).toMatch(/“One”, “Two”/);
  });
  it('names a month without a figure', () =>
    expect(fault(MONTHS.map((name, i) => `${name}\t${i === 4 ? '' : F[i]}`).join('\n'))?.message).toMatch(
      /May/,
    ));
});

describe('lists of days', () => {
  const days = (row: (iso: string, month: number, day: number) => string) =>
    MONTHS.flatMap((_, month) =>
      [1, 15, 28].map((day) => {
        const two = (value: number) => String(value).padStart(2, '0');
        return row(`2024-${two(month + 1)}-${two(day)}`, month, day);
      }),
    ).join('\n');
  it('with a daily mean', () => same(means(`date,tavg\n${days((iso, m) => `${iso},${F[m]}`)}`), C));
  it('with highest and lowest', () =>
    same(
      means(`DATE,PRCP,TMAX,TMIN\n${days((iso, m) => `${iso},0.1,${(F[m] ?? 0) + 10},${(F[m] ?? 0) - 10}`)}`),
      C,
    ));
  it('without a head', () => same(means(days((iso, m) => `${iso}\t${F[m]}`)), C));
  it('with quoted cells and dates of the month first', () =>
    same(means(`"Date","Mean"\n${days((_, m, d) => `"${m + 1}/${d}/2024","${F[m]}"`)}`), C));
  it('with the day first where a number over 12 tells it', () =>
    same(means(`Date,Mean\n${days((_, m, d) => `${d}/${m + 1}/2024,${F[m]}`)}`), C));
  it('passes over marks of what is missing', () =>
    same(
      means(`date,mean\n${days((iso, m, d) => `${iso},${d === 15 ? 'M' : d === 28 ? -9999 : F[m]}`)}`),
      C,
    ));
  it('weighs every day alike', () => {
    const text = `date,mean\n${days((iso, m, d) => `${iso},${(F[m] ?? 0) + (d === 1 ? 2 : -1)}`)}`;
    same(means(text), C);
  });
  it('tells the line of a bad cell', () => {
    const text = `date,mean\n${days((iso, m, d) => `${iso},${m === 0 && d === 15 ? 'warm' : F[m]}`)}`;
    expect(fault(text)?.place.line).toBe(3);
    expect(fault(text)?.message).toMatch(/“warm” in line 3/);
  });
  it('names months without a day', () => {
    const text = `date,mean\n2024-01-01,20\n2024-01-02,21\n2024-01-03,22`;
    expect(fault(text)?.message).toMatch(/months 2, 3/);
  });
  it('wants to know what the columns are', () =>
    expect(fault(days((iso, m) => `${iso},${F[m]},${F[m]},${F[m]}`))?.message).toMatch(/first line/));
});
