import L from 'leaflet';
import {
  type GeoJSONStoreFeatures,
  TerraDraw,
  TerraDrawAngledRectangleMode,
  TerraDrawCircleMode,
  TerraDrawFreehandMode,
} from 'terra-draw';
import { findCrossings } from '../../measure/crossings';
import { areaOfRingsM2, bearingDeg, destination, lengthOfLineM } from '../../measure/geodesic';
import { formatArea, formatLength } from '../../units/format';
import type { Position, Ring } from '../../yard/types';
import { toLatLng, toPosition } from '../coords';
import type { DrawShape } from '../types';
import { showCrossing } from './crossingMark';
import { DraftAdapter } from './libraryAdapter';
import { circleOfRing, circleRing, rectangleRing } from './planeShapes';
import { createPointerNote, type PointerNote } from './pointerNote';
import { type DrawContext, type DrawSession, SNAP_PX, tellIssue } from './session';
import { ringsToSnapTo, snapToLines } from './snapping';

/** A pointer that moved less than this between down and up clicked; as the adapter has it, px. */
const CLICK_PX = 6;
/** Freehand corners that lie nearer than this to the straight line are left out, px. */
const FREEHAND_TOLERANCE_PX = 1.5;
const MODES: Readonly<Record<Exclude<DrawShape, 'polygon'>, string>> = {
  rectangle: 'angled-rectangle',
  circle: 'circle',
  freehand: 'freehand',
};

/**
 * Rectangle (one side, then its depth, so it can lie at any angle), circle (centre, then rim) and
 * freehand (drag, or click, move, click), by the drawing library. Loaded when first used.
 */
export class ShapeDraw implements DrawSession {
  private readonly draw: TerraDraw;
  private readonly adapter: DraftAdapter;
  private readonly note: PointerNote;
  private lastPointer: L.LatLng | null = null;
  /** where it was clicked so far, snapped. */
  private clicks: Position[] = [];
  private downAt: { x: number; y: number } | null = null;
  private clearCrossing = (): void => {};

  constructor(
    private readonly context: DrawContext,
    private readonly shape: Exclude<DrawShape, 'polygon'>,
    private readonly onDone: (ring: Ring) => void,
  ) {
    const { map } = context;
    this.note = createPointerNote(map);
    this.adapter = new DraftAdapter(map, (at) => this.snap(at));
    const dragToo = 'click-move-or-drag' as const;
    this.draw = new TerraDraw({
      adapter: this.adapter,
      modes: [
        new TerraDrawAngledRectangleMode({ keyEvents: null }),
        new TerraDrawCircleMode({ keyEvents: null, drawInteraction: dragToo, segments: 64 }),
        new TerraDrawFreehandMode({ keyEvents: null, drawInteraction: dragToo, minDistance: 4 }),
      ],
    });
    map.boxZoom.disable();
    map.on('mousemove', this.onMove);
    map.getContainer().addEventListener('pointerdown', this.onDown, true);
    map.getContainer().addEventListener('pointerup', this.onUp, true);
    this.draw.start();
    this.draw.setMode(MODES[shape]);
    this.draw.on('change', this.onChange);
    this.draw.on('finish', (id) => this.onFinish(this.draw.getSnapshotFeature(id)));
  }

  private snap(at: L.LatLng): L.LatLng {
    const { map, hold } = this.context;
    if (!hold.snapping || this.shape === 'freehand') return at;
    const zones = this.context.picture()?.yard.zones ?? [];
    const snap = snapToLines(
      map.project(at),
      ringsToSnapTo(zones, null),
      (p) => map.project(toLatLng(p)),
      SNAP_PX,
    );
    return snap ? toLatLng(snap.position) : at;
  }

  private readonly onMove = (event: L.LeafletMouseEvent): void => {
    this.lastPointer = event.latlng;
  };

  /** Before the library hears of the same pointer, so that its finish finds every click here. */
  private readonly onUp = (event: PointerEvent): void => {
    const at = this.context.map.mouseEventToLatLng(event);
    const from = this.downAt;
    this.downAt = null;
    this.lastPointer = at;
    const isClick = from && Math.hypot(event.clientX - from.x, event.clientY - from.y) < CLICK_PX;
    if (isClick && event.button === 0) this.clicks.push(toPosition(this.snap(at)));
  };

