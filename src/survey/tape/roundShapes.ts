import type { XY } from '../../measure/types';
import { formatLength } from '../../units/format';
import { segmentArea } from '../segmentArea';
import { cornersOfArc, middleOfArc } from './arcRing';
import { closeRing } from './geometry';
import { dimensionIssue, shorterIssue } from './issues';
import type { DimensionLine, Dimensions, TapeOutline, TapeWay } from './types';

const RAD = Math.PI / 180;
const at = (d: Dimensions, key: string): number => d[key] ?? Number.NaN;

/** Two half circles, from the right round to the left and back. */
function halves(radiusM: number): readonly [XY[], XY[]] {
  const half = (start: number) => cornersOfArc([0, 0], radiusM, start, Math.PI).slice(0, -1);
  return [half(0), half(Math.PI)];
}

function circleOutline(radiusM: number, key: string, isAcross: boolean): TapeOutline {
  const [upper, lower] = halves(radiusM);
  const from: XY = [isAcross ? -radiusM : 0, 0];
  const [middle, end] = [upper.length, upper.length + lower.length];
  return {
    ring: closeRing([...upper, ...lower]),
    perimeterM: 2 * Math.PI * radiusM,
    lines: key === '' ? [] : [{ key, from, to: [radiusM, 0], role: 'help' }],
    notes: [],
    arcs: [
      { from: 0, to: middle, via: [0, radiusM] },
      { from: middle, to: end, via: [0, -radiusM] },
    ],
  };
}

/** Circle by its radius. Area πr². */
export const CIRCLE_BY_RADIUS: TapeWay = {
  id: 'circle-radius',
  words: 'Radius, from the middle',
  fields: [{ key: 'r', words: 'Radius', quantity: 'length' }],
  areaM2: (d) => Math.PI * at(d, 'r') ** 2,
  check: () => [],
  outline: (d) => circleOutline(at(d, 'r'), 'r', false),
};

/** Circle by its diameter. Area πw²/4. */
export const CIRCLE_BY_DIAMETER: TapeWay = {
  id: 'circle-diameter',
  words: 'Diameter, right across',
  fields: [{ key: 'w', words: 'Diameter', quantity: 'length' }],
  areaM2: (d) => (Math.PI * at(d, 'w') ** 2) / 4,
  check: () => [],
  outline: (d) => circleOutline(at(d, 'w') / 2, 'w', true),
};

/** Circle by its circumference. Area u²/4π. */
export const CIRCLE_BY_CIRCUMFERENCE: TapeWay = {
  id: 'circle-circumference',
  words: 'Circumference, all round',
  fields: [{ key: 'u', words: 'Circumference', quantity: 'length' }],
  areaM2: (d) => at(d, 'u') ** 2 / (4 * Math.PI),
  check: () => [],
  outline: (d) => circleOutline(at(d, 'u') / (2 * Math.PI), '', false),
};

/**
 * Perimeter of an ellipse, m, by the arithmetic-geometric mean; exact to the last digits.
 * Source: DLMF 19.8.6 and 19.30.5. @param p one half axis, m, more than 0 @param q the other
 */
export function ellipsePerimeterM(p: number, q: number): number {
  let [a, b] = [Math.max(p, q), Math.min(p, q)];
  let sum = a * a;
  let weight = 0.5;
  for (let c = Math.sqrt(Math.max(0, a * a - b * b)); c > 1e-15 * a; weight *= 2) {
    sum -= weight * c * c;
    [a, b, c] = [(a + b) / 2, Math.sqrt(a * b), (a - b) / 2];
  }
  return (2 * Math.PI * sum) / a;
}

/** Ellipse by its whole length and whole width. Area πab/4. */
export const ELLIPSE: TapeWay = {
  id: 'ellipse',
  words: 'Length and width',
  fields: [
    { key: 'a', words: 'Whole length', quantity: 'length' },
    { key: 'b', words: 'Whole width', quantity: 'length', hint: 'Across the middle.' },
  ],
  areaM2: (d) => (Math.PI * at(d, 'a') * at(d, 'b')) / 4,
  check: () => [],
  outline(d) {
    const [p, q] = [at(d, 'a') / 2, at(d, 'b') / 2];
    const large = Math.max(p, q);
    const corners = halves(large)
      .flat()
      .map(([x, y]): XY => [(x * p) / large, (y * q) / large]);
    return {
      ring: closeRing(corners),
      perimeterM: ellipsePerimeterM(p, q),
      lines: [
        { key: 'a', from: [-p, 0], to: [p, 0], role: 'help' },
        { key: 'b', from: [0, -q], to: [0, q], role: 'help' },
      ],
      notes: [],
      arcs: [],
    };
  },
};

function segmentOutline(radiusM: number, turnRad: number, keys: readonly string[]): TapeOutline {
  const chord = 2 * radiusM * Math.sin(turnRad / 2);
  const height = radiusM * (1 - Math.cos(turnRad / 2));
  const centre: XY = [chord / 2, height - radiusM];
  const arc = cornersOfArc(centre, radiusM, (Math.PI - turnRad) / 2, turnRad);
  const lines: readonly DimensionLine[] = [
    { key: 'c', from: [0, 0], to: [chord, 0], role: 'side' },
    { key: 'h', from: [chord / 2, 0], to: [chord / 2, height], role: 'help' },
    { key: 'r', from: centre, to: arc[0] ?? centre, role: 'help' },
    { key: 't', from: centre, to: [chord / 2, centre[1] + radiusM * 0.3], role: 'angle' },
  ];
  return {
    // the ring begins at the left end of the chord, runs along it and comes back over the arc
    ring: closeRing([[0, 0], ...arc.slice(0, -1)]),
    perimeterM: chord + radiusM * turnRad,
    lines: lines.filter((line) => keys.includes(line.key)),
    notes: turnRad > Math.PI ? ['This is more than half of the circle.'] : [],
    arcs: [{ from: 1, to: arc.length, via: [chord / 2, height] }],
  };
}

