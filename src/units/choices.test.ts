import { describe, expect, it } from 'vitest';
import { fittingUnit, type Quantity, unitChoices } from './choices';

const QUANTITIES: readonly Quantity[] = [
  'area',
  'length',
  'depth',
  'mass',
  'volume',
  'bulk-volume',
  'volume-per-area',
  'mass-per-area',
  'density',
  'temperature',
  'flow',
  'speed',
];
const pick = (quantity: Quantity, system: 'us' | 'metric', id: string) => {
  const choice = unitChoices(quantity, system).find((one) => one.id === id);
  if (choice === undefined) throw new Error(`no unit ${id}`);
  return choice;
};

describe('unit choices', () => {
  it('each quantity offers units in both systems, with ids of their own', () => {
    for (const quantity of QUANTITIES)
      for (const system of ['us', 'metric'] as const) {
        const ids = unitChoices(quantity, system).map((one) => one.id);
        expect(ids.length).toBeGreaterThan(0);
        expect(new Set(ids).size).toBe(ids.length);
      }
  });
  // 1 gal/1,000 sq ft = 43.56 gal/acre: 43,560 sq ft to the acre (NIST HB 44, app. C)
  it('gallons per 1,000 sq ft and per acre agree', () => {
    const perAcre = pick('volume-per-area', 'us', 'gal per acre');
    expect(perAcre.fromSI(pick('volume-per-area', 'us', 'gal per 1,000 sq ft').toSI(1))).toBeCloseTo(
      43.56,
      10,
    );
  });
  it('mL/m², L per 100 m² and L/ha agree', () => {
    const si = pick('volume-per-area', 'metric', 'mL/m²').toSI(4);
    expect(pick('volume-per-area', 'metric', 'L per 100 m²').fromSI(si)).toBeCloseTo(0.4, 12);
    expect(pick('volume-per-area', 'metric', 'L/ha').fromSI(si)).toBeCloseTo(40, 10);
  });
  it('temperature: 212 °F is 100 °C, and −40 is the same in both', () => {
    const f = pick('temperature', 'us', '°F');
    expect(f.toSI(212)).toBe(100);
    expect(f.toSI(-40)).toBe(-40);
  });
});

describe('fitting unit', () => {
  // sizes in SI: NIST Handbook 44, app. C
  it.each([
    ['volume', 'us', 3.785411784, 'gal'],
    ['volume', 'us', 0.946352946, 'fl oz'],
    ['volume', 'metric', 0.5, 'mL'],
    ['volume', 'metric', 1, 'L'],
    ['bulk-volume', 'us', 28.316846592, 'cu ft'],
    ['bulk-volume', 'us', 764.554857984, 'cu yd'],
    ['bulk-volume', 'metric', 50, 'L'],
    ['mass', 'us', 0.45359237, 'lb'],
    ['mass', 'us', 0.2, 'oz'],
    ['area', 'us', 4046.8564224, 'acre'],
    ['area', 'us', 500, 'sq ft'],
    ['length', 'us', 0.0508, 'in'],
    ['length', 'us', 0.3048, 'ft'],
    ['length', 'metric', 0.1, 'm'],
    ['volume', 'us', null, 'fl oz'],
    ['mass', 'metric', 0, 'kg'],
    ['volume', 'us', Number.NaN, 'fl oz'],
  ] as const)('%s, %s: %s in %s', (quantity, system, value, id) => {
    expect(fittingUnit(quantity, system, value).id).toBe(id);
  });
  it('is always one of the units offered', () => {
    for (const quantity of QUANTITIES)
      for (const system of ['us', 'metric'] as const)
        for (const value of [-2, 1e-6, 1, 1e6])
          expect(unitChoices(quantity, system)).toContain(fittingUnit(quantity, system, value));
  });
});
