import type { XY } from '../../measure/types';
import { apexOver, closeRing, heronArea, pathLength } from './geometry';
import { dimensionIssue, shorterIssue, triangleIssue } from './issues';
import type { DimensionLine, Dimensions, TapeOutline, TapeWay } from './types';

const side = (key: string, from: XY, to: XY): DimensionLine => ({ key, from, to, role: 'side' });
const help = (key: string, from: XY, to: XY): DimensionLine => ({ key, from, to, role: 'help' });
const at = (d: Dimensions, key: string): number => d[key] ?? Number.NaN;

function outlineOf(
  corners: readonly XY[],
  lines: readonly DimensionLine[],
  notes: readonly string[] = [],
): TapeOutline {
  const ring = closeRing(corners);
  return { ring, perimeterM: pathLength(ring), lines, notes, arcs: [] };
}

/** Rectangle a by b. Area a·b. */
export const RECTANGLE: TapeWay = {
  id: 'rectangle',
  words: 'Two sides',
  fields: [
    { key: 'a', words: 'Length', quantity: 'length' },
    { key: 'b', words: 'Width', quantity: 'length' },
  ],
  areaM2: (d) => at(d, 'a') * at(d, 'b'),
  check: () => [],
  outline(d) {
    const [a, b] = [at(d, 'a'), at(d, 'b')];
    const corners: XY[] = [
      [0, 0],
      [a, 0],
      [a, b],
      [0, b],
    ];
    return outlineOf(corners, [side('a', [0, 0], [a, 0]), side('b', [a, 0], [a, b])]);
  },
};

/** Triangle by its three sides a, b, c in order round it. Area by Heron's formula. */
export const TRIANGLE_BY_SIDES: TapeWay = {
  id: 'triangle-sides',
  words: 'Three sides',
  fields: [
    { key: 'a', words: 'First side', quantity: 'length' },
    { key: 'b', words: 'Second side', quantity: 'length' },
    { key: 'c', words: 'Third side', quantity: 'length' },
  ],
  areaM2: (d) => heronArea(at(d, 'a'), at(d, 'b'), at(d, 'c')),
  check(d, system) {
    const issue = triangleIssue(
      ['a', 'b', 'c'].map((key) => [key, at(d, key)]),
      system,
    );
    return issue ? [issue] : [];
  },
  outline(d) {
    const [a, b, c] = [at(d, 'a'), at(d, 'b'), at(d, 'c')];
    const apex = apexOver(a, c, b);
    return outlineOf(
      [[0, 0], [a, 0], apex],
      [side('a', [0, 0], [a, 0]), side('b', [a, 0], apex), side('c', apex, [0, 0])],
    );
  },
};

/** Triangle by a side and the height on it. Area a·h/2; where the foot of the height lies moves the outline only. */
export const TRIANGLE_BY_HEIGHT: TapeWay = {
  id: 'triangle-height',
  words: 'Base and height',
  fields: [
    { key: 'a', words: 'Base', quantity: 'length', hint: 'The longest side.' },
    { key: 'h', words: 'Height', quantity: 'length', hint: 'Square to the base.' },
    {
      key: 'f',
      words: 'Left end of a to the foot of h',
      quantity: 'length',
      isOptional: true,
      hint: '0 for a right angle at the left.',
    },
  ],
  areaM2: (d) => (at(d, 'a') * at(d, 'h')) / 2,
  check(d, system) {
    const { a, f } = d;
    if (a === undefined || f === undefined || f <= a) return [];
    const issue = shorterIssue(['f', f], ['a', a], 'take the longest side of the triangle as a.', system);
    return issue ? [issue] : [];
  },
  outline(d) {
    const [a, h] = [at(d, 'a'), at(d, 'h')];
    const f = d.f ?? a / 2;
    const notes =
      d.f === undefined
        ? ['The height is drawn over the middle of the base. That does not change the area.']
        : [];
    const corners: XY[] = [
      [0, 0],
      [a, 0],
      [f, h],
    ];
    return outlineOf(corners, [side('a', [0, 0], [a, 0]), help('h', [f, 0], [f, h])], notes);
  },
};

/** Trapezoid by its parallel sides and the distance between them. Area h·(a + b)/2. */
export const TRAPEZOID: TapeWay = {
  id: 'trapezoid',
  words: 'Parallel sides and height',
  fields: [
    { key: 'a', words: 'First parallel side', quantity: 'length' },
    { key: 'b', words: 'Second parallel side', quantity: 'length' },
    { key: 'h', words: 'Height', quantity: 'length', hint: 'Square from one to the other.' },
    {
      key: 'f',
      words: 'How far b begins to the right of a',
      quantity: 'length',
      isOptional: true,
      hint: '0 for a square corner at the left.',
    },
  ],
  areaM2: (d) => (at(d, 'h') * (at(d, 'a') + at(d, 'b'))) / 2,
  check: () => [],
  outline(d) {
    const [a, b, h] = [at(d, 'a'), at(d, 'b'), at(d, 'h')];
    const f = d.f ?? (a - b) / 2;
    const notes =
      d.f === undefined ? ['It is drawn with both slanted sides alike. That does not change the area.'] : [];
    const corners: XY[] = [
      [0, 0],
      [a, 0],
      [f + b, h],
      [f, h],
    ];
    const foot = Math.min(Math.max(f, 0), a);
    return outlineOf(
      corners,
      [side('a', [0, 0], [a, 0]), side('b', [f + b, h], [f, h]), help('h', [foot, 0], [foot, h])],
      notes,
    );
  },
};

