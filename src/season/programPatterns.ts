import { applyUse } from '../plan/applyUse';
import { isLiquid, nutrientPct } from '../plan/rate';
import { zoneClass } from '../yard/choose';
import {
  NUTRIENTS,
  type Nutrient,
  type Product,
  type Program,
  type Yard,
  type ZoneClass,
} from '../yard/types';
import { programSpan } from './programSpan';

/** Programs to begin with, made of what stands on the shelf. */
export interface ProgramPattern {
  readonly id: string;
  readonly programs: readonly Program[];
}

/** Days between visits; common practice, no source. A label that asks for more goes before it. */
const LIQUID_DAYS = 14;
const GRANULAR_DAYS = 56;

/**
 * Patterns that the yard's ground and shelf allow. Only what carries nitrogen is taken, the first of its kind on
 * the shelf, at its label rate, in the part of the season that no hold or rule bars (see `programSpan`); the days between are stretched to whole weeks where the label asks for more.
 * - `liquid-and-granular`: a light liquid on low-cut turf every two weeks, granules on regular turf every eight
 * - `liquid-joined`: the liquid on all turf every two weeks, granules joining every fourth visit
 * - `liquid`: the liquid alone on all turf; `granular`: the granules alone
 * @param newId makes an id that is new in the yard, from the word "program" or "dose"
 */
export function programPatterns(
  yard: Yard,
  year: number,
  newId: (prefix: string) => string,
): readonly ProgramPattern[] {
  const feeding = yard.products.filter((product) => product.analysis.nPct > 0);
  const liquid = feeding.map((product) => useOf(product, true)).find((found) => found !== null);
  const granular = feeding.map((product) => useOf(product, false)).find((found) => found !== null);
  const present = new Set(yard.zones.map(zoneClass));
  const turf = (['turf-low-cut', 'turf-regular'] as const).filter((one) => present.has(one));
  if (turf.length === 0) return [];

  const make = (name: string, found: Found, classes: readonly ZoneClass[], days: number): Program => ({
    id: newId('program'),
    name,
    ...programSpan(yard, year, { classes, include: [], exclude: [] }, carriedBy(found.product)),
    pace: {
      kind: 'every',
      days: Math.max(days, 7 * Math.ceil((found.product.limits.minIntervalDays ?? 0) / 7)),
    },
    zones: { classes, include: [], exclude: [] },
    doses: [
      {
        id: newId('dose'),
        productId: found.product.id,
        useId: found.useId,
        amount: { kind: 'label', rateFactor: 1 },
        zones: null,
      },
    ],
    tankL: null,
  });
  const patterns: ProgramPattern[] = [];
  const add = (id: string, ...programs: Program[]) => patterns.push({ id, programs });
  if (liquid && granular) {
    if (turf.length === 2)
      add(
        'liquid-and-granular',
        make('Light liquid', liquid, ['turf-low-cut'], LIQUID_DAYS),
        make('Granules', granular, ['turf-regular'], GRANULAR_DAYS),
      );
    const first = make('Light liquid', liquid, turf, LIQUID_DAYS);
    const days = first.pace.kind === 'every' ? first.pace.days : LIQUID_DAYS;
    const least = Math.max(GRANULAR_DAYS, granular.product.limits.minIntervalDays ?? 0);
    const joined = make('Granules', granular, turf, GRANULAR_DAYS);
    const nth = Math.ceil(least / days);
    add('liquid-joined', first, {
      ...joined,
      pace: { kind: 'with', programId: first.id, nth, offsetDays: 0 },
    });
  }
  if (liquid) add('liquid', make('Light liquid', liquid, turf, LIQUID_DAYS));
  if (granular) add('granular', make('Granules', granular, turf, GRANULAR_DAYS));
  return patterns;
}

/** Plant food that a product carries. */
function carriedBy(product: Product): readonly Nutrient[] {
  return NUTRIENTS.filter((nutrient) => nutrientPct(product, nutrient) > 0);
}

interface Found {
  readonly product: Product;
  readonly useId: string | null;
}

/** The use of a label that is poured or strewn, as asked; a tank or spreader goes before a hose-end bottle. */
function useOf(product: Product, isPoured: boolean): Found | null {
  const uses = [null, ...product.otherUses.map((use) => use.id)];
  const fitting = uses.filter((id) => {
    const used = applyUse(product, id);
    return used !== null && isFeed(used) && isLiquid(used) === isPoured;
  });
  const best = fitting.find((id) => applyUse(product, id)?.applicator === 'tank-sprayer');
  const useId = best ?? fitting[0];
  return useId === undefined ? null : { product, useId };
}

function isFeed({ form }: Product): boolean {
  return form === 'granular' || form === 'liquid-concentrate' || form === 'ready-to-use';
}
