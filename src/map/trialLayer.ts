import L from 'leaflet';
import { textIcon, toLatLng } from './coords';
import type { MapPicture, Trial } from './types';

const PANE = 'yard-notes';
const POINT_PX = 6;
/** Curves stay round: lines are thinned by this share of the usual tolerance. */
const MILD = 0.2;

/** Draws the passing drawing; made anew when it is another object. */
export class TrialLayer {
  private readonly group: L.LayerGroup;
  private shown: Trial | null = null;

  constructor(map: L.Map) {
    this.group = L.layerGroup().addTo(map);
  }

  show({ trial }: MapPicture): void {
    if (trial === this.shown) return;
    this.shown = trial;
    this.group.clearLayers();
    if (!trial) return;
    const common = { pane: PANE, interactive: false } as const;
    for (const { at, radiusM, style } of trial.circles)
      this.group.addLayer(
        L.circle(toLatLng(at), { ...common, radius: radiusM, className: `yard-trial area ${style}` }),
      );
    for (const { points, isClosed, style } of trial.lines) {
      const options = { ...common, className: `yard-trial line ${style}`, smoothFactor: MILD };
      const places = points.map(toLatLng);
      this.group.addLayer(
        isClosed ? L.polygon(places, { ...options, fill: false }) : L.polyline(places, options),
      );
    }
    for (const { at, label, style } of trial.points) {
      const options = { ...common, radius: POINT_PX, className: `yard-trial point ${style}` };
      this.group.addLayer(L.circleMarker(toLatLng(at), options));
      if (label !== '')
        this.group.addLayer(
          L.marker(toLatLng(at), {
            pane: PANE,
            interactive: false,
            keyboard: false,
            icon: textIcon('yard-trial-label', label),
          }),
        );
    }
  }
}
