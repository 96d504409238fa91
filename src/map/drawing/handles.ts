import L from 'leaflet';
import type { Position } from '../../yard/types';
import { toLatLng } from '../coords';
import { bearingOfKey } from '../marks';

export type HandleKind = 'corner' | 'middle' | 'move' | 'turn';

export interface HandleCalls {
  drag(at: L.LatLng): void;
  drop(at: L.LatLng): void;
  grab?(): void;
  /** arrow key: bearing in degrees, true with Shift. `rest` is called when the key is let go. */
  nudge(bearingDeg: number, isFar: boolean): void;
  rest(): void;
  press?(): void;
  remove?(): void;
  focus?(): void;
}

const SIGNS: Readonly<Record<HandleKind, string>> = { corner: '', middle: '', move: '✥', turn: '↻' };
const SIZES: Readonly<Record<HandleKind, number>> = { corner: 30, middle: 26, move: 44, turn: 44 };

/** A thing to grab on the map: by mouse, by finger, or focused and moved by the arrow keys. */
export function createHandle(kind: HandleKind, at: Position, title: string, calls: HandleCalls): L.Marker {
  const face = document.createElement('div');
  face.className = `yard-handle yard-handle-${kind}`;
  face.textContent = SIGNS[kind];
  const size = SIZES[kind];
  const marker = L.marker(toLatLng(at), {
    icon: L.divIcon({ html: face, className: 'yard-handle-icon', iconSize: [size, size] }),
    draggable: true,
    title,
    pane: 'yard-handles',
    zIndexOffset: kind === 'corner' ? 200 : kind === 'middle' ? 0 : 400,
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
