import L from 'leaflet';
import { findCrossings } from '../../measure/crossings';
import { areaOfRingsM2, bearingDeg, destination, innerAngleDeg, lengthOfLineM } from '../../measure/geodesic';
import { formatArea, formatLength } from '../../units/format';
import type { Position, UnitSystem } from '../../yard/types';
import { toLatLng, toPosition } from '../coords';
import { showCrossing } from './crossingMark';
import { PathPreview } from './pathPreview';
import { createPointerNote, type PointerNote } from './pointerNote';
import { type DrawContext, type DrawSession, SNAP_PX, tellIssue } from './session';
import { alignWithFirst, crossingOfNewSide, holdRightAngle } from './sides';
import { Snapper } from './snapper';

const SAME_PX = 4;

/** What kind of path, and what becomes of it. */
export interface PathOptions {
  /** true: a ring; false: an open line. */
  readonly closes: boolean;
  /** sides may cross those drawn before. */
  readonly mayCross?: boolean;
  /** what was finished stays to be looked at; the next point begins anew. */
  readonly staysShown?: boolean;
  /** angles are told beside the pointer too. */
  readonly tellsAngles?: boolean;
  /** closed ring (first = last), or line of 2 or more points; never crossing itself unless it may. */
  onDone(line: readonly Position[]): void;
  /** the points, with that of the pointer, changed. */
  onLine?(line: readonly Position[]): void;
  onStop?(): void;
}

/**
 * Drawing corner by corner: a ring that closes on its first corner, or an open line.
 * Ours rather than the drawing library's, since typed sides, the right-angle hold and the keyboard
 * crosshair all put exact points into a path under way, which that library does not take.
 */
export class PathDraw implements DrawSession {
  private points: Position[] = [];
  private pointer: Position | null = null;
  private rawPointer: L.LatLng | null = null;
  private isShiftHeld = false;
  private shownUnits: UnitSystem | null = null;
  private readonly preview: PathPreview;
  private readonly note: PointerNote;
  private clearCrossing = (): void => {};
  /** a corner was refused and nothing was done since: what is drawn is not what was meant. */
  private isCornerLeftOut = false;

  /** finished, and only shown still. */
  private isDone = false;
  private readonly snapper: Snapper;

  constructor(
    private readonly context: DrawContext,
    private readonly options: PathOptions,
  ) {
    this.snapper = new Snapper(context);
    this.preview = new PathPreview(context.map);
    this.note = createPointerNote(context.map);
    const { map } = context;
    map.doubleClickZoom.disable();
    map.boxZoom.disable();
    map.on('click', this.onClick).on('mousemove', this.onMove).on('zoomend', this.update);
    map.getContainer().addEventListener('mouseleave', this.onLeave);
    this.update();
  }

  private readonly onClick = (event: L.LeafletMouseEvent): void => {
    this.isShiftHeld = event.originalEvent.shiftKey;
    this.addPointAt(event.latlng);
  };

  private readonly onMove = (event: L.LeafletMouseEvent): void => {
    this.isShiftHeld = event.originalEvent.shiftKey;
    this.pointAt(event.latlng);
  };

  private readonly onLeave = (): void => {
    this.pointer = null;
    this.snapper.clear();
    this.update();
  };

  pointAt(at: L.LatLng): void {
    if (this.isDone) return;
    this.rawPointer = at;
    this.pointer = this.place(at);
    this.update();
  }

  addPointAt(at: L.LatLng): void {
    if (this.isDone) this.startAnew();
    const first = this.points[0];
    const last = this.points[this.points.length - 1];
    if (last && this.pixelsBetween(at, last) <= SAME_PX) {
      if (this.hasEnough()) this.finish();
      return;
    }
    if (this.options.closes && first && this.hasEnough() && this.pixelsBetween(at, first) <= SNAP_PX) {
      this.finish();
      return;
    }
    this.rawPointer = at;
    this.addPoint(this.place(at));
  }

  private startAnew(): void {
    this.isDone = false;
    this.points = [];
  }