/** Radius of the circle through a chord's ends and the top of its arc: c²/8h + h/2. */
const radiusOf = (c: number, h: number) => (c * c) / (8 * h) + h / 2;
const turnOf = (c: number, h: number) => 4 * Math.atan((2 * h) / c);

/** Circular segment by chord and height; a height over half the chord makes more than half a circle. */
export const SEGMENT_BY_CHORD: TapeWay = {
  id: 'segment-chord',
  words: 'Chord and height',
  fields: [
    { key: 'c', words: 'Chord', quantity: 'length', hint: 'The straight side.' },
    { key: 'h', words: 'Height', quantity: 'length', hint: 'From the middle of the chord to the arc.' },
  ],
  areaM2: (d) => segmentArea(radiusOf(at(d, 'c'), at(d, 'h')), turnOf(at(d, 'c'), at(d, 'h'))),
  check: () => [],
  outline: (d) =>
    segmentOutline(radiusOf(at(d, 'c'), at(d, 'h')), turnOf(at(d, 'c'), at(d, 'h')), ['c', 'h']),
};

/** Circular segment by the radius of its arc and its height, less than the diameter. */
export const SEGMENT_BY_RADIUS: TapeWay = {
  id: 'segment-radius',
  words: 'Radius and height',
  fields: [
    { key: 'r', words: 'Radius of the arc', quantity: 'length' },
    { key: 'h', words: 'Height', quantity: 'length', hint: 'From the middle of the chord to the arc.' },
  ],
  areaM2: (d) => segmentArea(at(d, 'r'), 2 * Math.acos(1 - at(d, 'h') / at(d, 'r'))),
  check(d, system) {
    const across: readonly [string, number] = ['the diameter', 2 * at(d, 'r')];
    const why = 'the piece is a part of the circle.';
    const issue = shorterIssue(['h', at(d, 'h')], across, why, system);
    return issue ? [issue] : [];
  },
  outline: (d) => segmentOutline(at(d, 'r'), 2 * Math.acos(1 - at(d, 'h') / at(d, 'r')), ['h', 'r']),
};

/** Circular segment by radius and angle at the centre. */
export const SEGMENT_BY_ANGLE: TapeWay = {
  id: 'segment-angle',
  words: 'Radius and angle',
  fields: [
    { key: 'r', words: 'Radius of the arc', quantity: 'length' },
    { key: 't', words: 'Angle at the centre', quantity: 'angle' },
  ],
  areaM2: (d) => segmentArea(at(d, 'r'), at(d, 't') * RAD),
  check: checkAngle,
  outline: (d) => segmentOutline(at(d, 'r'), at(d, 't') * RAD, ['r', 't']),
};

function checkAngle(d: Dimensions) {
  const angle = at(d, 't');
  if (angle > 0 && angle < 360) return [];
  const message = `t (${angle}°) must be more than 0° and less than 360°: a whole turn is a circle.`;
  return [dimensionIssue('angle-impossible', 't', message)];
}

function sectorOutline(radiusM: number, turnRad: number, keys: readonly string[]): TapeOutline {
  const arc = cornersOfArc([0, 0], radiusM, 0, turnRad);
  const middle = middleOfArc([0, 0], radiusM, 0, turnRad);
  const lines: readonly DimensionLine[] = [
    { key: 'r', from: [0, 0], to: [radiusM, 0], role: 'side' },
    { key: 't', from: [0, 0], to: [middle[0] * 0.35, middle[1] * 0.35], role: 'angle' },
  ];
  return {
    ring: closeRing([[0, 0], ...arc]),
    perimeterM: radiusM * (2 + turnRad),
    lines: lines.filter((line) => keys.includes(line.key)),
    notes: [],
    arcs: [{ from: 1, to: arc.length, via: middle }],
  };
}

/** Sector by radius and angle. Area r²t/2. */
export const SECTOR_BY_ANGLE: TapeWay = {
  id: 'sector-angle',
  words: 'Radius and angle',
  fields: [
    { key: 'r', words: 'Radius', quantity: 'length' },
    { key: 't', words: 'Angle between the straight sides', quantity: 'angle' },
  ],
  areaM2: (d) => (at(d, 'r') ** 2 * at(d, 't') * RAD) / 2,
  check: checkAngle,
  outline: (d) => sectorOutline(at(d, 'r'), at(d, 't') * RAD, ['r', 't']),
};

/** Sector by radius and length of its arc. Area r·u/2. */
export const SECTOR_BY_ARC: TapeWay = {
  id: 'sector-arc',
  words: 'Radius and arc',
  fields: [
    { key: 'r', words: 'Radius', quantity: 'length' },
    { key: 'u', words: 'Length along the arc', quantity: 'length' },
  ],
  areaM2: (d) => (at(d, 'r') * at(d, 'u')) / 2,
  check(d, system) {
    const [r, u] = [at(d, 'r'), at(d, 'u')];
    const wholeM = 2 * Math.PI * r;
    if (u < wholeM) return [];
    const message = `u (${formatLength(u, system)}) is longer than the whole circle of this radius (${formatLength(wholeM, system)}), by ${formatLength(u - wholeM, system)}.`;
    return [dimensionIssue('dimension-too-long', 'u', message)];
  },
  outline: (d) => sectorOutline(at(d, 'r'), at(d, 'u') / at(d, 'r'), ['r']),
};
