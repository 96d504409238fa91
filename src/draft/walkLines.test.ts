import { describe, expect, it } from 'vitest';
import { EDGE_PATTERN_IDS, EDGE_PATTERNS } from './hatches';
import { PARCEL_LINE } from './parcelLine';
import { sampleOfLine, WALK_LINE_IDS, WALK_LINES, walkLineOf } from './walkLines';

describe('lines of a walk', () => {
  it('tell apart by their rhythm of dashes and dots, or by half the weight where both are dots', () => {
    /** "whole", "-", ".", "-.": what a person sees of one period. */
    const rhythmOf = (dash: readonly number[]) =>
      dash.length === 0
        ? 'whole'
        : dash
            .filter((_, i) => i % 2 === 0)
            .map((stroke) => (stroke > 3 ? '-' : '.'))
            .join('');
    const looks = WALK_LINE_IDS.map((id) => WALK_LINES[id]);
    for (const a of looks) {
      for (const b of looks) {
        if (a.id === b.id || rhythmOf(a.dash) !== rhythmOf(b.dash)) continue;
        expect(rhythmOf(a.dash), `${a.id} ${b.id}`).toBe('.');
        const [thin, thick] = [Math.min(a.width, b.width), Math.max(a.width, b.width)];
        expect(thick / thin, `${a.id} ${b.id}`).toBeGreaterThan(1.7);
      }
    }
  });
  it('share no dash with edges to clean and the property line', () => {
    const others = [...EDGE_PATTERN_IDS.map((id) => EDGE_PATTERNS[id].dash.join()), PARCEL_LINE.dash.join()];
    for (const id of WALK_LINE_IDS) expect(others).not.toContain(WALK_LINES[id].dash.join());
  });
  it('have samples as wide as asked for; that of a turn comes back', () => {
    for (const id of WALK_LINE_IDS) if (id !== 'turn') expect(sampleOfLine(id, 1, 6, 46)).toBe('M1 6H47');
    const [, from, to] = /^M([\d.]+) [\d.]+H.*H([\d.]+)$/.exec(sampleOfLine('turn', 0, 5, 10)) ?? [];
    expect(from).toBe(to);
    expect(sampleOfLine('turn', 0, 5, 10)).toContain('A1 1 0 0 1 7.5 6');
  });
  it('draw passes of the second coat otherwise than those they cross', () => {
    expect(walkLineOf({ kind: 'pass', coat: 1 })).toBe('pass');
    expect(walkLineOf({ kind: 'pass', coat: 2 })).toBe('cross');
    expect(walkLineOf({ kind: 'lap', coat: 2 })).toBe('lap');
  });
});
