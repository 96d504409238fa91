import { describe, expect, it } from 'vitest';
import { type CalibrationDraft, CalibrationDrafts, type DraftStorage } from './calibration-draft';

const bucket = { yardId: 'y', equipmentId: 'e', kind: 'bucket' } as const;
const walk = { ...bucket, kind: 'walk' } as const;
const draft: CalibrationDraft = {
  readings: { volumeL: 10, timeS1: 40.25 },
  productId: 'p',
  coats: 2,
  doseKgPerM2: 0.01,
  dial: '12 ½',
  note: 'windy',
  on: '2026-05-04',
};

/** A storage in memory; `text` is all that it holds. */
function box(text: string | null = null) {
  const held = { text };
  const storage: DraftStorage = {
    getItem: () => held.text,
    setItem: (_key, value) => {
      held.text = value;
    },
    removeItem: () => {
      held.text = null;
    },
  };
  return { held, open: () => new CalibrationDrafts(() => storage) };
}

describe('calibrations under way', () => {
  it('are there when the page is loaded anew, each for its yard, equipment and kind', () => {
    const { open } = box();
    open().keepDraft(bucket, draft);
    open().keepDraft(walk, { ...draft, readings: { distanceM: 30 } });
    const later = open();
    expect(later.draftOf(bucket)).toEqual(draft);
    expect(later.draftOf(walk)?.readings).toEqual({ distanceM: 30 });
    for (const other of [{ yardId: 'z' }, { equipmentId: 'f' }, { kind: 'course' as const }])
      expect(later.draftOf({ ...bucket, ...other })).toBeNull();
    expect(later.placesIn('y')).toEqual([walk, bucket]);
    expect(later.placesIn('z')).toEqual([]);
  });

  it('are dropped when they are put in or begun anew, and leave nothing behind', () => {
    const { held, open } = box();
    open().keepDraft(bucket, draft);
    open().keepDraft(bucket, { ...draft, note: 'calm' });
    expect(open().placesIn('y')).toEqual([bucket]);
    open().keepDraft(bucket, null);
    expect(open().draftOf(bucket)).toBeNull();
    expect(held.text).toBeNull();
  });

  it.each(['{', '7', 'null', '[null, 3]', '{"a": 1}'])('damage is passed over: %s', (text) => {
    const { open } = box(text);
    expect(open().draftOf(bucket)).toBeNull();
    open().keepDraft(bucket, draft);
    expect(open().draftOf(bucket)).toEqual(draft);
  });

  it('one damaged draft does not take the others with it', () => {
    const bad = [
      { ...walk, draft: { ...draft, readings: { distanceM: 'far' } } },
      { ...walk, draft: { ...draft, coats: 3 } },
      { ...walk, kind: 'guess', draft },
      { ...walk, draft: { ...draft, on: 'yesterday' } },
    ];
    const { open } = box(JSON.stringify([...bad, { ...bucket, draft }]));
    expect(open().placesIn('y')).toEqual([bucket]);
  });

  it('stay while the page is open where nothing can be stored', () => {
    const drafts = new CalibrationDrafts(() => {
      throw new Error('not allowed');
    });
    expect(drafts.draftOf(bucket)).toBeNull();
    drafts.keepDraft(bucket, draft);
    expect(drafts.draftOf(bucket)).toEqual(draft);
    drafts.keepDraft(bucket, null);
    expect(drafts.draftOf(bucket)).toBeNull();
  });

  it('the oldest go where too many are kept', () => {
    const { open } = box();
    for (let i = 0; i < 30; i++) open().keepDraft({ ...bucket, equipmentId: `e${i}` }, draft);
    expect(open().placesIn('y')).toHaveLength(24);
    expect(open().draftOf({ ...bucket, equipmentId: 'e29' })).toEqual(draft);
    expect(open().draftOf({ ...bucket, equipmentId: 'e5' })).toBeNull();
  });
});
