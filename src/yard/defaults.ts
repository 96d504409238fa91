import { KG_PER_M2_OF_LB_PER_1000_SQFT } from '../units/factors';
import type {
  Applicator,
  Climate,
  Equipment,
  LabelLimits,
  NutrientCaps,
  Parcel,
  PassChoice,
  Product,
  Settings,
  Survey,
  SurveyMethod,
  Visit,
  VisitDose,
  Yard,
  Zone,
  ZoneKind,
} from './types';

/** Version of the document written by this program. Older ones migrate in `migrations.ts`. */
export const SCHEMA_VERSION = 4;

/**
 * First guess at the standard deviation of a corner, metres, for each way of measuring; common
 * practice, no source. `traced` assumes imagery of about 0.15 m a pixel; the person may type their own.
 */
export const SUGGESTED_SIGMA_M: Readonly<Record<SurveyMethod, number>> = {
  traced: 0.2,
  typed: 0.03,
  tape: 0.05,
  plat: 0.05,
  walked: 3,
  imported: 0.3,
};

/** @returns the survey record for a method with its suggested sigma. */
export function suggestedSurvey(method: SurveyMethod): Survey {
  return { method, vertexSigmaM: SUGGESTED_SIGMA_M[method], scaleSigma: 0, source: '' };
}

/**
 * Strip widths: 15 ft by water (Michigan Act 451 Part 85 and Maryland Environment 8-803.5 name 15 ft
 * for open water; other places differ); 10 ft round a drain and 50 ft round a well are common
 * practice, no source. Local code decides: the user sets them.
 */
export const DEFAULT_SETTINGS: Settings = {
  units: 'us',
  currency: '$',
  elevationM: null,
  strips: { stormDrainM: 3.048, wellM: 15.24, waterM: 4.572 },
  hose: { lengthM: null, flowLPerS: null },
  stepM: null,
  baseLayer: { kind: 'grid' },
  ownLayers: [],
  gapToleranceM: 0.5,
  isLocal: false,
  showSurface: false,
  doseBySurface: false,
};

/**
 * General published caps; the label and local rules come first. Soluble N at most 0.7 lb/1,000 sq ft at
 * once, P2O5 at most 0.25 at once and 0.50 a year: Florida Urban Turf Fertilizer Rule, Florida Administrative
 * Code 5E-1.003(2), as told by Trenholm, UF/IFAS EP353 (ENH1089), which prints it as RE-1.003(2). Total N at
 * most 1 lb/1,000 sq ft at once: Univ. of Illinois 1995; the same in USGA Green Section Record 62(11) as the
 * upper end of the range. N of a year hangs on the grass,
 * so it has no default.
 */
export const DEFAULT_CAPS: NutrientCaps = {
  totalNPerDose: 1 * KG_PER_M2_OF_LB_PER_1000_SQFT,
  solubleNPerDose: 0.7 * KG_PER_M2_OF_LB_PER_1000_SQFT,
  p2o5PerDose: 0.25 * KG_PER_M2_OF_LB_PER_1000_SQFT,
  nPerYear: null,
  p2o5PerYear: 0.5 * KG_PER_M2_OF_LB_PER_1000_SQFT,
  k2oPerYear: null,
};

/** No monthly means are known. */
export const NO_CLIMATE: Climate = { monthlyMeanC: null, source: '' };

/** A label that states no limit. */
export const NO_LIMITS: LabelLimits = {
  maxPerDose: null,
  maxPerYear: null,
  minIntervalDays: null,
  maxDosesPerYear: null,
  maxAirTempC: null,
};

/** Passes with the equipment at hand, one coat, the shortest walk. */
export const DEFAULT_PASSES: PassChoice = {
  equipmentId: null,
  headerLaps: null,
  coats: 1,
  isGuarded: false,
  headings: {},
};

/** Usual swaths until the person measures their own, m; common practice, no source. */
export const USUAL_SWATH_M: Readonly<Record<Applicator, number>> = {
  'hose-end': 1.8,
  'tank-sprayer': 1.2,
  'broadcast-spreader': 3,
  'drop-spreader': 0.55,
  'by-hand': 1.5,
};

