import L from 'leaflet';
import { findCrossings } from '../../measure/crossings';
import { areaOfRingsM2, lengthOfLineM } from '../../measure/geodesic';
import { formatArea } from '../../units/format';
import type { Position, Ring } from '../../yard/types';
import { toLatLng, toPosition } from '../coords';
import { showCrossing } from './crossingMark';
import { listenToPointer } from './listenToPointer';
import { createPointerNote, type PointerNote } from './pointerNote';
import { type DrawContext, type DrawSession, tellIssue } from './session';
import type { Spot } from './sides';
import { roundStroke, simplifyStroke, trimStroke } from './stroke';

/** A pointer that moved less than this between down and up clicked, px. */
const CLICK_PX = 6;
const LEAST_STEP_PX = 1;
const LEAST_AREA_M2 = 1e-3;

/**
 * Freehand: press, go round, let go; or click, move, click. Every place the pointer reported counts, those
 * between two frames too. The stroke is kept in pixels of the world at the zoom where it began.
 */
export class FreehandDraw implements DrawSession {
  private stroke: L.Point[] = [];
  private pointerId: number | null = null;
  private from: Spot = { x: 0, y: 0 };
  private isDrawing = false;
  /** begun by a click or by the crosshair: ends with the next one. */
  private isLoose = false;
  private zoom = 0;
  private readonly preview: L.Polygon;
  private readonly note: PointerNote;
  private readonly stopListening: () => void;
  private clearCrossing = (): void => {};

  constructor(
    private readonly context: DrawContext,
    private readonly onDone: (ring: Ring) => void,
  ) {
    const { map } = context;
    this.note = createPointerNote(map);
    this.preview = L.polygon([], {
      pane: 'yard-drawing',
      interactive: false,
      className: 'yard-draw-shape',
      weight: 3,
      smoothFactor: 0,
    }).addTo(map);
    map.dragging.disable();
    map.doubleClickZoom.disable();
    map.boxZoom.disable();
    this.stopListening = listenToPointer(map.getContainer(), {
      down: this.onDown,
      move: this.onMove,
      up: this.onUp,
      lost: this.onLost,
    });
  }

  private readonly onDown = (event: PointerEvent): void => {
    if (event.target instanceof Element && event.target.closest('.leaflet-control')) return;
    if (!event.isPrimary) {
      // a second finger moves the map
      this.restart();
      return;
    }
    if (event.button !== 0) return;
    this.pointerId = event.pointerId;
    this.from = { x: event.clientX, y: event.clientY };
    if (!this.isLoose) this.begin(this.context.map.mouseEventToLatLng(event));
  };

  private readonly onMove = (event: PointerEvent): void => {
    const isPressed = event.pointerId === this.pointerId;
    if (!this.isDrawing || !event.isPrimary || (!isPressed && !this.isLoose)) return;
    const between = event.getCoalescedEvents?.() ?? [];
    for (const each of between.length > 0 ? between : [event]) {
      this.extend(this.context.map.mouseEventToLatLng(each));
    }
    this.show();
  };

  private readonly onUp = (event: PointerEvent): void => {
    if (event.pointerId !== this.pointerId) return;
    this.pointerId = null;
    const isClick = Math.hypot(event.clientX - this.from.x, event.clientY - this.from.y) < CLICK_PX;
    if (isClick && !this.isLoose && this.stroke.length < 8) {
      this.isLoose = true;
      return;
    }
    this.finish();
  };

  private readonly onLost = (event: PointerEvent): void => {
    if (event.pointerId === this.pointerId) this.restart();
  };

  private begin(at: L.LatLng): void {
    this.clearCrossing();
    this.zoom = this.context.map.getZoom();
    this.stroke = [this.context.map.project(at, this.zoom)];
    this.isDrawing = true;
  }

  private extend(at: L.LatLng): void {
    const spot = this.context.map.project(at, this.zoom);
    const last = this.stroke[this.stroke.length - 1];
    if (!last || last.distanceTo(spot) >= LEAST_STEP_PX) this.stroke.push(spot);
  }

  private ringOf(spots: readonly Spot[]): Ring {
    const ring = spots.map(
      ({ x, y }): Position => toPosition(this.context.map.unproject(L.point(x, y), this.zoom)),
    );
    return ring[0] ? [...ring, ring[0]] : [];
  }

  private show(): void {
    const ring = this.ringOf(this.stroke);
    this.preview.setLatLngs(ring.map(toLatLng));
    if (ring.length < 4) return;
    const areaM2 = areaOfRingsM2([this.ringOf(roundStroke(trimStroke(this.stroke)))]);
    this.context.events.live({
      points: ring.slice(0, -1),
      sideM: null,
      bearingDeg: null,
      areaM2,
      perimeterM: lengthOfLineM(ring),
      crossing: null,
    });
    const at = ring[ring.length - 2];
    const units = this.context.picture()?.units ?? 'us';
    if (at) this.note.show(toLatLng(at), [`Area ${formatArea(areaM2, units)}`], false);
  }

  finish(): void {
    if (this.stroke.length < 3) {
      this.restart();
      this.context.events.message(tellIssue('too-few-corners', 'Press and go round the shape, then let go.'));
      return;
    }
    const trimmed = roundStroke(trimStroke(this.stroke));
    let ring = this.ringOf(simplifyStroke(trimmed));
    if (findCrossings(ring).length > 0) ring = this.ringOf(trimmed);
    const crossing = findCrossings(ring)[0];
    if (crossing || ring.length < 4 || areaOfRingsM2([ring]) < LEAST_AREA_M2) {
      this.refuse(crossing);
      return;
    }
    this.restart();
    this.onDone(ring);
  }

  private refuse(crossing: Position | undefined): void {
    this.restart();
    if (crossing) this.clearCrossing = showCrossing(this.context.map, crossing);
    const message = crossing
      ? 'That outline crosses itself. The crossing is marked on the map; draw it again.'
      : 'That shape has no area. Draw it again.';
    this.context.events.message(tellIssue(crossing ? 'sides-cross' : 'no-area', message, crossing));
  }

  private restart(): void {
    this.clearCrossing();
    this.stroke = [];
    this.isDrawing = false;
    this.isLoose = false;
    this.pointerId = null;
    this.preview.setLatLngs([]);
    this.note.hide();
    this.context.events.live(null);
  }

  backOnePoint(): boolean {
    if (this.stroke.length === 0) return false;
    this.restart();
    return true;
  }

  addSide(): void {
    this.context.events.message(tellIssue('no-first-corner', 'Freehand takes no typed sides.'));
  }

  addPointAt(at: L.LatLng): void {
    if (this.isDrawing) {
      this.extend(at);
      this.finish();
      return;
    }
    this.begin(at);
    this.isLoose = true;
  }

  pointAt(at: L.LatLng): void {
    if (!this.isDrawing) return;
    this.extend(at);
    this.show();
  }

  stop(): void {
    const { map } = this.context;
    this.stopListening();
    this.restart();
    map.dragging.enable();
    map.doubleClickZoom.enable();
    map.boxZoom.enable();
    this.preview.remove();
    this.note.remove();
  }
}
