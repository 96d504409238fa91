import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calibrationResult } from '../../src/pace/calibrate/calibrationResult';
import { panReadings, readingList, withReadingList } from '../../src/pace/calibrate/readings';
import { swathOfPans } from '../../src/pace/calibrate/swathOfPans';
import { paceFigures } from '../../src/pace/paceFigures';
import { paceOfDose } from '../../src/pace/paceOfDose';
import { FASTEST_M_PER_S, SLOWEST_M_PER_S } from '../../src/pace/usual';
import { planOne, testHoseLiquid, testProduct } from '../../src/plan/testDose';
import { newEquipment } from '../../src/yard/defaults';
import { CALIBRATIONS } from '../../src/yard/equipmentTypes';

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const settings = { units: 'metric', stepM: 0.7 } as const;

describe('pace', () => {
  it('a walk at the pace of a bottle lays down the very rate, in one coat and in two', () => {
    fc.assert(
      fc.property(
        size(0.02, 0.5),
        size(0.005, 0.5),
        size(0.3, 4),
        size(0, 0.5),
        size(5, 2000),
        fc.boolean(),
        (flow, share, swathM, overlapShare, areaM2, isTwo) => {
          const plain = planOne(testHoseLiquid(), areaM2);
          const coats = isTwo ? 2 : 1;
          const figures = {
            ...plain,
            dose: { ...plain.dose, passes: { ...plain.dose.passes, coats } },
          } as const;
          const equipment = newEquipment('e', 'hose-end', {
            flowLPerS: flow,
            productShare: share,
            swathM,
            overlapShare,
          });
          const pace = paceOfDose(figures, equipment, settings, false);
          const { seconds } = paceFigures(pace, figures, equipment);
          expect((seconds ?? 0) * flow * share).toBeCloseTo(
            plain.amount.value,
            8 - Math.ceil(Math.log10(plain.amount.value + 1)),
          );
          expect((pace.productPerS ?? 0) / (flow * share)).toBeCloseTo(1, 9);
          const codes = pace.issues.map((issue) => issue.code);
          const speed = pace.speedMPerS ?? 0;
          expect(codes.includes('pace-too-slow')).toBe(speed < SLOWEST_M_PER_S);
          expect(codes.includes('pace-too-fast')).toBe(speed > FASTEST_M_PER_S);
        },
      ),
    );
  });

  it('a tank load lasts as long as its spray flows', () => {
    fc.assert(
      fc.property(size(0.005, 0.1), size(0.3, 3), size(20, 1000), (flow, swathM, areaM2) => {
        const figures = planOne(testHoseLiquid(), areaM2, { useId: 'tank', tankL: 10 });
        const equipment = newEquipment('e', 'tank-sprayer', { flowLPerS: flow, swathM });
        const pace = paceOfDose(figures, equipment, settings, false);
        const { seconds } = paceFigures(pace, figures, equipment);
        expect(((seconds ?? 0) * flow) / (figures.tank?.totalL ?? 0)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('a spreader is walked at its own speed whatever the rate; the zones make up the whole time', () => {
    fc.assert(
      fc.property(size(0.3, 2), size(0.3, 4), size(1, 5000), (speedMPerS, swathM, areaM2) => {
        const figures = planOne(testProduct(), areaM2);
        const equipment = newEquipment('e', 'broadcast-spreader', { speedMPerS, swathM });
        const pace = paceOfDose(figures, equipment, settings, false);
        expect(pace.speedMPerS).toBe(speedMPerS);
        const { zones, seconds, stepsPerMin } = paceFigures(pace, figures, equipment);
        expect(zones.reduce((sum, zone) => sum + (zone.seconds ?? 0), 0)).toBeCloseTo(seconds ?? 0, 6);
        expect(stepsPerMin).toBeCloseTo((speedMPerS / 0.7) * 60, 9);
      }),
    );
  });
});

describe('a setting', () => {
  it('lays down what its hopper loses over the ground between passes, whatever the overlap', () => {
    fc.assert(
      fc.property(
        size(0.5, 4),
        size(0, 0.5),
        size(0.3, 2),
        size(0.2, 3),
        (swathM, overlapShare, speed, off) => {
          const figures = planOne(testProduct(), 500);
          const wanted = figures.rate.kgPerM2 ?? 0;
          // kg/s out of the hopper when the walk lays `off` times what is wanted between two passes
          const hopper = wanted * off * speed * swathM * (1 - overlapShare);
          const rateKgPerM2 = hopper / (speed * swathM);
          const equipment = newEquipment('e', 'broadcast-spreader', {
            swathM,
            overlapShare,
            speedMPerS: speed,
            settings: [{ productId: 'p-1', words: '5', rateKgPerM2 }],
          });
          const pace = paceOfDose(figures, equipment, settings, false);
          fc.pre(Math.abs(Math.abs(off - 1) - 0.05) > 1e-6);
          const isOff = Math.abs(off - 1) > 0.05;
          expect(pace.issues.map(({ code }) => code)).toEqual(isOff ? ['setting-off'] : []);
          if (!isOff) expect(Math.abs(hopper / (pace.productPerS ?? 0) - 1)).toBeLessThan(0.0501);
        },
      ),
    );
  });
});

describe('readings', () => {
  it('any numbers under any name give a result without a figure that is not a number', () => {
    const names = [
      'volumeL',
      'timeS1',
      'timeS2',
      'waterParts',
      'emptiedL',
      'emptiedS',
      'goneL',
      'goneS',
      'lengthM',
      'widthM',
      'usedL',
      'usedKg',
      'caughtL1',
      'caughtKg1',
      'caughtKg2',
      'apartM',
      'pan1',
      'pan2',
      'pan3',
      'distanceM',
      'steps1',
    ];
    const readings = fc.dictionary(
      fc.constantFrom(...names),
      fc.oneof(size(-5, 500), fc.constantFrom(0, Number.NaN, Number.POSITIVE_INFINITY)),
    );
    fc.assert(
      fc.property(
        readings,
        fc.constantFrom(...CALIBRATIONS),
        fc.constantFrom('hose-end', 'tank-sprayer', 'broadcast-spreader'),
        (read, kind, applicator) => {
          const equipment = newEquipment('e', applicator, { flowLPerS: 0.1 });
          const result = calibrationResult(kind, read, { equipment, wantedKgPerM2: 0.02, units: 'us' });
          for (const figure of result.figures)
            expect(figure.value > 0 || figure.key.endsWith('reach')).toBe(true);
          for (const value of Object.values(result.change))
            expect(Number.isFinite(value) && Number(value) > 0).toBe(true);
        },
      ),
    );
  });

  it('the mean lies within what single readings give', () => {
    fc.assert(
      fc.property(fc.array(size(1, 100), { minLength: 2, maxLength: 9 }), size(0.5, 50), (times, volumeL) => {
        const equipment = newEquipment('e', 'hose-end');
        const read = withReadingList({ volumeL }, 'timeS', times);
        expect(readingList(read, 'timeS')).toEqual(times);
        const [flow] = calibrationResult('bucket', read, {
          equipment,
          wantedKgPerM2: null,
          units: 'us',
        }).figures;
        expect(flow?.low).toBeLessThanOrEqual((flow?.value ?? 0) * (1 + 1e-12));
        expect(flow?.high).toBeGreaterThanOrEqual((flow?.value ?? 0) * (1 - 1e-12));
      }),
    );
  });

  it('the swath of an even throw is the same from either side and grows with the pans', () => {
    fc.assert(
      fc.property(fc.array(size(0.01, 1), { minLength: 2, maxLength: 6 }), size(0.1, 1), (falls, apartM) => {
        let held = 1;
        const side = falls.map((fall) => (held *= fall));
        const pans = [...side.toReversed(), 1, ...side];
        const { swathM, leftM, rightM } = swathOfPans(pans, apartM);
        expect(leftM).toBe(rightM);
        expect(swathM === null).toBe((side.at(-1) ?? 1) > 0.5);
        if (swathM !== null) expect(swathOfPans(pans, apartM * 2).swathM).toBeCloseTo(swathM * 2, 9);
        const readings = Object.fromEntries(pans.map((value, i) => [`pan${i + 1}`, value]));
        expect(panReadings(readings)).toEqual(pans);
      }),
    );
  });
});
