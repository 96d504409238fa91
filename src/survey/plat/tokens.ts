import { parseArea, readNumber } from '../../units/parse';
import { angleAt, quadrantAt } from './angles';
import { type Foot, lengthAt, NUMBER } from './lengths';
import type { Turn } from './types';

/** Words that say what the next figure is, or that a curve begins. */
export type Label =
  | 'azimuth'
  | 'curve'
  | 'radius'
  | 'delta'
  | 'arc'
  | 'chord'
  | 'tangent'
  | 'non-tangent'
  | 'radial'
  | 'center'
  | 'concave'
  | 'begin'
  | 'due';

/** A piece of the text that means something to a call; `at` and `end` count characters of the text. */
export type Token = { readonly at: number; readonly end: number } & (
  | { readonly type: 'break' }
  | { readonly type: 'bearing'; readonly deg: number }
  /** a letter or word of the compass, which may be a direction or the name of a side. */
  | { readonly type: 'cardinal'; readonly deg: number; readonly isVague: boolean }
  | {
      readonly type: 'angle';
      readonly deg: number;
      readonly feetInstead: { readonly deg: number; readonly feet: number } | null;
    }
  | { readonly type: 'length'; readonly lengthM: number }
  | { readonly type: 'number'; readonly value: number }
  | { readonly type: 'area'; readonly areaM2: number }
  | { readonly type: 'turn'; readonly turn: Turn }
  | { readonly type: 'label'; readonly label: Label }
  | { readonly type: 'fault'; readonly fault: string }
  | { readonly type: 'filler' }
  | { readonly type: 'word' }
);

const COMPASS: Readonly<Record<string, number>> = {
  n: 0,
  ne: 45,
  e: 90,
  se: 135,
  s: 180,
  sw: 225,
  w: 270,
  nw: 315,
  north: 0,
  northeast: 45,
  east: 90,
  southeast: 135,
  south: 180,
  southwest: 225,
  west: 270,
  northwest: 315,
};

const LABELS: Readonly<Record<string, Label>> = {
  az: 'azimuth',
  azimuth: 'azimuth',
  bearing: 'azimuth',
  brg: 'azimuth',
  curve: 'curve',
  radius: 'radius',
  rad: 'radius',
  delta: 'delta',
  δ: 'delta',
  ca: 'delta',
  arc: 'arc',
  arclength: 'arc',
  chord: 'chord',
  ch: 'chord',
  cb: 'chord',
  lc: 'chord',
  tangent: 'tangent',
  tan: 'tangent',
  nontangent: 'non-tangent',
  'non-tangent': 'non-tangent',
  radial: 'radial',
  center: 'center',
  centre: 'center',
  concave: 'concave',
  beginning: 'begin',
  start: 'begin',
  pc: 'begin',
  bc: 'begin',
  due: 'due',
};
/** single letters are labels only where a figure follows. */
const LETTERS: Readonly<Record<string, Label>> = {
  r: 'radius',
  d: 'delta',
  l: 'arc',
  c: 'chord',
  t: 'tangent',
};

const FILLER = new Set(
  `a an the of to at by with and or said along being is are was having has have length distance for through from on in upon
  line lines course more less run runs running go goes going continue continues continuing call approximately about whose
  which that this its also bears bear bearing central angle long over same straight as follows equal degree point points
  feet foot rt-of-way`.split(/\s+/),
);