  private rest(): void {
    this.isDone = true;
    this.pointer = null;
    this.snapper.clear();
    this.update();
  }

  private hasEnough(): boolean {
    return this.points.length >= (this.options.closes ? 3 : 2);
  }

  private pixelsBetween(at: L.LatLng, position: Position): number {
    const { map } = this.context;
    return map.latLngToLayerPoint(at).distanceTo(map.latLngToLayerPoint(toLatLng(position)));
  }

  private project(position: Position): L.Point {
    return this.context.map.project(toLatLng(position));
  }

  /** Where a point falls: held square to the side before, else snapped, else as it is. */
  private place(at: L.LatLng): Position {
    const { hold } = this.context;
    const [first] = this.points;
    const last = this.points[this.points.length - 1];
    const before = this.points[this.points.length - 2];
    if ((hold.rightAngle || this.isShiftHeld) && before && last && first) {
      this.snapper.clear();
      return this.holdSquare(at, before, last, first);
    }
    const anchors = last ? [{ from: last, before: before ?? null }] : [];
    // the side back to the first corner, square to the first side
    if (this.options.closes && first && this.points.length >= 3)
      anchors.push({ from: first, before: this.points[1] ?? null });
    return this.snapper.snap(at, { anchors, own: this.points });
  }

  /** Square on the ground, in the yard's plane: the web map's own angles are those of a sphere. */
  private holdSquare(at: L.LatLng, before: Position, last: Position, first: Position): Position {
    const { map } = this.context;
    const plane = this.context.plane();
    const spot = (position: Position) => {
      const [x, y] = plane.toPlane(position);
      return { x, y };
    };
    const pointer = spot(toPosition(at));
    let held = holdRightAngle(spot(before), spot(last), pointer);
    if (this.options.closes) {
      const aside = map.containerPointToLatLng(map.latLngToContainerPoint(at).add([SNAP_PX, 0]));
      const reachM = Math.abs(spot(toPosition(aside)).x - pointer.x);
      held = alignWithFirst(spot(first), spot(last), held, reachM);
    }
    return toPosition(toLatLng(plane.toLonLat([held.x, held.y])));
  }

  private addPoint(next: Position): void {
    const last = this.points[this.points.length - 1];
    if (last && last[0] === next[0] && last[1] === next[1]) return;
    const crossing = this.crossingTo(next);
    if (crossing) {
      this.isCornerLeftOut = true;
      this.pointer = null;
      this.refuse(crossing, 'That side would cross one already drawn, so its corner is left out.');
      this.update();
      return;
    }
    this.isCornerLeftOut = false;
    this.clearCrossing();
    this.points = [...this.points, next];
    this.snapper.clear();
    this.update();
  }

  private crossingTo(next: Position): Position | null {
    if (this.options.mayCross) return null;
    const spots = this.points.map((p) => this.project(p));
    const hit = crossingOfNewSide(spots, this.project(next));
    return hit ? toPosition(this.context.map.unproject(L.point(hit.x, hit.y))) : null;
  }

  private refuse(crossing: Position, words: string): void {
    this.clearCrossing();
    this.clearCrossing = showCrossing(this.context.map, crossing);
    const message = `${words} The crossing is marked on the map.`;
    this.context.events.message(tellIssue('sides-cross', message, crossing));
  }

  finish(): void {
    if (this.isDone) return;
    if (!this.hasEnough()) {
      const message = this.options.closes
        ? 'A shape needs at least three corners.'
        : 'A line needs at least two points.';
      this.context.events.message(tellIssue('too-few-corners', message));
      return;
    }
    const first = this.points[0] as Position;
    const line = this.options.closes ? [...this.points, first] : this.points;
    const crossing = this.options.closes ? findCrossings(line)[0] : undefined;
    if (crossing) {
      this.refuse(crossing, 'The side back to the first corner would cross one already drawn.');
      return;
    }
    if (this.isCornerLeftOut) {
      this.isCornerLeftOut = false;
      const count = `${this.points.length} ${this.options.closes ? 'corners' : 'points'}`;
      const message = `The last corner was left out. Finish once more to end with the ${count} drawn, or put another.`;
      this.context.events.message(tellIssue('corner-left-out', message));
      return;
    }
    if (this.options.staysShown) this.rest();
    this.options.onDone(line);
  }

