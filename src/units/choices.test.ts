import { describe, expect, it } from 'vitest';
import { type Quantity, unitChoices } from './choices';

const QUANTITIES: readonly Quantity[] = [
  'area',
  'length',
  'depth',
  'mass',
  'volume',
  'volume-per-area',
  'mass-per-area',
  'density',
  'temperature',
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
