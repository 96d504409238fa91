import L from 'leaflet';
import type { OwnPicture } from '../survey/picture/ownPicture';
import type { BaseLayer, Issue } from '../yard/types';
import { escapeHtml } from './coords';
import type { PictureLayer, PictureSource } from './pictureLayer';
import { checkBaseLayer, MAX_ZOOM } from './sources';

type Tell = (issue: Issue) => void;

function makeLayer(
  layer: Exclude<BaseLayer, { kind: 'grid' | 'own-picture' }>,
): L.TileLayer | L.ImageOverlay {
  const attribution = escapeHtml(layer.attribution);
  const common = { attribution, pane: 'yard-base', maxZoom: MAX_ZOOM };
  switch (layer.kind) {
    case 'xyz':
      return L.tileLayer(layer.url, { ...common, maxNativeZoom: layer.maxNativeZoom });
    case 'wms':
      // Leaflet picks SRS or CRS and the axis order by the version.
      return L.tileLayer.wms(layer.url, {
        ...common,
        layers: layer.layers,
        version: layer.version,
        format: 'image/jpeg',
      });
    case 'picture':
      return L.imageOverlay(
        layer.url,
        [
          [layer.south, layer.west],
          [layer.north, layer.east],
        ],
        { attribution, pane: 'yard-base', alt: layer.name },
      );
  }
}

/** A layer in the place of another, or none. */
class Place {
  private shown: { remove(): unknown } | null = null;
  private key = '';

  /** Whether the place already holds what the key names; if not it is emptied for it. */
  isHeld(key: string): boolean {
    if (key === this.key) return true;
    this.empty();
    this.key = key;
    return false;
  }

  put(layer: { remove(): unknown }): void {
    this.shown = layer;
  }

  holds(layer: object): boolean {
    return this.shown === layer;
  }

  get isEmpty(): boolean {
    return this.shown === null;
  }

  empty(): void {
    this.shown?.remove();
    this.shown = null;
    this.key = '';
  }
}

/**
 * What lies under the zones: one layer, and under a picture of the person's own another if that is wished.
 * Asks nothing of any host before the person has chosen that layer.
 */
export class BaseLayers {
  private readonly place = new Place();
  private readonly under = new Place();
  private own: PictureLayer | null = null;
  private ownShown: OwnPicture | null = null;

  constructor(
    private readonly map: L.Map,
    private readonly tell: Tell,
    private readonly pictures: () => Promise<PictureSource>,
  ) {}

  /**
   * @param under shown beneath a picture of the person's own; not looked at with other layers
   * @returns `isImagery`: a picture lies under the zones; `isCovered`: it fills the whole ground.
   */
  show(
    layer: BaseLayer,
    under: BaseLayer | null = null,
  ): { readonly isImagery: boolean; readonly isCovered: boolean } {
    if (layer.kind !== 'own-picture') {
      this.under.empty();
      this.ownShown = null;
      const isShown = this.showIn(this.place, layer);
      return { isImagery: isShown, isCovered: isShown };
    }
    const isCovered = under !== null && under.kind !== 'own-picture' && this.showIn(this.under, under);
    if (!isCovered) this.under.empty();
    this.showOwn(layer);
    return { isImagery: true, isCovered };
  }

  /** Moves the picture of the person's own by px of the screen for the time of a drag; null: back. */
  shiftPicture(by: L.Point | null): void {
    this.own?.shift(by);
  }

  private showOwn(layer: OwnPicture): void {
    if (layer === this.ownShown) return;
    this.ownShown = layer;
    if (this.place.isHeld(`own-picture ${layer.pictureId}`)) {
      this.own?.update(layer);
      return;
    }
    this.own = null;
    void this.loadOwn(layer);
  }

  /** The code that draws a picture is fetched with the first one. */
  private async loadOwn(first: OwnPicture): Promise<void> {
    try {
      const { PictureLayer } = await import('./pictureLayer');
      const layer = this.ownShown;
      if (layer?.pictureId !== first.pictureId || !this.place.isEmpty) return;
      this.own = new PictureLayer(this.map, this.pictures, layer, this.tell);
      this.place.put(this.own);
    } catch {
      const message = 'The picture could not be shown. Check the connection and load the page again.';
      this.tell({ code: 'picture-not-shown', severity: 'error', message, place: {} });
    }
  }

  private showIn(place: Place, layer: Exclude<BaseLayer, { kind: 'own-picture' }>): boolean {
    if (place.isHeld(JSON.stringify(layer))) return !place.isEmpty;
    if (layer.kind === 'grid') return false;
    const [fault] = checkBaseLayer(layer);
    if (fault) {
      this.tell(fault);
      return false;
    }
    const made = makeLayer(layer);
    let isTold = false;
    const onTrouble = () => {
      if (isTold || !place.holds(made)) return;
      isTold = true;
      this.tell({
        code: 'base-layer-failed',
        severity: 'warning',
        message: `“${layer.name}” did not answer for some of the picture. Check the connection, the address or the zoom.`,
        place: {},
      });
    };
    made.on('tileerror', onTrouble).on('error', onTrouble);
    place.put(made);
    made.addTo(this.map);
    return true;
  }
}
