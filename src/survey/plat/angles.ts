import { quadrantToBearing } from './bearing';

const NUM = String.raw`\d+(?:\.\d+)?(?!\d)`;
const D = String.raw`(?:°|degrees?|degs?(?![a-z])\.?|d(?![a-z]))`;
const M = String.raw`(?:'|minutes?|mins?(?![a-z])\.?|m(?![a-z]))`;
const S = String.raw`(?:"|seconds?|secs?(?![a-z])\.?|s(?![a-z]))`;
/** what may stand between two parts of an angle. */
const GAP = String.raw`[\s,:-]*(?:and\s+)?`;
const N_OR_S = String.raw`(n(?:orth)?|s(?:outh)?)(?![a-z])\.?`;
const E_OR_W = String.raw`(e(?:ast)?|w(?:est)?)(?![a-z])\.?`;
const PARTS = `(${NUM})\\s*${D}?(?:${GAP}(${NUM})\\s*${M}?(?:${GAP}(${NUM})\\s*${S}?)?)?`;

const QUADRANT = new RegExp(`${N_OR_S}[\\s:=]*${PARTS}${GAP}${E_OR_W}`, 'y');
/** a quadrant bearing whose last letter is missing: only with a sign of degrees, else it may be a length. */
const HALF_QUADRANT = new RegExp(
  `${N_OR_S}\\s*${NUM}\\s*${D}(?:${GAP}${NUM}\\s*${M})?(?:${GAP}${NUM}\\s*${S})?`,
  'y',
);
/** with a sign of degrees; minutes and seconds need theirs too, save right after the sign. 40 m are metres here. */
const MARKED = new RegExp(
  `(${NUM})\\s*${D}(?:${GAP}(${NUM})\\s*('|minutes?|mins?(?![a-z])\\.?)(?:${GAP}(${NUM})\\s*${S})?|(\\d{1,2})(?![\\d.]))?`,
  'y',
);
const DASHED = /(\d{1,3})[-:](\d{1,2})(?:[-:](\d{1,2}(?:\.\d+)?))?(?![\d:-])/y;

/** An angle or bearing at a place of a text. */
export interface AngleFound {
  /** degrees; NaN with a fault. */
  readonly deg: number;
  readonly end: number;
  /** what is wrong with it. */
  readonly fault: string | null;
  /** 135° 40' may mean 135 degrees and 40 feet. */
  readonly feetInstead: { readonly deg: number; readonly feet: number } | null;
}

function compose(
  d: string,
  m: string | undefined,
  s: string | undefined,
): { deg: number; fault: string | null } {
  const [minutes, seconds] = [Number(m ?? 0), Number(s ?? 0)];
  const fault = (what: string) => ({ deg: Number.NaN, fault: what });
  if (minutes >= 60) return fault(`has ${m} minutes; minutes run to 59`);
  if (seconds >= 60) return fault(`has ${s} seconds; seconds run to 59`);
  if (m !== undefined && d.includes('.')) return fault('has both decimals of a degree and minutes');
  if (s !== undefined && m?.includes('.')) return fault('has both decimals of a minute and seconds');
  return { deg: Number(d) + minutes / 60 + seconds / 3600, fault: null };
}

/**
 * A quadrant bearing at a place of a text in small letters: `n 45°30'15" e`, `n45-30-15e`,
 * `north 45 degrees 30 minutes east`, `s 0 12 w`.
 * @returns its direction in degrees from north, or what is wrong with it; null when none stands there
 */
export function quadrantAt(text: string, at: number): AngleFound | null {
  QUADRANT.lastIndex = at;
  const match = QUADRANT.exec(text);
  if (!match) {
    HALF_QUADRANT.lastIndex = at;
    const half = HALF_QUADRANT.exec(text);
    if (!half) return null;
    return {
      deg: Number.NaN,
      end: at + half[0].length,
      fault: "lacks its E or W: write N 45°30' E",
      feetInstead: null,
    };
  }
  const [whole, pole = '', d = '', m, s, side = ''] = match;
  const end = at + whole.length;
  const angle = compose(d, m, s);
  if (angle.fault) return { deg: Number.NaN, end, fault: angle.fault, feetInstead: null };
  if (angle.deg > 90)
    return {
      deg: Number.NaN,
      end,
      fault: 'is more than 90°: an angle between N or S and E or W runs from 0° to 90°',
      feetInstead: null,
    };
  const deg = quadrantToBearing(
    pole.startsWith('n') ? 'n' : 's',
    angle.deg,
    side.startsWith('e') ? 'e' : 'w',
  );
  return { deg, end, fault: null, feetInstead: null };
}

/** An angle with its signs at a place of a text in small letters: `135.5°`, `30°15'20"`, `135-30-00`, `30 degrees`. */
export function angleAt(text: string, at: number): AngleFound | null {
  MARKED.lastIndex = at;
  const marked = MARKED.exec(text);
  if (marked) {
    const [whole, d = '', m, minuteMark, s, attached] = marked;
    const end = at + whole.length;
    if (
      attached === undefined &&
      s === undefined &&
      minuteMark === "'" &&
      m !== undefined &&
      !text.startsWith('"', end)
    ) {
      const plain = compose(d, undefined, undefined);
      return { ...compose(d, m, s), end, feetInstead: { deg: plain.deg, feet: Number(m) } };
    }
    return { ...compose(d, m ?? attached, s), end, feetInstead: null };
  }
  DASHED.lastIndex = at;
  const dashed = DASHED.exec(text);
  if (!dashed) return null;
  const [whole, d = '', m, s] = dashed;
  return { ...compose(d, m, s), end: at + whole.length, feetInstead: null };
}
