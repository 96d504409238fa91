import L from 'leaflet';
import { MARK_STROKE, MARK_SYMBOLS } from '../draft/marks';
import { destination } from '../measure/geodesic';
import { MARK_WORDS } from '../words/zoneWords';
import type { Mark } from '../yard/types';
import { toLatLng, toPosition } from './coords';
import type { MapEvents, MapPicture } from './types';

const SVG = 'http://www.w3.org/2000/svg';

/** Path data on a 24 by 24 field as an SVG element that takes the colour of its text. */
export function strokedSymbol(d: string): SVGElement {
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', '0 0 24 24');
  svg.setAttribute('width', '24');
  svg.setAttribute('height', '24');
  svg.setAttribute('aria-hidden', 'true');
  const path = document.createElementNS(SVG, 'path');
  path.setAttribute('d', d);
  path.setAttribute('fill', 'none');
  path.setAttribute('stroke', 'currentColor');
  path.setAttribute('stroke-width', String(MARK_STROKE));
  svg.append(path);
  return svg;
}

const ARROWS: Readonly<Record<string, number>> = {
  ArrowUp: 0,
  ArrowRight: 90,
  ArrowDown: 180,
  ArrowLeft: 270,
};

/** @returns bearing in degrees of an arrow key, or null. */
export function bearingOfKey(key: string): number | null {
  return ARROWS[key] ?? null;
}

/** Marks as symbols that can be dragged, or moved by arrow keys (10 cm; with Shift 1 m). */
export class MarkLayers {
  private readonly layers = new Map<string, { mark: Mark; marker: L.Marker }>();

  constructor(
    private readonly map: L.Map,
    private readonly events: MapEvents,
  ) {}

  show(picture: MapPicture): void {
    const present = new Set(picture.yard.marks.map((mark) => mark.id));
    for (const [id, { marker }] of this.layers) {
      if (present.has(id)) continue;
      marker.remove();
      this.layers.delete(id);
    }
    for (const mark of picture.yard.marks) {
      const old = this.layers.get(mark.id);
      if (old?.mark === mark) continue;
      if (old && old.mark.kind === mark.kind && old.mark.name === mark.name) {
        old.mark = mark;
        old.marker.setLatLng(toLatLng(mark.position));
        continue;
      }
      old?.marker.remove();
      this.layers.set(mark.id, { mark, marker: this.make(mark) });
    }
  }

  private make(mark: Mark): L.Marker {
    const words = MARK_WORDS[mark.kind];
    const title = mark.name && mark.name !== words ? `${words}: ${mark.name}` : words;
    const box = document.createElement('div');
    box.className = `yard-mark yard-mark-${mark.kind}`;
    box.append(strokedSymbol(MARK_SYMBOLS[mark.kind]));
    const icon = L.divIcon({ html: box, className: 'yard-mark-icon', iconSize: [44, 44] });
    const marker = L.marker(toLatLng(mark.position), {
      icon,
      draggable: true,
      title,
      pane: 'yard-marks',
    });
    marker.on('dragend', () => this.events.markMoved(mark.id, toPosition(marker.getLatLng())));
    marker.addTo(this.map);
    const element = marker.getElement();
    element?.setAttribute('aria-label', title);
    element?.addEventListener('keydown', (event) => {
      const bearing = bearingOfKey(event.key);
      if (bearing === null) return;
      event.preventDefault();
      event.stopPropagation();
      const moved = destination(toPosition(marker.getLatLng()), bearing, event.shiftKey ? 1 : 0.1);
      marker.setLatLng(toLatLng(moved));
    });
    element?.addEventListener('keyup', (event) => {
      const at = this.layers.get(mark.id)?.mark.position;
      const now = toPosition(marker.getLatLng());
      if (bearingOfKey(event.key) === null || !at || (at[0] === now[0] && at[1] === now[1])) return;
      this.events.markMoved(mark.id, now);
    });
    return marker;
  }
}
