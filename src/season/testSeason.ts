import { holdVisit } from '../plan/holdVisit';
import { lbPer1000, NO_CAPS, sqft, turfYard } from '../plan/testDose';
import type { VisitFigures } from '../plan/types';
import { planVisit } from '../plan/visit';
import { newSoilTest } from '../soil/newSoilTest';
import { visitZones } from '../yard/choose';
import { newDose, newProduct, newVisit } from '../yard/defaults';
import type { Amount, LocalRule, Product, RuleTerms, SoilTest, Visit, VisitDose, Yard } from '../yard/types';
import { seasonFigures } from './seasonFigures';
import type { SeasonFigures } from './types';

export { NO_CAPS };

/*
 * Invented seasons for the tests of the ledger: a yard of the turf zones `front` and `back`.
 */

/** A product by its analysis alone, at a label rate of so much N (or of product where it has none). @param lbPer1000Sqft pounds per 1,000 sq ft */
export function testFeed(
  id: string,
  [nPct, p2o5Pct, k2oPct]: readonly [number, number, number],
  lbPer1000Sqft = 1,
  fields: Partial<Product> = {},
): Product {
  const rateKgPerM2 = lbPer1000(lbPer1000Sqft);
  return newProduct(id, {
    name: `Feed ${nPct}-${p2o5Pct}-${k2oPct}`,
    analysis: { nPct, p2o5Pct, k2oPct, slowNPctOfN: null, elementsPct: {} },
    rate:
      nPct > 0
        ? { basis: 'nutrient-per-area', nutrient: 'N', rateKgPerM2 }
        : { basis: 'mass-per-area', rateKgPerM2 },
    packs: [{ id: 'bag', content: { unit: 'kg', value: 20 }, price: null }],
    ...fields,
  });
}

/** A visit on all regular turf. @param doses by product id, or more of the dose */
export function testDay(
  id: string,
  date: string | null,
  doses: readonly (string | (Partial<VisitDose> & { readonly productId: string }))[],
  fields: Partial<Visit> = {},
): Visit {
  return newVisit(id, {
    name: id,
    date,
    zones: { classes: ['turf-regular'], include: [], exclude: [] },
    doses: doses.map((dose, index) =>
      typeof dose === 'string'
        ? newDose(`${id}-${index}`, dose)
        : newDose(`${id}-${index}`, dose.productId, dose),
    ),
    ...fields,
  });
}

/** The same visit done on its day with what was really used by each dose; null: as planned. */
export function doneDay(visit: Visit, actual: Amount | null = null, doneOn = visit.date): Visit {
  return { ...visit, doneOn, doses: visit.doses.map((dose) => ({ ...dose, actual })) };
}

/** The yard with figures of every visit. @param areas of the zones `front` and `back`, sq ft */
export function planSeason(
  yard: Yard,
  areas: Readonly<Record<string, number>> = { front: 1000, back: 1000 },
): readonly VisitFigures[] {
  const alone = yard.visits.map((visit) => {
    const zonesByDose = new Map(
      visit.doses.map((dose) => [
        dose.id,
        visitZones(yard, visit, dose).map((zone) => ({
          zoneId: zone.id,
          name: zone.name,
          areaM2: sqft(areas[zone.id] ?? 0),
          stripM2: 0,
        })),
      ]),
    );
    return planVisit({ yard, visit, zonesByDose, sigmaByDose: new Map() });
  });
  return alone.map((own) =>
    holdVisit(
      yard,
      own,
      alone.filter((other) => other !== own),
    ),
  );
}

/** Ledger and issues of products and visits in a yard without caps, needs and rules but those given. */
export function testSeason(
  products: readonly Product[],
  visits: readonly Visit[],
  fields: Partial<Yard> = {},
  areas?: Readonly<Record<string, number>>,
): SeasonFigures & { readonly yard: Yard; readonly figures: readonly VisitFigures[] } {
  const yard = { ...turfYard(products, visits), caps: NO_CAPS, ...fields };
  const figures = planSeason(yard, areas);
  return { ...seasonFigures(yard, figures), yard, figures };
}

/** A rule that is on. */
export function testRule(terms: RuleTerms, fields: Partial<LocalRule> = {}): LocalRule {
  return {
    id: 'rule',
    name: 'Town rule',
    isOn: true,
    terms,
    source: 'town code',
    readOn: '2026-01-05',
    ...fields,
  };
}

/** A soil test of all regular turf that has nothing but the lab's word on phosphorus. */
export function testRatedSoil(date: string | null, phosphorus: SoilTest['labLevels']['P']): SoilTest {
  return newSoilTest(`soil ${date}`, {
    name: 'Lawn',
    zones: { classes: ['turf-regular'], include: [], exclude: [] },
    date,
    labLevels: phosphorus === undefined ? {} : { P: phosphorus },
  });
}
