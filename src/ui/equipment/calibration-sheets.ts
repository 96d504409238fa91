import { meanOfReadings, type Readings, readingList } from '../../pace/calibrate/readings';
import { courseLength, SMALL_PLOT_M2 } from '../../pace/calibrate/sprayOutput';
import type { Quantity } from '../../units/choices';
import { formatArea, formatLength } from '../../units/format';
import { formatReading } from '../../units/formatPace';
import type { Applicator, CalibrationKind, Equipment, UnitSystem } from '../../yard/types';

/** One thing to be read, with the name it is kept by. */
export type SheetField =
  | {
      readonly type: 'quantity';
      readonly key: string;
      readonly label: string;
      readonly quantity: Quantity;
      readonly unit?: string;
      readonly max: number;
    }
  | { readonly type: 'times'; readonly label: string }
  | {
      readonly type: 'quantities';
      readonly key: string;
      readonly label: string;
      readonly quantity: Quantity;
      readonly unit?: string;
      readonly max: number;
    }
  | { readonly type: 'counts'; readonly key: string; readonly label: string }
  | { readonly type: 'draw' }
  | { readonly type: 'pans' }
  | { readonly type: 'product'; readonly label: string; readonly isNeeded: boolean }
  | { readonly type: 'dial' }
  | { readonly type: 'coats' };

/** One thing to do in the yard, and what is read by it. */
export interface SheetStep {
  readonly words: string;
  readonly fields: readonly SheetField[];
}

/** A sheet to calibrate by. */
export interface CalibrationSheet {
  /** things to have at hand. */
  readonly needs: string;
  readonly steps: readonly SheetStep[];
}

const TIMES: SheetField = { type: 'times', label: 'Time' };

function length(key: string, label: string): SheetField {
  return { type: 'quantity', key, label, quantity: 'length', max: 1000 };
}

function step(words: string, ...fields: readonly SheetField[]): SheetStep {
  return { words, fields };
}

const isSpreader = (applicator: Applicator) =>
  applicator === 'broadcast-spreader' || applicator === 'drop-spreader';

/** The sheet of one kind of calibration for a piece of equipment; lengths in its words follow what is read. */
export function sheetOf(
  kind: CalibrationKind,
  equipment: Equipment,
  readings: Readings,
  units: UnitSystem,
): CalibrationSheet {
  switch (kind) {
    case 'bucket':
      return bucketSheet(equipment, units);
    case 'course':
      return courseSheet(equipment, units);
    case 'small-plot':
      return smallPlotSheet(readings, units);
    case 'catch':
      return catchSheet(equipment, units);
    case 'pans':
      return panSheet(units);
    case 'walk':
      return walkSheet(equipment, units);
  }
}

function bucketSheet({ applicator }: Equipment, units: UnitSystem): CalibrationSheet {
  const volume: SheetField = {
    type: 'quantity',
    key: 'volumeL',
    label: 'Bucket to the mark holds',
    quantity: 'volume',
    unit: units === 'us' ? 'gal' : 'L',
    max: 2000,
  };
  const product: SheetField = { type: 'product', label: 'For the product', isNeeded: false };
  if (applicator === 'hose-end') {
    return {
      needs: 'Bucket with a mark at a known volume, a watch, the hose you work with.',
      steps: [
        step(
          'Rinse the bottle, leave it empty and fit it. Open the tap as far as you do when working: what it draws changes with the pressure.',
        ),
        step('Make a mark in the bucket and measure what it holds up to there.', volume),
        step('Spray into the bucket up to the mark and time it. Do it three times.', TIMES),
        step('Find out how much of the spray is product.', { type: 'draw' }),
        step('To see at once how fast to walk, choose what it is for.', product),
      ],
    };
  }
  return {
    needs: 'Jug or bucket with a mark at a known volume, a watch.',
    steps: [
      step('Half fill the rinsed tank with plain water. Pump as you do when working and keep it even.'),
      step('Choose the mark to spray to.', volume),
      step('Spray into it up to the mark and time it. Do it three times.', TIMES),
      step('To see at once how fast to walk, choose what it is for.', product),
    ],
  };
}

