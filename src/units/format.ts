import type { Amount, UnitSystem } from '../yard/types';
import {
  KG_PER_LB,
  KG_PER_M2_OF_LB_PER_1000_SQFT,
  KG_PER_OZ,
  L_PER_CUFT,
  L_PER_CUYD,
  L_PER_FLOZ,
  L_PER_GAL,
  L_PER_M3,
  M_PER_FT,
  M_PER_IN,
  M2_PER_1000_SQFT,
  M2_PER_ACRE,
  M2_PER_HA,
  M2_PER_SQFT,
} from './factors';

/*
 * SI numbers to text for a person. Every function takes SI and a unit system and gives value and unit.
 * A number that is not finite gives a dash. No-break spaces keep a value with its unit.
 */

const NB = '\u00a0';
const DASH = '–';

export interface AmountUnit {
  readonly label: string;
  readonly si: number;
}
const SQFT: AmountUnit = { label: 'sq ft', si: M2_PER_SQFT };
const ACRE: AmountUnit = { label: 'acre', si: M2_PER_ACRE };
const M2: AmountUnit = { label: 'm²', si: 1 };
const HA: AmountUnit = { label: 'ha', si: M2_PER_HA };

/**
 * A number in plain decimal notation with thousands commas.
 * @param significantDigits 1 to 15; trailing zeros after the point are dropped
 */
export function formatNumber(value: number, significantDigits = 3): string {
  if (!Number.isFinite(value)) return DASH;
  return formatterOf('digits', significantDigits).format(value);
}

const formatters = new Map<string, Intl.NumberFormat>();

/** Kept, since making one takes longer than a hundred numbers. */
function formatterOf(by: 'digits' | 'decimals', count: number): Intl.NumberFormat {
  const key = `${by}${count}`;
  let formatter = formatters.get(key);
  if (!formatter) {
    const counts =
      by === 'digits'
        ? { maximumSignificantDigits: count }
        : { minimumFractionDigits: count, maximumFractionDigits: count };
    formatter = new Intl.NumberFormat('en-US', { ...counts, useGrouping: true, signDisplay: 'negative' });
    formatters.set(key, formatter);
  }
  return formatter;
}

/**
 * The number of an entry field. A number with a short form, as typed numbers have, comes whole; one that
 * is only the conversion of another unit's comes with four significant digits (off by 0.05 % at most).
 */
export function formatEntry(value: number): string {
  if (!Number.isFinite(value)) return DASH;
  const decimals = (digits: number) => Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value) || 1)));
  for (let digits = 5; digits <= 9; digits++) {
    const short = Number(value.toPrecision(digits));
    const isWhole = Math.abs(short - value) <= 1e-11 * Math.abs(value);
    if (isWhole && (digits <= 6 || decimals(digits) <= 4)) return formatNumber(short, digits);
  }
  return formatNumber(value, 4);
}

/** A number rounded at a decimal place (negative: tens, hundreds), that place always shown. */
export function formatAtPlace(value: number, place: number): string {
  const decimals = Math.max(0, place);
  const step = 10 ** -place;
  const rounded = place < 0 ? Math.round(value / step) * step : value;
  return formatterOf('decimals', decimals).format(rounded);
}

/** The unit an area of that size is shown in. */
export function areaUnit(areaM2: number, system: UnitSystem): AmountUnit {
  if (system === 'us') return Math.abs(areaM2) >= M2_PER_ACRE ? ACRE : SQFT;
  return Math.abs(areaM2) >= M2_PER_HA ? HA : M2;
}

/** An area: sq ft, from one acre up in acre; m², from one hectare up in ha. */
export function formatArea(areaM2: number, system: UnitSystem, significantDigits = 3): string {
  if (!Number.isFinite(areaM2)) return DASH;
  const unit = areaUnit(areaM2, system);
  return `${formatNumber(areaM2 / unit.si, significantDigits)}${NB}${unit.label}`;
}

/** Most decimals of an area with its error; 0.0001 acre is about 4 sq ft. */
const FINEST_PLACE = 4;

/** Decimal place of the n-th significant digit of a value after rounding: 83.5 to 3 digits is 1, 15,800 is -2. */
export function placeOf(value: number, digits: number): number {
  const rounded = Number(Math.abs(value).toPrecision(digits));
  return rounded > 0 ? digits - 1 - Math.floor(Math.log10(rounded)) : 0;
}

/**
 * The decimal place at which `formatAreaPm` prints an area: that of the second digit of its ±, after
 * rounding has carried (99.6 is 100, shown by its tens). Three digits of the area where it has no ±.
 * @param sigmaM2 one standard deviation, m²
 */
export function placeOfPm(areaM2: number, sigmaM2: number, system: UnitSystem): number {
  const { si } = areaUnit(areaM2, system);
  const pm = (2 * sigmaM2) / si;
  const isShown = pm >= 0.5 * 10 ** -FINEST_PLACE && Number.isFinite(pm);
  return isShown ? Math.min(FINEST_PLACE, placeOf(pm, 2)) : Math.max(0, placeOf(areaM2 / si, 3));
}

