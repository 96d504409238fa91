import { describe, expect, it } from 'vitest';
import { areaGradient, vertexSigmaFor } from '../../src/survey/walk/areaGradient';
import { estimateNoise, type PlaneFix, varianceOfSum } from '../../src/survey/walk/fixNoise';
import { meanOfStand } from '../../src/survey/walk/meanOfStand';
import { sigmaOfAccuracyM } from '../../src/survey/walk/sigmaOfAccuracy';
import { OPEN_SKY_ACCURACY_M } from '../../src/survey/walk/walkDefaults';
import { createRandom } from '../fixtures/simulateWalk';

const fixes = (count: number, stepS = 1, sigmaM = 1): PlaneFix[] =>
  Array.from({ length: count }, (_, i) => ({ at: [0, 0] as const, sigmaM, timeS: i * stepS }));

describe('accuracy', () => {
  // W3C Geolocation, "latitude, longitude, and accuracy attributes": accuracy in metres at a 95 % confidence
  // level (read in MDN's GeolocationCoordinates.accuracy and in the working group's issue 49).
  // R95 = 2.4477 sigma: Rayleigh distribution, tabled in texts on circular error, from memory.
  it('is the radius of 95 %: 2.4477 sigma in each of x and y', () => {
    expect(sigmaOfAccuracyM(2.4477)).toBeCloseTo(1, 4);
  });

  it('holds 95 of 100 errors of that sigma', () => {
    const random = createRandom(1);
    const sigma = sigmaOfAccuracyM(10);
    let inside = 0;
    for (let i = 0; i < 100_000; i++) {
      // squared length of a bivariate normal: exponential with mean 2 sigma²
      if (-2 * sigma * sigma * Math.log(1 - random()) <= 100) inside += 1;
    }
    expect(inside / 100_000).toBeCloseTo(0.95, 2);
  });

  // GPS.gov, "GPS Accuracy": smartphones are typically accurate to within 4.9 m (16 ft) under open sky
  // (read as quoted in several places; cited there from van Diggelen & Enge, ION GNSS+ 2015).
  it('of a phone under open sky', () => {
    expect(OPEN_SKY_ACCURACY_M).toBe(4.9);
    expect(OPEN_SKY_ACCURACY_M / 0.3048).toBeCloseTo(16, 0);
  });
});

describe('variance of a mean', () => {
  // C. Geyer, Univ. of Minnesota, Stat 8054 notes "AR(1)": asymptotically sigma²/n · (1+ρ)/(1-ρ) (read).
  it.each([0.2, 0.5, 0.9])('of many errors alike by %f from one to the next', (rho) => {
    const count = 20_000;
    const shares = fixes(count).map(() => [1 / count, 0] as const);
    const variance = varianceOfSum(fixes(count), shares, -1 / Math.log(rho));
    expect(variance * count * ((1 - rho) / (1 + rho))).toBeCloseTo(1, 2);
  });

  // Exact for few: sigma²/n · [1 + 2 Σ (1 - k/n) ρ^k], Bayley & Hammersley 1946 (formula from memory).
  it('of few errors is exact', () => {
    const [count, rho, sigma] = [12, 0.8, 1.7];
    let sum = 1;
    for (let k = 1; k < count; k++) sum += 2 * (1 - k / count) * rho ** k;
    const mean = meanOfStand(fixes(count, 2, sigma), -2 / Math.log(rho));
    expect(mean.sigmaM).toBeCloseTo(sigma * Math.sqrt(sum / count), 10);
    expect(mean.effectiveCount).toBeCloseTo(count / sum, 10);
  });

  // Weighted mean of independent values: 1 / Σ (1/sigma²), any textbook of adjustment.
  it('of independent fixes of unlike accuracy, weighted by 1/sigma²', () => {
    const unlike: PlaneFix[] = [
      { at: [0, 0], sigmaM: 1, timeS: 0 },
      { at: [6, 3], sigmaM: 2, timeS: 1 },
    ];
    const mean = meanOfStand(unlike, 0);
    expect(mean.at[0]).toBeCloseTo(1.2, 12);
    expect(mean.at[1]).toBeCloseTo(0.6, 12);
    expect(mean.sigmaM).toBeCloseTo(Math.sqrt(0.8), 12);
  });
});

describe('noise by second differences', () => {
  // NIST SP 1065 (Riley 2008), Table 30: Hadamard deviation of these nine values at the shortest time, 70.80607.
  // It is sqrt(Σ d² / 6(M-2)) of the second differences d: the sigma of independent errors (value read in
  // the test suites of two programs that cite the table).
  const NINE = [892, 809, 823, 798, 671, 644, 883, 903, 677];

  it('gives the published Hadamard deviation', () => {
    const run = NINE.map((value, i): PlaneFix => ({ at: [value, value], sigmaM: 40, timeS: i }));
    const noise = estimateNoise([run, run], true);
    expect(noise.scale * 40).toBeCloseTo(70.80607, 5);
    expect(noise.timeConstantS).toBe(0);
  });

  it('says nothing of too few', () => {
    const run = NINE.map((value, i): PlaneFix => ({ at: [value, value], sigmaM: 40, timeS: i }));
    expect(estimateNoise([run], true)).toEqual({ scale: 1, timeConstantS: null });
  });
});

describe('area and corners', () => {
  // Chrisman & Yandell 1988: variance s²/4 · Σ d². Square of 100 ft, s = 1 m: sigma = sqrt(2)·30.48 m² = 43.105 m².
  it('the corner sigma that gives a known area sigma', () => {
    const side = 30.48;
    const square = [
      [0, 0],
      [side, 0],
      [side, side],
      [0, side],
    ] as const;
    expect(vertexSigmaFor(43.105, square)).toBeCloseTo(1, 4);
    expect(areaGradient(square)[0]).toEqual([-side / 2, -side / 2]);
  });
});
