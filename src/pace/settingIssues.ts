import { formatAmountRate, formatPercent } from '../units/format';
import type { Equipment, Issue, Product, SpreaderSetting, UnitSystem } from '../yard/types';
import { judgeRate } from './calibrate/judgeRate';
import { landedRate } from './usual';

/**
 * The setting that the equipment has for a product; of several, such as for one coat and for two, the one that
 * lays down what comes nearest to what is wanted, overlap counted (see `landedRate`), else the first. Null: none.
 * @param kgPerM2 what one coat is to lay down; null: not known
 */
export function settingOf(
  equipment: Pick<Equipment, 'settings' | 'overlapShare'>,
  productId: string,
  kgPerM2: number | null = null,
): SpreaderSetting | null {
  const own = equipment.settings.filter(
    (setting) => setting.productId === productId && setting.rateKgPerM2 > 0,
  );
  if (kgPerM2 === null || !(kgPerM2 > 0)) return own[0] ?? null;
  const off = ({ rateKgPerM2 }: SpreaderSetting) =>
    Math.abs(Math.log(landedRate(rateKgPerM2, equipment) / kgPerM2));
  return own.toSorted((a, b) => off(a) - off(b))[0] ?? null;
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
 * Whether the spreader's setting for the product, its passes overlapping as they are meant to, lays down what one coat
 * is to, within 5 % (see `landedRate`, `judgeRate`): `setting-not-found`, `setting-off`. Nothing for what is strewn by hand. Issues have no place yet.
 */
export function settingIssues({
  equipment,
  product,
  kgPerM2,
  units,
  isAssumed,
}: SettingCase): readonly Issue[] {
  if (equipment.applicator === 'by-hand') return [];
  const setting = settingOf(equipment, product.id, kgPerM2);
  if (!setting) {
    const whose = isAssumed
      ? 'No spreader of the yard is told'
      : `${equipment.name || 'The spreader'} has no setting for ${product.name}`;
    const message = `${whose}: begin with a small opening and do a catch test.`;
    return [{ code: 'setting-not-found', severity: 'warning', message, place: {} }];
  }
  if (kgPerM2 === null || !(kgPerM2 > 0)) return [];
  const landed = landedRate(setting.rateKgPerM2, equipment);
  const { isGood, off } = judgeRate(landed, kgPerM2);
  if (isGood) return [];
  const show = (value: number) => formatAmountRate({ unit: 'kg', value }, units);
  const dial = setting.words.trim() === '' ? 'The setting' : `Setting ${setting.words.trim()}`;
  const { overlapShare } = equipment;
  const laid =
    overlapShare > 0
      ? `; passes that overlap by ${formatPercent(overlapShare)} lay down ${show(landed)}`
      : '';
  const message = `${dial} puts out ${show(setting.rateKgPerM2)}${laid}, ${formatPercent(Math.abs(off))} ${
    off > 0 ? 'more' : 'less'
  } than the ${show(kgPerM2)} of one coat. ${off > 0 ? 'Close' : 'Open'} it a little and do a new catch test.`;
  return [{ code: 'setting-off', severity: 'warning', message, place: {} }];
}