/** Equipment of which nothing is measured yet. @param id stable id, made by the caller */
export function newEquipment(
  id: string,
  applicator: Applicator,
  fields: Partial<Omit<Equipment, 'id' | 'applicator'>> = {},
): Equipment {
  return {
    id,
    applicator,
    name: '',
    swathM: USUAL_SWATH_M[applicator],
    overlapShare: 0,
    spreadDistanceM: null,
    hasEdgeGuard: false,
    guardedSpreadM: null,
    flowLPerS: null,
    productShare: null,
    holds: null,
    speedMPerS: null,
    settings: [],
    calibrations: [],
    note: '',
    ...fields,
  };
}

/** A label silent in all but what is given. @param id stable id, made by the caller */
export function newProduct(id: string, fields: Partial<Omit<Product, 'id'>> = {}): Product {
  return {
    id,
    name: '',
    form: 'granular',
    analysis: { nPct: 0, p2o5Pct: 0, k2oPct: 0, slowNPctOfN: null, elementsPct: {} },
    ingredients: [],
    densityKgPerL: null,
    seed: null,
    limePct: null,
    saltIndex: null,
    useName: '',
    applicator: null,
    rate: { basis: 'mass-per-area', rateKgPerM2: 0 },
    carrierLPerM2: null,
    carrierIsTotal: false,
    spreadDistanceM: 0.6,
    waterIn: false,
    packIds: null,
    otherUses: [],
    packs: [],
    canPour: false,
    rainfastS: null,
    waterInDepthM: null,
    shelfLifeDays: null,
    openedLifeDays: null,
    stainsHardscape: false,
    limits: NO_LIMITS,
    onHand: {},
    note: '',
    ...fields,
  };
}

/** A visit without doses on no ground, but for what is given. @param id stable id, made by the caller */
export function newVisit(id: string, fields: Partial<Omit<Visit, 'id'>> = {}): Visit {
  return {
    id,
    name: '',
    date: null,
    zones: { classes: [], include: [], exclude: [] },
    doses: [],
    tankL: null,
    startMarkId: null,
    endMarkId: null,
    note: '',
    doneOn: null,
    program: null,
    ...fields,
  };
}

/** A dose at the label rate of the first use, on the zones of its visit, but for what is given. */
export function newDose(
  id: string,
  productId: string,
  fields: Partial<Omit<VisitDose, 'id' | 'productId'>> = {},
): VisitDose {
  return {
    id,
    productId,
    useId: null,
    rateFactor: 1,
    zones: null,
    passes: DEFAULT_PASSES,
    actual: null,
    taken: null,
    laid: null,
    ...fields,
  };
}

/** An empty yard with the usual settings. @param id stable id of the document, made by the caller. */
export function emptyYard(id: string, name: string): Yard {
  return {
    schemaVersion: SCHEMA_VERSION,
    id,
    name,
    zones: [],
    marks: [],
    parcel: null,
    products: [],
    equipment: [],
    visits: [],
    soilTests: [],
    needs: [],
    climate: NO_CLIMATE,
    programs: [],
    caps: DEFAULT_CAPS,
    rules: [],
    overrides: [],
    settings: DEFAULT_SETTINGS,
    extra: {},
  };
}

/** A new zone of a kind with the kind's defaults. @param id stable id, made by the caller. */
export function newZone(
  id: string,
  kind: ZoneKind,
  parts: Zone['parts'],
  fields: Partial<Omit<Zone, 'id' | 'kind' | 'parts'>> = {},
): Zone {
  return {
    id,
    kind,
    parts,
    name: fields.name ?? '',
    mowing: kind === 'turf' ? (fields.mowing ?? 'regular') : null,
    material: kind === 'hardscape' ? (fields.material ?? 'concrete') : null,
    note: fields.note ?? '',
    survey: fields.survey ?? suggestedSurvey('traced'),
    curves: fields.curves ?? [],
    cutsSameKind: fields.cutsSameKind ?? false,
    isPlaced: fields.isPlaced ?? true,
    isLocked: fields.isLocked ?? false,
    slope: fields.slope ?? null,
    downhillDeg: fields.downhillDeg ?? null,
    plantedOn: kind === 'turf' ? (fields.plantedOn ?? null) : null,
    extra: fields.extra ?? {},
  };
}

/** An outline of the property without a name. */
export function newParcel(parts: Parcel['parts'], survey: Survey, curves: Parcel['curves'] = []): Parcel {
  return { name: '', parts, curves, survey, extra: {} };
}
