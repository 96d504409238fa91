import L from 'leaflet';
import type { BaseLayer, Issue } from '../yard/types';
import { escapeHtml } from './coords';
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

/** The one layer under the zones. Asks nothing of any host before the person has chosen that layer. */
export class BaseLayers {
  private shown: L.TileLayer | L.ImageOverlay | null = null;
  private key = '';

  constructor(
    private readonly map: L.Map,
    private readonly tell: Tell,
  ) {}

  /** @returns true when a picture lies under the zones, false on plain paper. */
  show(layer: BaseLayer): boolean {
    const key = JSON.stringify(layer);
    if (key === this.key) return this.shown !== null;
    this.key = key;
    this.shown?.remove();
    this.shown = null;
    if (layer.kind === 'grid' || layer.kind === 'own-picture') return false;
    const [fault] = checkBaseLayer(layer);
    if (fault) {
      this.tell(fault);
      return false;
    }
    const made = makeLayer(layer);
    let isTold = false;
    const onTrouble = () => {
      if (isTold || this.shown !== made) return;
      isTold = true;
      this.tell({
        code: 'base-layer-failed',
        severity: 'warning',
        message: `“${layer.name}” did not answer for some of the picture. Check the connection, the address or the zoom.`,
        place: {},
      });
    };
    made.on('tileerror', onTrouble).on('error', onTrouble);
    this.shown = made;
    made.addTo(this.map);
    return true;
  }
}
