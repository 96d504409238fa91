import type { Equipment, UnitSystem } from '../../yard/types';
import { type CalibrationSheet, length, type SheetField, step, TIMES } from './sheet-types';

/** What a setting puts out, by weight over a run. */
export function catchSheet({ applicator }: Equipment, units: UnitSystem): CalibrationSheet {
  const weights: SheetField = {
    type: 'quantities',
    key: 'caughtKg',
    label: 'Weight',
    quantity: 'mass',
    unit: units === 'us' ? 'oz' : 'g',
    max: 500,
  };
  const isDrop = applicator === 'drop-spreader';
  const run = units === 'us' ? '50 ft' : '15 m';
  return {
    needs: isDrop
      ? 'A pan or trough hung under the hopper, a scale, a tape.'
      : 'A tarp or ground that is due for it, a scale, a tape.',
    steps: [
      step(
        'Choose the product and set the dial: as the bag says, else a small opening.',
        { type: 'product', label: 'Product', isNeeded: true },
        { type: 'dial' },
      ),
      step(
        `Mark a run, such as ${run}, on dry level ground. The width is ${isDrop ? 'that of the openings' : 'the swath, not as far as single grains fly'}.`,
        length('lengthM', 'Length of the run'),
        length('widthM', 'Width'),
      ),
      step(
        isDrop
          ? 'At the walk you will keep, walk the run with the pan hung under it, open at the first mark, shut at the last. Weigh what is caught, less the pan. Do it again.'
          : 'Weigh what is in the hopper, walk the run at the walk you will keep, open at the first mark, shut at the last, and weigh again: the difference is what it put out. Do it again.',
        weights,
      ),
      step('If you time the runs, your walk is found as well.', TIMES),
      step('Say how it will be laid, to hold the weight against the label.', { type: 'coats' }),
    ],
  };
}

/** Pans across the path of a broadcast spreader. */
export function panSheet(units: UnitSystem): CalibrationSheet {
  return {
    needs: 'An odd number of like shallow pans, a scale or a narrow glass, a tape.',
    steps: [
      step(
        `Lay the pans in a row across the path on dry level ground, the middle one under it, such as ${units === 'us' ? '1 ft' : '30 cm'} apart.`,
        {
          type: 'quantity',
          key: 'apartM',
          label: 'From one pan to the next',
          quantity: 'length',
          max: 10,
        },
      ),
      step(
        'Set the spreader as for the product, open it well before the row, walk straight over the middle pan, shut it well behind. Three times, all the same way.',
      ),
      step(
        'Weigh what each pan holds, or see how high it stands in a narrow glass: any measure, the same for all. From left to right as you walked.',
        { type: 'pans' },
      ),
    ],
  };
}
