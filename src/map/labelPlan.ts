import type L from 'leaflet';
import type { Box } from '../draft/placeTags';
import { toLatLng } from './coords';
import type { Overlays } from './overlays';
import type { MapPicture } from './types';
import type { ZoneLayers } from './zoneLayers';

const MARK_PX = 32;

/** Labels of a walk: some must be seen and go before the names of zones, others stand where there is room. */
export interface WalkLabels {
  /** @param taken px of the world at the present zoom. @returns what it takes itself */
  placeFirm(taken: readonly Box[]): readonly Box[];
  placeRest(taken: readonly Box[]): void;
  /** draws for another zoom. */
  zoomed(): void;
}

/**
 * Places all texts of the map in one go, so that none lies on another: symbols of the yard, signs of a walk,
 * names of zones, numbers of edges, then what may be left out. Done again at another zoom or when one of
 * them has changed.
 */
export class LabelPlan {
  private picture: MapPicture | null = null;
  private walk: WalkLabels | null = null;
  private marksPx: readonly Box[] = [];
  private firm: readonly Box[] = [];
  private placedFor: readonly unknown[] = [];
  private zoom = Number.NaN;

  constructor(
    private readonly map: L.Map,
    private readonly zones: ZoneLayers,
    private readonly overlays: Overlays,
  ) {
    map.on('zoomend', () => {
      this.walk?.zoomed();
      this.place(true);
    });
  }

  /** @param isWalkNew signs of the walk are others than before */
  show(picture: MapPicture, walk: WalkLabels | null, isWalkNew: boolean): void {
    const isOther = this.picture?.yard.marks !== picture.yard.marks;
    this.picture = picture;
    this.walk = walk;
    this.place(isWalkNew || isOther);
  }

  private place(isFirmNew: boolean): void {
    const { map, picture } = this;
    if (!picture) return;
    if (isFirmNew || map.getZoom() !== this.zoom) {
      this.zoom = map.getZoom();
      this.marksPx = picture.yard.marks.map(({ position }) => {
        const { x, y } = map.project(toLatLng(position));
        return { x, y, width: MARK_PX, height: MARK_PX };
      });
      this.firm = this.walk?.placeFirm(this.marksPx) ?? [];
    }
    this.zones.placeLabels(this.firm);
    const names = this.zones.labelBoxes();
    const from = [this.firm, names, picture.visit?.rinseEdges, picture.yard.marks];
    if (from.every((each, i) => each === this.placedFor[i])) return;
    this.placedFor = from;
    const taken = [...this.marksPx, ...this.firm, ...names];
    taken.push(...this.overlays.placeNumbers(taken));
    this.walk?.placeRest(taken);
  }
}
