import type { Issue } from '../../yard/types';
import type { JudgedFixes, WalkOptions, WalkOutline } from './types';

/** An area known to worse than this, two standard deviations as a share, is better measured by tape. */
const COARSE_SHARE = 0.1;
/** A closing gap wider than this many times the tolerance is no closed walk. */
const WIDE_GAP = 2;
const POOR_SHARE = 0.25;

/** What a person should know of an outline before using it; in plain sentences without figures of units. */
export function notesOfWalk(outline: WalkOutline, judged: JudgedFixes, options: WalkOptions): Issue[] {
  const notes: Issue[] = [];
  const note = (code: string, severity: Issue['severity'], message: string) => {
    notes.push({ code, severity, message, place: { position: outline.ring[0] ?? [0, 0] } });
  };
  if (2 * outline.areaSigmaM2 > COARSE_SHARE * outline.areaM2) {
    note(
      'walk-coarse',
      'warning',
      `The ± of this area is ${Math.round((200 * outline.areaSigmaM2) / outline.areaM2)} % of it: too coarse for a dose. A tape measures a piece this small far better.`,
    );
  }
  if (outline.gapM !== null && outline.gapM > WIDE_GAP * (outline.toleranceM ?? 0)) {
    note(
      'walk-open',
      'warning',
      'The walk did not come back to its start: the last side is a straight line that nobody walked.',
    );
  }
  if (outline.overlapM > 0) {
    note('walk-overlap', 'note', 'What was walked beyond the start a second time is left off.');
  }
  if (outline.noise.scale > 1.2) {
    note(
      'walk-scatter',
      'warning',
      'The positions scatter more than the receiver said; the ± is widened by what they show.',
    );
  }
  const poor = Object.values(judged.rejected).reduce((sum, count) => sum + count, 0);
  if (poor > POOR_SHARE * (poor + judged.accepted.length)) {
    note('walk-many-poor', 'warning', 'Many positions were left out as poor: trees or walls hid the sky.');
  }
  if (judged.accepted.some(({ accuracyM }) => accuracyM === null)) {
    note(
      'walk-no-accuracy',
      'warning',
      'The positions tell no accuracy; that of a phone under open sky is taken for them.',
    );
  }
  if (options.toleranceM !== null && outline.toleranceM !== null && outline.toleranceM > options.toleranceM) {
    note('walk-looser', 'note', 'The tolerance was widened until the outline no longer crossed itself.');
  }
  return notes;
}
