import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findCrossings } from '../../src/measure/crossings';
import { areaOfRingM2 } from '../../src/measure/geodesic';
import { measureYard } from '../../src/measure/measureYard';
import { createPlane } from '../../src/measure/plane';
import type { XY } from '../../src/measure/types';
import type { Fix, WalkMode, WalkOptions, WalkOutline } from '../../src/survey/walk/types';
import { DEFAULT_WALK_OPTIONS } from '../../src/survey/walk/walkDefaults';
import { walkFromTrack } from '../../src/survey/walk/walkFromTrack';
import { emptyYard, newZone } from '../../src/yard/defaults';
import {
  createNormal,
  createRandom,
  type NoiseOfWalk,
  simulateWalk,
  WALKED_YARDS,
} from '../fixtures/simulateWalk';

/*
 * Walks of known noise against the area that they went round. The noise is made here, not by the program:
 * independent positions, positions whose errors last 10 s and 60 s (first-order Gauss-Markov), and with a shift
 * common to the whole walk. The truth is the area of the corners that were walked.
 */

const PLANE = createPlane([-96.5432, 41.2345]);
const WALKS = 500;
const STAND_S = 15;

const areaOf = (corners: readonly XY[]) => areaOfRingM2(corners.map((corner) => PLANE.toLonLat(corner)));

interface Tally {
  readonly failed: number;
  /** share of walks whose ±2 sigma holds the truth. */
  readonly held: number;
  /** root mean square of error / sigma. */
  readonly ratio: number;
  /** mean of error / truth. */
  readonly bias: number;
}

function tally(mode: WalkMode, noise: NoiseOfWalk, seed: number, walks = WALKS): Tally {
  const normal = createNormal(createRandom(seed));
  const yards = Object.values(WALKED_YARDS).filter((yard) => mode === 'round' || yard.length < 10);
  let [failed, held, squares, bias] = [0, 0, 0, 0];
  for (let i = 0; i < walks; i++) {
    const yard = yards[i % yards.length] ?? [];
    const walk = simulateWalk(yard, mode === 'corners' ? STAND_S : 0, noise, normal);
    const made = walkFromTrack(walk.fixes, { ...DEFAULT_WALK_OPTIONS, mode }, walk.stands);
    if (!made.ok) {
      failed += 1;
      continue;
    }
    const truth = areaOf(yard);
    const error = made.outline.areaM2 - truth;
    const ratio = error / made.outline.areaSigmaM2;
    if (Math.abs(ratio) <= 2) held += 1;
    squares += ratio * ratio;
    bias += error / truth;
  }
  const count = walks - failed;
  return { failed, held: held / count, ratio: Math.sqrt(squares / count), bias: bias / count };
}

const NOISES: Readonly<Record<string, NoiseOfWalk>> = {
  'independent, 1 m': { sigmaM: 1, timeConstantS: 0, biasM: 0 },
  'independent, 2 m': { sigmaM: 2, timeConstantS: 0, biasM: 0 },
  'lasting 10 s, 1 m': { sigmaM: 1, timeConstantS: 10, biasM: 0 },
  'lasting 10 s, 2 m': { sigmaM: 2, timeConstantS: 10, biasM: 0 },
  'lasting 60 s, 1 m': { sigmaM: 1, timeConstantS: 60, biasM: 0 },
  'lasting 60 s, 2 m': { sigmaM: 2, timeConstantS: 60, biasM: 0 },
};

describe.each(['round', 'corners'] as const)('500 walks, %s', (mode) => {
  it.each(Object.entries(NOISES))(
    'error %s: ±2 sigma holds the truth in 95 of 100 or more, and sigma is neither too large nor too small',
    (_, noise) => {
      const { failed, held, ratio, bias } = tally(mode, noise, 20_261_125);
      expect(failed).toBe(0);
      expect(held).toBeGreaterThanOrEqual(0.95);
      expect(ratio).toBeGreaterThan(0.7);
      expect(ratio).toBeLessThan(1.3);
      expect(Math.abs(bias)).toBeLessThan(0.01);
    },
    60_000,
  );

  // What shifts the whole walk is in the accuracy too, and cannot be told from the rest of the error within
  // one walk: sigma is then too large, never too small.
  it.each([
    ['a common shift as large as the noise', { sigmaM: 1.4, timeConstantS: 10, biasM: 1.4 }],
    ['errors that last 5 minutes', { sigmaM: 2, timeConstantS: 300, biasM: 0 }],
  ])(
    '%s: on the safe side',
    (_, noise) => {
      const { failed, held, ratio } = tally(mode, noise, 7, 200);
      expect(failed).toBe(0);
      expect(held).toBeGreaterThanOrEqual(0.95);
      expect(ratio).toBeGreaterThan(0.3);
      expect(ratio).toBeLessThan(1.3);
    },
    60_000,
  );
});

