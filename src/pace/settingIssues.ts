import { formatAmountRate, formatPercent } from '../units/format';
import type { Equipment, Issue, Product, SpreaderSetting, UnitSystem } from '../yard/types';
import { judgeRate } from './calibrate/judgeRate';

/** The setting that the equipment has for a product, or null. */
export function settingOf(equipment: Pick<Equipment, 'settings'>, productId: string): SpreaderSetting | null {
  return equipment.settings.find((setting) => setting.productId === productId) ?? null;
}

interface SettingCase {
  readonly equipment: Equipment;
  readonly product: Product;
  /** what one coat is to lay down, kg/m²; null: the product's rate is not known by weight. */
  readonly kgPerM2: number | null;
  readonly units: UnitSystem;
  readonly isAssumed: boolean;
}

/**
 * Whether the spreader's setting for the product puts out what one coat is to lay down, within 5 % (see
 * `judgeRate`): `setting-not-found`, `setting-off`. Nothing for what is strewn by hand. Issues have no place yet.
 */
export function settingIssues({
  equipment,
  product,
  kgPerM2,
  units,
  isAssumed,
}: SettingCase): readonly Issue[] {
  if (equipment.applicator === 'by-hand') return [];
  const setting = settingOf(equipment, product.id);
  if (!setting || !(setting.rateKgPerM2 > 0)) {
    const whose = isAssumed
      ? 'No spreader of the yard is told'
      : `${equipment.name || 'The spreader'} has no setting for ${product.name}`;
    const message = `${whose}: begin with a small opening and do a catch test.`;
    return [{ code: 'setting-not-found', severity: 'warning', message, place: {} }];
  }
  if (kgPerM2 === null || !(kgPerM2 > 0)) return [];
  const { isGood, off } = judgeRate(setting.rateKgPerM2, kgPerM2);
  if (isGood) return [];
  const show = (value: number) => formatAmountRate({ unit: 'kg', value }, units);
  const dial = setting.words.trim() === '' ? 'The setting' : `Setting ${setting.words.trim()}`;
  const message = `${dial} puts out ${show(setting.rateKgPerM2)}, ${formatPercent(Math.abs(off))} ${
    off > 0 ? 'more' : 'less'
  } than the ${show(kgPerM2)} of one coat. ${off > 0 ? 'Close' : 'Open'} it a little and do a new catch test.`;
  return [{ code: 'setting-off', severity: 'warning', message, place: {} }];
}
