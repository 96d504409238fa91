import { meanOfReadings, type Readings, readingList } from '../../pace/calibrate/readings';
import { courseLength, SMALL_PLOT_M2 } from '../../pace/calibrate/sprayOutput';
import { spacingOf } from '../../pace/usual';
import { M_PER_FT } from '../../units/factors';
import { formatArea, formatLength } from '../../units/format';
import { formatReading } from '../../units/formatPace';
import type { CalibrationKind, Equipment, UnitSystem } from '../../yard/types';
import { type CalibrationSheet, isSpreader, length, type SheetField, step, TIMES } from './sheet-types';
import { catchSheet, panSheet } from './spreader-sheets';

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
  const { applicator } = equipment;
  const mark = step(
    `Mark out a piece of ground, such as ${plotWords(equipment, units)}. Its width is a whole number of passes, ${formatLength(spacingOf(equipment), units)} from one to the next as the equipment now has it: walk them so far apart.`,
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

/** Width of a usual course, about, and its ground, about; common practice, no source. */
const PLOT_WIDTH_M = 3;
const PLOT_M2 = 25;

/** "6.00 m wide (4 passes) by 4 m long, 24.0 m²": an example that fits the distance between passes. */
function plotWords(equipment: Equipment, units: UnitSystem): string {
  const spacingM = spacingOf(equipment);
  const passes = Math.max(1, Math.round(PLOT_WIDTH_M / spacingM));
  const widthM = passes * spacingM;
  const unitM = units === 'us' ? M_PER_FT : 1;
  const long = Math.max(1, Math.round(PLOT_M2 / widthM / unitM));
  const count = passes === 1 ? 'one pass' : `${passes} passes`;
  return `${formatLength(widthM, units)} wide (${count}) by ${long}\u00a0${units === 'us' ? 'ft' : 'm'} long, ${formatArea(widthM * long * unitM, units)}`;
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
