import L from 'leaflet';
import type { TerraDrawChanges, TerraDrawExtend, TerraDrawStylingFunction } from 'terra-draw';
import { TerraDrawLeafletAdapter } from 'terra-draw-leaflet-adapter';
import { toPosition } from '../coords';

/** The library refuses more decimals than its precision. */
function rounded(at: L.LatLng): { lng: number; lat: number } {
  const [lng, lat] = toPosition(at);
  return { lng, lat };
}

/**
 * The drawing library's Leaflet adapter with two parts of ours: it hears no pointer of its own (ours
 * tells a drag from a click, snaps, and sends what it made of it), and the preview is drawn by us, since
 * the library's renderer writes a style element into the page, which the Content-Security-Policy forbids.
 */
export class DraftAdapter extends TerraDrawLeafletAdapter {
  private readonly deaf = document.createElement('div');
  private readonly previews = new Map<string | number, L.GeoJSON>();

  constructor(
    private readonly leaflet: L.Map,
    private readonly snap: (at: L.LatLng) => L.LatLng,
  ) {
    super({ lib: L, map: leaflet, coordinatePrecision: 11 });
  }

  override getMapEventElement(): HTMLElement {
    return this.deaf ?? document.createElement('div');
  }

  override setDraggability(): void {}

  override render(changes: TerraDrawChanges, _styling: TerraDrawStylingFunction): void {
    for (const id of changes.deletedIds) this.drop(id);
    for (const feature of [...changes.created, ...changes.updated]) {
      if (feature.id === undefined) continue;
      this.drop(feature.id);
      if (feature.geometry.type === 'Point') continue;
      const preview = L.geoJSON(feature, {
        pane: 'yard-drawing',
        interactive: false,
        style: { pane: 'yard-drawing', className: 'yard-draw-shape', weight: 3 },
      } as L.GeoJSONOptions);
      this.previews.set(feature.id, preview.addTo(this.leaflet));
    }
  }

  override clear(): void {
    for (const id of [...this.previews.keys()]) this.drop(id);
    this._currentModeCallbacks?.onClear();
  }

  private drop(id: string | number): void {
    this.previews.get(id)?.remove();
    this.previews.delete(id);
  }

  /** A click or a move, of the pointer or of the keyboard's crosshair. */
  send(kind: 'click' | 'move', at: L.LatLng, snaps: boolean): void {
    const { lng, lat } = rounded(snaps ? this.snap(at) : at);
    const spot = this.leaflet.latLngToContainerPoint(at);
    const event: Parameters<TerraDrawExtend.TerraDrawCallbacks['onClick']>[0] = {
      lng,
      lat,
      containerX: spot.x,
      containerY: spot.y,
      button: kind === 'click' ? 'left' : 'neither',
      heldKeys: [],
      isContextMenu: false,
    };
    if (kind === 'click') this._currentModeCallbacks?.onClick(event);
    else this._currentModeCallbacks?.onMouseMove(event);
  }
}
