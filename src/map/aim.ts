import type L from 'leaflet';
import type { Position } from '../yard/types';
import { toLatLng, toPosition } from './coords';

/** The view counts as still at the place it was sent to while that is this near to the middle. */
const AIM_PX = 2;

/** The place the map's middle stands for: where it was sent, exactly, not the ground under the nearest whole pixel. */
export class Aim {
  private place: Position | null = null;

  constructor(private readonly map: L.Map) {}

  /** Tells that the view was just sent to a place. */
  set(place: Position): void {
    this.place = place;
  }

  /** @returns the place sent to while the view is still there, else the ground under the middle. */
  position(): Position {
    const { map, place } = this;
    const middle = map.getSize().divideBy(2);
    const isThere = place && map.latLngToContainerPoint(toLatLng(place)).distanceTo(middle) <= AIM_PX;
    return place && isThere ? place : toPosition(map.getCenter());
  }
}
