import { describe, expect, it } from 'vitest';
import { boxAt, testPlane, zoneAt } from '../../measure/testYards';
import { emptyYard } from '../../yard/defaults';
import { changePicture } from '../../yard/edits';
import type { Yard, Zone } from '../../yard/types';
import { addPicture, carryTracedZones, handMoves, layFlat, ownPictures } from './picture-edits';
import { PictureTrail } from './picture-trail';

const meta = {
  pictureId: 'p1',
  yardId: 'y',
  name: 'Scan',
  widthPx: 400,
  heightPx: 300,
  levels: [],
  bytes: 0,
  position: null,
  unplaced: null,
  cameraPosition: null,
  issues: [],
};
const traced = (id: string, over: Partial<Zone> = {}): Zone => ({
  ...zoneAt(id, 'turf', [[boxAt(0, 0, 10, 10)]]),
  survey: { method: 'traced', vertexSigmaM: 0.1, scaleSigma: 0.5, source: 'Scan' },
  ...over,
});
const other = zoneAt('tape', 'turf', [[boxAt(20, 0, 10, 10)]]);
const START: Yard = {
  ...addPicture(emptyYard('y', 'Yard'), layFlat(meta, 'p', testPlane.origin, 40)),
  zones: [traced('a'), traced('b', { isLocked: true }), other],
};
const pictureIn = (yard: Yard) => {
  const [picture] = ownPictures(yard);
  if (!picture) throw new Error('no picture');
  return picture;
};
const shift = (yard: Yard, eastM: number) =>
  changePicture(yard, 'p', (each) => handMoves.shift(each, eastM, 0));
const ids = (zones: readonly Zone[]) => zones.map((zone) => zone.id);

describe('PictureTrail', () => {
  it('tells what was traced before the picture moved, and brings it along', () => {
    const trail = new PictureTrail();
    const moved = shift(START, 5);
    trail.observe(START, pictureIn(START));
    trail.observe(moved, pictureIn(moved));
    const behind = trail.behind(moved, pictureIn(moved));
    expect(ids(behind.free)).toEqual(['a']);
    expect(ids(behind.locked)).toEqual(['b']);
    const along = trail.bringAlong(moved, pictureIn(moved));
    const [x] = testPlane.toPlane(along.zones[0]?.parts[0]?.[0]?.[0] ?? [0, 0]);
    expect(x).toBeCloseTo(5, 3);
    expect(along.zones.slice(1)).toEqual(START.zones.slice(1));
    trail.observe(along, pictureIn(along));
    expect(ids(trail.behind(along, pictureIn(along)).free)).toEqual([]);
    // undone, it is offered again; the move undone too, there is nothing to bring
    trail.observe(moved, pictureIn(moved));
    expect(ids(trail.behind(moved, pictureIn(moved)).free)).toEqual(['a']);
    trail.observe(START, pictureIn(START));
    expect(ids(trail.behind(START, pictureIn(START)).free)).toEqual([]);
  });

  it('brings each zone from where it was traced, over several moves', () => {
    const trail = new PictureTrail();
    const once = shift(START, 5);
    const drawn: Yard = { ...once, zones: [...once.zones, traced('c')] };
    const twice = shift(drawn, 2);
    for (const yard of [START, once, drawn, twice]) trail.observe(yard, pictureIn(yard));
    const along = trail.bringAlong(twice, pictureIn(twice));
    const xOf = (id: string) =>
      testPlane.toPlane(along.zones.find((zone) => zone.id === id)?.parts[0]?.[0]?.[0] ?? [0, 0])[0];
    expect(xOf('a')).toBeCloseTo(7, 3);
    expect(xOf('c')).toBeCloseTo(2, 3);
  });

  it('keeps silent about zones that are to stay until the picture moves again', () => {
    const trail = new PictureTrail();
    const moved = shift(START, 5);
    trail.observe(START, pictureIn(START));
    trail.observe(moved, pictureIn(moved));
    trail.leave(moved, pictureIn(moved));
    expect(trail.behind(moved, pictureIn(moved))).toEqual({ free: [], locked: [] });
    const again = shift(moved, 1);
    trail.observe(again, pictureIn(again));
    expect(ids(trail.behind(again, pictureIn(again)).free)).toEqual(['a']);
  });

  it('counts zones that went along in the same step as with it', () => {
    const trail = new PictureTrail();
    const moved = carryTracedZones(START, shift(START, 5), 'p');
    trail.observe(START, pictureIn(START));
    trail.observe(moved, pictureIn(moved));
    const behind = trail.behind(moved, pictureIn(moved));
    expect(ids(behind.free)).toEqual([]);
    expect(ids(behind.locked)).toEqual(['b']);
    expect(moved.zones[2]).toBe(START.zones[2]);
    // back by undo
    trail.observe(START, pictureIn(START));
    expect(ids(trail.behind(START, pictureIn(START)).free)).toEqual([]);
  });
});
