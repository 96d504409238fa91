import type { Yard } from '../yard/types';
import type { MapPicture } from './types';

const known = new WeakMap<Yard, Yard>();

/** The picture with only what lies on the map: zones without a place are left out. The same yard gives the same one. */
export function onMap(picture: MapPicture): MapPicture {
  const { yard } = picture;
  if (yard.zones.every((zone) => zone.isPlaced)) return picture;
  const kept = known.get(yard) ?? { ...yard, zones: yard.zones.filter((zone) => zone.isPlaced) };
  known.set(yard, kept);
  return { ...picture, yard: kept };
}
