import type L from 'leaflet';
import {
  type GeoJSONStoreFeatures,
  TerraDraw,
  TerraDrawAngledRectangleMode,
  TerraDrawCircleMode,
  TerraDrawRectangleMode,
} from 'terra-draw';
import { findCrossings } from '../../measure/crossings';
import { areaOfRingsM2, bearingDeg, destination, lengthOfLineM } from '../../measure/geodesic';
import { formatArea, formatLength } from '../../units/format';
import type { Curve, Position, Ring } from '../../yard/types';
import { toLatLng, toPosition } from '../coords';
import type { DrawShape } from '../types';
import { showCrossing } from './crossingMark';
import { DraftAdapter } from './libraryAdapter';
import { listenToPointer } from './listenToPointer';
import { CIRCLE_CORNERS, circleArcs, circleOfRing, rectangleRing, uprightRing } from './planeShapes';
import { createPointerNote, type PointerNote } from './pointerNote';
import { type DrawContext, type DrawSession, tellIssue } from './session';
import { Snapper } from './snapper';

type Shape = Extract<DrawShape, 'rectangle' | 'circle'>;

/** A pointer that moved less than this between down and up clicked, px. */
const CLICK_PX = 6;
const MODES: Readonly<Record<Shape, string>> = { rectangle: 'angled-rectangle', circle: 'circle' };

/**
 * Rectangle and circle, by the drawing library. Clicks: one side, then its depth, so that it can lie at any
 * angle; centre, then rim. A drag: opposite corners of a rectangle with its sides north and east; centre
 * to rim. Once a point is clicked a drag moves the map. Loaded when first used.
 */
export class ShapeDraw implements DrawSession {
  private readonly draw: TerraDraw;
  private readonly adapter: DraftAdapter;
  private readonly note: PointerNote;
  private readonly stopListening: () => void;
  private readonly snapper: Snapper;
  private lastPointer: L.LatLng | null = null;
  /** where it was clicked so far, snapped. */
  private clicks: Position[] = [];
  private downAt: { x: number; y: number; at: L.LatLng } | null = null;
  private isDrag = false;
  private isAtWork = true;
  private clearCrossing = (): void => {};

  constructor(
    private readonly context: DrawContext,
    private readonly shape: Shape,
    private readonly onDone: (ring: Ring, curves: readonly Curve[]) => void,
  ) {
    const { map } = context;
    this.note = createPointerNote(map);
    this.snapper = new Snapper(context);
    this.adapter = new DraftAdapter(map, (at) => this.snap(at));
    this.draw = new TerraDraw({
      adapter: this.adapter,
      modes: [
        new TerraDrawAngledRectangleMode({ keyEvents: null }),
        new TerraDrawRectangleMode({ keyEvents: null }),
        new TerraDrawCircleMode({ keyEvents: null, segments: CIRCLE_CORNERS }),
      ],
    });
    map.boxZoom.disable();
    map.dragging.disable();
    this.stopListening = listenToPointer(map.getContainer(), {
      down: this.onDown,
      move: this.onMove,
      up: this.onUp,
      lost: this.onLost,
    });
    this.draw.start();
    this.draw.setMode(MODES[shape]);
    this.draw.on('change', this.onChange);
    this.draw.on('finish', (id) => this.onFinish(this.draw.getSnapshotFeature(id)));
  }

  private snap(at: L.LatLng): L.LatLng {
    const last = this.clicks.at(-1);
    const anchors =
      last && this.shape === 'rectangle' ? [{ from: last, before: this.clicks.at(-2) ?? null }] : [];
    return toLatLng(this.snapper.snap(at, { anchors }));
  }

  private readonly onDown = (event: PointerEvent): void => {
    if (event.target instanceof Element && event.target.closest('.leaflet-control')) return;
    if (!event.isPrimary) {
      // a second finger moves the map
      this.onLost();
      return;
    }
    if (event.button !== 0) return;
    const at = this.context.map.mouseEventToLatLng(event);
    this.downAt = { x: event.clientX, y: event.clientY, at };
  };

