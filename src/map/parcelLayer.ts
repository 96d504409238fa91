import L from 'leaflet';
import { PARCEL_LINE } from '../draft/parcelLine';
import { toLatLngs } from './coords';
import type { MapPicture } from './types';

/** The outline of the property, over the zones; it takes no clicks. */
export class ParcelLayer {
  private readonly casing: L.Polygon;
  private readonly line: L.Polygon;
  private shown = '';
  private parts: unknown = null;

  constructor(private readonly map: L.Map) {
    const common = { pane: 'yard-overlays', interactive: false, fill: false, smoothFactor: 0 } as const;
    this.casing = L.polygon([], { ...common, lineCap: 'butt' });
    this.line = L.polygon([], { ...common, lineCap: 'butt', className: 'yard-parcel' });
  }

  show({ yard, dark, baseLayer }: MapPicture): void {
    const { parcel } = yard;
    if (parcel?.parts !== this.parts) {
      this.parts = parcel?.parts ?? null;
      for (const layer of [this.casing, this.line]) {
        layer.setLatLngs(parcel ? toLatLngs(parcel.parts) : []);
        if (parcel) layer.addTo(this.map);
        else layer.remove();
      }
    }
    const theme = dark && baseLayer.kind === 'grid' ? 'dark' : 'light';
    if (theme === this.shown) return;
    this.shown = theme;
    const { width, dash } = PARCEL_LINE;
    this.casing.setStyle({
      color: theme === 'dark' ? '#14202a' : '#ffffff',
      weight: width + 2.5,
      opacity: 0.85,
    });
    this.line.setStyle({ color: PARCEL_LINE[theme], weight: width, dashArray: dash.join(' ') });
  }
}