  private readonly onDown = (event: PointerEvent): void => {
    const isOnControl = event.target instanceof Element && event.target.closest('.leaflet-control') !== null;
    this.downAt = isOnControl ? null : { x: event.clientX, y: event.clientY };
  };

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
    if (this.shape === 'circle' && centre && a) {
      sideM = lengthOfLineM([centre, a]);
      lines.push(`Radius ${formatLength(sideM, units)}`);
    } else if (this.shape === 'rectangle' && a && b && c) {
      const isSecond = this.clicks.length >= 2;
      sideM = lengthOfLineM(isSecond ? [b, c] : [a, b]);
      const first = formatLength(lengthOfLineM([a, b]), units);
      lines.push(isSecond ? `${first} × ${formatLength(sideM, units)}` : `Side ${first}`);
    }
    const hasArea = this.shape !== 'rectangle' || this.clicks.length >= 2;
    if (hasArea) lines.push(`Area ${formatArea(areaM2, units)}`);
    this.context.events.live({
      points: ring.slice(0, -1),
      sideM,
      bearingDeg: this.shape === 'rectangle' && a && b ? bearingDeg(a, b) : null,
      areaM2: hasArea ? areaM2 : null,
      perimeterM: lengthOfLineM(ring),
      crossing: null,
    });
    const at = this.lastPointer ?? (b ? toLatLng(b) : null);
    if (at) this.note.show(at, lines, false);
  };

  private onFinish(feature: GeoJSONStoreFeatures | undefined): void {
    const drawn = this.ringOf(feature);
    const ring = drawn && this.toGround(drawn);
    const crossing = ring ? findCrossings(ring)[0] : undefined;
    if (!ring || ring.length < 4 || crossing || areaOfRingsM2([ring]) < 1e-3) {
      this.refuse(crossing);
      return;
    }
    this.onDone(ring);
  }

  /** The library's shape made true on the ellipsoid: square corners, a round circle, fewer freehand corners. */
  private toGround(ring: Ring): Ring {
    if (this.shape === 'freehand') return this.simplify(ring);
    const plane = this.context.picture()?.measured.plane;
    if (!plane) return ring;
    const [first, second, third] = this.clicks;
    if (this.shape === 'circle') {
      const drawn = circleOfRing(plane, ring);
      if (!first || !second) return circleRing(plane, drawn.centre, drawn.radiusM);
      return circleRing(plane, first, lengthOfLineM([first, second]));
    }
    const [a, b, c] = ring;
    return a && b && c ? rectangleRing(plane, first ?? a, second ?? b, third ?? c) : ring;
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

  private simplify(ring: Ring): Ring {
    const { map } = this.context;
    const spots = ring.map((position) => map.project(toLatLng(position)));
    const kept = L.LineUtil.simplify(spots, FREEHAND_TOLERANCE_PX).map((spot) =>
      toPosition(map.unproject(spot)),
    );
    const first = kept[0];
    return first ? [...kept.slice(0, -1), first] : ring;
  }

  private restart(): void {
    this.clicks = [];
    this.draw.clear();
    this.draw.setMode(MODES[this.shape]);
    this.note.hide();
    this.context.events.live(null);
  }

  finish(): void {
    if (this.clicks.length > 0 && this.lastPointer) this.addPointAt(this.lastPointer);
    else this.context.events.message(tellIssue('too-few-corners', 'Nothing is drawn yet.'));
  }

  backOnePoint(): boolean {
    if (this.clicks.length === 0) return false;
    this.restart();
    return true;
  }

  addSide(lengthM: number, bearing: number | null): void {
    const last = this.clicks[this.clicks.length - 1];
    if (!last || this.shape === 'freehand') {
      const message =
        this.shape === 'freehand'
          ? 'Freehand takes no typed sides.'
          : 'Place the first point, then type the length.';
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
    this.clicks.push(toPosition(snaps ? this.snap(at) : at));
    this.adapter.send('click', at, snaps);
  }

  addPointAt(at: L.LatLng): void {
    this.send(at, true);
  }

  pointAt(at: L.LatLng): void {
    this.lastPointer = at;
    this.adapter.send('move', at, true);
  }

  pictureChanged(): void {}

  stop(): void {
    const { map } = this.context;
    map.off('mousemove', this.onMove);
    map.getContainer().removeEventListener('pointerdown', this.onDown, true);
    map.getContainer().removeEventListener('pointerup', this.onUp, true);
    this.draw.stop();
    map.dragging.enable();
    map.doubleClickZoom.enable();
    map.boxZoom.enable();
    this.note.remove();
    this.clearCrossing();
    this.context.events.live(null);
  }
}
