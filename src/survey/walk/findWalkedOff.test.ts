import { expect, it } from 'vitest';
import { createPlane } from '../../measure/plane';
import { findWalkedOff } from './findWalkedOff';
import type { Fix } from './types';

const plane = createPlane([-96.5, 41.2]);
const ACCURACY_M = 4;
/** 95 % radius over standard deviation in each of x and y: sqrt(-2 ln 0.05), Rayleigh. */
const SIGMA_M = ACCURACY_M / 2.4477;

/** A small generator of its own, so that the test is the same each time (mulberry32). */
function randomOf(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/**
 * Positions at one a second: standing for `standS`, then east at `speedMS` for `walkS`. Errors fall by
 * `rho` from one to the next.
 */
function simulate(seed: number, standS: number, walkS: number, speedMS: number, rho: number): Fix[] {
  const random = randomOf(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  let [x, y] = [normal(), normal()];
  return Array.from({ length: standS + walkS }, (_, i) => {
    const east = Math.max(0, i + 1 - standS) * speedMS;
    const fix: Fix = {
      position: plane.toLonLat([east + SIGMA_M * x, SIGMA_M * y]),
      accuracyM: ACCURACY_M,
      timeMs: 1000 * (i + 1),
    };
    const fresh = Math.sqrt(1 - rho * rho);
    [x, y] = [rho * x + fresh * normal(), rho * y + fresh * normal()];
    return fix;
  });
}

/**
 * Errors kept from one position to the next, and how many of 200 stands of 30 s may be ended early: alike over a minute, as of a
 * receiver standing still; half new each second, which is the hardest to tell from walking; all new.
 */
const ERRORS = [
  [Math.exp(-1 / 60), 1],
  [0.5, 20],
  [0, 1],
] as const;
const seeds = Array.from({ length: 200 }, (_, i) => i + 1);

it('tells the moment to a second when nothing errs', () => {
  const fixes = Array.from({ length: 14 }, (_, i) => ({
    position: plane.toLonLat([Math.max(0, i - 3) * 1.3, 0]),
    accuracyM: 3,
    timeMs: 1000 * i,
  }));
  expect(findWalkedOff(fixes, 5)).toBe(3000);
  expect(findWalkedOff(fixes.slice(0, 4), 5)).toBeNull();
});

it.each(ERRORS)('hardly ever takes standing still for walking: errors kept %f', (rho, most) => {
  const ended = seeds.filter((seed) => {
    const fixes = simulate(seed, 30, 0, 0, rho);
    return fixes.some((_, i) => findWalkedOff(fixes.slice(0, i + 1), 5) !== null);
  });
  expect(ended.length).toBeLessThanOrEqual(most);
});

it.each(ERRORS)(
  'sees ten seconds of walking after five of standing, and when they began: errors kept %f',
  (rho) => {
    const found = seeds.map((seed) => {
      const fixes = simulate(seed, 5, 10, 1.3, rho);
      return fixes.reduce<number | null>((ms, _, i) => ms ?? findWalkedOff(fixes.slice(0, i + 1), 5), null);
    });
    expect(found.filter((ms) => ms !== null).length).toBeGreaterThan(195);
    const near = found.filter((ms) => ms !== null && ms <= 7000);
    expect(near.length).toBeGreaterThan(190);
  },
);
