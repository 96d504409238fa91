import L from 'leaflet';
import { destination } from '../measure/geodesic';
import type { Mark, MarkKind } from '../yard/types';
import { toLatLng, toPosition } from './coords';
import type { MapEvents, MapPicture } from './types';

const SVG = 'http://www.w3.org/2000/svg';

/** What a mark is called where it has no name. */
export const MARK_WORDS: Readonly<Record<MarkKind, string>> = {
  'storm-drain': 'Storm drain',
  well: 'Well',
  'hose-bib': 'Hose bib',
  gate: 'Gate',
};

/** Symbols on a 24 by 24 field, stroked: a grate, a ring in a ring, a tap, an open leaf between posts. */
export const MARK_SYMBOLS: Readonly<Record<MarkKind, string>> = {
  'storm-drain': 'M4 4H20V20H4ZM8 4V20M12 4V20M16 4V20',
  well: 'M12 3A9 9 0 1 0 12 21A9 9 0 1 0 12 3M12 8A4 4 0 1 0 12 16A4 4 0 1 0 12 8',
  'hose-bib': 'M4 10H15A3 3 0 0 1 18 13V19M9 10V5M5.5 5H12.5M4 7V13',
  gate: 'M4 6V19M20 6V19M4 16L17 8',
};

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
  path.setAttribute('stroke-width', '2.2');
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
