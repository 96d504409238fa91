import type { Parcel, Settings, Survey, SurveyMethod, Yard, Zone, ZoneKind } from './types';

/** Version of the document written by this program. Older ones migrate in `migrations.ts`. */
export const SCHEMA_VERSION = 2;

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
  baseLayer: { kind: 'grid' },
  ownLayers: [],
  gapToleranceM: 0.5,
  isLocal: false,
  showSurface: false,
  doseBySurface: false,
};

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
    visits: [],
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
    extra: fields.extra ?? {},
  };
}

/** An outline of the property without a name. */
export function newParcel(parts: Parcel['parts'], survey: Survey, curves: Parcel['curves'] = []): Parcel {
  return { name: '', parts, curves, survey, extra: {} };
}
