import { describe, expect, it } from 'vitest';
import { needIssues } from './needIssues';
import { needOfZone, turfWithoutNeed, zonesOfNeed } from './needOfZone';
import { guidesFor, NITROGEN_GUIDES } from './nitrogenGuides';
import { newNeed, setUpNeeds } from './setUpNeeds';
import { findSpecies, SPECIES } from './species';
import { CONTINENTAL, testNeed, testTurf, yardWith } from './testNeed';

const LB = 0.45359237 / 92.90304;
const [low, regular] = [testTurf('putting', 'low-cut'), testTurf('front')];
const all = { classes: ['turf-low-cut', 'turf-regular'], include: [], exclude: [] } as const;
const onlyLow = { classes: ['turf-low-cut'], include: [], exclude: [] } as const;
const codes = (yard: Parameters<typeof needIssues>[0]) => needIssues(yard).map((issue) => issue.code);

describe('needOfZone', () => {
  const first = testNeed({ id: 'a', zones: onlyLow });
  const second = testNeed({ id: 'b', zones: all });
  const yard = yardWith([low, regular], [first, second]);
  it('is the first that covers the zone', () => {
    expect(needOfZone(yard, low)).toBe(first);
    expect(needOfZone(yard, regular)).toBe(second);
  });
  it('leaves a later need what no earlier one has', () => {
    expect(zonesOfNeed(yard, second)).toEqual([regular]);
  });
  it('tells of ground claimed twice by the later need', () => {
    const issue = needIssues(yard).find((each) => each.code === 'need-claimed-twice');
    expect(issue?.place.needId).toBe('b');
    expect(issue?.message).toMatch(/putting/);
  });
  it('knows turf that goes by none', () => {
    const bare = yardWith([low, regular], [first]);
    expect(turfWithoutNeed(bare)).toEqual([regular]);
    expect(needIssues(bare).at(-1)?.place.zoneId).toBe('front');
  });
  it('asks nothing of a yard that has no need at all', () => expect(codes(yardWith([low], []))).toEqual([]));
});

describe('needIssues', () => {
  const one = (fields: Parameters<typeof testNeed>[0]) =>
    codes(yardWith([low, regular], [testNeed({ zones: all, ...fields })]));
  it('is content with a sound need', () => expect(one({})).toEqual([]));
  it('wants ground', () => expect(one({ zones: { ...all, classes: ['bed'] } })).toContain('need-no-ground'));
  it('knows a season that is not of the grass', () =>
    expect(one({ speciesId: 'bermudagrass', season: 'cool-season' })).toContain('need-season'));
  it('notes a value outside its range', () =>
    expect(one({ guideId: 'virginia-dcr/fine-fescue', nKgPerM2: 0.02 })).toContain('need-outside-guide'));
  it('wants a climate for growth', () =>
    expect(one({ split: { kind: 'growth' } })).toContain('need-no-split'));
  it('tells what a hold leaves no month for', () =>
    expect(
      one({
        split: { kind: 'even', fromMonth: 4, toMonth: 4 },
        hold: { from: '04-01', to: '05-01', maxNKgPerM2: 0 },
      }),
    ).toContain('need-hold-leftover'));
});

describe('setting up', () => {
  it('makes a need for each class of turf', () => {
    let count = 0;
    const needs = setUpNeeds(yardWith([low, regular], []), 'kentucky-bluegrass', () => `n${++count}`);
    expect(needs.map((need) => need.name)).toEqual(['Low-cut turf', 'Regular turf']);
    expect(codes(yardWith([low, regular], needs))).toEqual([]);
  });
  it('leaves alone a class that has its need', () => {
    const yard = yardWith([low, regular], [testNeed({ zones: onlyLow })]);
    expect(setUpNeeds(yard, 'tall-fescue', () => 'n').map((need) => need.name)).toEqual(['Regular turf']);
  });
  it('begins with the first published range', () => {
    const need = newNeed('n', 'zoysiagrass', CONTINENTAL, 'low-cut');
    expect(need.guideId).toBe(guidesFor('zoysiagrass')[0]?.id);
  });
  // University of Illinois: 2 to 6 lb for bentgrass; the trial on a putting green would begin at 6.6
  it('never begins with a trial, which shows what was tried and advises nothing', () => {
    const green = newNeed('n', 'creeping-bentgrass', CONTINENTAL, 'low-cut');
    expect(green.guideId).toBe('illinois/creeping-bentgrass');
    expect(green.nKgPerM2 / LB).toBeCloseTo(4, 9);
    expect(newNeed('n', 'annual-bluegrass', CONTINENTAL, 'low-cut')).toMatchObject({
      guideId: '',
      nKgPerM2: 0,
    });
    for (const mowing of ['low-cut', 'regular', null] as const)
      for (const { id } of SPECIES) {
        const trials = guidesFor(id, mowing).map(({ source }) => source.isTrial);
        expect(trials).toEqual(trials.toSorted((a, b) => Number(a) - Number(b)));
      }
  });
  it('shares out by growth where the climate is known', () => {
    expect(newNeed('n', 'zoysiagrass', CONTINENTAL, null).split.kind).toBe('growth');
  });
});

describe('tables', () => {
  it('has ids that occur once, ranges the right way round, grasses that exist', () => {
    expect(new Set(NITROGEN_GUIDES.map((guide) => guide.id)).size).toBe(NITROGEN_GUIDES.length);
    for (const guide of NITROGEN_GUIDES) {
      expect(guide.minKgPerM2).toBeLessThanOrEqual(guide.maxKgPerM2);
      expect(findSpecies(guide.speciesId)).not.toBeNull();
    }
  });
  it('has a range for every grass', () => {
    for (const { id } of SPECIES) expect(guidesFor(id).length).toBeGreaterThan(0);
  });
});
