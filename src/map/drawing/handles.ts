import L from 'leaflet';
import type { Position } from '../../yard/types';
import { toLatLng } from '../coords';
import { bearingOfKey, strokedSymbol } from '../marks';

export type HandleKind = 'corner' | 'bend' | 'middle' | 'side' | 'move' | 'turn';

export interface HandleCalls {
  drag(at: L.LatLng): void;
  drop(at: L.LatLng): void;
  grab?(): void;
  /** arrow key: bearing in degrees, true with Shift. `rest` is called when the key is let go. */
  nudge(bearingDeg: number, isFar: boolean): void;
  rest(): void;
  press?: (() => void) | undefined;
  remove?: (() => void) | undefined;
  focus?(): void;
}

/** Path data on a 24 by 24 field: four ways, and a turn. */
const SIGNS: Readonly<Partial<Record<HandleKind, string>>> = {
  move: 'M12 3V21M3 12H21M9 6L12 3L15 6M9 18L12 21L15 18M6 9L3 12L6 15M18 9L21 12L18 15',
  turn: 'M18.5 8A8 8 0 1 0 20 13M19.5 3V8.5H14',
};
const SIZES: Readonly<Record<HandleKind, number>> = {
  corner: 30,
  bend: 30,
  middle: 26,
  side: 34,
  move: 44,
  turn: 44,
};

/** A thing to grab on the map: by mouse, by finger, or focused and moved by the arrow keys. */
export function createHandle(kind: HandleKind, at: Position, title: string, calls: HandleCalls): L.Marker {
  const face = document.createElement('div');
  face.className = `yard-handle yard-handle-${kind}`;
  const sign = SIGNS[kind];
  if (sign) face.append(strokedSymbol(sign));
  const size = SIZES[kind];
  const marker = L.marker(toLatLng(at), {
    icon: L.divIcon({ html: face, className: 'yard-handle-icon', iconSize: [size, size] }),
    draggable: true,
    title,
    pane: 'yard-handles',
    zIndexOffset: kind === 'corner' || kind === 'bend' ? 200 : kind === 'middle' ? 0 : 400,
    bubblingMouseEvents: false,
  });
  let wasNudged = false;
  marker.on('dragstart', () => calls.grab?.());
  marker.on('drag', () => calls.drag(marker.getLatLng()));
  marker.on('dragend', () => calls.drop(marker.getLatLng()));
  marker.on('click', () => {
    marker.getElement()?.focus();
    calls.press?.();
  });
  marker.on('contextmenu', (event) => {
    L.DomEvent.preventDefault(event.originalEvent);
    calls.remove?.();
  });
  marker.on('add', () => {
    const element = marker.getElement();
    if (!element) return;
    element.setAttribute('aria-label', title);
    element.addEventListener('focus', () => calls.focus?.());
    element.addEventListener('keydown', (event) => {
      const bearing = bearingOfKey(event.key);
      const isDelete = event.key === 'Delete' || event.key === 'Backspace';
      const isPress = event.key === 'Enter' || event.key === ' ';
      if (bearing === null && !(isDelete && calls.remove) && !(isPress && calls.press)) return;
      event.preventDefault();
      event.stopPropagation();
      if (bearing !== null) {
        wasNudged = true;
        calls.nudge(bearing, event.shiftKey);
      } else if (isDelete) calls.remove?.();
      else calls.press?.();
    });
    const settle = () => {
      if (wasNudged) calls.rest();
      wasNudged = false;
    };
    element.addEventListener('keyup', (event) => {
      if (bearingOfKey(event.key) !== null) settle();
    });
    element.addEventListener('blur', settle);
  });
  return marker;
}

/** A button beside the corner in hand, for fingers; it goes where the corner goes. */
export function createDeleteButton(map: L.Map, corner: L.Marker, onPress: () => void): L.Marker {
  const spot = map.latLngToContainerPoint(corner.getLatLng());
  // above and to the right, or where the map still has room
  const anchor: L.PointTuple = [spot.x + 64 > map.getSize().x ? 58 : -14, spot.y < 60 ? -10 : 54];
  const face = document.createElement('div');
  face.className = 'yard-handle-delete';
  face.textContent = '×';
  const button = L.marker(corner.getLatLng(), {
    icon: L.divIcon({ html: face, className: 'yard-handle-icon', iconSize: [44, 44], iconAnchor: anchor }),
    title: 'Delete this corner',
    pane: 'yard-handles',
    keyboard: false,
    zIndexOffset: 600,
    bubblingMouseEvents: false,
  });
  button.on('click', onPress);
  corner.on('move', () => button.setLatLng(corner.getLatLng()));
  return button;
}
