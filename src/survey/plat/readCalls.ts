import type { Issue } from '../../yard/types';
import { gatherCalls } from './gatherCalls';
import { type BareUnit, type Foot, metresPerBareUnit } from './lengths';
import { type Resolved, resolveCall } from './resolveCall';
import { tokenize } from './tokens';
import type { CallsRead, PlatCall, ReadCall } from './types';

/** How a text of calls is to be read. */
export interface ReadCallsOptions {
  /** which foot “ft”, chains, rods and links are made of. */
  readonly foot: Foot;
  /** unit of a length without one. */
  readonly bareUnit: BareUnit;
}

/** More calls than this are no parcel. */
const MOST_CALLS = 500;
const POINT_OF_BEGINNING =
  /\b(?:point|place)\s+(?:and\s+place\s+)?of\s+(?:the\s+)?beginning\b|\bp\.?o\.?b\b/i;

/**
 * Reads the calls of a plat or deed, typed one a line or as running text with “thence”: quadrant bearings
 * (`N 45°30'15" E 120.5 ft`, `North 45 degrees 30 minutes East a distance of 120.5 feet`, `due north 100'`),
 * azimuths (`135.5° 40 ft`, `Az 135-30-00 40`), turns (`40 ft, right`, `left 30, 12 m`), lengths in feet and
 * inches, chains and links, rods, yards and metres, direction or length first; curves by any two of radius,
 * central angle, arc and chord (`curve right R=50 delta 30°`), tangent to the call before unless a chord or
 * radial bearing is given. In a list a length alone turns right by 90°; the first then runs north.
 * Numbers are never passed over in silence, save those that name a lot, a page, the size of a pin and the like.
 * @returns each call with its issues; calls in metres and degrees from the plat's north
 */
export function readCalls(text: string, options: ReadCallsOptions): CallsRead {
  const isRunning = /\bthence\b/i.test(text);
  const tokens = tokenize(text, options.foot, !isRunning);
  const units = {
    bareM: metresPerBareUnit(options.bareUnit, options.foot),
    footM: metresPerBareUnit('ft', options.foot),
  };
  const stated = tokens.find((token) => token.type === 'area');
  const drafts = gatherCalls(
    tokens.filter((token) => token.type !== 'area'),
    units,
  );
  const bareM = options.bareUnit === 'm' ? 1 : units.footM;
  const sayLength = (m: number) => `${(m / bareM).toFixed(2)} ${options.bareUnit === 'm' ? 'm' : 'ft'}`;
  const entries: ReadCall[] = [];
  const issues: Issue[] = [];
  let before: PlatCall | null = null;
  let tieEnd = -1;
  for (const [index, draft] of drafts.entries()) {
    const first = draft.tokens[0];
    if (!first) continue;
    const at = draft.tokens.find((token) => token.type !== 'filler')?.at ?? first.at;
    const upTo = drafts[index + 1]?.tokens[0]?.at ?? text.length;
    const line = text.slice(0, at).split('\n').length;
    const whole = oneLine(text.slice(first.at, upTo)).replace(
      /[\s,;:.]*(?:\b(?:thence|then))?[\s,;:]*$/i,
      '',
    );
    const isEmpty = draft.lengthM === null && draft.directionDeg === null && !draft.curve && !draft.turn;
    const isRemark =
      /\b(?:beginning|commencing|commence|begin|containing|being|parcel|subject|excepting)\b/i.test(whole);
    if (
      isEmpty &&
      draft.faults.length === 0 &&
      (isRunning || isRemark || draft.words.length + draft.tokens.length === 0)
    )
      continue;
    const resolved: Resolved = resolveCall(draft, {
      before,
      isFirst: entries.length === 0,
      mayTurnByItself: !isRunning && line !== entries.at(-1)?.line,
      sayLength,
      line,
      quote: ({ tokens: quoted }) => {
        const [a, b] = [quoted[0]?.at ?? 0, quoted.at(-1)?.end ?? 0];
        return oneLine(text.slice(a, b));
      },
    });
    entries.push({ call: resolved.call, role: 'boundary', line, text: whole, issues: resolved.issues });
    issues.push(...resolved.issues);
    before = resolved.call;
    if (POINT_OF_BEGINNING.test(whole) && tieEnd < 0) tieEnd = entries.length;
    if (entries.length > MOST_CALLS) break;
  }
  const isTied = /\bcommenc/i.test(text) && tieEnd > 0 && tieEnd < entries.length;
  const placed = isTied
    ? entries.map((entry, i) => (i < tieEnd ? { ...entry, role: 'tie' as const } : entry))
    : entries;
  if (entries.length > MOST_CALLS)
    issues.push(fault('too-many-calls', `More than ${MOST_CALLS} calls are no outline of a parcel.`));
  const calls = placed.flatMap(({ call, role }) => (call && role === 'boundary' ? [call] : []));
  return { entries: placed, issues, calls, statedAreaM2: stated?.type === 'area' ? stated.areaM2 : null };
}

function fault(code: string, message: string): Issue {
  return { code, severity: 'error', message, place: {} };
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
