import { formatBearing } from './bearing';
import { metresPerBareUnit } from './lengths';
import type { LikelyMistake } from './mistakes';
import { type ReadCallsOptions, readCalls } from './readCalls';
import { computeTraverse } from './traverse';
import type { PlatCall } from './types';

/** Rounding of a written call: a hundredth of a foot or a second of arc over its length, m and share. */
const ROUNDING_M = 0.01;
const ROUNDING_SHARE = 1e-5;

/**
 * The text with one likely mistake put right: the words of that call are replaced by the call as it would
 * have to be, a call left out is added at the end. The new text is read again; it is given only when it
 * closes as the mistake says and has all its other calls as before.
 * @param mistake of the calls of `readCalls(text, options)`
 * @returns null when the words of the call cannot be replaced without touching others
 */
export function applyMistake(text: string, mistake: LikelyMistake, options: ReadCallsOptions): string | null {
  const read = readCalls(text, options);
  const isRunning = /\bthence\b/i.test(text);
  const words = wordsOf(mistake.call, options);
  let made: string | null;
  if (mistake.kind === 'missing')
    made = words && `${text.replace(/[\s.;,]+$/, '')}${isRunning ? '; thence ' : '\n'}${words}`;
  else {
    const places = placesOf(
      text,
      read.entries.map((entry) => entry.text),
    );
    const boundary = read.entries.flatMap(({ role, call }, i) => (role === 'boundary' && call ? [i] : []));
    const place = places?.[boundary[mistake.index] ?? -1];
    if (!place) return null;
    const old = text.slice(place.from, place.to);
    const changed = mistake.call.kind === 'arc' ? otherTurn(old) : words;
    const lead = /^\s*thence\b\s*/i.exec(old)?.[0] ?? '';
    made =
      changed &&
      `${text.slice(0, place.from)}${changed === words ? lead : ''}${changed}${text.slice(place.to)}`;
  }
  if (made === null) return null;
  const again = readCalls(made, options);
  const more = mistake.kind === 'missing' ? 1 : 0;
  const isSame =
    again.calls.length === read.calls.length + more && again.entries.length === read.entries.length + more;
  const { closure } = computeTraverse(again.calls);
  const isClosed = closure.gapM <= mistake.gapM + ROUNDING_M + closure.lengthM * ROUNDING_SHARE;
  return isSame && isClosed && again.issues.every(({ severity }) => severity !== 'error') ? made : null;
}

/** A straight call as it is typed; null for a curve. */
function wordsOf(call: PlatCall, { foot, bareUnit }: ReadCallsOptions): string | null {
  if (call.kind !== 'line') return null;
  const bearing = formatBearing(call.bearingDeg).replaceAll('′', "'").replaceAll('″', '"');
  const length =
    bareUnit === 'm'
      ? `${call.lengthM.toFixed(3)} m`
      : `${(call.lengthM / metresPerBareUnit('ft', foot)).toFixed(2)} ft`;
  return `${bearing} ${length}`;
}

function otherTurn(words: string): string | null {
  const turns = words.match(/\b(?:right|left)\b/gi) ?? [];
  if (turns.length !== 1) return null;
  return words.replace(/\b(right|left)\b/i, (turn) => (turn.toLowerCase() === 'right' ? 'left' : 'right'));
}

/** Where the words of each call stand in the text, one after the other; null when they are not found so. */
function placesOf(
  text: string,
  quotes: readonly string[],
): readonly { readonly from: number; readonly to: number }[] | null {
  const places: { from: number; to: number }[] = [];
  let from = 0;
  for (const quote of quotes) {
    const pattern = quote.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '\\s+');
    const found = new RegExp(pattern).exec(text.slice(from));
    if (!found || quote === '') return null;
    const start = from + found.index;
    from = start + found[0].length;
    places.push({ from: start, to: from });
  }
  return places;
}