  backOnePoint(): boolean {
    if (this.points.length === 0) return false;
    this.isDone = false;
    this.points = this.points.slice(0, -1);
    this.isCornerLeftOut = false;
    this.clearCrossing();
    if (this.rawPointer) this.pointer = this.place(this.rawPointer);
    this.update();
    return true;
  }

  addSide(lengthM: number, bearing: number | null): void {
    const last = this.points[this.points.length - 1];
    if (!last) {
      this.context.events.message(
        tellIssue('no-first-corner', 'Place the first corner, then type the sides.'),
      );
      return;
    }
    const next = destination(last, bearing ?? this.bearingOfNext(last), lengthM);
    this.addPoint(toPosition(toLatLng(next)));
    this.context.map.panInside(toLatLng(next), { padding: [60, 60] });
  }

  /** Bearing where none was typed: the pointer's, squared when held, else a right turn from the side before. */
  private bearingOfNext(last: Position): number {
    const toward = this.rawPointer ? this.place(this.rawPointer) : null;
    if (toward && (toward[0] !== last[0] || toward[1] !== last[1])) return bearingDeg(last, toward);
    const before = this.points[this.points.length - 2];
    return before ? bearingDeg(before, last) + 90 : 90;
  }

  /** Only other units change what is shown; anything else would send the same figures round again. */
  pictureChanged(): void {
    if (this.shownUnits !== this.context.picture()?.units) this.update();
  }

  protected readonly update = (): void => {
    const units = this.context.picture()?.units ?? 'us';
    this.shownUnits = units;
    const { points } = this;
    const last = points[points.length - 1];
    const isResting = this.pointer && last && this.pixelsBetween(toLatLng(this.pointer), last) <= SAME_PX;
    const pointer = isResting ? null : this.pointer;
    const crossing = pointer ? this.crossingTo(pointer) : null;
    this.preview.update(points, pointer, this.options.closes, crossing !== null, units);
    const line = pointer && last && !crossing ? [...points, pointer] : points;
    const first = line[0];
    const closed = this.options.closes && first && line.length >= 3 ? [...line, first] : null;
    const before = points[points.length - 2];
    const figures = {
      angleDeg: pointer && last && before ? innerAngleDeg(before, last, pointer) : null,
      points,
      sideM: pointer && last ? lengthOfLineM([last, pointer]) : null,
      bearingDeg: pointer && last ? bearingDeg(last, pointer) : null,
      areaM2: closed ? areaOfRingsM2([closed]) : null,
      perimeterM: line.length >= 2 ? lengthOfLineM(closed ?? line) : null,
      crossing,
    };
    this.context.events.live(figures);
    this.options.onLine?.(line);
    const lines = [];
    if (figures.sideM !== null) lines.push(`Side ${formatLength(figures.sideM, units)}`);
    if (this.options.tellsAngles && figures.angleDeg !== null)
      lines.push(`Angle ${figures.angleDeg.toFixed(1)}°`);
    if (this.options.tellsAngles && points.length > 1 && figures.perimeterM !== null)
      lines.push(`In all ${formatLength(figures.perimeterM, units)}`);
    if (crossing) lines.push('Sides cross');
    else if (figures.areaM2 !== null) lines.push(`Area ${formatArea(figures.areaM2, units)}`);
    if (pointer && lines.length > 0) this.note.show(toLatLng(pointer), lines, crossing !== null);
    else this.note.hide();
  };

  stop(): void {
    const { map } = this.context;
    map.off('click', this.onClick).off('mousemove', this.onMove).off('zoomend', this.update);
    map.getContainer().removeEventListener('mouseleave', this.onLeave);
    map.doubleClickZoom.enable();
    map.boxZoom.enable();
    this.preview.remove();
    this.snapper.remove();
    this.options.onStop?.();
    this.note.remove();
    this.clearCrossing();
    this.context.events.live(null);
  }
}
