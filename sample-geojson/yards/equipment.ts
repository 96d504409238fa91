import { KG_PER_LB, L_PER_FLOZ, L_PER_GAL, M_PER_FT, M2_PER_1000_SQFT } from '../../src/units/factors';
import { newEquipment } from '../../src/yard/defaults';
import type { Equipment } from '../../src/yard/types';

/** Invented equipment, as its invented owner measured it. */

const LB_PER_1000 = KG_PER_LB / M2_PER_1000_SQFT;
/** m/s in one mile an hour: 1,609.344 m in 3,600 s. */
const M_PER_S_OF_MPH = 1609.344 / 3600;

/** Hose-end bottle: 5 gal caught in 130 s, 15 fl oz gone from the bottle meanwhile. */
const hoseEnd = newEquipment('e-bottle', 'hose-end', {
  name: 'Hose-end bottle, fan tip',
  swathM: 6 * M_PER_FT,
  flowLPerS: (5 * L_PER_GAL) / 130,
  productShare: (15 * L_PER_FLOZ) / (5 * L_PER_GAL),
  note: 'Tap fully open; with the washing machine running it gives less.',
});

/** Backpack: 51 fl oz caught in one minute at the pressure it is pumped to. */
const backpack = newEquipment('e-backpack', 'tank-sprayer', {
  name: 'Backpack, flat fan',
  swathM: 4 * M_PER_FT,
  flowLPerS: (51 * L_PER_FLOZ) / 60,
  holds: { unit: 'L', value: 4 * L_PER_GAL },
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
});

const drop = newEquipment('e-drop', 'drop-spreader', {
  name: 'Drop spreader, 22 in',
  swathM: (22 / 12) * M_PER_FT,
  holds: { unit: 'kg', value: 40 * KG_PER_LB },
  speedMPerS: 2 * M_PER_S_OF_MPH,
  settings: [{ productId: 'p-lime', words: '16', rateKgPerM2: (25 / 0.88) * LB_PER_1000 }],
});

export const cornerLotEquipment: readonly Equipment[] = [hoseEnd, backpack, broadcast, drop];

/** The acre has no drop spreader, and a wider throw. */
export const longAcreEquipment: readonly Equipment[] = [
  { ...broadcast, name: 'Large walk-behind broadcast spreader', swathM: 12 * M_PER_FT },
  backpack,
];

/** The townhouse, in round metric figures. */
export const townhouseEquipment: readonly Equipment[] = [
  newEquipment('e-sprayer', 'tank-sprayer', {
    name: 'Pressure sprayer of 5 L',
    swathM: 0.8,
    flowLPerS: 0.02,
    holds: { unit: 'L', value: 5 },
  }),
  newEquipment('e-drop', 'drop-spreader', {
    name: 'Small drop spreader',
    swathM: 0.45,
    holds: { unit: 'kg', value: 6 },
    speedMPerS: 0.9,
    settings: [{ productId: 'p-fine-granules', words: '5', rateKgPerM2: 0.02 }],
  }),
];