function courseSheet(equipment: Equipment, units: UnitSystem): CalibrationSheet {
  const { applicator, swathM } = equipment;
  const plot = units === 'us' ? '10 ft by 25 ft, 250 sq ft' : '2.5 m by 10 m, 25 m²';
  const mark = step(
    `Mark out a piece of ground, such as ${plot}. Its width is best a whole number of passes (now ${formatLength(swathM, units)} each).`,
    length('lengthM', 'Length'),
    length('widthM', 'Width'),
  );
  if (applicator === 'hose-end') {
    return {
      needs: 'Tape, flags, a watch, a measuring jug.',
      steps: [
        step(
          'Fill the rinsed bottle with plain water to a known level. Open the tap as far as you do when working.',
        ),
        mark,
        step('Cover it once at your usual walk and time it.', TIMES),
        step('Measure how much is gone from the bottle.', {
          type: 'quantity',
          key: 'usedL',
          label: 'Gone from the bottle',
          quantity: 'volume',
          unit: units === 'us' ? 'fl oz' : 'mL',
          max: 100,
        }),
      ],
    };
  }
  if (applicator === 'tank-sprayer') {
    return {
      needs: 'Tape, flags, a watch, a measuring jug.',
      steps: [
        step('Fill the rinsed tank with plain water to a mark, standing level.'),
        mark,
        step('Spray it once, evenly, at your usual walk and time it.', TIMES),
        step('Put the tank where it stood and fill it to the mark again; measure what that takes.', {
          type: 'quantity',
          key: 'usedL',
          label: 'Water to fill it again',
          quantity: 'volume',
          unit: units === 'us' ? 'fl oz' : 'L',
          max: 1000,
        }),
        step('To see what a fill takes of a product, choose it.', {
          type: 'product',
          label: 'For the product',
          isNeeded: false,
        }),
      ],
    };
  }
  return {
    needs: 'Tape, flags, a scale, a watch; a tarp, or ground that is due for it.',
    steps: [
      step(
        'Choose what is spread. Weigh what goes in.',
        { type: 'product', label: 'Product', isNeeded: isSpreader(applicator) },
        ...(isSpreader(applicator) ? [{ type: 'dial' } as const] : []),
      ),
      mark,
      step('Spread it once over that ground at your usual walk and time it.', TIMES),
      step(
        'Weigh what is left; the difference is what was used.',
        {
          type: 'quantity',
          key: 'usedKg',
          label: 'Used',
          quantity: 'mass',
          unit: units === 'us' ? 'oz' : 'g',
          max: 500,
        },
        { type: 'coats' },
      ),
    ],
  };
}

function smallPlotSheet(readings: Readings, units: UnitSystem): CalibrationSheet {
  const width = readings.widthM;
  const plot = formatArea(SMALL_PLOT_M2, units);
  const course =
    width !== undefined && width > 0
      ? `a course of ${formatLength(courseLength(SMALL_PLOT_M2, width), units)}`
      : 'the course';
  const why =
    units === 'us'
      ? 'Fluid ounces caught in the time of it are gallons an acre.'
      : 'What is caught in the time of it is laid on that ground.';
  const mean = meanOfReadings(readingList(readings, 'timeS'));
  const long =
    mean === null ? 'the mean of those times' : `${formatReading(mean.mean)}, the mean of those times`;
  return {
    needs: 'Tape, two flags, a watch, a measuring jug.',
    steps: [
      step(
        'Half fill the rinsed tank with plain water. On dry pavement, spray a little and measure how wide it wets the ground evenly.',
        length('widthM', 'Width of the spray'),
      ),
      step(
        `1/128 acre is ${plot}: mark ${course} on ground like that to be sprayed. ${why}`,
        length('lengthM', 'Length of the course'),
      ),
      step('Walk it spraying, at the walk you can keep, and time it. Do it at least twice.', TIMES),
      step(`Spray into the jug for ${long}. Do it again.`, {
        type: 'quantities',
        key: 'caughtL',
        label: 'Caught',
        quantity: 'volume',
        unit: units === 'us' ? 'fl oz' : 'mL',
        max: 1000,
      }),
      step('To see what a fill takes of a product, choose it.', {
        type: 'product',
        label: 'For the product',
        isNeeded: false,
      }),
    ],
  };
}

function catchSheet({ applicator }: Equipment, units: UnitSystem): CalibrationSheet {
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

function panSheet(units: UnitSystem): CalibrationSheet {
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

function walkSheet({ applicator }: Equipment, units: UnitSystem): CalibrationSheet {
  const load =
    applicator === 'by-hand'
      ? ''
      : isSpreader(applicator)
        ? ' with the spreader half full, shut,'
        : ' with it half full of plain water,';
  return {
    needs: 'Tape, two flags, a watch.',
    steps: [
      step(
        `Mark a straight run on your own grass, such as ${units === 'us' ? '100 ft' : '30 m'}.`,
        length('distanceM', 'Distance'),
      ),
      step(
        `Be walking evenly before the first flag,${load} and time it from flag to flag. Three times.`,
        TIMES,
      ),
      step('Count your steps from flag to flag as well, if passes are to be told in steps.', {
        type: 'counts',
        key: 'steps',
        label: 'Steps',
      }),
    ],
  };
}
