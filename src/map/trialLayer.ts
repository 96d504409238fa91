import L from 'leaflet';
import { SLIP_INKS } from '../draft/hatches';
import type { LocalPlane } from '../measure/types';
import { textIcon, toLatLng, toLatLngs } from './coords';
import { type LabelSpot, labelFits, labelSpot } from './labels';
import { PatternSheet } from './patterns';
import type { MapPicture, Trial } from './types';

const PANE = 'yard-notes';
const POINT_PX = 6;
/** Curves stay round: lines are thinned by this share of the usual tolerance. */
const MILD = 0.2;
/** Mean width of a letter of a label, and the height of its line, px. */
const LETTER_PX = 7.5;
const LINE_PX = 18;

/** A label that stands where and while it has room. */
interface RoomyLabel {
  readonly text: string;
  readonly spot: LabelSpot;
  readonly plane: LocalPlane;
}

/** Draws the passing drawing; made anew when it is another object. */
export class TrialLayer {
  private readonly group: L.LayerGroup;
  private shown: Trial | null = null;

  private readonly labels: L.LayerGroup;
  private roomy: readonly RoomyLabel[] = [];
  /** hatches of its own; made when first needed. */
  private patterns: PatternSheet | null = null;

  constructor(private readonly map: L.Map) {
    this.group = L.layerGroup().addTo(map);
    this.labels = L.layerGroup().addTo(map);
    map.on('zoomend', () => this.placeLabels());
  }

  show(picture: MapPicture): void {
    const { trial } = picture;
    if (trial?.unassigned) this.setGround(picture);
    if (trial === this.shown) return;
    this.shown = trial;
    this.group.clearLayers();
    this.showUnassigned(picture);
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

  private setGround({ dark, baseLayer }: MapPicture): void {
    this.patterns ??= new PatternSheet(this.map.getContainer());
    this.patterns.setGround(baseLayer.kind !== 'grid' ? 'imagery' : dark ? 'dark' : 'light');
  }

  private showUnassigned({ trial, measured: { plane }, dark, baseLayer }: MapPicture): void {
    const pieces = trial?.unassigned ?? [];
    const color = SLIP_INKS[dark && baseLayer.kind === 'grid' ? 'dark' : 'light'].ink;
    for (const { parts } of pieces)
      this.group.addLayer(
        L.polygon(toLatLngs(parts), {
          pane: 'yard-overlays',
          interactive: false,
          color,
          weight: 1,
          fillColor: this.patterns?.fill('unassigned'),
          fillOpacity: 1,
          className: 'yard-unassigned',
        }),
      );
    this.roomy = pieces.flatMap(({ parts, label: text }) => {
      const spot = labelSpot(parts.map((rings) => rings.map((ring) => ring.map((p) => plane.toPlane(p)))));
      return spot ? [{ text, spot, plane }] : [];
    });
    this.placeLabels();
  }

  private placeLabels(): void {
    this.labels.clearLayers();
    for (const { text, spot, plane } of this.roomy) {
      const at = toLatLng(plane.toLonLat(spot.at));
      const px = this.map.latLngToContainerPoint(at);
      const mPerPx = this.map.distance(at, this.map.containerPointToLatLng(px.add([100, 0]))) / 100;
      if (!labelFits(spot, text.length * LETTER_PX * mPerPx, LINE_PX * mPerPx)) continue;
      const icon = textIcon('yard-label', text);
      this.labels.addLayer(L.marker(at, { pane: PANE, interactive: false, keyboard: false, icon }));
    }
  }
}
