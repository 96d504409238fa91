import L from 'leaflet';
import type { NodeParts, NodePath } from '../../measure/outlineNodes';
import type { Position, Rings } from '../../yard/types';
import { toLatLng, toLatLngs } from '../coords';

const PANE = 'yard-drawing';

/** What is drawn while stretches of an outline are picked. */
export class EdgeView {
  private readonly outline: L.Polygon;
  private readonly hover: L.Polyline;
  private readonly chosen: L.Polyline;
  private readonly aim: L.Polyline;
  private readonly preview: L.Polyline;
  private readonly dots = L.layerGroup();

  constructor(map: L.Map) {
    const line = (className: string, weight: number) =>
      L.polyline([], { pane: PANE, interactive: false, className, weight, smoothFactor: 0 }).addTo(map);
    const look = { className: 'yard-edge-outline', weight: 2, fill: false, smoothFactor: 0 };
    this.outline = L.polygon([], { pane: PANE, interactive: false, ...look }).addTo(map);
    this.hover = line('yard-edge-hover', 8);
    this.chosen = line('yard-edge-chosen', 6);
    this.aim = line('yard-edge-aim', 6);
    this.preview = line('yard-draw-rubber', 3);
    this.dots.addTo(map);
  }

  /** The outline with its corners, the stretch chosen, and the edge aimed at. */
  show(
    rings: readonly Rings[],
    parts: NodeParts,
    start: NodePath | null,
    stretch: readonly Position[],
    target: readonly Position[],
  ): void {
    this.outline.setLatLngs(toLatLngs(rings));
    this.chosen.setLatLngs(stretch.map(toLatLng));
    this.aim.setLatLngs(target.map(toLatLng));
    this.dots.clearLayers();
    for (const [part, partRings] of parts.entries()) {
      for (const [ring, { nodes }] of partRings.entries()) {
        for (const [node, at] of nodes.entries()) {
          this.addDot(at, start?.part === part && start.ring === ring && start.node === node);
        }
      }
    }
  }

  private addDot(at: Position, isStart: boolean): void {
    L.circleMarker(toLatLng(at), {
      pane: PANE,
      interactive: false,
      radius: isStart ? 8 : 5,
      weight: 2.5,
      fillOpacity: 1,
      className: isStart ? 'yard-draw-dot is-first' : 'yard-draw-dot',
    }).addTo(this.dots);
  }

  showHover(line: readonly Position[]): void {
    this.hover.setLatLngs(line.map(toLatLng));
  }

  showPreview(line: readonly Position[]): void {
    this.preview.setLatLngs(line.map(toLatLng));
  }

  remove(): void {
    for (const layer of [this.outline, this.hover, this.chosen, this.aim, this.preview, this.dots])
      layer.remove();
  }
}
