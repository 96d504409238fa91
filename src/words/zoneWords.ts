import type { MarkKind, Material, MowingClass, SurveyMethod, Yard, Zone, ZoneKind } from '../yard/types';

/** What the kinds and classes of the document are called. One home for each word. */
export const KIND_WORDS: Readonly<Record<ZoneKind, string>> = {
  structure: 'Structure',
  water: 'Water',
  hardscape: 'Hardscape',
  bed: 'Bed',
  other: 'Other ground',
  turf: 'Turf',
};

export const MOWING_WORDS: Readonly<Record<MowingClass, string>> = {
  'low-cut': 'Low-cut',
  regular: 'Regular',
};

export const MATERIAL_WORDS: Readonly<Record<Material, string>> = {
  concrete: 'Concrete',
  asphalt: 'Asphalt',
  pavers: 'Pavers',
  stone: 'Stone',
  wood: 'Wood',
  gravel: 'Gravel',
};

export const SURVEY_WORDS: Readonly<Record<SurveyMethod, string>> = {
  traced: 'Traced over a picture',
  typed: 'Typed lengths or corners',
  tape: 'Taped on the ground',
  plat: 'From a plat or deed',
  walked: 'Walked with a phone',
  imported: 'From a file',
};

export const MARK_WORDS: Readonly<Record<MarkKind, string>> = {
  'storm-drain': 'Storm drain',
  well: 'Well',
  'hose-bib': 'Hose bib',
  gate: 'Gate',
};

/** In the order in which a person draws: the ground first. */
export const KINDS_TO_DRAW: readonly ZoneKind[] = ['turf', 'bed', 'hardscape', 'structure', 'water', 'other'];

/** "Turf, low-cut", "Hardscape, pavers", "Bed". */
export function zoneWords(zone: Pick<Zone, 'kind' | 'mowing' | 'material'>): string {
  const kind = KIND_WORDS[zone.kind];
  if (zone.mowing) return `${kind}, ${MOWING_WORDS[zone.mowing].toLowerCase()}`;
  if (zone.material) return `${kind}, ${MATERIAL_WORDS[zone.material].toLowerCase()}`;
  return kind;
}

/** Below a table of areas whose rows do not make up its total as printed. */
export const ROUNDED_APART = 'Each area is rounded by itself, so the last figure of their sum may differ.';

/** What is said of ground that is known by its size alone. */
export const UNPLACED_WORDS = 'no place on the map';

/** As zoneWords, with what is special about the zone: "Turf, low-cut; locked". */
export function zoneStateWords(
  zone: Pick<Zone, 'kind' | 'mowing' | 'material' | 'isPlaced' | 'isLocked'>,
): string {
  const states = [...(zone.isPlaced ? [] : [UNPLACED_WORDS]), ...(zone.isLocked ? ['locked'] : [])];
  return [zoneWords(zone), ...states].join('; ');
}

/** The zone's name, or its kind when it has none. */
export function zoneName(zone: Pick<Zone, 'name' | 'kind'>): string {
  return zone.name.trim() || `${KIND_WORDS[zone.kind]} without a name`;
}

/** The name a figure carries of its zone, or words for none. */
export function groundName(name: string): string {
  return name.trim() || 'ground without a name';
}

/** Number of each zone on the sheet, by id: 1, 2, 3 … in the document's order. */
export function zoneKeys(yard: Yard): ReadonlyMap<string, string> {
  return new Map(yard.zones.map((zone, i) => [zone.id, String(i + 1)]));
}

/** A name for the next thing of a sort: "Bed 3", the first number not taken. */
export function freeName(word: string, taken: readonly string[]): string {
  const names = new Set(taken);
  let number = 1;
  while (names.has(`${word} ${number}`)) number += 1;
  return `${word} ${number}`;
}