/**
 * An area with its error, such as "3,240 ± 45 sq ft": ± is two standard deviations (about 95 %), rounded
 * to two significant digits, and the area is rounded at the same place.
 * @param sigmaM2 one standard deviation, m²; the area stands alone where it is 0, not finite or too small to show
 */
export function formatAreaPm(areaM2: number, sigmaM2: number, system: UnitSystem): string {
  if (!Number.isFinite(areaM2)) return DASH;
  if (!(sigmaM2 > 0) || !Number.isFinite(sigmaM2)) return formatArea(areaM2, system);
  const unit = areaUnit(areaM2, system);
  const pm = (2 * sigmaM2) / unit.si;
  if (pm < 0.5 * 10 ** -FINEST_PLACE) return formatArea(areaM2, system);
  const place = placeOfPm(areaM2, sigmaM2, system);
  return `${formatAtPlace(areaM2 / unit.si, place)} ±${NB}${formatAtPlace(pm, place)}${NB}${unit.label}`;
}

/** The area of `formatAreaPm` without its ±, for where there is no room: the same digits in both. */
export function formatAreaOfPm(areaM2: number, sigmaM2: number, system: UnitSystem): string {
  return formatAreaPm(areaM2, sigmaM2, system).replace(/ ±\u00a0[\d.,]+/, '');
}

/** A length on the ground: ft with one decimal (inches under one foot), or m (cm under one metre). */
export function formatLength(lengthM: number, system: UnitSystem): string {
  if (!Number.isFinite(lengthM)) return DASH;
  if (system === 'us') {
    const ft = lengthM / M_PER_FT;
    return Math.abs(ft) >= 1 || ft === 0
      ? `${formatAtPlace(ft, Math.abs(ft) >= 1000 ? 0 : 1)}${NB}ft`
      : `${formatNumber(lengthM / M_PER_IN, 2)}${NB}in`;
  }
  return Math.abs(lengthM) >= 1 || lengthM === 0
    ? `${formatAtPlace(lengthM, Math.abs(lengthM) >= 1000 ? 0 : 2)}${NB}m`
    : `${formatNumber(lengthM * 100, 2)}${NB}cm`;
}

function smallOrLarge(value: number, small: AmountUnit, large: AmountUnit): AmountUnit {
  const count = Math.abs(Number((value / small.si).toPrecision(3)));
  return value !== 0 && count * small.si < large.si * (1 - 1e-12) ? small : large;
}

/** A value in the larger unit, or in the smaller where it would round to less than one of the larger. */
function formatIn(value: number, small: AmountUnit, large: AmountUnit): string {
  if (!Number.isFinite(value)) return DASH;
  const unit = smallOrLarge(value, small, large);
  return `${formatNumber(value / unit.si)}${NB}${unit.label}`;
}

const OZ: AmountUnit = { label: 'oz', si: KG_PER_OZ };
const LB: AmountUnit = { label: 'lb', si: KG_PER_LB };
const G: AmountUnit = { label: 'g', si: 0.001 };
const KG: AmountUnit = { label: 'kg', si: 1 };
const FLOZ: AmountUnit = { label: `fl${NB}oz`, si: L_PER_FLOZ };
const GAL: AmountUnit = { label: 'gal', si: L_PER_GAL };
const ML: AmountUnit = { label: 'mL', si: 0.001 };
const LITRE: AmountUnit = { label: 'L', si: 1 };
const CUFT: AmountUnit = { label: `cu${NB}ft`, si: L_PER_CUFT };
const CUYD: AmountUnit = { label: `cu${NB}yd`, si: L_PER_CUYD };
const M3: AmountUnit = { label: 'm³', si: L_PER_M3 };

/** A mass in kg: lb (oz under one pound), or kg (g under one kilogram). */
export function formatMass(massKg: number, system: UnitSystem): string {
  return system === 'us' ? formatIn(massKg, OZ, LB) : formatIn(massKg, G, KG);
}

/**
 * A volume in L: gal (fl oz under one gallon), or L (mL under one litre).
 * @param bulk for mulch and the like: cu yd (cu ft under one), or m³ (L under one)
 */
export function formatVolume(volumeL: number, system: UnitSystem, bulk = false): string {
  if (bulk) return system === 'us' ? formatIn(volumeL, CUFT, CUYD) : formatIn(volumeL, LITRE, M3);
  return system === 'us' ? formatIn(volumeL, FLOZ, GAL) : formatIn(volumeL, ML, LITRE);
}

/**
 * A volume in the unit in which another is shown, so that figures of one kind can be held side by side: 124
 * fl oz of the 3.95 gal a visit takes are 0.969 gal.
 */
export function formatVolumeLike(volumeL: number, likeL: number, system: UnitSystem): string {
  const unit = amountLadder('L', system, false, likeL);
  return Number.isFinite(volumeL) ? `${formatNumber(volumeL / unit.si)}${NB}${unit.label}` : DASH;
}

