import type { Amount, UnitSystem } from '../yard/types';
import {
  KG_PER_LB,
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

interface Unit {
  readonly label: string;
  readonly si: number;
}
const SQFT: Unit = { label: 'sq ft', si: M2_PER_SQFT };
const ACRE: Unit = { label: 'acre', si: M2_PER_ACRE };
const M2: Unit = { label: 'm²', si: 1 };
const HA: Unit = { label: 'ha', si: M2_PER_HA };

/**
 * A number in plain decimal notation with thousands commas.
 * @param significantDigits 1 to 15; trailing zeros after the point are dropped
 */
export function formatNumber(value: number, significantDigits = 3): string {
  if (!Number.isFinite(value)) return DASH;
  return value.toLocaleString('en-US', {
    maximumSignificantDigits: significantDigits,
    useGrouping: true,
    signDisplay: 'negative',
  });
}

/** A number rounded at a decimal place (negative: tens, hundreds), that place always shown. */
function formatAtPlace(value: number, place: number): string {
  const decimals = Math.max(0, place);
  const step = 10 ** -place;
  const rounded = place < 0 ? Math.round(value / step) * step : value;
  return rounded.toLocaleString('en-US', {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    signDisplay: 'negative',
  });
}

function areaUnit(areaM2: number, system: UnitSystem): Unit {
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
  // the place of the second digit, after rounding has carried (99.6 is 100, shown by its tens)
  const place = Math.min(FINEST_PLACE, 1 - Math.floor(Math.log10(Number(pm.toPrecision(2)))));
  if (pm < 0.5 * 10 ** -FINEST_PLACE) return formatArea(areaM2, system);
  return `${formatAtPlace(areaM2 / unit.si, place)} ±${NB}${formatAtPlace(pm, place)}${NB}${unit.label}`;
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

/** A value in the larger unit, or in the smaller where it would round to less than one of the larger. */
function formatIn(value: number, small: Unit, large: Unit): string {
  if (!Number.isFinite(value)) return DASH;
  const count = Math.abs(Number((value / small.si).toPrecision(3)));
  const unit = value !== 0 && count * small.si < large.si * (1 - 1e-12) ? small : large;
  return `${formatNumber(value / unit.si)}${NB}${unit.label}`;
}

const OZ: Unit = { label: 'oz', si: KG_PER_OZ };
const LB: Unit = { label: 'lb', si: KG_PER_LB };
const G: Unit = { label: 'g', si: 0.001 };
const KG: Unit = { label: 'kg', si: 1 };
const FLOZ: Unit = { label: `fl${NB}oz`, si: L_PER_FLOZ };
const GAL: Unit = { label: 'gal', si: L_PER_GAL };
const ML: Unit = { label: 'mL', si: 0.001 };
const LITRE: Unit = { label: 'L', si: 1 };
const CUFT: Unit = { label: `cu${NB}ft`, si: L_PER_CUFT };
const CUYD: Unit = { label: `cu${NB}yd`, si: L_PER_CUYD };
const M3: Unit = { label: 'm³', si: L_PER_M3 };

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
    ? `${formatNumber((kgPerM2 * M2_PER_1000_SQFT) / KG_PER_LB, 2)}${NB}lb per 1,000${NB}sq${NB}ft`
    : `${formatNumber(kgPerM2 * 1000, 2)}${NB}g/m²`;
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

/** An air temperature in °C, shown in whole degrees F (us) or C (metric). */
export function formatTemperature(temperatureC: number, system: UnitSystem): string {
  if (!Number.isFinite(temperatureC)) return DASH;
  const [degrees, label] = system === 'us' ? [(temperatureC * 9) / 5 + 32, '°F'] : [temperatureC, '°C'];
  return `${formatAtPlace(degrees, 0)}${NB}${label}`;
}
