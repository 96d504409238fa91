import type { UnitSystem } from '../yard/types';
import {
  KG_PER_LB,
  KG_PER_M2_OF_LB_PER_1000_SQFT,
  KG_PER_OZ,
  L_PER_CUFT,
  L_PER_CUYD,
  L_PER_FLOZ,
  L_PER_GAL,
  L_PER_M3,
  L_PER_QT,
  M_PER_FT,
  M_PER_IN,
  M_PER_MILE,
  M_PER_YD,
  M2_PER_1000_SQFT,
  M2_PER_ACRE,
  M2_PER_HA,
  M2_PER_SQFT,
} from './factors';

export type Quantity =
  | 'area'
  | 'length'
  | 'depth'
  | 'mass'
  | 'volume'
  /** mulch and the like. */
  | 'bulk-volume'
  | 'volume-per-area'
  | 'mass-per-area'
  | 'density'
  | 'temperature'
  | 'flow'
  | 'speed';

/** A unit offered in an entry field. Numbers on the SI side are m², m, kg, L (both volumes), L/m², kg/m², kg/L, °C, L/s, m/s. */
export interface UnitChoice {
  readonly id: string;
  readonly label: string;
  toSI(value: number): number;
  fromSI(value: number): number;
}

function times(label: string, si: number): UnitChoice {
  return { id: label, label, toSI: (value) => value * si, fromSI: (value) => value / si };
}

const CELSIUS: UnitChoice = { id: '°C', label: '°C', toSI: (v) => v, fromSI: (v) => v };
const FAHRENHEIT: UnitChoice = {
  id: '°F',
  label: '°F',
  toSI: (v) => ((v - 32) * 5) / 9,
  fromSI: (v) => (v * 9) / 5 + 32,
};

const PER_1000 = 'per 1,000 sq ft';
const CHOICES: Readonly<Record<Quantity, Readonly<Record<UnitSystem, readonly UnitChoice[]>>>> = {
  area: {
    us: [times('sq ft', M2_PER_SQFT), times('acre', M2_PER_ACRE)],
    metric: [times('m²', 1), times('ha', M2_PER_HA)],
  },
  length: {
    us: [times('ft', M_PER_FT), times('in', M_PER_IN), times('yd', M_PER_YD)],
    metric: [times('m', 1), times('cm', 0.01)],
  },
  depth: {
    us: [times('in', M_PER_IN), times('ft', M_PER_FT)],
    metric: [times('mm', 0.001), times('cm', 0.01)],
  },
  mass: {
    us: [times('lb', KG_PER_LB), times('oz', KG_PER_OZ)],
    metric: [times('kg', 1), times('g', 0.001)],
  },
  volume: {
    us: [
      times('fl oz', L_PER_FLOZ),
      times('qt', L_PER_QT),
      times('gal', L_PER_GAL),
      times('cu ft', L_PER_CUFT),
      times('cu yd', L_PER_CUYD),
    ],
    metric: [times('L', 1), times('mL', 0.001), times('m³', L_PER_M3)],
  },
  'bulk-volume': {
    us: [times('cu ft', L_PER_CUFT), times('cu yd', L_PER_CUYD), times('qt', L_PER_QT)],
    metric: [times('L', 1), times('m³', L_PER_M3)],
  },
  'volume-per-area': {
    us: [
      times(`fl oz ${PER_1000}`, L_PER_FLOZ / M2_PER_1000_SQFT),
      times(`gal ${PER_1000}`, L_PER_GAL / M2_PER_1000_SQFT),
      times('gal per acre', L_PER_GAL / M2_PER_ACRE),
    ],
    metric: [times('mL/m²', 0.001), times('L per 100 m²', 0.01), times('L/ha', 1 / M2_PER_HA)],
  },
  'mass-per-area': {
    us: [
      times(`lb ${PER_1000}`, KG_PER_M2_OF_LB_PER_1000_SQFT),
      times(`oz ${PER_1000}`, KG_PER_OZ / M2_PER_1000_SQFT),
      times('lb per acre', KG_PER_LB / M2_PER_ACRE),
    ],
    metric: [times('g/m²', 0.001), times('kg per 100 m²', 0.01), times('kg/ha', 1 / M2_PER_HA)],
  },
  density: {
    us: [times('lb/gal', KG_PER_LB / L_PER_GAL), times('lb/cu ft', KG_PER_LB / L_PER_CUFT)],
    metric: [times('kg/L', 1)],
  },
  temperature: { us: [FAHRENHEIT], metric: [CELSIUS] },
  flow: {
    us: [times('gal/min', L_PER_GAL / 60), times('fl oz/min', L_PER_FLOZ / 60)],
    metric: [times('L/min', 1 / 60), times('mL/min', 0.001 / 60)],
  },
  speed: {
    us: [times('mph', M_PER_MILE / 3600), times('ft/s', M_PER_FT)],
    metric: [times('km/h', 1 / 3.6), times('m/s', 1)],
  },
};

/** Units for an entry field, the system's usual one first. The other system's units are not mixed in. */
export function unitChoices(quantity: Quantity, system: UnitSystem): readonly UnitChoice[] {
  return CHOICES[quantity][system];
}

/** Units from small to large by which a value is shown, as in `format.ts`; the others keep the usual one. */
const LADDERS: Partial<Readonly<Record<Quantity, Readonly<Record<UnitSystem, readonly string[]>>>>> = {
  area: { us: ['sq ft', 'acre'], metric: ['m²', 'ha'] },
  length: { us: ['in', 'ft'], metric: ['m'] },
  mass: { us: ['oz', 'lb'], metric: ['g', 'kg'] },
  volume: { us: ['fl oz', 'gal'], metric: ['mL', 'L'] },
  'bulk-volume': { us: ['cu ft', 'cu yd'], metric: ['L', 'm³'] },
};

/**
 * The unit in which a value reads best: the largest of its ladder that it fills once (1 gal, not 128 fl oz).
 * @param valueSi in SI as for `UnitChoice`; null, zero or not finite gives the system's usual unit
 */
export function fittingUnit(quantity: Quantity, system: UnitSystem, valueSi: number | null): UnitChoice {
  const choices = unitChoices(quantity, system);
  const usual = choices[0] as UnitChoice;
  const ladder = LADDERS[quantity]?.[system];
  if (!ladder || !valueSi || !Number.isFinite(valueSi)) return usual;
  const steps = ladder.flatMap((id) => choices.find((choice) => choice.id === id) ?? []);
  return steps.findLast((choice) => Math.abs(choice.fromSI(valueSi)) >= 1 - 1e-9) ?? steps[0] ?? usual;
}
