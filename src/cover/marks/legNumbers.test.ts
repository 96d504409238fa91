import { expect, it } from 'vitest';
import { legNumbers } from './legNumbers';

it('counts legs by kind, zone and coat, also where another zone comes between', () => {
  const legs = [
    { kind: 'lap', zoneId: 'a', coat: 1 },
    { kind: 'pass', zoneId: 'a', coat: 1 },
    { kind: 'pass', zoneId: 'b', coat: 1 },
    { kind: 'pass', zoneId: 'a', coat: 1 },
    { kind: 'pass', zoneId: 'a', coat: 2 },
  ] as const;
  expect(legNumbers(legs)).toEqual([
    { number: 1, of: 1 },
    { number: 1, of: 2 },
    { number: 1, of: 1 },
    { number: 2, of: 2 },
    { number: 1, of: 1 },
  ]);
});
