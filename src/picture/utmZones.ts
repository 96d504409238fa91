import type { Position } from '../yard/types';

/** A zone of the Universal Transverse Mercator grid. */
export interface UtmZone {
  /** such as `EPSG:32614`. */
  readonly code: string;
  readonly name: string;
  /** 1 to 60. */
  readonly zone: number;
  readonly isSouth: boolean;
}

/** Families of UTM codes that follow a formula: first code − 1, zones, definition and its accuracy in m. Source: EPSG dataset. */
const FAMILIES: readonly {
  readonly base: number;
  readonly zones: readonly [number, number];
  readonly name: string;
  readonly isSouth: boolean;
  readonly datum: string;
  readonly accuracyM: number;
}[] = [
  { base: 32600, zones: [1, 60], name: 'WGS 84', isSouth: false, datum: '+datum=WGS84', accuracyM: 0 },
  { base: 32700, zones: [1, 60], name: 'WGS 84', isSouth: true, datum: '+datum=WGS84', accuracyM: 0 },
  { base: 26900, zones: [1, 23], name: 'NAD83', isSouth: false, datum: '+ellps=GRS80', accuracyM: 4 },
  { base: 6329, zones: [1, 19], name: 'NAD83(2011)', isSouth: false, datum: '+ellps=GRS80', accuracyM: 2 },
  { base: 3730, zones: [10, 19], name: 'NAD83(HARN)', isSouth: false, datum: '+ellps=GRS80', accuracyM: 2 },
  { base: 25800, zones: [28, 37], name: 'ETRS89', isSouth: false, datum: '+ellps=GRS80', accuracyM: 1 },
  // EPSG:1173, the mean shift of the conterminous United States
  {
    base: 26700,
    zones: [10, 19],
    name: 'NAD27',
    isSouth: false,
    datum: '+ellps=clrk66 +towgs84=-8,160,176',
    accuracyM: 10,
  },
  { base: 28300, zones: [48, 58], name: 'GDA94', isSouth: true, datum: '+ellps=GRS80', accuracyM: 3 },
  { base: 7800, zones: [46, 59], name: 'GDA2020', isSouth: true, datum: '+ellps=GRS80', accuracyM: 3 },
];

/** Name, proj4 text and accuracy in metres of a UTM code; null for any other code. */
export function utmDefinition(code: number): readonly [name: string, proj: string, accuracyM: number] | null {
  for (const { base, zones, name, isSouth, datum, accuracyM } of FAMILIES) {
    const zone = code - base;
    if (zone < zones[0] || zone > zones[1]) continue;
    const title = `${name} / ${name.startsWith('GDA') ? 'MGA' : 'UTM'} zone ${zone}${isSouth && !name.startsWith('GDA') ? 'S' : name.startsWith('GDA') ? '' : 'N'}`;
    return [title, `+proj=utm +zone=${zone}${isSouth ? ' +south' : ''} ${datum} +units=m`, accuracyM];
  }
  return null;
}

/** Every code that `utmDefinition` knows. */
export function utmCodes(): readonly number[] {
  return FAMILIES.flatMap(({ base, zones: [from, to] }) =>
    Array.from({ length: to - from + 1 }, (_, i) => base + from + i),
  );
}

/**
 * The zone of the WGS 84 UTM grid that a place belongs to, with the exceptions of Norway (32V) and
 * Svalbard (31X, 33X, 35X, 37X). Source: NGA.SIG.0012 (2014), The Universal Grids, section 3.
 * @param position degrees; outside 80° S to 84° N the nearest zone is told all the same
 */
export function suggestUtmZone([lon, lat]: Position): UtmZone {
  const turned = ((((lon + 180) % 360) + 360) % 360) - 180;
  let zone = Math.floor((turned + 180) / 6) + 1;
  if (lat >= 56 && lat < 64 && turned >= 3 && turned < 12) zone = 32;
  if (lat >= 72 && turned >= 0 && turned < 42)
    zone = turned < 9 ? 31 : turned < 21 ? 33 : turned < 33 ? 35 : 37;
  const isSouth = lat < 0;
  const code = (isSouth ? 32700 : 32600) + zone;
  return { code: `EPSG:${code}`, name: `WGS 84 / UTM zone ${zone}${isSouth ? 'S' : 'N'}`, zone, isSouth };
}
