import { describe, expect, it } from 'vitest';
import { planOne, testHoseLiquid, testProduct } from '../plan/testDose';
import type { DoseFigures } from '../plan/types';
import { L_PER_FLOZ, M_PER_FT, M_PER_MILE } from '../units/factors';
import { newEquipment } from '../yard/defaults';
import type { Equipment } from '../yard/types';
import { paceOfDose } from './paceOfDose';

const MPH = M_PER_MILE / 3600;
const settings = { units: 'us', stepM: null } as const;
/** 10 fl oz per 1,000 sq ft from the bottle; in a tank 5 fl oz in 1 gal of water. */
const liquid = testHoseLiquid();
const hose = (fields: Partial<Equipment>) =>
  newEquipment('e', 'hose-end', { swathM: 6 * M_PER_FT, ...fields });
const codes = (figures: DoseFigures, equipment: Equipment, isAssumed = false) =>
  paceOfDose(figures, equipment, settings, isAssumed).issues.map((issue) => issue.code);

function inCoats(figures: DoseFigures, coats: 1 | 2): DoseFigures {
  return { ...figures, dose: { ...figures.dose, passes: { ...figures.dose.passes, coats } } };
}

describe('pace of a liquid', () => {
  // 10 fl oz per 1,000 sq ft at 6 ft: each foot walked gets 0.06 fl oz; 0.06 * 88 ft in a minute and mph: 5.28 fl oz/min are 1 mph
  it('one mile an hour by hand reckoning, twice as fast in two coats', () => {
    const equipment = hose({ flowLPerS: (52.8 * L_PER_FLOZ) / 60, productShare: 0.1 });
    const figures = planOne(liquid, 100);
    const pace = paceOfDose(figures, equipment, settings, false);
    expect(pace.source).toBe('flow');
    expect((pace.speedMPerS ?? 0) / MPH).toBeCloseTo(1, 10);
    expect((paceOfDose(inCoats(figures, 2), equipment, settings, false).speedMPerS ?? 0) / MPH).toBeCloseTo(
      2,
      10,
    );
  });

  it('says what is not measured, and walks as is usual meanwhile', () => {
    const figures = planOne(liquid, 100);
    expect(codes(figures, hose({}))).toEqual(['flow-not-measured']);
    expect(codes(figures, hose({ flowLPerS: 0.1 }))).toEqual(['product-share-not-measured']);
    expect(paceOfDose(figures, hose({}), settings, false).source).toBe('usual');
    expect(paceOfDose(figures, hose({ speedMPerS: 1 }), settings, false)).toMatchObject({
      source: 'measured',
      speedMPerS: 1,
    });
  });

  it('a pace that nobody walks comes with what helps', () => {
    const at = (mph: number, coats: 1 | 2 = 1) => {
      const equipment = hose({ flowLPerS: (52.8 * mph * L_PER_FLOZ) / 60 / coats, productShare: 0.1 });
      return paceOfDose(inCoats(planOne(liquid, 100), coats), equipment, settings, false).issues[0];
    };
    expect(at(0.5001)).toBeUndefined();
    expect(at(0.45)?.code).toBe('pace-too-slow');
    expect(at(0.45)?.message).toMatch(/two coats .*0\.90\u00a0mph.*swath of 5\.4\u00a0ft or less/);
    expect(at(0.1)?.message).not.toMatch(/two coats|or less/);
    expect(at(4.999)).toBeUndefined();
    expect(at(6)?.code).toBe('pace-too-fast');
    expect(at(6)?.message).toMatch(/swath of 7\.2\u00a0ft or more/);
    expect(at(6, 2)?.message).toMatch(/one coat \(3\.0\u00a0mph\)/);
  });

  it('a tank counts finished spray, not product; its own walk is held against it', () => {
    const figures = planOne(liquid, 100, { useId: 'tank' });
    // 133 fl oz of spray per 1,000 sq ft at 4 ft: 0.532 fl oz a foot, 46.816 fl oz/min at 1 mph
    const tank = newEquipment('e', 'tank-sprayer', {
      swathM: 4 * M_PER_FT,
      flowLPerS: (46.816 * 2 * L_PER_FLOZ) / 60,
    });
    expect((paceOfDose(figures, tank, settings, false).speedMPerS ?? 0) / MPH).toBeCloseTo(2, 10);
    expect(codes(figures, { ...tank, speedMPerS: 2.05 * MPH })).toEqual([]);
    const [issue] = paceOfDose(figures, { ...tank, speedMPerS: 2.5 * MPH }, settings, false).issues;
    expect(issue?.code).toBe('own-speed-differs');
    expect(issue?.message).toContain('20\u00a0% too little');
  });
});

