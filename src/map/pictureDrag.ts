import type L from 'leaflet';
import type { BaseLayers } from './baseLayers';
import { toPosition } from './coords';
import { listenToPointer } from './drawing/listenToPointer';
import type { DrawContext, DrawSession } from './drawing/session';

/**
 * Drags the picture over the ground with one finger or the mouse; two fingers and the wheel still zoom.
 * Reports each drag as metres east and north when it ends; Escape takes back the one under way.
 */
export class PictureDrag implements DrawSession {
  private from: L.Point | null = null;
  private pointerId = -1;
  private readonly box: HTMLElement;
  private readonly stopListening: () => void;

  constructor(
    private readonly context: DrawContext,
    private readonly base: BaseLayers,
  ) {
    this.box = context.map.getContainer();
    context.map.dragging.disable();
    this.box.classList.add('is-shifting');
    this.stopListening = listenToPointer(this.box, {
      down: this.onDown,
      move: this.onMove,
      up: this.onUp,
      lost: this.onLost,
    });
  }

  private readonly onDown = (event: PointerEvent): void => {
    const isButton = event.target instanceof Element && event.target.closest('a, button') !== null;
    if (isButton) return;
    if (!event.isPrimary) {
      // a second finger: the person zooms
      this.cancelDrag();
      return;
    }
    if (event.button !== 0) return;
    this.from = this.context.map.mouseEventToContainerPoint(event);
    this.pointerId = event.pointerId;
    this.box.setPointerCapture(event.pointerId);
  };

  private readonly onMove = (event: PointerEvent): void => {
    if (!this.from || event.pointerId !== this.pointerId) return;
    this.base.shiftPicture(this.context.map.mouseEventToContainerPoint(event).subtract(this.from));
  };

  private readonly onUp = (event: PointerEvent): void => {
    const { from } = this;
    if (!from || event.pointerId !== this.pointerId) return;
    this.from = null;
    const { map, events } = this.context;
    const to = map.mouseEventToContainerPoint(event);
    this.base.shiftPicture(null);
    if (to.equals(from)) return;
    const plane = this.context.plane();
    const [x0, y0] = plane.toPlane(toPosition(map.containerPointToLatLng(from)));
    const [x1, y1] = plane.toPlane(toPosition(map.containerPointToLatLng(to)));
    events.pictureShifted(x1 - x0, y1 - y0);
  };

  private readonly onLost = (): void => {
    this.cancelDrag();
  };

  cancelDrag(): boolean {
    const hadDrag = this.from !== null;
    this.from = null;
    this.base.shiftPicture(null);
    return hadDrag;
  }

  finish(): void {
    this.context.end();
  }

  stop(): void {
    this.cancelDrag();
    this.context.map.dragging.enable();
    this.box.classList.remove('is-shifting');
    this.stopListening();
  }
}