function walkOnce(
  corners: readonly XY[],
  noise: NoiseOfWalk,
  seed: number,
  options: Partial<WalkOptions> = {},
): WalkOutline {
  const walk = simulateWalk(
    corners,
    options.mode === 'corners' ? STAND_S : 0,
    noise,
    createNormal(createRandom(seed)),
  );
  const made = walkFromTrack(walk.fixes, { ...DEFAULT_WALK_OPTIONS, ...options }, walk.stands);
  if (!made.ok) throw new Error(made.issue.message);
  return made.outline;
}

describe('the outline', () => {
  it.each(Object.entries(WALKED_YARDS))(
    '%s: the zone made of it has its sigma by the polygon formula',
    (_, yard) => {
      for (const mode of yard.length < 10 ? (['round', 'corners'] as const) : (['round'] as const)) {
        const outline = walkOnce(yard, { sigmaM: 1.5, timeConstantS: 10, biasM: 0 }, 5, { mode });
        const survey = {
          method: 'walked',
          vertexSigmaM: outline.vertexSigmaM,
          scaleSigma: 0,
          source: '',
        } as const;
        const zone = newZone('z', 'turf', [[outline.ring]], { survey });
        const measured = measureYard({ ...emptyYard('y', ''), zones: [zone] }).zones.get('z');
        expect(measured?.netSigmaM2).toBeCloseTo(outline.areaSigmaM2, 1);
        expect(measured?.netM2).toBeCloseTo(outline.areaM2, 3);
      }
    },
  );

  it.each(Object.entries(WALKED_YARDS))('%s: hardly any noise gives the area walked round', (_, yard) => {
    const fine = { sigmaM: 0.02, timeConstantS: 0, biasM: 0 };
    const share = (options: Partial<WalkOptions>) =>
      walkOnce(yard, fine, 3, options).areaM2 / areaOf(yard) - 1;
    expect(Math.abs(share({}))).toBeLessThan(0.004);
    if (yard.length < 10) expect(Math.abs(share({ mode: 'corners' }))).toBeLessThan(0.001);
  });

  it('chords of a curve keep its area however coarse the tolerance', () => {
    const yard = WALKED_YARDS.round ?? [];
    for (const toleranceM of [0.5, 1, 2]) {
      const outline = walkOnce(yard, { sigmaM: 0.1, timeConstantS: 0, biasM: 0 }, 9, { toleranceM });
      expect(outline.toleranceM).toBe(toleranceM);
      expect(Math.abs(outline.areaM2 / areaOf(yard) - 1)).toBeLessThan(0.006);
    }
  });

  it('a shift common to all positions changes nothing', () => {
    const [still, shifted] = [0, 25].map((shift) => {
      const walk = simulateWalk(
        WALKED_YARDS.lot ?? [],
        0,
        { sigmaM: 1, timeConstantS: 10, biasM: 0 },
        createNormal(createRandom(1)),
      );
      const fixes = walk.fixes.map((fix) => {
        const [x, y] = PLANE.toPlane(fix.position);
        return { ...fix, position: PLANE.toLonLat([x + shift, y - shift]) };
      });
      const made = walkFromTrack(fixes, DEFAULT_WALK_OPTIONS);
      return made.ok ? made.outline : null;
    });
    // 25 m of latitude make a degree of longitude shorter by 4e-6
    expect((shifted?.areaM2 ?? 0) / (still?.areaM2 ?? 1)).toBeCloseTo(1, 4);
    expect((shifted?.areaSigmaM2 ?? 0) / (still?.areaSigmaM2 ?? 1)).toBeCloseTo(1, 4);
  });

  it('jumps of the receiver and poor positions are left out and counted', () => {
    const normal = createNormal(createRandom(4));
    const walk = simulateWalk(
      WALKED_YARDS.rectangle ?? [],
      0,
      { sigmaM: 1, timeConstantS: 0, biasM: 0 },
      normal,
    );
    const fixes = walk.fixes.map((fix, i): Fix => {
      const [x, y] = PLANE.toPlane(fix.position);
      if (i % 20 === 10) return { ...fix, position: PLANE.toLonLat([x + 80, y - 60]) };
      return i % 20 === 15 ? { ...fix, accuracyM: 60, position: PLANE.toLonLat([x + 20, y]) } : fix;
    });
    const made = walkFromTrack(fixes, DEFAULT_WALK_OPTIONS);
    if (!made.ok) throw new Error(made.issue.message);
    const tenths = Math.floor((fixes.length + 9) / 20);
    expect(made.judged.rejected).toMatchObject({
      jump: tenths,
      inaccurate: Math.floor((fixes.length + 4) / 20),
    });
    const error = made.outline.areaM2 - areaOf(WALKED_YARDS.rectangle ?? []);
    expect(Math.abs(error)).toBeLessThan(3 * made.outline.areaSigmaM2);
  });

  it('what is walked beyond the start is left off', () => {
    const yard = WALKED_YARDS.rectangle ?? [];
    const walk = simulateWalk(
      yard,
      0,
      { sigmaM: 0.3, timeConstantS: 20, biasM: 0 },
      createNormal(createRandom(6)),
    );
    const last = walk.fixes.at(-1)?.timeMs ?? 0;
    const again = walk.fixes.slice(0, 12).map((fix, i): Fix => {
      const [x, y] = PLANE.toPlane(fix.position);
      return { ...fix, position: PLANE.toLonLat([x + 0.2, y - 0.3]), timeMs: last + 1000 * (i + 1) };
    });
    const made = walkFromTrack([...walk.fixes, ...again], DEFAULT_WALK_OPTIONS);
    if (!made.ok) throw new Error(made.issue.message);
    expect(made.outline.overlapM).toBeGreaterThan(8);
    expect(made.notes.map(({ code }) => code)).toContain('walk-overlap');
    expect(Math.abs(made.outline.areaM2 - areaOf(yard))).toBeLessThan(3 * made.outline.areaSigmaM2);
  });

  it('a small piece gets its ± and the word to tape it', () => {
    const small: XY[] = [
      [0, 0],
      [8, 0],
      [8, 6],
      [0, 6],
    ];
    const noise = { sigmaM: 1.5, timeConstantS: 30, biasM: 0 };
    const walk = simulateWalk(small, STAND_S, noise, createNormal(createRandom(2)));
    const made = walkFromTrack(walk.fixes, { ...DEFAULT_WALK_OPTIONS, mode: 'corners' }, walk.stands);
    if (!made.ok) throw new Error(made.issue.message);
    expect(2 * made.outline.areaSigmaM2).toBeGreaterThan(0.2 * made.outline.areaM2);
    expect(made.notes.map(({ code }) => code)).toContain('walk-coarse');
  });
});