  private readonly onMove = (event: PointerEvent): void => {
    if (!event.isPrimary) return;
    const at = this.context.map.mouseEventToLatLng(event);
    if (this.downAt && !this.isDrag) {
      if (!this.isFar(event)) return;
      // once a point is put, a drag moves the map
      if (this.clicks.length > 0) return;
      this.isDrag = true;
      if (this.shape === 'rectangle') this.draw.setMode('rectangle');
      this.addPointAt(this.downAt.at);
    }
    this.pointAt(at);
  };

  private readonly onUp = (event: PointerEvent): void => {
    const down = this.downAt;
    this.downAt = null;
    if (!down || !event.isPrimary) return;
    if (this.isDrag || Math.hypot(event.clientX - down.x, event.clientY - down.y) < CLICK_PX) {
      this.addPointAt(this.context.map.mouseEventToLatLng(event));
    }
  };

  private readonly onLost = (): void => {
    this.downAt = null;
    if (this.isDrag) this.restart();
  };

  private isFar({ clientX, clientY }: PointerEvent): boolean {
    const { downAt } = this;
    return downAt !== null && Math.hypot(clientX - downAt.x, clientY - downAt.y) >= CLICK_PX;
  }

  private ringOf(feature: GeoJSONStoreFeatures | undefined): Ring | null {
    if (feature?.geometry.type !== 'Polygon') return null;
    const ring = (feature.geometry.coordinates[0] ?? []).map(([lon, lat]) => [lon, lat] as Position);
    return ring.length >= 4 ? ring : null;
  }

  private readonly onChange = (): void => {
    const feature = this.draw.getSnapshot().find((one) => one.geometry.type === 'Polygon');
    const ring = this.ringOf(feature);
    if (!ring) return;
    const units = this.context.picture()?.units ?? 'us';
    const [a, b, c] = ring;
    const centre = this.clicks[0];
    let sideM: number | null = null;
    const lines: string[] = [];
    const areaM2 = areaOfRingsM2([ring]);
    const hasDepth = this.shape === 'circle' || this.isDrag || this.clicks.length >= 2;
    if (this.shape === 'circle' && centre && a) {
      sideM = lengthOfLineM([centre, a]);
      lines.push(`Radius ${formatLength(sideM, units)}`);
    } else if (this.shape === 'rectangle' && a && b && c) {
      sideM = lengthOfLineM(hasDepth ? [b, c] : [a, b]);
      const first = formatLength(lengthOfLineM([a, b]), units);
      lines.push(hasDepth ? `${first} × ${formatLength(sideM, units)}` : `Side ${first}`);
    }
    if (hasDepth) lines.push(`Area ${formatArea(areaM2, units)}`);
    this.context.events.live({
      points: this.clicks,
      sideM,
      bearingDeg: this.shape === 'rectangle' && a && b ? bearingDeg(a, b) : null,
      areaM2: hasDepth ? areaM2 : null,
      perimeterM: hasDepth ? lengthOfLineM(ring) : null,
      crossing: null,
    });
    const at = this.lastPointer ?? (b ? toLatLng(b) : null);
    if (at) this.note.show(at, lines, false);
  };

  private onFinish(feature: GeoJSONStoreFeatures | undefined): void {
    const drawn = this.ringOf(feature);
    const { ring, curves } = drawn ? this.toGround(drawn) : { ring: null, curves: [] };
    const crossing = ring ? findCrossings(ring)[0] : undefined;
    if (!ring || ring.length < 4 || crossing || areaOfRingsM2([ring]) < 1e-3) {
      this.refuse(crossing);
      return;
    }
    this.onDone(ring, curves);
    if (this.isAtWork) this.restart();
  }

