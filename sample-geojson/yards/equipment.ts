import { KG_PER_LB, L_PER_FLOZ, L_PER_GAL, M_PER_FT, M2_PER_1000_SQFT } from '../../src/units/factors';
import { newEquipment } from '../../src/yard/defaults';
import type { Calibration, CalibrationKind, Equipment } from '../../src/yard/types';

/** Invented equipment, as its invented owner measured it. */

const LB_PER_1000 = KG_PER_LB / M2_PER_1000_SQFT;
/** m/s in one mile an hour: 1,609.344 m in 3,600 s. */
const M_PER_S_OF_MPH = 1609.344 / 3600;

/** What fifteen pans a foot apart held, in grams, from left to right: half of the middle's 12 at 5 ft to either side. */
const PANS = [1, 3, 6, 8, 10, 11, 12, 12, 12, 11, 10, 8, 6, 3, 1];

function done(
  id: string,
  kind: CalibrationKind,
  on: string,
  readings: Calibration['readings'],
  productId: string | null = null,
): Calibration {
  return { id, kind, on, productId, readings, note: '' };
}

/** Hose-end bottle: 5 gal caught in 130 s, 15 fl oz gone from the bottle meanwhile. */
const hoseEnd = newEquipment('e-bottle', 'hose-end', {
  name: 'Hose-end bottle, fan tip',
  swathM: 6 * M_PER_FT,
  flowLPerS: (5 * L_PER_GAL) / 130,
  productShare: (15 * L_PER_FLOZ) / (5 * L_PER_GAL),
  calibrations: [
    done('c-bottle', 'bucket', '2027-04-03', {
      volumeL: 5 * L_PER_GAL,
      timeS1: 129,
      timeS2: 132,
      timeS3: 129,
      goneL: 15 * L_PER_FLOZ,
      goneS: 130,
    }),
  ],
  note: 'Tap fully open; with the washing machine running it gives less.',
});

/** Backpack: 51 fl oz caught in one minute at the pressure it is pumped to. */
const backpack = newEquipment('e-backpack', 'tank-sprayer', {
  name: 'Backpack, flat fan',
  swathM: 4 * M_PER_FT,
  flowLPerS: (51 * L_PER_FLOZ) / 60,
  holds: { unit: 'L', value: 4 * L_PER_GAL },
  calibrations: [
    done('c-backpack', 'bucket', '2027-04-03', {
      volumeL: 51 * L_PER_FLOZ,
      timeS1: 61,
      timeS2: 59,
      timeS3: 60,
    }),
  ],
});

/** Broadcast spreader: pans showed half of the middle's weight 5 ft to either side. */
const broadcast = newEquipment('e-broadcast', 'broadcast-spreader', {
  name: 'Walk-behind broadcast spreader',
  swathM: 10 * M_PER_FT,
  hasEdgeGuard: true,
  guardedSpreadM: 1.5 * M_PER_FT,
  holds: { unit: 'kg', value: 50 * KG_PER_LB },
  speedMPerS: 2.7 * M_PER_S_OF_MPH,
  settings: [
    { productId: 'p-granules', words: '13', rateKgPerM2: 3.125 * LB_PER_1000 },
    { productId: 'p-granules', words: '9½, for half the rate', rateKgPerM2: 1.5625 * LB_PER_1000 },
  ],
  calibrations: [
    done('c-pans', 'pans', '2027-04-24', {
      apartM: M_PER_FT,
      pans: 15,
      ...Object.fromEntries(PANS.map((held, i) => [`pan${i + 1}`, held])),
    }),
    // 100 ft in three runs
    done('c-broadcast-walk', 'walk', '2027-04-24', {
      distanceM: 100 * M_PER_FT,
      timeS1: 25.2,
      timeS2: 25.4,
      timeS3: 25.2,
    }),
  ],
});

const drop = newEquipment('e-drop', 'drop-spreader', {
  name: 'Drop spreader, 22 in',
  swathM: (22 / 12) * M_PER_FT,
  holds: { unit: 'kg', value: 40 * KG_PER_LB },
  speedMPerS: 2 * M_PER_S_OF_MPH,
  settings: [{ productId: 'p-lime', words: '16', rateKgPerM2: (25 / 0.88) * LB_PER_1000 }],
  calibrations: [
    // two passes of 27.3 ft are 100 sq ft
    done(
      'c-lime',
      'catch',
      '2026-10-10',
      {
        lengthM: 27.3 * M_PER_FT,
        widthM: (44 / 12) * M_PER_FT,
        caughtKg1: 2.84 * KG_PER_LB,
        caughtKg2: 2.85 * KG_PER_LB,
      },
      'p-lime',
    ),
  ],
});

export const cornerLotEquipment: readonly Equipment[] = [hoseEnd, backpack, broadcast, drop];

/** The acre has no drop spreader, and a wider throw. */
export const longAcreEquipment: readonly Equipment[] = [
  { ...broadcast, name: 'Large walk-behind broadcast spreader', swathM: 12 * M_PER_FT, calibrations: [] },
  backpack,
];

/** The townhouse, in round metric figures. */
export const townhouseEquipment: readonly Equipment[] = [
  newEquipment('e-sprayer', 'tank-sprayer', {
    name: 'Pressure sprayer of 5 L',
    swathM: 0.8,
    flowLPerS: 0.02,
    holds: { unit: 'L', value: 5 },
    calibrations: [
      done('c-sprayer', 'bucket', '2027-09-01', { volumeL: 1, timeS1: 50, timeS2: 51, timeS3: 49 }),
    ],
  }),
  newEquipment('e-drop', 'drop-spreader', {
    name: 'Small drop spreader',
    swathM: 0.45,
    holds: { unit: 'kg', value: 6 },
    speedMPerS: 0.9,
    settings: [{ productId: 'p-fine-granules', words: '5', rateKgPerM2: 0.02 }],
    calibrations: [
      done(
        'c-drop',
        'catch',
        '2027-09-01',
        { lengthM: 10, widthM: 0.45, caughtKg1: 0.089, caughtKg2: 0.091 },
        'p-fine-granules',
      ),
    ],
  }),
];