describe('a tank', () => {
  const tank = newEquipment('e', 'tank-sprayer', { swathM: 1.2, flowLPerS: 0.02 });
  const neat = planOne(liquid, 100);

  it('is never paced as if it were full of neat concentrate', () => {
    const pace = paceOfDose(neat, tank, settings, false);
    expect(pace.issues.map(({ code }) => code)).toEqual(['no-water-for-tank']);
    expect(pace.source).toBe('usual');
    // said to be undiluted, or ready to use, it is: 10 fl oz per 1,000 sq ft are 3.18 mL/m²
    expect(paceOfDose(neat, { ...tank, productShare: 1 }, settings, false).source).toBe('flow');
    const ready = planOne(testHoseLiquid({ form: 'ready-to-use' }), 100);
    expect(paceOfDose(ready, tank, settings, false).speedMPerS).toBeCloseTo(0.02 / (0.0031832 * 1.2), 2);
  });

  it('of another size than that of the visit is told', () => {
    const mixed = planOne(liquid, 100, { useId: 'tank', tankL: 15 });
    const holding = (value: number) => ({ ...tank, holds: { unit: 'L', value } as const });
    const differs = (equipment: Equipment) => codes(mixed, equipment).includes('tank-differs');
    expect([holding(8), holding(15), tank].map(differs)).toEqual([true, false, false]);
    expect(differs({ ...holding(8), productShare: 0.02 })).toBe(false);
  });
});

describe('pace of granules', () => {
  /** 0.02 kg/m². */
  const figures = planOne(testProduct(), 100);
  const spreader = newEquipment('e', 'broadcast-spreader', { speedMPerS: 1.2 });
  const setting = (rateKgPerM2: number, words = '5') => ({ productId: 'p-1', words, rateKgPerM2 });

  it('is the own walk; the setting is held against the rate of a coat', () => {
    expect(codes(figures, spreader)).toEqual(['setting-not-found']);
    expect(codes(figures, { ...spreader, settings: [setting(0.0209)] })).toEqual([]);
    expect(codes(figures, { ...spreader, settings: [setting(0.0211)] })).toEqual(['setting-off']);
    expect(codes(inCoats(figures, 2), { ...spreader, settings: [setting(0.02)] })).toEqual(['setting-off']);
  });

  it('passes that overlap lay down more than the setting puts out', () => {
    // a fifth of each swath is walked again: 0.02 on the swath lands as 0.025
    const overlapping = { ...spreader, swathM: 3, overlapShare: 0.2 };
    expect(codes(figures, { ...overlapping, settings: [setting(0.016)] })).toEqual([]);
    const [issue] = paceOfDose(
      figures,
      { ...overlapping, settings: [setting(0.02)] },
      settings,
      false,
    ).issues;
    expect(issue?.code).toBe('setting-off');
    expect(issue?.message).toMatch(/overlap by 20\u00a0%.*25\u00a0% more than .*Close it/);
    // at half an overlap the setting for two coats is that of one
    const both = { ...overlapping, overlapShare: 0.5, settings: [setting(0.02), setting(0.01, '3')] };
    expect(codes(figures, both)).toEqual([]);
    expect(codes(figures, { ...both, settings: both.settings.slice(0, 1) })).toEqual(['setting-off']);
  });

  it('of several settings the nearest counts', () => {
    const both = { ...spreader, settings: [setting(0.02), setting(0.01, '3')] };
    expect(codes(figures, both)).toEqual([]);
    expect(codes(inCoats(figures, 2), both)).toEqual([]);
  });

  it('what cannot go out with it is told before anything else', () => {
    expect(codes(figures, newEquipment('e', 'tank-sprayer'))).toEqual(['equipment-unfit']);
    expect(codes(planOne(liquid, 100), spreader)).toEqual(['equipment-unfit']);
    expect(codes(planOne(liquid, 100), newEquipment('e', 'by-hand'))).toEqual([]);
  });

  it('nothing is asked of a hand, and of usual figures no name is made up', () => {
    expect(codes(figures, newEquipment('e', 'by-hand'))).toEqual([]);
    const assumed = paceOfDose(figures, newEquipment('usual', 'broadcast-spreader'), settings, true);
    expect(assumed.issues.map((issue) => issue.place.equipmentId)).toEqual([undefined, undefined]);
  });
});
