import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { yardFromGeoJson } from '../yard/codec';
import type { LocalRule, Yard } from '../yard/types';
import { deriveYard } from './derive';
import './deriveVisit';

const text = readFileSync(new URL('../../sample-geojson/corner-lot.geojson', import.meta.url), 'utf8');
const read = yardFromGeoJson(JSON.parse(text)).yard;
if (!read) throw new Error('the sample does not open');
const plain: Yard = { ...read, rules: [] };
const visit = plain.visits.find((each) => each.doses.length > 0);
const buffer: LocalRule = {
  id: 'r-1',
  name: 'Strip',
  isOn: true,
  terms: { kind: 'buffer', round: 'storm-drain', widthM: 15 },
  source: '',
  readOn: null,
};

describe('rules of the place in what is derived', () => {
  const all = { classes: ['turf-regular', 'turf-low-cut'], include: [], exclude: [] } as const;
  const yard: Yard = {
    ...plain,
    visits: visit ? [{ ...visit, zones: all, doses: visit.doses.slice(0, 1) }] : [],
  };
  const treatedOf = (derived: ReturnType<typeof deriveYard>) =>
    [...(derived.visit(visit?.id ?? '')?.treated.values() ?? [])].reduce((sum, zone) => sum + zone.areaM2, 0);

  it('a buffer rule widens the strip at once, and gives the ground back when it is off', () => {
    const before = deriveYard(yard);
    const held = deriveYard({ ...yard, rules: [buffer] }, before);
    const off = deriveYard({ ...yard, rules: [{ ...buffer, isOn: false }] }, held);
    expect(treatedOf(before)).toBeGreaterThan(100);
    expect(treatedOf(held)).toBeLessThan(treatedOf(before) - 10);
    expect(treatedOf(off)).toBeCloseTo(treatedOf(before), 9);
  });
  it('a rule changes what speaks against the season, not the visit’s amounts', () => {
    const slow: LocalRule = { ...buffer, terms: { kind: 'slow-share', minPct: 100 } };
    const before = deriveYard(plain);
    const after = deriveYard({ ...plain, rules: [slow] }, before);
    expect(before.season().issues.some(({ code }) => code.startsWith('rule-'))).toBe(false);
    expect(after.season().issues.some(({ code }) => code === 'rule-slow-share')).toBe(true);
    expect(after.season().entries).toEqual(before.season().entries);
  });
});