/** The unit an amount of that size is shown in. @param value in L or kg */
export function amountLadder(
  measure: Amount['unit'],
  system: UnitSystem,
  bulk: boolean,
  value: number,
): AmountUnit {
  if (measure === 'kg') return system === 'us' ? smallOrLarge(value, OZ, LB) : smallOrLarge(value, G, KG);
  if (bulk) return system === 'us' ? smallOrLarge(value, CUFT, CUYD) : smallOrLarge(value, LITRE, M3);
  return system === 'us' ? smallOrLarge(value, FLOZ, GAL) : smallOrLarge(value, ML, LITRE);
}

/** An amount of product, by volume or by mass. @param bulk volumes as in formatVolume */
export function formatAmount(amount: Amount, system: UnitSystem, bulk = false): string {
  return amount.unit === 'L' ? formatVolume(amount.value, system, bulk) : formatMass(amount.value, system);
}

/** @param amountPerM2 amount of product per m², shown per 1,000 sq ft or per 100 m². */
export function formatAmountRate(amountPerM2: Amount, system: UnitSystem, bulk = false): string {
  const areaM2 = system === 'us' ? M2_PER_1000_SQFT : 100;
  const amount: Amount = { unit: amountPerM2.unit, value: amountPerM2.value * areaM2 };
  return `${formatAmount(amount, system, bulk)} per ${system === 'us' ? `1,000${NB}sq${NB}ft` : `100${NB}m²`}`;
}

/** @param kgPerM2 nutrient laid down, kg/m²: "0.45 lb per 1,000 sq ft" or "2.2 g/m²". */
export function formatNutrientRate(kgPerM2: number, system: UnitSystem): string {
  if (!Number.isFinite(kgPerM2)) return DASH;
  return system === 'us'
    ? `${formatNumber((kgPerM2 * M2_PER_1000_SQFT) / KG_PER_LB)}${NB}lb per 1,000${NB}sq${NB}ft`
    : `${formatNumber(kgPerM2 * 1000)}${NB}g/m²`;
}

/** Money with two decimals after the sign of the yard's currency. */
export function formatMoney(value: number, currency: string): string {
  if (!Number.isFinite(value)) return DASH;
  const text = Math.abs(value).toLocaleString('en-US', {
    minimumFractionDigits: 2,
    maximumFractionDigits: 2,
  });
  return `${value < 0 ? '−' : ''}${currency}${text}`;
}

/** @param share 0.02 gives "2 %"; two significant digits under 10 %, whole percents above. */
export function formatPercent(share: number): string {
  if (!Number.isFinite(share)) return DASH;
  const percent = share * 100;
  return `${Math.abs(percent) >= 10 ? formatAtPlace(percent, 0) : formatNumber(percent, 2)}${NB}%`;
}

/** How far a number may be from a step, in steps, and still stand on it: a limit typed in another unit comes back as typed. */
const STEP_SLACK = 1e-3;

/**
 * The warmest air that is allowed, °C, in degrees F (us) or C (metric) to a tenth. Rounded down: what is shown
 * is never warmer than the limit.
 */
export function formatTemperature(temperatureC: number, system: UnitSystem): string {
  if (!Number.isFinite(temperatureC)) return DASH;
  const [degrees, label] = system === 'us' ? [(temperatureC * 9) / 5 + 32, '°F'] : [temperatureC, '°C'];
  return `${formatNumber(Math.floor(degrees * 10 + STEP_SLACK) / 10, 6)}${NB}${label}`;
}

/** As `formatNutrientRate`, for the most that is allowed: three digits, rounded down, so never more than the limit. */
export function formatMostRate(kgPerM2: number, system: UnitSystem): string {
  if (!(kgPerM2 > 0) || !Number.isFinite(kgPerM2)) return formatNutrientRate(kgPerM2, system);
  const unit = system === 'us' ? KG_PER_M2_OF_LB_PER_1000_SQFT : 0.001;
  const step = unit * 10 ** -placeOf(kgPerM2 / unit, 3);
  return formatNutrientRate(Math.floor(kgPerM2 / step + STEP_SLACK) * step, system);
}

/** The least width that must be kept, m: ft to a tenth or m to a hundredth, rounded up, so never less than the limit. */
export function formatLeastLength(lengthM: number, system: UnitSystem): string {
  if (!Number.isFinite(lengthM)) return DASH;
  const [unit, label, scale] = system === 'us' ? [M_PER_FT, 'ft', 10] : [1, 'm', 100];
  return `${formatNumber(Math.ceil((lengthM / unit) * scale - STEP_SLACK) / scale, 9)}${NB}${label}`;
}

/** A span of time in seconds: minutes under two hours, hours under two days, else days; three significant digits. */
export function formatDuration(seconds: number): string {
  if (!Number.isFinite(seconds)) return DASH;
  const [size, label] = seconds < 7200 ? [60, 'min'] : seconds < 172_800 ? [3600, 'h'] : [86_400, 'days'];
  return `${formatNumber(seconds / size)}${NB}${label}`;
}
