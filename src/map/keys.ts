import L from 'leaflet';
import type { DrawSession } from './drawing/session';

const PAN_PX = 12;
const FAR_PAN_PX = 80;
const PANS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

export interface KeyCalls {
  /** the tool at work that takes points, or null. */
  session(): DrawSession | null;
  takesPoints(): boolean;
  finish(): void;
  cancel(): void;
  /** the Alt key went down or up: nothing snaps while it is held. */
  suspend(isHeld: boolean): void;
}

/**
 * Drawing without a pointer: with the map focused, arrow keys move the ground under a crosshair in the
 * middle (Shift: farther), Space puts a point there, Enter finishes, Backspace takes the last point
 * back, Escape cancels. Alt suspends snapping while it is held. Enter and Escape also work while nothing else has the focus.
 */
export function listenToKeys(map: L.Map, calls: KeyCalls): { hideCrosshair(): void; destroy(): void } {
  const container = map.getContainer();
  const crosshair = document.createElement('div');
  crosshair.className = 'yard-crosshair';
  crosshair.hidden = true;
  crosshair.setAttribute('aria-hidden', 'true');
  container.append(crosshair);
  const centre = () => map.containerPointToLatLng(map.getSize().divideBy(2));
  const hideCrosshair = () => {
    crosshair.hidden = true;
  };
  // The browser sends moves of no length when the ground moves under a resting pointer.
  const onPointerMove = (event: PointerEvent) => {
    if (event.movementX !== 0 || event.movementY !== 0) hideCrosshair();
  };

  function onMapKey(event: KeyboardEvent): void {
    if (event.target !== container || event.ctrlKey || event.metaKey || event.altKey) return;
    const session = calls.session();
    if (!session || !calls.takesPoints()) return;
    const pan = PANS[event.key];
    if (pan) {
      const px = event.shiftKey ? FAR_PAN_PX : PAN_PX;
      map.panBy(L.point(pan[0] * px, pan[1] * px), { animate: false });
    } else if (event.key === ' ') session.addPointAt?.(centre());
    else if (event.key === 'Backspace' || event.key === 'Delete') session.backOnePoint?.();
    else return;
    event.preventDefault();
    event.stopImmediatePropagation();
    crosshair.hidden = false;
    calls.session()?.pointAt?.(centre());
  }

  function onAlt(event: KeyboardEvent): void {
    if (event.key !== 'Alt' || !calls.session()) return;
    // else the browser's own menu would take the focus
    event.preventDefault();
    calls.suspend(event.type === 'keydown');
  }
  const onBlur = () => calls.suspend(false);

  function onPageKey(event: KeyboardEvent): void {
    if (event.defaultPrevented || (event.key !== 'Escape' && event.key !== 'Enter')) return;
    const from = event.composedPath()[0];
    const isOurs = from instanceof Node && container.contains(from);
    const isFree = from === document.body || from === document.documentElement;
    const isButton = from instanceof Element && from.matches('a, button, [role="button"]');
    const isField = from instanceof Element && from.matches('input, textarea, select, [contenteditable]');
    if (isField || !calls.session()) return;
    if (event.key === 'Escape' && (isOurs || isFree || isButton)) calls.cancel();
    else if (event.key === 'Enter' && ((isOurs && !isButton) || isFree)) calls.finish();
    else return;
    event.preventDefault();
  }

  // Before Leaflet's own listener, which would pan by its own step.
  container.addEventListener('keydown', onMapKey, true);
  document.addEventListener('keydown', onPageKey);
  document.addEventListener('keydown', onAlt);
  document.addEventListener('keyup', onAlt);
  window.addEventListener('blur', onBlur);
  container.addEventListener('pointermove', onPointerMove);
  return {
    hideCrosshair,
    destroy() {
      container.removeEventListener('keydown', onMapKey, true);
      document.removeEventListener('keydown', onPageKey);
      document.removeEventListener('keydown', onAlt);
      document.removeEventListener('keyup', onAlt);
      window.removeEventListener('blur', onBlur);
      container.removeEventListener('pointermove', onPointerMove);
      crosshair.remove();
    },
  };
}
