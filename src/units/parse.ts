import type { UnitSystem } from '../yard/types';
import {
  KG_PER_LB,
  KG_PER_OZ,
  L_PER_CUFT,
  L_PER_CUYD,
  L_PER_FLOZ,
  L_PER_GAL,
  L_PER_M3,
  L_PER_PT,
  L_PER_QT,
  M_PER_FT,
  M_PER_IN,
  M_PER_MILE,
  M_PER_YD,
  M2_PER_ACRE,
  M2_PER_HA,
  M2_PER_SQFT,
} from './factors';

export type Parsed =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly message: string };

type Names = Readonly<Record<string, number>>;

const LENGTH: Names = {
  ft: M_PER_FT,
  foot: M_PER_FT,
  feet: M_PER_FT,
  "'": M_PER_FT,
  '′': M_PER_FT,
  '’': M_PER_FT,
  in: M_PER_IN,
  inch: M_PER_IN,
  inches: M_PER_IN,
  '"': M_PER_IN,
  '″': M_PER_IN,
  '”': M_PER_IN,
  "''": M_PER_IN,
  yd: M_PER_YD,
  yard: M_PER_YD,
  yards: M_PER_YD,
  mi: M_PER_MILE,
  mile: M_PER_MILE,
  miles: M_PER_MILE,
  m: 1,
  metre: 1,
  metres: 1,
  meter: 1,
  meters: 1,
  cm: 0.01,
  mm: 0.001,
  km: 1000,
};
const AREA: Names = {
  'sq ft': M2_PER_SQFT,
  sqft: M2_PER_SQFT,
  ft2: M2_PER_SQFT,
  'ft²': M2_PER_SQFT,
  sf: M2_PER_SQFT,
  'square feet': M2_PER_SQFT,
  acre: M2_PER_ACRE,
  acres: M2_PER_ACRE,
  ac: M2_PER_ACRE,
  'sq m': 1,
  m2: 1,
  'm²': 1,
  'square metres': 1,
  'square meters': 1,
  ha: M2_PER_HA,
  hectare: M2_PER_HA,
  hectares: M2_PER_HA,
};
const MASS: Names = {
  lb: KG_PER_LB,
  lbs: KG_PER_LB,
  pound: KG_PER_LB,
  pounds: KG_PER_LB,
  oz: KG_PER_OZ,
  ounce: KG_PER_OZ,
  ounces: KG_PER_OZ,
  kg: 1,
  kilogram: 1,
  kilograms: 1,
  g: 0.001,
  gram: 0.001,
  grams: 0.001,
  t: 1000,
  tonne: 1000,
};
const VOLUME: Names = {
  'fl oz': L_PER_FLOZ,
  floz: L_PER_FLOZ,
  'fluid ounces': L_PER_FLOZ,
  'fluid ounce': L_PER_FLOZ,
  gal: L_PER_GAL,
  gallon: L_PER_GAL,
  gallons: L_PER_GAL,
  qt: L_PER_QT,
  quart: L_PER_QT,
  quarts: L_PER_QT,
  pt: L_PER_PT,
  pint: L_PER_PT,
  pints: L_PER_PT,
  'cu ft': L_PER_CUFT,
  'cu yd': L_PER_CUYD,
  l: 1,
  litre: 1,
  litres: 1,
  liter: 1,
  liters: 1,
  ml: 0.001,
  m3: L_PER_M3,
  'm³': L_PER_M3,
};

