import { describe, expect, it } from 'vitest';
import { runOutMarks } from './runOutMarks';
import { joinWalks, sweepBox, testBottles, testCoverage } from './testWalk';
import { walkNotes } from './walkNotes';

const BOX = { zoneId: 'front', x0: 0, y0: 0, widthM: 4, lengthM: 20, swathM: 2 };
const BACK = { ...BOX, zoneId: 'back', x0: 13, widthM: 2 };
const ZONES = [
  { zoneId: 'front', areaM2: 80 },
  { zoneId: 'back', areaM2: 40 },
];
const LEGS = joinWalks([sweepBox(BOX), sweepBox(BACK)]);
const notesWith = (eachM2: number) => {
  const vessels = testBottles(120, eachM2);
  return walkNotes(testCoverage(LEGS, vessels, runOutMarks(LEGS, ZONES, 1, vessels)), ZONES);
};

describe('what is checked along a walk', () => {
  it('marks and ends of zones in walking order, with what is left', () => {
    // a bottle for 64 m²; at the end of the front lawn, 80 m², the second has 48 of 64 left: on a mark
    expect(
      notesWith(64).map((note) => [note.isZoneEnd, note.zoneId, note.doneM2, note.vessel, note.left]),
    ).toEqual([
      [false, 'front', 16, 0, 0.75],
      [false, 'front', 32, 0, 0.5],
      [false, 'front', 48, 0, 0.25],
      [false, 'front', 64, 0, 0],
      [true, 'front', 80, 1, 0.75],
      [false, 'back', 96, 1, 0.5],
      [false, 'back', 112, 1, 0.25],
      [true, 'back', 120, 1, 0.125],
    ]);
  });

  it('a mark at the end of a zone is one line with it; passes are numbered in their zone', () => {
    const notes = notesWith(80);
    expect(
      notes.map((note) => [note.legKind, note.legNumber, note.mark?.left ?? null, note.walkedM]),
    ).toEqual([
      ['pass', 1, 0.75, 10],
      ['pass', 1, 0.5, 20],
      ['pass', 2, 0.25, 32],
      ['pass', 2, 0, 42],
      ['pass', 1, 0.75, 63],
      ['pass', 1, 0.5, 73],
    ]);
    expect(notes.map(({ isZoneEnd }) => isZoneEnd)).toEqual([false, false, false, true, false, true]);
  });

  it('each coat of a zone has its end', () => {
    const legs = [...sweepBox(BACK), ...sweepBox({ ...BACK, coat: 2 })];
    const vessels = testBottles(40, 100);
    const zones = [{ zoneId: 'back', areaM2: 40 }];
    const dose = testCoverage(legs, vessels, runOutMarks(legs, zones, 2, vessels));
    expect(walkNotes(dose, zones).map(({ coat, doneM2, left }) => [coat, doneM2, left])).toEqual([
      [1, 20, 0.8],
      [2, 25, 0.75],
      [2, 40, 0.6],
    ]);
  });

  it('without vessels only the ends of zones stand, with nothing to read off', () => {
    expect(walkNotes(testCoverage(LEGS, [], []), ZONES).map(({ doneM2, left }) => [doneM2, left])).toEqual([
      [80, null],
      [120, null],
    ]);
  });
});
