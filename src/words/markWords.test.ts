import { describe, expect, it } from 'vitest';
import type { Vessel, WalkNote } from '../cover/passTypes';
import { fluidOunces, sqft, testHoseLiquid, testLabel } from '../plan/testDose';
import { KG_PER_LB } from '../units/factors';
import { levelWords, markLines, markSign, standWords, vesselName, vesselWords } from './markWords';

const BOTTLES = { product: testHoseLiquid(), applicator: 'hose-end' } as const;
const BAGS = { product: testLabel(), applicator: 'broadcast-spreader' } as const;
const NAMES = new Map([
  ['back', 'Back lawn'],
  ['oak', 'Oak bed'],
]);
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

const bottle = (number: number, fields: Partial<Vessel> = {}): Vessel => ({
  kind: 'container',
  number,
  full: fluidOunces(32),
  start: fluidOunces(32),
  taken: fluidOunces(32),
  areaM2: sqft(3200),
  packId: 'bottle',
  ...fields,
});
const note = (fields: Partial<WalkNote>): WalkNote => ({
  mark: null,
  isZoneEnd: false,
  zoneId: 'back',
  coat: 1,
  legKind: 'pass',
  legNumber: 7,
  doneM2: sqft(1240),
  walkedM: 100,
  vessel: 1,
  left: 0.5,
  ...fields,
});
const linesOf = (notes: readonly WalkNote[], units: 'us' | 'metric' = 'us') =>
  markLines(notes, [bottle(1), bottle(2)], NAMES, BOTTLES, units).map(({ line }) => plain(line));

describe('the list beside a walk', () => {
  it('marks tell ground, zone, pass and level; ends of zones what should be left', () => {
    const oak = { zoneId: 'oak', isZoneEnd: true, legKind: 'lap', legNumber: 1 } as const;
    expect(linesOf([note({}), note({ left: 0, doneM2: sqft(6400) }), note(oak)])).toEqual([
      'after 1,240 sq ft, in “Back lawn”, pass 7: bottle 2 at one half',
      'after 6,400 sq ft, in “Back lawn”, pass 7: bottle 2 runs out',
      'at the end of “Oak bed” (after 1,240 sq ft): bottle 2 at one half',
    ]);
    expect(linesOf([note({ legKind: 'lap', legNumber: 2 })], 'metric')).toEqual([
      'after 115 m², in “Back lawn”, lap 2: bottle 2 at one half',
    ]);
  });

  it('of two coats each is named', () => {
    expect(linesOf([note({}), note({ coat: 2, isZoneEnd: true, left: 1 })])).toEqual([
      // common practice, no source: at half the rate what is in the bottle goes twice as far
      'after 2,480 sq ft at half the rate, in “Back lawn”, first coat, pass 7: bottle 2 at one half',
      'at the end of “Back lawn”, second coat (after 2,480 sq ft at half the rate): bottle 2 still full',
    ]);
  });

  it('ground without a name, and a dose that nothing is known to be drawn from', () => {
    expect(linesOf([note({ zoneId: 'gone', vessel: null, left: null })])).toEqual([
      'after 1,240 sq ft, in “ground without a name”, pass 7: nothing to read off',
    ]);
  });
});

describe('levels', () => {
  // common practice, no source: 1,000 sq ft done with a bottle for 3,200: about a third gone (31.25 %)
  it('after 1,000 of 3,200 sq ft about two thirds are left', () => {
    expect(plain(levelWords(1 - 1000 / 3200))).toBe('about two thirds (69 %)');
  });

  it.each([
    [1, 'full'],
    [0.752, 'three quarters'],
    [0.5, 'one half'],
    [0.25, 'one quarter'],
    [0.34, 'about one third (34 %)'],
    [0.45, '45 %'],
    [0.06, '6 %'],
    [0.023, 'nearly nothing (2.3 %)'],
    [0.004, 'empty'],
  ])('%d', (left, words) => {
    expect(plain(levelWords(left))).toBe(words);
  });

  it('signs on the map', () => {
    const signs = [0.75, 0.5, 0.25, 0].map((left) => markSign({ number: 2, left }));
    expect(signs).toEqual(['2 ¾', '2 ½', '2 ¼', '2 out']);
  });
});

describe('vessels', () => {
  it('are called what the trade calls them', () => {
    expect(vesselName({ kind: 'container', number: 2 }, BOTTLES)).toBe('bottle 2');
    expect(vesselName({ kind: 'container', number: 1 }, BAGS)).toBe('bag 1');
    expect(vesselName({ kind: 'container', number: 1 }, { ...BOTTLES, applicator: 'tank-sprayer' })).toBe(
      'container 1',
    );
    expect(vesselName({ kind: 'tank-load', number: 3 }, BOTTLES)).toBe('tank load 3');
    expect(standWords({ kind: 'hopper-fill', number: 1 }, 0, BAGS)).toBe('hopper fill 1 runs out');
    expect(standWords({ kind: 'hopper-fill', number: 1 }, 0.25, BOTTLES)).toBe('jar 1 at one quarter');
  });

  it('tell what is in them, what they do and what is left', () => {
    const words = (vessel: Vessel, from?: readonly number[]) =>
      plain(vesselWords({ ...vessel, from }, from ? BAGS : BOTTLES, 'us'));
    expect(words(bottle(1))).toBe('bottle 1: 32 fl oz, does 3,200 sq ft');
    const opened = { start: fluidOunces(12), taken: fluidOunces(12), areaM2: sqft(1200) };
    expect(words(bottle(1, opened))).toBe('bottle 1, opened: 12 fl oz in it, does 1,200 sq ft');
    expect(words(bottle(2, { taken: fluidOunces(18), areaM2: sqft(1800) }))).toBe(
      'bottle 2: 32 fl oz, does 1,800 sq ft, 44 % is left',
    );
    const lb = (value: number) => ({ unit: 'kg', value: value * KG_PER_LB }) as const;
    const fill = bottle(3, {
      kind: 'hopper-fill',
      full: lb(20),
      start: lb(10),
      taken: lb(10),
      areaM2: sqft(2000),
    });
    expect(words(fill, [1, 2])).toBe(
      'hopper fill 3 (bags 1 and 2): 10 lb, starts at one half of a full hopper, does 2,000 sq ft',
    );
    expect(words(fill, [1, 2, 3])).toContain('(bags 1, 2 and 3)');
    expect(plain(vesselWords(bottle(1), { ...BOTTLES, coats: 2 }, 'us'))).toBe(
      'bottle 1: 32 fl oz, does 6,400 sq ft at half the rate',
    );
    expect(words({ ...fill, start: lb(14.6) }, [2])).toContain(
      '14.6 lb, starts at 73 % of a full hopper, does',
    );
    expect(words({ ...fill, start: lb(20) }, [2])).not.toContain('starts at');
    const load = bottle(2, { kind: 'tank-load', start: fluidOunces(16), taken: fluidOunces(16) });
    expect(plain(vesselWords(load, { ...BOTTLES, applicator: 'tank-sprayer' }, 'us'))).toContain(
      'starts at one half of a full tank',
    );
    expect(words(fill, [2])).toBe(
      'hopper fill 3 (bag 2): 10 lb, starts at one half of a full hopper, does 2,000 sq ft',
    );
  });
});
