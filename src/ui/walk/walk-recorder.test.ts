import { afterEach, describe, expect, it, vi } from 'vitest';
import type { WalkDraft, WalkStore } from '../../session/walkDraft';
import type { Fix } from '../../survey/walk/types';
import { DEFAULT_LIMITS } from '../../survey/walk/walkDefaults';
import { WalkRecorder } from './walk-recorder';

/** 20 m by 10 m at about 2 m a second, from the lower left corner round to it. */
function walkRound(): Fix[] {
  const mPerDeg = 111_320;
  const corners = [
    [0, 0],
    [20, 0],
    [20, 10],
    [0, 10],
    [0, 0],
  ] as const;
  const places = corners.slice(1).flatMap(([x1, y1], side) => {
    const [x0, y0] = corners[side] ?? [0, 0];
    const steps = Math.hypot(x1 - x0, y1 - y0) / 2;
    return Array.from(
      { length: steps },
      (_, i) => [x0 + ((x1 - x0) * i) / steps, y0 + ((y1 - y0) * i) / steps] as const,
    );
  });
  return places.map(([x, y], i) => ({
    position: [x / mPerDeg, y / mPerDeg],
    accuracyM: 3,
    timeMs: 1000 * (i + 1),
  }));
}

function draftOf(mode: WalkDraft['mode'], fixes: readonly Fix[], openFromMs: number | null): WalkDraft {
  const limits = DEFAULT_LIMITS;
  return {
    yardId: 'y',
    startedMs: 0,
    mode,
    limits,
    toleranceM: null,
    standS: 15,
    fixes,
    stands: [],
    openFromMs,
  };
}

function storeOf(draft: WalkDraft): WalkStore & { saved: WalkDraft; dropped: number } {
  return {
    saved: draft,
    async load() {
      return this.saved;
    },
    async save(next) {
      this.saved = next;
    },
    async drop() {
      this.dropped += 1;
    },
    dropped: 0,
  };
}

it('a walk thrown away or kept can be taken up again', async () => {
  const fixes = walkRound();
  const store = storeOf(draftOf('round', fixes, 500));
  const recorder = new WalkRecorder(store);
  await recorder.open('y');
  const { draft } = recorder;
  await recorder.drop();
  expect(recorder.state).toBe('none');
  expect(recorder.line()).toHaveLength(0);
  expect(store.dropped).toBe(1);
  recorder.takeUp();
  expect(recorder.state).toBe('paused');
  expect(recorder.draft).toEqual(draft);
  expect(store.saved).toEqual(draft);
  expect(recorder.line()).toHaveLength(fixes.length);
});

describe('a walk broken off by a reload', () => {
  it('along the edge: what was walked up to then is a stretch, and gives the outline', async () => {
    const store = storeOf(draftOf('round', walkRound(), 500));
    const recorder = new WalkRecorder(store);
    await recorder.open('y');
    expect(recorder.state).toBe('paused');
    expect(recorder.line()).toHaveLength(30);
    expect(recorder.standNow()).toBeNull();
    const result = recorder.result();
    // 20 m by 10 m by plain arithmetic; its corners are held to the tolerance of a walk
    expect(result?.ok && Math.abs(result.outline.areaM2 - 200)).toBeLessThan(10);
    expect(store.saved.stands).toHaveLength(1);
  });

  it('at a corner: the corner counts when it had a position, and is none without', async () => {
    const fixes = walkRound().slice(0, 1);
    for (const [openFromMs, count] of [
      [500, 1],
      [2000, 0],
    ] as const) {
      const recorder = new WalkRecorder(storeOf(draftOf('corners', fixes, openFromMs)));
      await recorder.open('y');
      expect(recorder.draft?.stands).toHaveLength(count);
      expect(recorder.draft?.openFromMs).toBeNull();
    }
  });
});

describe('a corner whose second tap is forgotten', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });

  it('is ended when the person walks on, and is the place stood at', () => {
    vi.useFakeTimers({ now: 1_000_000 });
    let hear: (position: object) => void = () => undefined;
    const geolocation = {
      watchPosition: (listener: typeof hear) => {
        hear = listener;
        return 1;
      },
      clearWatch: () => undefined,
    };
    vi.stubGlobal('navigator', { geolocation });
    vi.stubGlobal('isSecureContext', true);
    vi.stubGlobal('document', { addEventListener: () => undefined, removeEventListener: () => undefined });
    const tell = (eastM: number, i: number) => {
      vi.advanceTimersByTime(1000);
      const coords = { longitude: (eastM + 0.1 * Math.sin(i)) / 111_320, latitude: 0, accuracy: 3 };
      hear({ coords, timestamp: Date.now() });
    };
    const recorder = new WalkRecorder(storeOf(draftOf('corners', [], null)));
    recorder.begin(draftOf('corners', [], null));
    for (let i = 0; i < 5; i++) tell(0, i);
    recorder.beginStand();
    for (let i = 5; i < 9; i++) tell(0, i);
    expect(recorder.standNow()).not.toBeNull();
    for (let i = 1; i <= 10; i++) tell(1.3 * i, 8 + i);
    expect(recorder.standNow()).toBeNull();
    expect(recorder.taken?.number).toBe(1);
    expect(recorder.taken?.leftOut).toBeGreaterThanOrEqual(4);
    const stand = recorder.draft?.stands[0];
    // the last position at the corner came 9 s after the start; one more may be within the noise
    expect(stand?.toMs).toBeGreaterThanOrEqual(1_000_000 + 8000);
    expect(stand?.toMs).toBeLessThanOrEqual(1_000_000 + 10_000);
    expect(recorder.usedCount).toBe(recorder.taken?.count);
    recorder.pause();
  });
});