describe('any input', () => {
  const fix = fc.record<Fix>({
    position: fc.tuple(
      fc.oneof(fc.double({ min: -96.544, max: -96.542, noNaN: true }), fc.double()),
      fc.oneof(fc.double({ min: 41.234, max: 41.236, noNaN: true }), fc.double()),
    ),
    accuracyM: fc.oneof(fc.constant(null), fc.double({ min: 0.1, max: 50, noNaN: true }), fc.double()),
    timeMs: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 200_000 }), fc.double()),
  });

  it('gives an outline that crosses nothing, or an issue; it never throws', () => {
    fc.assert(
      fc.property(
        fc.array(fix, { maxLength: 60 }),
        fc.constantFrom<WalkMode>('round', 'corners'),
        fc.array(fc.integer({ min: 0, max: 200_000 }), { maxLength: 8 }),
        (fixes, mode, times) => {
          const stands = times.map((fromMs) => ({ fromMs, toMs: fromMs + 20_000 }));
          const made = walkFromTrack(fixes, { ...DEFAULT_WALK_OPTIONS, mode }, stands);
          const used = made.judged.accepted.length;
          const left = Object.values(made.judged.rejected).reduce((sum, count) => sum + count, 0);
          expect(used + left).toBe(fixes.length);
          if (!made.ok) {
            expect(made.issue.message).not.toBe('');
            return;
          }
          expect(findCrossings(made.outline.ring)).toEqual([]);
          expect(Number.isFinite(made.outline.areaM2)).toBe(true);
          expect(made.outline.vertexSigmaM).toBeGreaterThanOrEqual(0);
          expect(Number.isFinite(made.outline.areaSigmaM2)).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});
