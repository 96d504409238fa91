import { M_PER_IN } from '../units/factors';
import type { SoilTest } from '../yard/types';

/** Depth to which a lawn is sampled: 4 in, Univ. of Missouri Extension G6954. */
export const USUAL_DEPTH_M = 4 * M_PER_IN;

/** A soil test with nothing filled in but what is given. @param id stable id, made by the caller */
export function newSoilTest(id: string, fields: Partial<Omit<SoilTest, 'id'>> = {}): SoilTest {
  return {
    id,
    name: '',
    zones: { classes: [], include: [], exclude: [] },
    date: null,
    lab: '',
    extractant: 'mehlich-3',
    labUnit: 'ppm',
    mgPerKg: {},
    ph: null,
    bufferPh: null,
    organicMatterPct: null,
    cecCmolPerKg: null,
    depthM: USUAL_DEPTH_M,
    tableId: '',
    labLevels: {},
    limeKgPerM2: null,
    sulfurKgPerM2: null,
    labAdvice: '',
    note: '',
    ...fields,
  };
}
