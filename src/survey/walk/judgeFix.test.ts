import { describe, expect, it } from 'vitest';
import { createPlane } from '../../measure/plane';
import { judgeFix, judgeFixes } from './judgeFix';
import type { Fix } from './types';
import { DEFAULT_LIMITS } from './walkDefaults';

const plane = createPlane([-96.5, 41.2]);
const fixAt = (x: number, y: number, seconds: number, accuracyM: number | null = 3): Fix => ({
  position: plane.toLonLat([x, y]),
  accuracyM,
  timeMs: seconds * 1000,
});
const judge = (fix: Fix, before: Fix | null = null, ageMs = 0) =>
  judgeFix(fix, before, DEFAULT_LIMITS, 4.9, ageMs);

describe('judgeFix', () => {
  it('takes a good fix, also one that noise seems to move fast', () => {
    expect(judge(fixAt(0, 0, 0))).toBeNull();
    expect(judge(fixAt(7, 0, 1), fixAt(0, 0, 0))).toBeNull();
  });

  it('tells why it takes none', () => {
    const before = fixAt(0, 0, 10);
    expect(judge(fixAt(0, 0, 0, 10.5))).toBe('inaccurate');
    expect(judge(fixAt(1, 0, 11), before, 11_000)).toBe('too-old');
    expect(judge(fixAt(1, 0, 9), before)).toBe('too-old');
    expect(judge(fixAt(0, 0, 12), before)).toBe('repeated');
    expect(judge(fixAt(1, 0, 10), before)).toBe('repeated');
    // 6.4 m are left to the two accuracies: 30 m in 3 s are 7.9 m/s
    expect(judge(fixAt(30, 0, 13), before)).toBe('too-fast');
    expect(judge(fixAt(30, 0, 11), before)).toBe('jump');
    expect(judge(fixAt(30, 0, 17), before)).toBeNull();
  });

  it('knows what is no place', () => {
    const bad: Partial<Fix>[] = [
      { position: [Number.NaN, 40] },
      { position: [0, 91] },
      { position: [181, 0] },
      { accuracyM: 0 },
      { accuracyM: Number.NaN },
      { timeMs: Number.POSITIVE_INFINITY },
    ];
    for (const fields of bad) expect(judge({ ...fixAt(0, 0, 0), ...fields })).toBe('not-a-place');
  });

  it('takes the assumed accuracy where none is told, and knows no speed without times', () => {
    expect(judge(fixAt(0, 0, 0, null))).toBeNull();
    const before = { ...fixAt(0, 0, 0), timeMs: null };
    expect(judge({ ...fixAt(200, 0, 0), timeMs: null }, before)).toBeNull();
  });
});

it('after a jump the walk goes on from where it was; a walker who is really elsewhere is believed in time', () => {
  const way = [0, 1, 2, 3].map((i) => fixAt(i, 0, i));
  const back = [5, 6].map((i) => fixAt(i, 0, i));
  const judged = judgeFixes([...way, fixAt(120, 0, 4), ...back], DEFAULT_LIMITS, 4.9);
  expect(judged.accepted).toHaveLength(6);
  expect(judged.rejected).toMatchObject({ jump: 1, 'too-fast': 0 });
  const moved = Array.from({ length: 40 }, (_, i) => fixAt(100 + i, 0, 4 + i));
  const other = judgeFixes([...way, ...moved], DEFAULT_LIMITS, 4.9);
  expect(other.accepted.length).toBeGreaterThan(8);
  expect(other.rejected['too-fast'] + other.rejected.jump).toBeGreaterThan(10);
});