/** A number (grouped, a fraction, or plain with or without one), then a unit: `ft2` and `m3`, or no digits; points as in "fl. oz." */
const PIECE =
  /^\s*(\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+\/\d+|\d*\.?\d+(?:\s+\d+\/\d+)?)\s*((?:ft2|m2|m3)(?!\d|\s*[a-z'"])|(?:[^\d.,]|(?<=[a-z])\.(?!\d))*)/i;

/** A number with commas (and points) as it was typed. */
const WITH_COMMA = /[+-]?[\d.]*,[\d.,]*/;
/** Thousands parted as they are here: three digits after every comma, and no nought before the first. */
const GROUPED = /^[+-]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?$/;

/** What is wrong with a comma that is not at a thousands place, and what to write; empty where none is wrong. */
function commaFault(text: string): string {
  const number = WITH_COMMA.exec(text)?.[0] ?? '';
  if (!/\d/.test(number) || GROUPED.test(number)) return '';
  const [whole = '', part = '', ...more] = number.split(',');
  const isDecimal = more.length === 0 && part !== '' && !part.includes('.');
  const instead = isDecimal ? `${whole.replaceAll('.', '') || '0'}.${part}` : number.replaceAll(',', '');
  return `${number}: write ${instead}; a comma parts thousands here.`;
}

/** Digits, grouped or not, with a point or an exponent; or a fraction with or without a whole number. */
const PLAIN = /^([+-]?)((?:\d[\d,]*\.?\d*|\.\d+)(?:e[+-]?\d+)?|(?:\d+\s+)?\d+\/\d+)$/i;

/** A plain number without a unit: "4.5", "-3", "12,500", "1/2", "6 1/2", "2e3". */
export function parseNumber(text: string): Parsed {
  const plain = text.trim().replace(/^[−–]/, '-');
  const fault = /^[+-]?[\d.,]+$/.test(plain) ? commaFault(plain) : '';
  if (fault) return { ok: false, message: fault };
  const [, sign, digits = ''] = PLAIN.exec(plain) ?? [];
  const value = digits === '' ? Number.NaN : readNumber(digits);
  if (!Number.isFinite(value))
    return { ok: false, message: plain === '' ? 'Type a number.' : `“${text.trim()}” is not a number.` };
  return { ok: true, value: sign === '-' && value !== 0 ? -value : value };
}

/**
 * Reads one or more "number unit" pieces and adds them up: `12' 6"`, `12 ft 6 in`, `6 1/2 in`, `3,200 sq ft`.
 * @param bare SI factor of a number without a unit
 */
function parsePieces(text: string, names: Names, bare: number, example: string): Parsed {
  const plain = text.trim();
  if (plain === '') return { ok: false, message: `Type a number, such as ${example}.` };
  const comma = commaFault(plain.replace(/,\s+/g, ' '));
  if (comma) return { ok: false, message: comma };
  if (/^[-−–]/.test(plain)) return { ok: false, message: 'It cannot be less than zero.' };
  let rest = plain;
  let value = 0;
  let pieces = 0;
  while (rest.trim() !== '') {
    const match = PIECE.exec(rest);
    if (!match)
      return { ok: false, message: `“${rest.trim()}” is not a number with a unit; type it like ${example}.` };
    const unit = (match[2] ?? '').trim().toLowerCase().replace(/\./g, '').replace(/\s+/g, ' ');
    rest = rest.slice(match[0].length);
    if (unit === '' && (pieces > 0 || rest.trim() !== '')) {
      return { ok: false, message: `“${plain}” has a number without a unit; type it like ${example}.` };
    }
    const factor = unit === '' ? bare : Object.hasOwn(names, unit) ? names[unit] : undefined;
    if (factor === undefined)
      return { ok: false, message: `“${unit}” is not a unit known here; type it like ${example}.` };
    value += readNumber(match[1] ?? '') * factor;
    pieces += 1;
  }
  return Number.isFinite(value)
    ? { ok: true, value }
    : { ok: false, message: `“${plain}” is not a number; type it like ${example}.` };
}

/** The number of "3,200", "6 1/2", "1/2" or ".5"; the text is of that form. */
export function readNumber(text: string): number {
  return text
    .replace(/,/g, '')
    .trim()
    .split(/\s+/)
    .reduce((sum, word) => {
      const [top, bottom] = word.split('/');
      return sum + (bottom === undefined ? Number(top) : Number(top) / Number(bottom));
    }, 0);
}

/** A length 0 or more, to metres. A bare number is in ft (us) or m (metric). */
export function parseLength(text: string, system: UnitSystem): Parsed {
  return parsePieces(text, LENGTH, system === 'us' ? M_PER_FT : 1, system === 'us' ? '12 ft 6 in' : '3.8 m');
}

/** An area 0 or more, to m². A bare number is in sq ft (us) or m² (metric). */
export function parseArea(text: string, system: UnitSystem): Parsed {
  return parsePieces(
    text,
    AREA,
    system === 'us' ? M2_PER_SQFT : 1,
    system === 'us' ? '3,200 sq ft' : '300 m²',
  );
}

/** A mass 0 or more, to kg. A bare number is in lb (us) or kg (metric). */
export function parseMass(text: string, system: UnitSystem): Parsed {
  return parsePieces(text, MASS, system === 'us' ? KG_PER_LB : 1, system === 'us' ? '40 lb' : '18 kg');
}

/** A volume 0 or more, to L. A bare number is in fl oz (us) or L (metric). */
export function parseVolume(text: string, system: UnitSystem): Parsed {
  return parsePieces(text, VOLUME, system === 'us' ? L_PER_FLOZ : 1, system === 'us' ? '32 fl oz' : '2.5 L');
}
