import { describe, expect, it } from 'vitest';
import type { PlaneRings, XY } from '../../measure/types';
import { planPasses } from '../passes/planPasses';
import type { CoverZone, DoseCoverage } from '../passTypes';
import { boxRing } from '../testGround';
import { coverDose } from './coverDose';
import { testDose, testSite, testZone } from './testDoses';

const disc = (radiusM: number): PlaneRings => {
  const ring = Array.from({ length: 48 }, (_, i): XY => {
    const angle = (2 * Math.PI * i) / 48;
    return [radiusM * Math.cos(angle), radiusM * Math.sin(angle)];
  });
  return [[...ring, ring[0] as XY]];
};

const zoneOf = (part: PlaneRings): CoverZone => ({ ...testZone('green', [[0, 0, 1, 1]]), parts: [part] });

function coatsOf(part: PlaneRings, staysWet: boolean, headerLaps: number | null = null): DoseCoverage {
  const dose = testDose([zoneOf(part)], { coats: 2, staysWet, headerLaps, spacingM: 3.25, swathM: 3.25 });
  return coverDose(dose, testSite({ start: [-8, -8] }), planPasses);
}

const codesOf = ({ walks }: DoseCoverage) => walks.flatMap(({ issues }) => issues.map(({ code }) => code));

describe('a second coat', () => {
  const square: PlaneRings = [boxRing(0, 0, 7, 7)];

  it.each<[string, PlaneRings, boolean]>([
    ['a round green, wet', disc(5), true],
    ['a round green, dry', disc(5), false],
    ['a square of 7 m, wet', square, true],
    ['a square of 7 m, dry', square, false],
  ])('is not laid as the first, on %s', (_, part, staysWet) => {
    const made = coatsOf(part, staysWet);
    const [first, second] = [1, 2].map((coat) => made.walks.find((walk) => walk.coat === coat));
    expect(first?.headingDeg).toBeNull();
    expect(second?.headingDeg).not.toBeNull();
    expect(second?.passes).toBeGreaterThanOrEqual(2);
    const straightM = made.legs
      .filter(({ kind, coat }) => kind === 'pass' && coat === 2)
      .reduce((sum, { lengthM }) => sum + lengthM, 0);
    expect(straightM).toBeGreaterThan(0.5 * (second?.workingM ?? Infinity));
    expect((second?.missedM2 ?? 1) / (second?.areaM2 ?? 1)).toBeLessThan(0.01);
    expect(codesOf(made)).not.toContain('coats-alike');
  });

  it('is told of where the ground is no wider than a swath, so that both are walked the same way', () => {
    const made = coatsOf([boxRing(0, 0, 2.5, 20)], false);
    const issue = made.walks.flatMap(({ issues }) => issues).find(({ code }) => code === 'coats-alike');
    expect(issue?.message).toContain('“green”');
    expect(issue?.place).toEqual({ doseId: 'dose', zoneId: 'green' });
    expect(codesOf(made).filter((code) => code === 'coats-alike')).toHaveLength(1);
  });

  it('is laid straight where laps were chosen that leave no room for passes', () => {
    const made = coatsOf(disc(5), false, 2);
    expect(made.walks.find(({ coat }) => coat === 2)?.headingDeg).not.toBeNull();
  });
});