  /** The library's shape made true on the ellipsoid: square corners, a round circle. */
  private toGround(ring: Ring): { ring: Ring; curves: readonly Curve[] } {
    const plane = this.context.plane();
    const [first, second, third] = this.clicks;
    if (this.shape === 'circle') {
      const drawn = circleOfRing(plane, ring);
      return first && second
        ? circleArcs(plane, first, lengthOfLineM([first, second]))
        : circleArcs(plane, drawn.centre, drawn.radiusM);
    }
    if (this.isDrag && first && second) return { ring: uprightRing(plane, first, second), curves: [] };
    const [a, b, c] = ring;
    const square = a && b && c ? rectangleRing(plane, first ?? a, second ?? b, third ?? c) : ring;
    return { ring: square, curves: [] };
  }

  private refuse(crossing: Position | undefined): void {
    this.restart();
    if (crossing) {
      this.clearCrossing();
      this.clearCrossing = showCrossing(this.context.map, crossing);
    }
    const message = crossing
      ? 'That outline crosses itself. The crossing is marked on the map; draw it again.'
      : 'That shape has no area. Draw it again.';
    this.context.events.message(tellIssue(crossing ? 'sides-cross' : 'no-area', message, crossing));
  }

  private restart(): void {
    this.clicks = [];
    this.isDrag = false;
    this.draw.clear();
    this.draw.setMode(MODES[this.shape]);
    this.note.hide();
    this.snapper.clear();
    this.context.map.dragging.disable();
    this.context.events.live(null);
  }

  finish(): void {
    if (this.clicks.length > 0 && this.lastPointer) this.addPointAt(this.lastPointer);
    else this.context.events.message(tellIssue('too-few-corners', 'Nothing is drawn yet.'));
  }

  backOnePoint(): boolean {
    if (this.clicks.length === 0) return false;
    const kept = this.clicks.slice(0, -1);
    this.restart();
    for (const position of kept) this.send(toLatLng(position), false);
    return true;
  }

  addSide(lengthM: number, bearing: number | null): void {
    const last = this.clicks[this.clicks.length - 1];
    if (!last) {
      const message = 'Place the first point, then type the length.';
      this.context.events.message(tellIssue('no-first-corner', message));
      return;
    }
    const before = this.clicks[this.clicks.length - 2];
    const toward = this.lastPointer ? bearingDeg(last, toPosition(this.lastPointer)) : 90;
    let direction = bearing ?? toward;
    if (before && this.shape === 'rectangle') {
      const square = bearingDeg(before, last) + 90;
      const turn = Math.cos(((direction - square) * Math.PI) / 180);
      direction = turn >= 0 ? square : square + 180;
    }
    const next = destination(last, direction, lengthM);
    this.send(toLatLng(next), false);
  }

  private send(at: L.LatLng, snaps: boolean): void {
    this.lastPointer = at;
    this.adapter.send('move', at, snaps);
    const position = toPosition(snaps ? this.snap(at) : at);
    this.clicks.push(position);
    if (!this.isDrag) this.context.map.dragging.enable();
    if (this.clicks.length === 1) this.tellStart(position);
    this.adapter.send('click', at, snaps);
  }

  private tellStart(position: Position): void {
    const none = { sideM: null, bearingDeg: null, areaM2: null, perimeterM: null, crossing: null };
    this.context.events.live({ points: [position], ...none });
  }

  addPointAt(at: L.LatLng): void {
    this.send(at, true);
  }

  pointAt(at: L.LatLng): void {
    this.lastPointer = at;
    this.adapter.send('move', at, true);
  }

  stop(): void {
    this.isAtWork = false;
    const { map } = this.context;
    this.stopListening();
    this.draw.stop();
    map.dragging.enable();
    map.doubleClickZoom.enable();
    map.boxZoom.enable();
    this.note.remove();
    this.snapper.remove();
    this.clearCrossing();
    this.context.events.live(null);
  }
}