/** Four sides in order and the diagonal from the start of a to the end of b: two triangles by their sides. */
export const QUADRILATERAL: TapeWay = {
  id: 'quadrilateral',
  words: 'Four sides and a diagonal',
  fields: [
    { key: 'a', words: 'First side', quantity: 'length' },
    { key: 'b', words: 'Second side', quantity: 'length' },
    { key: 'c', words: 'Third side', quantity: 'length' },
    { key: 'd', words: 'Fourth side', quantity: 'length' },
    {
      key: 'e',
      words: 'Diagonal',
      quantity: 'length',
      hint: 'From the start of a to the end of b, inside the shape.',
    },
  ],
  areaM2: (d) =>
    heronArea(at(d, 'a'), at(d, 'b'), at(d, 'e')) + heronArea(at(d, 'c'), at(d, 'd'), at(d, 'e')),
  check(d, system) {
    const issues = [
      ['a', 'b', 'e'],
      ['c', 'd', 'e'],
    ].flatMap(
      (keys) =>
        triangleIssue(
          keys.map((key) => [key, at(d, key)]),
          system,
        ) ?? [],
    );
    if (issues.length > 0) return issues;
    const { ring } = QUADRILATERAL.outline(d);
    return isSimpleQuadrilateral(ring)
      ? []
      : [
          dimensionIssue(
            'diagonal-outside',
            'e',
            'With these lengths the sides would cross: the sides must follow one another round the shape, and the diagonal e run inside it.',
          ),
        ];
  },
  outline(d) {
    const [a, b, c, dd, e] = [at(d, 'a'), at(d, 'b'), at(d, 'c'), at(d, 'd'), at(d, 'e')];
    const third = apexOver(a, e, b);
    const [u, v] = [third[0] / e, third[1] / e];
    // the fourth corner lies to the left of the diagonal
    const [along, across] = apexOver(e, dd, c);
    const fourth: XY = [along * u - across * v, along * v + across * u];
    return outlineOf(
      [[0, 0], [a, 0], third, fourth],
      [
        side('a', [0, 0], [a, 0]),
        side('b', [a, 0], third),
        side('c', third, fourth),
        side('d', fourth, [0, 0]),
        help('e', [0, 0], third),
      ],
    );
  },
};

/** Opposite sides do not meet. */
function isSimpleQuadrilateral([p, q, r, s]: readonly XY[]): boolean {
  if (!p || !q || !r || !s) return false;
  return !doMeet(p, q, r, s) && !doMeet(q, r, s, p);
}

function doMeet(a: XY, b: XY, c: XY, d: XY): boolean {
  const turn = (o: XY, p: XY, q: XY) => (p[0] - o[0]) * (q[1] - o[1]) - (p[1] - o[1]) * (q[0] - o[0]);
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

/** L by the two long outer sides and the widths of its two arms, all of them outer sides. Area a·d + c·(b - d). */
export const L_SHAPE: TapeWay = {
  id: 'l-shape',
  words: 'Four outer sides',
  fields: [
    { key: 'a', words: 'Long side below', quantity: 'length' },
    { key: 'b', words: 'Long side at the left', quantity: 'length' },
    { key: 'c', words: 'Width of the arm that goes up', quantity: 'length' },
    { key: 'd', words: 'Width of the arm that goes right', quantity: 'length' },
  ],
  areaM2: (d) => at(d, 'a') * at(d, 'd') + at(d, 'c') * (at(d, 'b') - at(d, 'd')),
  check(d, system) {
    const why = 'an arm is narrower than the whole.';
    return [
      shorterIssue(['c', at(d, 'c')], ['a', at(d, 'a')], why, system),
      shorterIssue(['d', at(d, 'd')], ['b', at(d, 'b')], why, system),
    ].filter((issue) => issue !== null);
  },
  outline(dims) {
    const [a, b, c, d] = [at(dims, 'a'), at(dims, 'b'), at(dims, 'c'), at(dims, 'd')];
    const corners: XY[] = [
      [0, 0],
      [a, 0],
      [a, d],
      [c, d],
      [c, b],
      [0, b],
    ];
    return outlineOf(corners, [
      side('a', [0, 0], [a, 0]),
      side('d', [a, 0], [a, d]),
      side('c', [c, b], [0, b]),
      side('b', [0, b], [0, 0]),
    ]);
  },
};
