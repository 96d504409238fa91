/** Intervals that differ by less than this share count as equal: a typed inch more or less on a stretch. */
const EQUAL_SHARE = 1e-6;

type Row = readonly number[];
const value = (row: Row, i: number): number => row[i] ?? Number.NaN;

/** Whether stations follow one another at one distance. @param stations m, rising, two or more */
export function areStationsEqual(stations: Row): boolean {
  const first = value(stations, 1) - value(stations, 0);
  return stations.every(
    (station, i) => i === 0 || Math.abs(station - value(stations, i - 1) - first) <= EQUAL_SHARE * first,
  );
}

/**
 * Area between a base line and an outline by the trapezoid rule: straight from offset to offset.
 * Σ (xᵢ₊₁ - xᵢ)(yᵢ + yᵢ₊₁)/2, at any spacing. Source: surveying handbooks.
 * @param stations along the line, m, rising @param offsets square to it, m, one a station
 */
export function trapezoidArea(stations: Row, offsets: Row): number {
  let area = 0;
  for (let i = 1; i < stations.length; i++) area += strip(stations, offsets, i);
  return area;
}

function strip(stations: Row, offsets: Row, i: number): number {
  return ((value(stations, i) - value(stations, i - 1)) * (value(offsets, i) + value(offsets, i - 1))) / 2;
}

/**
 * Area by Simpson's 1/3 rule: one parabola over each two intervals, d/3 · (y₀ + 4y₁ + y₂); with an odd
 * number of intervals the last one by the trapezoid rule. Meant for equal spacing (`areStationsEqual`);
 * for other stations it is the general form, so that its derivatives by the stations are right.
 * Source: surveying handbooks. @param stations m, rising @param offsets m
 */
export function simpsonArea(stations: Row, offsets: Row): number {
  const pairs = pairArea(stations, offsets);
  const last = stations.length - 1;
  return last % 2 === 0 ? pairs : pairs + strip(stations, offsets, last);
}

/**
 * Area by parabolas at unequal spacing: one through each three offsets in turn; with an odd number of
 * intervals the last one under the parabola through the last three.
 * Source: Easa 1988, "Area of irregular region with unequal intervals", J. Surveying Engineering 114(2):50.
 * @param stations m, rising; three or more @param offsets m
 */
export function parabolicArea(stations: Row, offsets: Row): number {
  const last = stations.length - 1;
  const pairs = pairArea(stations, offsets);
  if (last % 2 === 0) return pairs;
  if (last < 2) return pairs + strip(stations, offsets, last);
  const h1 = value(stations, last) - value(stations, last - 1);
  const bend = bendAt(stations, offsets, last - 1);
  return pairs + strip(stations, offsets, last) - (bend * h1 ** 3) / 12;
}

/** Parabolas over intervals 0-1, 2-3 and so on; an interval left over is passed by. */
function pairArea(stations: Row, offsets: Row): number {
  let area = 0;
  for (let i = 2; i < stations.length; i += 2) {
    const h0 = value(stations, i - 1) - value(stations, i - 2);
    const h1 = value(stations, i) - value(stations, i - 1);
    const bend = bendAt(stations, offsets, i - 1);
    area += strip(stations, offsets, i - 1) + strip(stations, offsets, i);
    area -= (bend * (h0 ** 3 + h1 ** 3)) / 12;
  }
  return area;
}

/** Second derivative of the parabola through an offset and its two neighbours, 1/m. @param i index of the middle one */
export function bendAt(stations: Row, offsets: Row, i: number): number {
  const [x0, x1, x2] = [value(stations, i - 1), value(stations, i), value(stations, i + 1)];
  const before = (value(offsets, i) - value(offsets, i - 1)) / (x1 - x0);
  const after = (value(offsets, i + 1) - value(offsets, i)) / (x2 - x1);
  return (2 * (after - before)) / (x2 - x0);
}
