import type { CalibrationResult } from '../../pace/calibrate/types';
import { usesOf } from '../../plan/applyUse';
import { productRate } from '../../plan/rate';
import { isSprayed } from '../../plan/sprayRate';
import { M_PER_FT, M_PER_IN } from '../../units/factors';
import { APPLICATOR_WORDS } from '../../words/productWords';
import { freeName } from '../../words/zoneWords';
import { newEquipment, USUAL_SWATH_M } from '../../yard/defaults';
import { changeSettings, replaceEntry } from '../../yard/edits';
import type {
  Amount,
  Applicator,
  Calibration,
  Equipment,
  Product,
  SpreaderSetting,
  UnitSystem,
  Yard,
} from '../../yard/types';

/** Usual swaths, round in feet and inches. */
const US_SWATH_M: Readonly<Record<Applicator, number>> = {
  'hose-end': 6 * M_PER_FT,
  'tank-sprayer': 4 * M_PER_FT,
  'broadcast-spreader': 10 * M_PER_FT,
  'drop-spreader': 22 * M_PER_IN,
  'by-hand': 5 * M_PER_FT,
};

/** Equipment just added: named by what it is, with a usual swath round in the units shown. */
export function freshEquipment(
  id: string,
  applicator: Applicator,
  taken: readonly Equipment[],
  units: UnitSystem,
): Equipment {
  const names = taken.map((each) => each.name);
  const word = APPLICATOR_WORDS[applicator];
  return newEquipment(id, applicator, {
    name: names.includes(word) ? freeName(word, names) : word,
    swathM: (units === 'us' ? US_SWATH_M : USUAL_SWATH_M)[applicator],
  });
}

/** A copy of its own: the same figures, without the calibrations, which were done with the other. */
export function copyOfEquipment(id: string, equipment: Equipment, taken: readonly Equipment[]): Equipment {
  const name = freeName(
    `${equipment.name}, copy`,
    taken.map((each) => each.name),
  );
  return { ...equipment, id, name, calibrations: [] };
}

/** A calibration that was done, and what of it is taken over. */
export interface DoneCalibration {
  readonly calibration: Calibration;
  readonly result: CalibrationResult;
  /** the setting of the dial it was done at, in the person's words. */
  readonly dial: string;
  /** false: the record alone is kept. */
  readonly isTaken: boolean;
}

/**
 * The yard with a calibration kept in its equipment and, where asked for, its figures put into the equipment:
 * flow, share, speed, swath; the setting for its product; the person's step.
 */
export function withCalibration(yard: Yard, equipmentId: string, done: DoneCalibration): Yard {
  const before = yard.equipment.find((each) => each.id === equipmentId);
  if (!before) return yard;
  const { calibration, result, isTaken } = done;
  const kept: Equipment = { ...before, calibrations: [...before.calibrations, calibration] };
  if (!isTaken) return replaceEntry(yard, 'equipment', kept);
  const { productId } = calibration;
  const settings =
    result.settingKgPerM2 === null || productId === null
      ? kept.settings
      : withSetting(kept.settings, {
          productId,
          words: done.dial.trim(),
          rateKgPerM2: result.settingKgPerM2,
        });
  const next = replaceEntry(yard, 'equipment', { ...kept, ...result.change, settings });
  return result.stepM === null ? next : changeSettings(next, { stepM: result.stepM });
}

/** Whether there is anything of a calibration to be put into the equipment; its setting needs a product. */
export function hasTakings(
  { change, settingKgPerM2, stepM }: CalibrationResult,
  hasProduct: boolean,
): boolean {
  return Object.keys(change).length > 0 || stepM !== null || (settingKgPerM2 !== null && hasProduct);
}

/**
 * What becomes of equipment that is to put out in another way. What the other way does not show goes: what it holds where
 * that is not told in its unit, what comes out where nothing is sprayed; a share of product is one of that bottle alone.
 */
export function asApplicator({ holds }: Equipment, applicator: Applicator): Partial<Equipment> {
  const isWet = applicator === 'hose-end' || applicator === 'tank-sprayer';
  return {
    applicator,
    productShare: null,
    ...(isWet ? {} : { flowLPerS: null }),
    ...(holds !== null && holds.unit !== fillUnit(applicator) ? { holds: null } : {}),
  };
}

/** The unit in which what an applicator holds is told. */
export function fillUnit(applicator: Applicator): Amount['unit'] {
  return applicator === 'hose-end' || applicator === 'tank-sprayer' ? 'L' : 'kg';
}

/** Settings with one more for a product: what it puts out is not known before it is typed in or caught. */
export function withBlankSetting(settings: Equipment['settings'], productId: string): Equipment['settings'] {
  return [...settings, { productId, words: '', rateKgPerM2: 0 }];
}

/** Settings with one put in the place of that of its product and its words on the dial, or of a blank one, or added. */
export function withSetting(
  settings: Equipment['settings'],
  setting: SpreaderSetting,
): Equipment['settings'] {
  const isSame = (each: SpreaderSetting) =>
    each.productId === setting.productId && each.words.trim() === setting.words.trim();
  const isBlank = (each: SpreaderSetting) =>
    each.productId === setting.productId && each.words.trim() === '' && !(each.rateKgPerM2 > 0);
  const same = settings.findIndex(isSame);
  const at = same < 0 ? settings.findIndex(isBlank) : same;
  return at < 0 ? [...settings, setting] : settings.with(at, setting);
}

/** Products that an applicator can put out: wet ones a sprayer, dry ones a spreader, by hand both. */
export function productsFor(products: readonly Product[], applicator: Applicator): readonly Product[] {
  if (applicator === 'by-hand') return products;
  const isWet = applicator === 'hose-end' || applicator === 'tank-sprayer';
  return products.filter((product) => usesOf(product).some((use) => isSprayed(use.product) === isWet));
}

/** The product as the use has it that this applicator puts out, else as its first use. */
export function useWith(product: Product, applicator: Applicator): Product {
  return usesOf(product).find((use) => use.product.applicator === applicator)?.product ?? product;
}

/**
 * What one coat of a product is to lay down, kg/m²: of the dose that asks, else by the label.
 * @param doseKgPerM2 all coats of that dose; null: none asks
 * @returns null where neither says it by weight
 */
export function wantedKgPerM2(
  product: Product,
  applicator: Applicator,
  coats: 1 | 2,
  doseKgPerM2: number | null = null,
): number | null {
  const rate = doseKgPerM2 ?? productRate(useWith(product, applicator)).rate?.kgPerM2 ?? null;
  return rate === null ? null : rate / coats;
}
