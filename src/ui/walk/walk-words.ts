import type { WalkDraft } from '../../session/walkDraft';
import type { JudgedFixes, PoorFix, WalkMode, WalkOutline } from '../../survey/walk/types';
import { formatLength } from '../../units/format';
import type { Issue, UnitSystem } from '../../yard/types';

export const MODE_WORDS: Readonly<Record<WalkMode, { readonly name: string; readonly when: string }>> = {
  corners: { name: 'Corner by corner', when: 'straight edges: stand still at each corner' },
  round: {
    name: 'All along the edge',
    when: 'curved edges: keep walking until you are back where you began',
  },
};

/** Why a position was left out. */
export const FAULT_WORDS: Readonly<Record<PoorFix, string>> = {
  'not-a-place': 'it names no place',
  inaccurate: 'its accuracy is worse than the limit',
  'too-old': 'it is an old position',
  repeated: 'it is the same position again',
  'too-fast': 'it is farther off than anyone walks',
  jump: 'the receiver jumped',
};

type Trouble = 'none' | 'insecure' | 'denied' | 'unavailable' | 'quiet';

const TROUBLE_WORDS: Readonly<Record<Trouble, string>> = {
  none: 'This browser tells no location, so a walk cannot be recorded here. Measure by tape, or record a GPX track elsewhere and bring it in as a file.',
  insecure:
    'A browser tells the location only to pages opened over https (or on this machine itself). Open this page that way.',
  denied:
    'The browser was not allowed to tell the location. Allow it for this page in the browser’s settings, and turn on location on the device; then go on.',
  unavailable: 'The device finds no position just now. Go out under open sky and wait a little.',
  quiet: 'No position has come for a while. Is the sky open, and this page in front?',
};

export function troubleOf(trouble: Trouble): Issue {
  return {
    code: `location-${trouble}`,
    severity: trouble === 'quiet' || trouble === 'unavailable' ? 'warning' : 'error',
    message: TROUBLE_WORDS[trouble],
    place: {},
  };
}

/** What an accuracy is worth, in a word. Common practice, no source. */
export function qualityWord(accuracyM: number, maxAccuracyM: number): string {
  if (accuracyM > maxAccuracyM) return 'Too poor';
  if (accuracyM <= 3) return 'Good';
  return accuracyM <= 6 ? 'Fair' : 'Poor';
}

/** "212 positions good, 3 left out, 60 used so far": used are those at corners or on the edge. */
export function countWords(accepted: number, rejected: JudgedFixes['rejected'], used: number): string {
  const out = Object.values(rejected).reduce((sum, count) => sum + count, 0);
  const now = used === 0 ? 'none used yet' : `${used} used`;
  return `${accepted} ${accepted === 1 ? 'position' : 'positions'} good, ${out} left out, ${now}`;
}

/** How an outline was found, for the zone's record. */
export function sourceWords(outline: WalkOutline, mode: WalkMode, date: string, fixCount: number): string {
  const how = mode === 'corners' ? 'corner by corner' : 'along the edge';
  return `Walked ${how} ${date}: ${fixCount} positions, ${outline.corners.length} corners`;
}

/** What became of the line walked: bends, tolerance, offset, gap. */
export function lineWords(outline: WalkOutline, units: UnitSystem): string[] {
  const { toleranceM, largestOffsetM, gapM } = outline;
  if (toleranceM === null || largestOffsetM === null || gapM === null) return [];
  const at = (m: number) => formatLength(m, units);
  return [
    `${outline.corners.length} corners: bends of more than ${at(toleranceM)} are kept, and the sides lie as near as can be to all positions between them (the farthest is ${at(largestOffsetM)} off).`,
    `The last position was ${at(gapM)} from the first; a straight side closes it.`,
  ];
}

/** "A walk with 4 corners is waiting"; empty for one without any position. */
export function waitingWords({ mode, stands, fixes }: WalkDraft): string {
  if (fixes.length === 0) return '';
  if (mode === 'round') return `A walk along the edge with ${countOf(fixes.length, 'position')} is waiting`;
  return `A walk with ${countOf(stands.length, 'corner')} is waiting`;
}

function countOf(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
