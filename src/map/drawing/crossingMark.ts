import L from 'leaflet';
import type { Position } from '../../yard/types';
import { textIcon, toLatLng } from '../coords';

const SHOWN_MS = 6000;

/** Puts a cross where sides cross, for six seconds. @returns a function that takes it off at once. */
export function showCrossing(map: L.Map, position: Position): () => void {
  const marker = L.marker(toLatLng(position), {
    icon: textIcon('yard-crossing', '×'),
    interactive: false,
    keyboard: false,
    pane: 'yard-notes',
    zIndexOffset: 1000,
  }).addTo(map);
  const timer = setTimeout(() => marker.remove(), SHOWN_MS);
  return () => {
    clearTimeout(timer);
    marker.remove();
  };
}
