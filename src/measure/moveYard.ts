import type { BaseLayer, Curve, Parcel, Position, Rings, Yard, Zone } from '../yard/types';
import { roundPosition } from './corners';
import { findAllCurves, layCurveInRing } from './curves';
import { createPlane } from './plane';
import { turnClockwise } from './turnClockwise';
import type { XY } from './types';

type Move = (position: Position) => Position;

/**
 * The whole yard moved and turned on the Earth: placed zones with their curves, marks, the outline of the
 * property and the person's own pictures. Lengths and angles stay: what lay so many metres east and north
 * of `from` lies as far from `to`, turned (the planes of `createPlane`; over 100 m of yard the two planes
 * agree to about a millimetre). Zones without a place, and pictures by edges in degrees, stay as they are.
 * @param from degrees; any place, the middle of the yard usually
 * @param to degrees; where `from` comes to lie
 * @param turnDeg degrees, clockwise
 */
export function moveYard(yard: Yard, from: Position, to: Position, turnDeg: number): Yard {
  const [here, there] = [createPlane(from), createPlane(to)];
  const turn = turnClockwise(turnDeg);
  const move: Move = (position) => roundPosition(there.toLonLat(turn(here.toPlane(position))));
  const picture = (layer: BaseLayer) =>
    layer.kind === 'own-picture' ? movePicture(layer, move, turn) : layer;
  const { settings } = yard;
  return {
    ...yard,
    zones: yard.zones.map((zone) => (zone.isPlaced ? moveOutline(zone, move) : zone)),
    marks: yard.marks.map((mark) => ({ ...mark, position: move(mark.position) })),
    parcel: yard.parcel && moveOutline(yard.parcel, move),
    settings: {
      ...settings,
      baseLayer: picture(settings.baseLayer),
      ownLayers: settings.ownLayers.map(picture),
    },
  };
}

/**
 * An outline with every place moved, degrees. Curves are laid anew in their rings: in the new place their
 * corners differ by parts of a millimetre, or in number when it is another size.
 */
export function moveOutline<T extends Zone | Parcel>(outline: T, move: Move): T {
  const parts: Rings[] = outline.parts.map((rings) => rings.map((ring) => ring.map(move)));
  const moveCurve = (curve: Curve): Curve => ({ ...curve, points: curve.points.map(move) });
  const { found } = findAllCurves(outline);
  const lastFirst = [...found].sort(
    (a, b) => Number(a.from >= a.to) - Number(b.from >= b.to) || b.from - a.from,
  );
  for (const one of lastFirst) {
    const ring = parts[one.part]?.[one.ring];
    const before = outline.parts[one.part]?.[one.ring];
    if (ring && before) {
      // a curve over the ring's start comes last: those before it may have got more corners, or fewer
      const more = ring.length - before.length;
      const shift = (index: number) => (one.from >= one.to && index >= one.from ? index + more : index);
      const found = { ...one, from: shift(one.from), guests: one.guests.map(shift) };
      const laid = layCurveInRing(ring, found, moveCurve(one.curve));
      parts[one.part] = (parts[one.part] ?? []).with(one.ring, laid);
    }
  }
  return { ...outline, parts, curves: outline.curves.map(moveCurve) };
}

function movePicture(
  layer: Extract<BaseLayer, { kind: 'own-picture' }>,
  move: Move,
  turn: (p: XY) => XY,
): BaseLayer {
  const [a, b, c, d, e, f] = layer.toGround;
  const [east, south, start] = [turn([a, d]), turn([b, e]), turn([c, f])];
  const points = layer.fit?.points.map((point) => ({ ...point, ground: move(point.ground) }));
  return {
    ...layer,
    origin: move(layer.origin),
    toGround: [east[0], south[0], start[0], east[1], south[1], start[1]],
    fit: layer.fit && points ? { ...layer.fit, points } : layer.fit,
  };
}