/** After these a number names a thing. */
const NAMED =
  /(?:^|[^a-z])(?:lots?|blocks?|section|sec|township|range|page|pages|book|volume|vol|no|number|highway|hwy|route|plat|document|instrument|deed|map|station|sta|#)\.?\s*$/;
/** Before these a length tells the width or make of a thing. */
const THING =
  /^\s*-?(?:iron|steel|rebar|pipe|pin|rod\s|diameter|dia|wide|width|right|r\/w|easement|street|road|alley|strip|in\s+diameter|concrete|nail)/;

const WORD = /\p{L}+(?:[-./]\p{L}+)*/uy;
const NUMBER_AT = new RegExp(NUMBER, 'y');
const AREA = new RegExp(
  String.raw`(${NUMBER})\s*(acres?|ac|sq(?:uare|\.)?\s*(?:feet|foot|ft|met(?:er|re)s?|m)|sqft|ft2|m2|m²|ft²|sf|hectares?|ha)(?![a-z])\.?`,
  'y',
);

/** Signs of angle and quotation as people and scanners write them, brought to one form of the same length. */
export function evenOutSigns(text: string): string {
  return text
    .replace(/''/g, '" ')
    .replace(/[`´’′ʹ‘ʼ]/g, "'")
    .replace(/[“”″„ˮ]/g, '"')
    .replace(/[º˚∘]/g, '°')
    .replace(/[−–—‐‑]/g, '-')
    .replace(/[Δ∆]/g, 'δ')
    .replace(/[\u00a0\u202f\t]/g, ' ')
    .toLowerCase();
}

/**
 * Cuts a text of calls into tokens.
 * @param lines true: every new line begins a new call; false: as in running text, where only “thence” and ; do
 */
export function tokenize(written: string, foot: Foot, lines: boolean): Token[] {
  const text = evenOutSigns(written);
  const tokens: Token[] = [];
  let from = 0;
  const pieces = lines ? text.split(/(?<=\n)/) : [text];
  for (const piece of pieces) {
    readPiece(piece, from, foot, tokens);
    from += piece.length;
    if (lines) tokens.push({ type: 'break', at: from, end: from });
  }
  return tokens;
}

function readPiece(text: string, from: number, foot: Foot, tokens: Token[]): void {
  let at = 0;
  const put = (token: Token, end: number) => {
    tokens.push({ ...token, at: from + at, end: from + end });
    at = end;
  };
  const none = { at: 0, end: 0 };
  while (at < text.length) {
    const char = text[at] ?? '';
    if (char === ';') {
      put({ ...none, type: 'break' }, at + 1);
      continue;
    }
    if (!/[\p{L}\d.#]/u.test(char) || (char === '.' && !/\d/.test(text[at + 1] ?? ''))) {
      at += 1;
      continue;
    }
    if (/[\d.]/.test(char)) {
      const [token, end] = readFigure(text, at, foot);
      put(token, end);
      continue;
    }
    const quadrant = /[ns]/.test(char) ? quadrantAt(text, at) : null;
    if (quadrant) {
      put(
        quadrant.fault
          ? { ...none, type: 'fault', fault: quadrant.fault }
          : { ...none, type: 'bearing', deg: quadrant.deg },
        quadrant.end,
      );
      continue;
    }
    WORD.lastIndex = at;
    const word = WORD.exec(text)?.[0] ?? char;
    put(readWord(word, text, at), at + word.length);
  }
}

function readFigure(text: string, at: number, foot: Foot): [Token, number] {
  const none = { at: 0, end: 0 };
  AREA.lastIndex = at;
  const area = AREA.exec(text);
  if (area) {
    const read = parseArea(
      `${area[1]} ${area[2]?.replace('square foot', 'square feet').replace(/^sq\.? ?m.*/, 'sq m')}`,
      'us',
    );
    if (read.ok) return [{ ...none, type: 'area', areaM2: read.value }, at + area[0].length];
  }
  const isNamed = NAMED.test(text.slice(Math.max(0, at - 14), at));
  const angle = isNamed ? null : angleAt(text, at);
  if (angle) {
    const { deg, end, fault, feetInstead } = angle;
    return [fault ? { ...none, type: 'fault', fault } : { ...none, type: 'angle', deg, feetInstead }, end];
  }
  const length = lengthAt(text, at, foot);
  if (length) {
    const isThing = THING.test(text.slice(length.end, length.end + 20));
    return [
      isThing ? { ...none, type: 'filler' } : { ...none, type: 'length', lengthM: length.lengthM },
      length.end,
    ];
  }
  NUMBER_AT.lastIndex = at;
  const number = NUMBER_AT.exec(text)?.[0] ?? text[at] ?? '';
  const end = at + Math.max(1, number.length);
  if (isNamed) return [{ ...none, type: 'filler' }, end];
  return [{ ...none, type: 'number', value: readNumber(number) }, end];
}

function readWord(word: string, text: string, at: number): Token {
  const none = { at: 0, end: 0 };
  const after = text.slice(at + word.length, at + word.length + 12);
  if (word === 'thence' || word === 'then') return { ...none, type: 'break' };
  if (/^(right|rt|left|lt)$/.test(word) || (/^[rl]$/.test(word) && !/^\s*[=:]?\s*[\d.]/.test(after)))
    return /^\s*-?\s*of\s*-?\s*way/.test(after)
      ? { ...none, type: 'filler' }
      : { ...none, type: 'turn', turn: word.startsWith('r') ? 'right' : 'left' };
  const letter = LETTERS[word];
  if (letter !== undefined && /^\s*[=:]?\s*[\d.]/.test(after))
    return { ...none, type: 'label', label: letter };
  if (Object.hasOwn(COMPASS, word) || /^(north|south)?(east|west)?(er)?ly$/.test(word)) {
    const isVague = word.endsWith('ly');
    const deg = COMPASS[word.replace(/(er)?ly$/, '')];
    if (deg !== undefined && !isNameOfSide(text, at, word))
      return { ...none, type: 'cardinal', deg, isVague };
    return { ...none, type: 'filler' };
  }
  const compass = word.replace('-', '');
  if (Object.hasOwn(COMPASS, compass) && compass.length > 4)
    return isNameOfSide(text, at, word)
      ? { ...none, type: 'filler' }
      : { ...none, type: 'cardinal', deg: COMPASS[compass] ?? 0, isVague: false };
  if (word === 'p.c' || word === 'b.c' || /^(curvature|commencement)$/.test(word))
    return { ...none, type: 'label', label: 'begin' };
  if (word === 'curve' && /point\s+of\s+(a\s+)?$/.test(text.slice(Math.max(0, at - 14), at)))
    return { ...none, type: 'label', label: 'begin' };
  if (Object.hasOwn(LABELS, word)) return { ...none, type: 'label', label: LABELS[word] ?? 'curve' };
  return FILLER.has(word) ? { ...none, type: 'filler' } : { ...none, type: 'word' };
}

/** "the north line of", "west side", "southerly right-of-way": the name of a side, not the way a course runs. */
function isNameOfSide(text: string, at: number, word: string): boolean {
  const before = text.slice(Math.max(0, at - 8), at);
  const after = text.slice(at + word.length);
  return (
    /(^|[^a-z])(the|said|its|a|an|most)\s+$/.test(before) ||
    /^\s+(line|side|corner|boundary|edge|half|quarter|part|margin|right|street|road|avenue|lane|drive|most|of)\b/.test(
      after,
    )
  );
}
