import L from 'leaflet';
import { lengthOfLineM } from '../../measure/geodesic';
import { formatLength } from '../../units/format';
import type { Position, UnitSystem } from '../../yard/types';
import { textIcon, toLatLng } from '../coords';

/** Side labels stop when there are more corners than this; a note at the pointer still tells the last. */
const MOST_SIDE_LABELS = 60;
const LEAST_SIDE_PX = 44;

/** What has been drawn so far: corners, sides with their lengths, and the side to the pointer. */
export class PathPreview {
  private readonly casing: L.Polyline;
  private readonly path: L.Polyline;
  private readonly rubber: L.Polyline;
  private readonly closing: L.Polyline;
  private readonly dots: L.LayerGroup;
  private readonly lengths: L.LayerGroup;
  private sideKey = '';

  constructor(private readonly map: L.Map) {
    const common = { pane: 'yard-drawing', interactive: false };
    this.casing = L.polyline([], { ...common, className: 'yard-draw-casing', weight: 6 }).addTo(map);
    this.path = L.polyline([], { ...common, className: 'yard-draw-path', weight: 3 }).addTo(map);
    this.closing = L.polyline([], {
      ...common,
      className: 'yard-draw-closing',
      weight: 1.5,
      dashArray: '3 6',
    });
    this.rubber = L.polyline([], { ...common, className: 'yard-draw-rubber', weight: 2.5, dashArray: '8 5' });
    this.closing.addTo(map);
    this.rubber.addTo(map);
    this.dots = L.layerGroup().addTo(map);
    this.lengths = L.layerGroup().addTo(map);
  }

  update(
    points: readonly Position[],
    pointer: Position | null,
    closes: boolean,
    isBad: boolean,
    units: UnitSystem,
  ) {
    const line = points.map(toLatLng);
    const first = line[0];
    const last = line[line.length - 1];
    this.casing.setLatLngs(line);
    this.path.setLatLngs(line);
    this.rubber.setLatLngs(pointer && last ? [last, toLatLng(pointer)] : []);
    this.rubber.getElement()?.classList.toggle('is-bad', isBad);
    const tip = pointer ? toLatLng(pointer) : last;
    this.closing.setLatLngs(closes && first && tip && line.length > 1 ? [tip, first] : []);
    const key = `${JSON.stringify(points)}${units}${this.map.getZoom()}`;
    if (key === this.sideKey) return;
    this.sideKey = key;
    this.dots.clearLayers();
    this.lengths.clearLayers();
    for (const [i, at] of line.entries()) {
      L.circleMarker(at, {
        pane: 'yard-drawing',
        interactive: false,
        radius: i === 0 ? 7 : 5,
        weight: 2.5,
        className: i === 0 ? 'yard-draw-dot is-first' : 'yard-draw-dot',
        fillOpacity: 1,
      }).addTo(this.dots);
    }
    if (points.length > MOST_SIDE_LABELS) return;
    for (let i = 1; i < points.length; i++) {
      const from = points[i - 1];
      const to = points[i];
      if (from && to) this.labelSide(from, to, units);
    }
  }

  private labelSide(from: Position, to: Position, units: UnitSystem): void {
    const a = this.map.latLngToLayerPoint(toLatLng(from));
    const b = this.map.latLngToLayerPoint(toLatLng(to));
    if (a.distanceTo(b) < LEAST_SIDE_PX) return;
    const text = formatLength(lengthOfLineM([from, to]), units);
    L.marker(this.map.layerPointToLatLng(a.add(b).divideBy(2)), {
      icon: textIcon('yard-side-length', text),
      interactive: false,
      keyboard: false,
      pane: 'yard-notes',
    }).addTo(this.lengths);
  }

  remove(): void {
    for (const layer of [this.casing, this.path, this.rubber, this.closing, this.dots, this.lengths])
      layer.remove();
  }
}
