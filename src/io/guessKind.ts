import {
  MARK_KINDS,
  type MarkKind,
  type Material,
  type MowingClass,
  ZONE_KINDS,
  type ZoneKind,
} from '../yard/types';
import type { TargetKind } from './importTypes';

/** What the words about a feature suggest that it is. */
export interface KindGuess {
  /** null: the words say nothing. */
  readonly kind: TargetKind | null;
  readonly mowing: MowingClass | null;
  readonly material: Material | null;
}

/** Plain words for each kind; common practice, no source. */
const WORDS: readonly (readonly [TargetKind, RegExp])[] = [
  ['storm-drain', /^(drains?|catchbasins?|inlets?|grates?|gull(y|ies))$/],
  ['well', /^(wells?|wellheads?)$/],
  ['hose-bib', /^(hoses?|bibs?|bibbs?|spigots?|faucets?|hydrants?|taps?)$/],
  ['gate', /^gates?$/],
  [
    'turf',
    /^(lawns?|turf|grass(es)?|sod|yards?|greens?|tees?|fairways?|verges?|fescue|bluegrass|ryegrass|bermudagrass|zoysia)$/,
  ],
  [
    'bed',
    /^(beds?|gardens?|flowers?|flowerbeds?|shrubs?|shrubbery|mulch|plantings?|borders?|hedges?|vegetables?|perennials?|roses?|trees?)$/,
  ],
  [
    'hardscape',
    /^(drives?|driveways?|patios?|walks?|walkways?|sidewalks?|paths?|pathways?|pavings?|pavements?|pavers?|concrete|asphalt|decks?|roads?|streets?|parking|pads?|courts?|gravel|steps|stairs|curbs?|terraces?|aprons?)$/,
  ],
  [
    'structure',
    /^(houses?|homes?|buildings?|roofs?|garages?|sheds?|barns?|structures?|dwellings?|greenhouses?|porch(es)?|carports?|gazebos?|cabins?|residence|footprints?)$/,
  ],
  [
    'water',
    /^(ponds?|lakes?|pools?|creeks?|streams?|rivers?|water|waterways?|ditch(es)?|canals?|wetlands?|brooks?|fountains?|basins?|springs?)$/,
  ],
  ['parcel', /^(parcels?|lots?|boundary|boundaries|property|cadastral|cadastre|plats?|premises)$/],
];
const MATERIALS: readonly (readonly [Material, RegExp])[] = [
  ['concrete', /concrete|cement/],
  ['asphalt', /asphalt|tarmac|blacktop/],
  ['pavers', /paver|brick|paving/],
  ['stone', /stone|slate|flag/],
  ['wood', /wood|deck|timber/],
  ['gravel', /gravel|pebble|chipping/],
];
const LOW_CUT = /\b(greens?|tees?|fairways?|low[- ]?cut|putting)\b/;
/** What follows one of these tells where the thing is, not what it is: "lawn by the house". */
const WHERE =
  /\b(by|near|next|beside|behind|along|around|round|under|at|in|on|of|from|to|with|off|opposite|before|between)\b.*$/;
/** In the name of a file or layer these stand for the whole ground, not for a lawn. */
const WHOLE = /(?<!\p{L})(back|front|side)?yards?(?!\p{L})/giu;
/** Properties that say what a thing is, the surest first. */
const KEYS = [
  'type',
  'class',
  'category',
  'landuse',
  'landcover',
  'natural',
  'surface',
  'building',
  'waterway',
  'leisure',
  'amenity',
  'desc',
  'description',
  'cmt',
  'sym',
  'styleurl',
  'layer',
];

/**
 * Guesses from names, properties and the layer what a feature is. The last telling word of a phrase
 * counts ("pool house" is a house, "house lawn" a lawn). The person may change it before anything comes in.
 * @param isPoint points become marks, areas zones
 */
export function guessKind(
  name: string,
  properties: Readonly<Record<string, unknown>>,
  layer: string,
  isPoint: boolean,
): KindGuess {
  const byKey = new Map(Object.entries(properties).map(([key, value]) => [key.toLowerCase(), value]));
  const told = kindOf(String(byKey.get('kind') ?? '').trim(), isPoint);
  const phrases = [name, ...KEYS.flatMap((key) => phraseOf(key, byKey.get(key)))];
  const byWords = told ?? phrases.map((phrase) => kindOf(phrase, isPoint)).find((each) => each !== null);
  const byLayer = kindOf((layer.split(' / ').at(-1) ?? '').replace(WHOLE, ''), isPoint);
  // a folder called after the lot holds all sorts of things
  const isVague = byLayer === 'parcel' && !/parcel|cadastr/i.test(layer);
  const kind = byWords ?? (isVague ? null : byLayer);
  const all = [...phrases, layer].join(' ').toLowerCase();
  return {
    kind,
    mowing: kind === 'turf' ? (LOW_CUT.test(all) ? 'low-cut' : 'regular') : null,
    material: kind === 'hardscape' ? (MATERIALS.find(([, words]) => words.test(all))?.[0] ?? null) : null,
  };
}

function phraseOf(key: string, value: unknown): string[] {
  if (typeof value !== 'string') return [];
  return key === 'building' && value !== 'no' ? [`${value} building`] : [value];
}

function kindOf(phrase: string, isPoint: boolean): TargetKind | null {
  const plain = phrase.slice(0, 200).toLowerCase();
  if (ZONE_KINDS.includes(plain as ZoneKind) && !isPoint) return plain as ZoneKind;
  if (MARK_KINDS.includes(plain as MarkKind) && isPoint) return plain as MarkKind;
  const words = plain
    .replace(WHERE, '')
    .split(/[^\p{L}]+/u)
    .reverse();
  for (const word of words) {
    const found = WORDS.find(([kind, pattern]) => isMarkKind(kind) === isPoint && pattern.test(word));
    if (found) return found[0];
  }
  return null;
}

/** Whether something of this kind is a point. */
export function isMarkKind(kind: TargetKind): kind is MarkKind {
  return (MARK_KINDS as readonly string[]).includes(kind);
}
