import type { LabelElement, SoilNutrient } from './types';

/** What the elements of labels and soil tests are called. */
export const ELEMENT_NAMES: Readonly<Record<LabelElement | SoilNutrient, string>> = {
  P: 'Phosphorus',
  K: 'Potassium',
  Ca: 'Calcium',
  Mg: 'Magnesium',
  S: 'Sulfur',
  Fe: 'Iron',
  Mn: 'Manganese',
  Zn: 'Zinc',
  Cu: 'Copper',
  B: 'Boron',
  Mo: 'Molybdenum',
  Cl: 'Chlorine',
  Na: 'Sodium',
  Co: 'Cobalt',
  Ni: 'Nickel',
};
