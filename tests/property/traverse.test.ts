import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adjustByCompassRule, closingCall } from '../../src/survey/plat/adjust';
import { bearingOf, formatBearing, formatDms } from '../../src/survey/plat/bearing';
import { curveElements, solveCurve } from '../../src/survey/plat/curve';
import { findMistakes } from '../../src/survey/plat/mistakes';
import { readCalls } from '../../src/survey/plat/readCalls';
import { areaSigma, cornerSigmaOfClosure } from '../../src/survey/plat/sigma';
import { callVector, computeTraverse } from '../../src/survey/plat/traverse';
import type { PlatCall } from '../../src/survey/plat/types';
import { M_PER_FT } from '../../src/units/factors';

const OPTIONS = { foot: 'international', bareUnit: 'ft' } as const;
const RAD = Math.PI / 180;

/** Corners of a star-shaped outline, ft: simple whatever the draw. */
const outline = fc
  .record({
    n: fc.integer({ min: 3, max: 14 }),
    spin: fc.double({ min: 0, max: 360, noNaN: true }),
    radii: fc.array(fc.double({ min: 40, max: 400, noNaN: true }), { minLength: 14, maxLength: 14 }),
  })
  .map(({ n, spin, radii }) =>
    Array.from({ length: n }, (_, i): [number, number] => {
      const angle = (spin + (360 * i) / n) * RAD;
      const r = radii[i] ?? 100;
      return [r * Math.sin(angle), r * Math.cos(angle)];
    }),
  );

function shoelace(corners: readonly (readonly [number, number])[]): number {
  let twice = 0;
  corners.forEach(([x, y], i) => {
    const [u, v] = corners[(i + 1) % corners.length] ?? [0, 0];
    twice += x * v - u * y;
  });
  return Math.abs(twice) / 2;
}

/** The sides of an outline written as a plat has them: whole seconds, 0.01 ft. */
function writeCalls(corners: readonly (readonly [number, number])[]): string {
  return corners
    .map(([x, y], i) => {
      const [u, v] = corners[(i + 1) % corners.length] ?? [0, 0];
      return `${formatBearing(bearingOf(u - x, v - y))} ${Math.hypot(u - x, v - y).toFixed(2)} ft`;
    })
    .join('\n');
}

