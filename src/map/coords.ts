import L from 'leaflet';
import { roundPosition } from '../measure/corners';
import type { Position, Rings } from '../yard/types';

/** The one place where [lon, lat] turns into Leaflet's order and back. */
export function toLatLng(position: Position): L.LatLng {
  return L.latLng(position[1], position[0]);
}

/** Back to [lon, lat], at the 11 decimals that are stored. */
export function toPosition(latLng: L.LatLng): Position {
  return roundPosition([latLng.lng, latLng.lat]);
}

export function toLatLngs(parts: readonly Rings[]): L.LatLng[][][] {
  return parts.map((rings) => rings.map((ring) => ring.map(toLatLng)));
}

/** A text in a map icon: a text node, never HTML. Centred on its place. */
export function textIcon(className: string, ...lines: string[]): L.DivIcon {
  const box = document.createElement('div');
  box.className = `yard-text ${className}`;
  for (const text of lines) {
    const line = document.createElement('div');
    line.textContent = text;
    box.append(line);
  }
  return L.divIcon({ html: box, className: 'yard-icon', iconSize: [0, 0] });
}

/** A line of text where Leaflet wants HTML. */
export function escapeHtml(text: string): string {
  const box = document.createElement('div');
  box.textContent = text;
  return box.innerHTML;
}
