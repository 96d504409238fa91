import { chordBearing, formatBearing, formatDms } from '../../survey/plat/bearing';
import { curveElements } from '../../survey/plat/curve';
import { type LikelyMistake, mistakeWords } from '../../survey/plat/mistakes';
import type { PlatCall } from '../../survey/plat/types';
import { formatAtPlace, formatNumber } from '../../units/format';
import type { UnitSystem } from '../../yard/types';
import { metresPerFoot, type PlatDraft } from './plat-draft';
import type { PlatReading } from './plat-reading';

/** Lengths as on plats: feet in hundredths, metres in millimetres. */
export function platLength(draft: PlatDraft, system: UnitSystem): (m: number) => string {
  return system === 'us'
    ? (m) => `${formatAtPlace(m / metresPerFoot(draft), 2)}\u00a0ft`
    : (m) => `${formatAtPlace(m, 3)}\u00a0m`;
}

/** A call in the standard form, its length apart. */
export function callWords(
  call: PlatCall,
  sayLength: (m: number) => string,
): { readonly way: string; readonly length: string } {
  if (call.kind === 'line') return { way: formatBearing(call.bearingDeg), length: sayLength(call.lengthM) };
  const { arcM, chordM } = curveElements(call.radiusM, call.deltaDeg);
  return {
    way: `Curve ${call.turn}, R ${sayLength(call.radiusM)}, Δ ${formatDms(call.deltaDeg)}; chord ${formatBearing(chordBearing(call))} ${sayLength(chordM)}`,
    length: sayLength(arcM),
  };
}

/** The precision ratio in round figures, such as 1:5,400. */
export function ratioWords(ratio: number): string {
  return `1:${formatNumber(Math.round(ratio), 2)}`;
}

/**
 * What a precision ratio is worth, in plain words. 1:10,000 is asked in the business parts of cities and
 * 1:5,000 of field traverses for residential lots, suburbs and farm land in Washington State: WAC 332-130-090.
 * The steps below are common practice, no source.
 */
export function classWords(ratio: number): string {
  if (ratio >= 10_000) return 'As good as surveys of city blocks must be (1:10,000).';
  if (ratio >= 5_000) return 'As good as surveys of residential lots must be (1:5,000).';
  if (ratio >= 1_000)
    return 'Short of what a survey of a lot must reach (1:5,000), yet good enough for areas of turf.';
  if (ratio >= 300) return 'Poor for a survey. Look for a slip in reading before you use it.';
  return 'That is no closed figure: a side is left out, or a call is misread.';
}

/** The gap in one sentence. */
export function gapWords({ written, hasGap }: PlatReading, sayLength: (m: number) => string): string {
  const { gapM, bearingDeg, lengthM, ratio } = written.closure;
  if (!hasGap) return `The calls close: they end where they begin, after ${sayLength(lengthM)}.`;
  return `The calls end ${sayLength(gapM)} ${towards(bearingDeg)} of their beginning, after ${sayLength(lengthM)}: ${ratioWords(ratio)}.`;
}

function towards(bearingDeg: number): string {
  const names = ['north', 'northeast', 'east', 'southeast', 'south', 'southwest', 'west', 'northwest'];
  return names[Math.round(bearingDeg / 45) % 8] ?? 'north';
}

/** A likely mistake as a sentence. */
export interface MistakeLine {
  readonly mistake: LikelyMistake;
  readonly words: string;
}

/** Likely mistakes as sentences; calls are numbered as in the list. */
export function mistakeLines(reading: PlatReading, sayLength: (m: number) => string): readonly MistakeLine[] {
  const numbers = reading.read.entries.flatMap(({ role, call }, i) =>
    role === 'boundary' && call ? [i + 1] : [],
  );
  return reading.mistakes.map((mistake) => ({
    mistake,
    words: mistakeWords(mistake, numbers[mistake.index] ?? mistake.index + 1, sayLength),
  }));
}