describe('a plat written from a closed outline', () => {
  it('closes within the bound of its rounding, and its area is right within five sigma of it', () => {
    fc.assert(
      fc.property(outline, (corners) => {
        const { calls, issues } = readCalls(writeCalls(corners), OPTIONS);
        expect(issues).toEqual([]);
        expect(calls.length).toBe(corners.length);
        const { closure, areaM2 } = computeTraverse(calls);
        // each call is off by half of 0.01 ft along and half a second across, at most
        const bound = calls.reduce(
          (sum, call) =>
            sum + (call.kind === 'line' ? 0.005 * M_PER_FT + (call.lengthM * 0.5 * RAD) / 3600 : 0),
          0,
        );
        expect(closure.gapM).toBeLessThanOrEqual(bound + 1e-9);
        // rounding spreads evenly: its standard deviation is its step over √12
        const step = { angleDeg: 1 / 3600 / Math.sqrt(12), lengthM: (0.01 * M_PER_FT) / Math.sqrt(12) };
        const sigma = areaSigma(calls, step);
        expect(Math.abs(areaM2 - shoelace(corners) * M_PER_FT ** 2)).toBeLessThanOrEqual(5 * sigma);
      }),
    );
  });

  it('closes to 1e-9 after the compass rule, which moves no corner by more than the gap', () => {
    fc.assert(
      fc.property(outline, fc.double({ min: -20, max: 20, noNaN: true }), (corners, error) => {
        const { calls } = readCalls(writeCalls(corners), OPTIONS);
        const [first, ...others] = calls;
        if (first?.kind !== 'line') throw new Error('a line');
        const wrong: PlatCall[] = [{ ...first, lengthM: first.lengthM + Math.abs(error) }, ...others];
        const before = computeTraverse(wrong);
        const after = computeTraverse(adjustByCompassRule(wrong));
        expect(after.closure.gapM).toBeLessThanOrEqual(1e-9);
        after.points.forEach((point, i) => {
          const was = before.points[i] ?? [0, 0];
          const moved = Math.hypot(point[0] - was[0], point[1] - was[1]);
          expect(moved).toBeLessThanOrEqual(before.closure.gapM + 1e-6);
        });
      }),
    );
  });

  it('one call reversed, mirrored or with a wrong length is found and named', () => {
    fc.assert(
      fc.property(
        outline.filter((corners) => corners.length > 3),
        fc.nat(13),
        fc.constantFrom('reversed', 'east-west', 'length' as const),
        (corners, at, kind) => {
          const { calls } = readCalls(writeCalls(corners), OPTIONS);
          const index = at % calls.length;
          const right = calls[index];
          if (right?.kind !== 'line') throw new Error('a line');
          const wrong: PlatCall =
            kind === 'reversed'
              ? { ...right, bearingDeg: (right.bearingDeg + 180) % 360 }
              : kind === 'east-west'
                ? { ...right, bearingDeg: (360 - right.bearingDeg) % 360 }
                : { ...right, lengthM: right.lengthM * 1.3 };
          const bad = calls.with(index, wrong);
          const gap = computeTraverse(bad).closure;
          if (gap.ratio > 200) return;
          const mistakes = findMistakes(bad);
          // another call may explain it as well; a call that runs due north has no east to exchange
          const explained = mistakes.some((each) => each.index === index);
          const others = mistakes.filter((each) => each.kind !== 'missing').length;
          expect(explained || others >= 3).toBe(true);
          const own = mistakes.find((each) => each.index === index);
          if (own) {
            const [x, y] = callVector(own.call);
            const [u, v] = callVector(right);
            expect(Math.hypot(x - u, y - v)).toBeLessThan(computeTraverse(calls).closure.lengthM / 1000);
          }
        },
      ),
    );
  });

  it('with its last side left out is closed by that side', () => {
    fc.assert(
      fc.property(outline, (corners) => {
        const { calls } = readCalls(writeCalls(corners), OPTIONS);
        const closing = closingCall(calls.slice(0, -1));
        const last = calls.at(-1);
        if (closing?.kind !== 'line' || last?.kind !== 'line') throw new Error('a line');
        expect(Math.abs(closing.lengthM - last.lengthM)).toBeLessThan(0.1);
        expect(computeTraverse([...calls.slice(0, -1), closing]).closure.gapM).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('the error of the area', () => {
  it('is that of 4,000 plats drawn with errors of known sigma, adjusted, within 5 %', () => {
    const { calls } = readCalls(
      'N 12 E 141.2\nN 81 30 E 205\ncurve right R=60 delta 80\nS 10 W 120\nS 85 W 190\nN 63 W 71.3',
      OPTIONS,
    );
    const closed = adjustByCompassRule(calls);
    const sigma = { angleDeg: 0.05, lengthM: 0.03 };
    const promised = areaSigma(closed, sigma, adjustByCompassRule);
    const normal = normalDraws(20261125);
    const areas: number[] = [];
    for (let i = 0; i < 4000; i++) {
      const drawn = closed.map(
        (call): PlatCall =>
          call.kind === 'line'
            ? {
                ...call,
                bearingDeg: call.bearingDeg + normal() * sigma.angleDeg,
                lengthM: call.lengthM + normal() * sigma.lengthM,
              }
            : {
                ...call,
                entryBearingDeg: call.entryBearingDeg + normal() * sigma.angleDeg,
                deltaDeg: call.deltaDeg + normal() * sigma.angleDeg,
                radiusM: call.radiusM + normal() * sigma.lengthM,
              },
      );
      areas.push(computeTraverse(adjustByCompassRule(drawn)).areaM2);
    }
    // the spread of a standard deviation from 4,000 draws is 1/√8000 = 1.1 %
    expect(Math.abs(deviation(areas) / promised - 1)).toBeLessThan(0.05);
  });

  it('of the corners is on average what the closure says, over many traverses', () => {
    // six equal calls that err by 1 along and 1 across, as in the simulation of surveyors quoted beside
    // cornerSigmaOfClosure: there the middle of a hexagon is off by about half the closure
    const normal = normalDraws(7);
    const n = 6;
    let [said, found, middle, gaps] = [0, 0, 0, 0];
    for (let trial = 0; trial < 4000; trial++) {
      const steps = Array.from({ length: n }, () => [normal(), normal()] as const);
      const walk = (axis: 0 | 1) => {
        let sum = 0;
        return steps.map((step) => (sum += step[axis]));
      };
      const [xs, ys] = [walk(0), walk(1)];
      const [gx, gy] = [xs[n - 1] ?? 0, ys[n - 1] ?? 0];
      const bridge = (sums: readonly number[], g: number) =>
        Array.from({ length: n }, (_, k) => (k === 0 ? 0 : (sums[k - 1] ?? 0)) - (g * k) / n);
      const [bx, by] = [bridge(xs, gx), bridge(ys, gy)];
      const spread = (values: readonly number[]) => {
        const mean = values.reduce((a, b) => a + b, 0) / n;
        return values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / n;
      };
      found += (spread(bx) + spread(by)) / 2;
      const gap = Math.hypot(gx, gy);
      said += cornerSigmaOfClosure(gap, n) ** 2;
      middle += (bx[n / 2] ?? 0) ** 2 + (by[n / 2] ?? 0) ** 2;
      gaps += gap ** 2;
    }
    expect(Math.abs(Math.sqrt(said / found) - 1)).toBeLessThan(0.05);
    expect(Math.abs(Math.sqrt(middle / gaps) - 0.5)).toBeLessThan(0.03);
  });
});

describe('curves', () => {
  it('any two figures of a curve give the others', () => {
    const given = fc.record({
      radiusM: fc.double({ min: 1, max: 1000, noNaN: true }),
      deltaDeg: fc.double({ min: 2, max: 178, noNaN: true }),
    });
    fc.assert(
      fc.property(given, ({ radiusM, deltaDeg }) => {
        const { arcM, chordM, tangentM } = curveElements(radiusM, deltaDeg);
        const none = { radiusM: null, deltaDeg: null, arcM: null, chordM: null, tangentM: null };
        for (const pair of [
          { radiusM, deltaDeg },
          { radiusM, arcM },
          { radiusM, chordM },
          { radiusM, tangentM },
          { deltaDeg, arcM },
          { deltaDeg, chordM },
          { deltaDeg, tangentM },
          { arcM, chordM },
        ]) {
          const solved = solveCurve({ ...none, ...pair });
          if (!solved.ok) throw new Error(solved.message);
          expect(Math.abs(solved.radiusM / radiusM - 1)).toBeLessThan(1e-6);
          expect(Math.abs(solved.deltaDeg - deltaDeg)).toBeLessThan(1e-4);
        }
      }),
    );
  });

  it('an outline with arcs has the area of the same outline in many short sides', () => {
    const sweep = fc.double({ min: 5, max: 300, noNaN: true });
    const turn = fc.constantFrom('right' as const, 'left' as const);
    fc.assert(
      fc.property(sweep, turn, fc.double({ min: 5, max: 60, noNaN: true }), (deltaDeg, side, radiusM) => {
        const arc: PlatCall = { kind: 'arc', radiusM, deltaDeg, turn: side, entryBearingDeg: 30 };
        const lines: PlatCall[] = [
          { kind: 'line', bearingDeg: 120, lengthM: 500 },
          { kind: 'line', bearingDeg: 210, lengthM: 400 },
        ];
        const n = 2000;
        const fine = Array.from({ length: n }, (_, i): PlatCall => {
          const sign = side === 'right' ? 1 : -1;
          return {
            kind: 'line',
            bearingDeg: 30 + (sign * deltaDeg * (i + 0.5)) / n,
            lengthM: curveElements(radiusM, deltaDeg / n).chordM,
          };
        });
        const exact = computeTraverse([arc, ...lines]).areaM2;
        expect(Math.abs(computeTraverse([...fine, ...lines]).areaM2 - exact)).toBeLessThan(0.05);
      }),
    );
  });
});

describe('directions', () => {
  it('written out and read again stay the same to half a second', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 359.9999, noNaN: true }), (deg) => {
        for (const text of [
          `${formatBearing(deg)} 10 ft`,
          `Az ${formatDms(deg)} 10 ft`,
          `10 ft, ${deg.toFixed(6)}°`,
        ]) {
          const { calls, issues } = readCalls(text, OPTIONS);
          expect(issues).toEqual([]);
          const call = calls[0];
          if (call?.kind !== 'line') throw new Error(text);
          const off = Math.abs(call.bearingDeg - deg);
          expect(Math.min(off, 360 - off) * 3600).toBeLessThanOrEqual(0.5 + 1e-6);
        }
      }),
    );
  });

  it('whatever is typed, reading ends without a throw and every error names its line', () => {
    const word = fc.constantFrom(
      'N',
      'S',
      'E',
      'W',
      '45',
      "30'",
      '15"',
      '°',
      'ft',
      ',',
      ';',
      '\n',
      'thence',
      'curve',
      'right',
      'left',
      'R=50',
      'delta',
      '30°',
      'chord',
      'L',
      'tangent',
      'radial',
      '-',
      '1/2',
      '100',
      'north',
      'foo',
      '.',
      '(',
      'said',
      '12-6',
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 30 }), (words) => {
        const { entries, issues } = readCalls(words.join(' '), OPTIONS);
        for (const { call, issues: own } of entries)
          expect(call !== null || own.some((issue) => issue.severity === 'error')).toBe(true);
        for (const issue of issues) expect(issue.message).toMatch(/^Line \d+: /);
      }),
    );
  });
});

function deviation(values: readonly number[]): number {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
}

/** Normal draws by Box and Muller from a seeded linear congruence, the same at each run. */
function normalDraws(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
