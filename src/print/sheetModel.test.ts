import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { deriveYard } from '../session/derive';
import '../session/deriveVisit';
import { yardFromGeoJson } from '../yard/codec';
import { emptyYard } from '../yard/defaults';
import type { Yard } from '../yard/types';
import { defaultSheetOptions, sheetModel } from './sheetModel';

function sample(name: string): Yard {
  const text = readFileSync(new URL(`../../sample-geojson/${name}.geojson`, import.meta.url), 'utf8');
  const { yard } = yardFromGeoJson(JSON.parse(text));
  if (!yard) throw new Error(name);
  return yard;
}
const options = defaultSheetOptions('2027-05-01');

describe.each(['corner-lot', 'townhouse', 'long-acre'])('sheet of %s', (name) => {
  const yard = sample(name);
  const derived = deriveYard(yard);
  const model = sheetModel(yard, derived, yard.visits[0]?.id ?? null, options);
  const words = JSON.stringify(model.pages);

  it('names every zone, product and rinse edge', () => {
    const visit = derived.visit(yard.visits[0]?.id ?? '');
    for (const zone of yard.zones) expect(words).toContain(zone.name);
    for (const dose of visit?.figures.doses ?? []) expect(words).toContain(dose.product.name);
    for (const edge of visit?.rinseEdges ?? []) expect(words).toMatch(new RegExp(`"E${edge.number}▼?"`));
  });
  it('explains the sign of a downhill side in legend and list, where it has one', () => {
    const visit = derived.visit(yard.visits[0]?.id ?? '');
    const isDownhill = (visit?.rinseEdges ?? []).some(({ downhill }) => downhill);
    const map = JSON.stringify(
      model.pages.filter(({ type }) => type === 'map').map((page) => 'margin' in page && page.margin),
    );
    expect(map.includes('Downhill side')).toBe(isDownhill);
    expect(words.includes('▼ after a number')).toBe(isDownhill);
  });
  it('words its days as the screens do, the day it was done before the day planned', () => {
    const first = yard.visits[0];
    if (!first) throw new Error('no visit');
    const done = { ...yard, visits: [{ ...first, date: '2027-04-05', doneOn: '2027-04-06' }] };
    const sheet = sheetModel(done, deriveYard(done), first.id, options);
    expect(sheet.visitDate).toBe('Tue, Apr\u00a06, 2027');
    expect(JSON.stringify(sheet.pages[0])).toContain('Sat, May\u00a01, 2027');
    expect(sheet.hasAreas).toBe(true);
  });
  it('says the cautions before the work', () => {
    expect(words.indexOf('Read the product label first')).toBeLessThan(words.indexOf('Order of work'));
    for (const word of ['gloves', 'pets', 'toward a storm drain', 'Local code', 'licensed'])
      expect(words).toContain(word);
  });
  it('is a map and areas without a visit', () => {
    const plain = sheetModel(yard, derived, null, options);
    expect(plain.pages[0]?.type).toBe('map');
    expect(plain.visitName).toBeNull();
    expect(JSON.stringify(plain.pages)).not.toContain('Order of work');
  });
  it('uses the scale asked for when it fits, else says so', () => {
    const ratioOf = (scale: number) => {
      const page = sheetModel(yard, derived, null, { ...options, scale }).pages[0];
      return page?.type === 'map' ? page.ratio : null;
    };
    expect(ratioOf(1777)).toBe(1777);
    expect(ratioOf(10)).toBeGreaterThan(10);
    expect(JSON.stringify(sheetModel(yard, derived, null, { ...options, scale: 10 }))).toContain(
      'does not fit',
    );
  });
});

it('prints what a rule of the place says against the visit, with where it was read', () => {
  const yard = sample('corner-lot');
  const visit = yard.visits.find((each) =>
    each.doses.some(
      ({ productId }) => (yard.products.find(({ id }) => id === productId)?.analysis.nPct ?? 0) > 0,
    ),
  );
  const rule = {
    id: 'r-1',
    name: 'Hardly any nitrogen',
    isOn: true,
    terms: { kind: 'cap', nutrient: 'N', per: 'dose', isSolubleOnly: false, maxKgPerM2: 1e-9 },
    source: 'made-up code',
    readOn: null,
  } as const;
  const words = (rules: Yard['rules']) => {
    const ruled = { ...yard, rules };
    return JSON.stringify(sheetModel(ruled, deriveYard(ruled), visit?.id ?? null, options).pages);
  };
  expect(words([])).not.toContain('Hardly any nitrogen');
  expect(words([rule])).toMatch(/Hardly any nitrogen.*made-up code.*check the local code/);
});

it('has no map for an empty yard', () => {
  const yard = emptyYard('e', 'Empty');
  expect(
    sheetModel(yard, deriveYard(yard), null, options).pages.every((page) => page.type === 'tables'),
  ).toBe(true);
});
