import L from 'leaflet';
import { findCrossings } from '../../measure/crossings';
import { destination } from '../../measure/geodesic';
import type { Position, Rings } from '../../yard/types';
import { toLatLng, toLatLngs, toPosition } from '../coords';
import {
  type CornerPath,
  closeParts,
  countsOf,
  deleteCorner,
  insertCorner,
  moveCorner,
  type OpenParts,
  openParts,
} from './corners';
import { showCrossing } from './crossingMark';
import { createDeleteButton, createHandle } from './handles';
import { type DrawContext, type DrawSession, SNAP_PX, tellIssue } from './session';
import { linesWithoutCorner, ringsToSnapTo, snapToLines } from './snapping';
import { nudgeM, WholeShape } from './wholeShape';

/** With more corners than this only those in view get handles, and no middles. */
const MANY_CORNERS = 250;
const LEAST_SIDE_PX = 40;
const CROWDED_PX = 22;

/**
 * Corners of one zone, every part and hole of it: drag, insert at the middles, delete; move and turn
 * the whole. Ours rather than the drawing library's, since that edits neither holes nor several parts.
 * One drag, or one run of arrow keys, is one call of `reshaped`.
 */
export class Reshape implements DrawSession {
  private parts: OpenParts;
  /** the document's shape of the zone, to come back to. */
  private settled: readonly Rings[];
  private isBusy = false;
  /** what the corner in hand can snap to, as it was when the drag began. */
  private snapLines: readonly (readonly Position[])[] = [];
  private frame = 0;
  private readonly outline: L.Polygon;
  private readonly handles = L.layerGroup();
  private readonly corners = new Map<string, L.Marker>();
  private readonly middles: { marker: L.Marker; path: CornerPath }[] = [];
  private deleteButton: L.Marker | null = null;
  private built = '';
  private clearCrossing = (): void => {};
  private readonly whole: WholeShape;

  constructor(
    private readonly context: DrawContext,
    private readonly zoneId: string,
  ) {
    this.settled = this.zoneParts() ?? [];
    this.parts = openParts(this.settled);
    this.outline = L.polygon(toLatLngs(this.settled), {
      pane: 'yard-drawing',
      className: 'yard-reshape-outline',
      weight: 3,
      fillOpacity: 0,
      bubblingMouseEvents: false,
    }).addTo(context.map);
    this.handles.addTo(context.map);
    this.whole = new WholeShape({
      map: context.map,
      parts: () => this.parts,
      plane: () => context.picture()?.measured.plane ?? null,
      change: (parts) => {
        this.change(parts);
        this.refreshCorners();
      },
      commit: (label) => this.commit(label),
    });
    this.outline.on('mousedown', this.whole.grabBody);
    context.map.on('zoomend moveend', this.onView);
    this.build();
  }

  private zoneParts(): readonly Rings[] | null {
    return this.context.picture()?.yard.zones.find((zone) => zone.id === this.zoneId)?.parts ?? null;
  }

  pictureChanged(): void {
    const now = this.zoneParts();
    if (!now) {
      this.context.end();
      return;
    }
    if (this.isBusy || now === this.settled) return;
    this.settled = now;
    this.parts = openParts(now);
    this.refresh();
  }

  private readonly onView = (): void => {
    if (!this.isBusy) this.refresh();
  };

  /** Handles to the corners as they are; made anew only when there are others than before. */
  private refresh(): void {
    this.outline.setLatLngs(toLatLngs(closeParts(this.parts)));
    if (this.built !== this.buildKey()) {
      this.build();
      return;
    }
    this.refreshCorners();
    this.whole.place();
  }

  private cornerCount(): number {
    return this.parts.flat(2).length;
  }

  private buildKey(): string {
    const view = this.cornerCount() > MANY_CORNERS ? this.context.map.getBounds().toBBoxString() : '';
    return countsOf(this.parts) + this.context.map.getZoom() + view;
  }

  private cornerAt(path: CornerPath): Position | null {
    return this.parts[path.part]?.[path.ring]?.[path.corner] ?? null;
  }

  private nextOf(path: CornerPath): Position | null {
    const ring = this.parts[path.part]?.[path.ring];
    return ring?.[(path.corner + 1) % ring.length] ?? null;
  }

  private middleOf(path: CornerPath): L.LatLng {
    const a = this.cornerAt(path) ?? [0, 0];
    const b = this.nextOf(path) ?? a;
    return L.latLng((a[1] + b[1]) / 2, (a[0] + b[0]) / 2);
  }

  private build(): void {
    const { map } = this.context;
    const focused = document.activeElement?.getAttribute('aria-label') ?? null;
    this.built = this.buildKey();
    this.handles.clearLayers();
    this.corners.clear();
    this.middles.length = 0;
    this.deleteButton = null;
    const isMany = this.cornerCount() > MANY_CORNERS;
    const view = map.getBounds().pad(0.1);
    for (const [p, rings] of this.parts.entries()) {
      for (const [r, ring] of rings.entries()) {
        for (const [i, at] of ring.entries()) {
          if (isMany && !view.contains(toLatLng(at))) continue;
          const path = { part: p, ring: r, corner: i };
          this.addCorner(path, at, `${this.ringName(p, r)}, corner ${i + 1} of ${ring.length}`);
          if (!isMany) this.addMiddle(path, `${this.ringName(p, r)}, add a corner after ${i + 1}`);
        }
      }
    }
    this.whole.addTo(this.handles);
    if (focused) this.focusByName(focused);
  }

  private focusByName(name: string): void {
    this.handles.eachLayer((layer) => {
      const element = layer instanceof L.Marker ? layer.getElement() : undefined;
      if (element?.getAttribute('aria-label') === name) element.focus();
    });
  }

  private ringName(part: number, ring: number): string {
    const outline = ring === 0 ? 'Outline' : `Hole ${ring}`;
    return this.parts.length > 1 ? `Part ${part + 1}, ${outline.toLowerCase()}` : outline;
  }

  private addCorner(path: CornerPath, at: Position, title: string): void {
    const marker = createHandle('corner', at, title, {
      drag: (latLng) => {
        const to = this.snap(latLng, this.cornerAt(path));
        marker.setLatLng(toLatLng(to));
        this.change(moveCorner(this.parts, path, to));
        this.placeMiddles();
      },
      drop: () => this.commit('Move corner'),
      nudge: (bearing, isFar) => {
        const from = this.cornerAt(path);
        if (!from) return;
        const to = toPosition(toLatLng(destination(from, bearing, nudgeM(isFar))));
        marker.setLatLng(toLatLng(to));
        this.change(moveCorner(this.parts, path, to));
        this.placeMiddles();
      },
      rest: () => this.commit('Move corner'),
      remove: () => this.deleteCorner(path),
      focus: () => this.offerDelete(path, marker),
    });
    this.corners.set(JSON.stringify(path), marker);
    marker.addTo(this.handles);
    const next = this.nextOf(path);
    const isCrowded = next && this.pixelsBetween(at, next) < CROWDED_PX;
    marker.getElement()?.classList.toggle('is-small', Boolean(isCrowded));
  }

  private addMiddle(path: CornerPath, title: string): void {
    const { map } = this.context;
    const a = this.cornerAt(path);
    const b = this.nextOf(path);
    if (!a || !b) return;
    if (map.latLngToLayerPoint(toLatLng(a)).distanceTo(map.latLngToLayerPoint(toLatLng(b))) < LEAST_SIDE_PX)
      return;
    let before = this.parts;
    const grow = (to: Position) => this.change(insertCorner(before, path, to));
    let nudged: Position | null = null;
    const marker = createHandle('middle', toPosition(this.middleOf(path)), title, {
      grab: () => {
        before = this.parts;
      },
      drag: (latLng) => {
        const to = this.snap(latLng, null);
        marker.setLatLng(toLatLng(to));
        grow(to);
      },
      drop: () => this.commit('Add corner'),
      nudge: (bearing, isFar) => {
        if (!nudged) before = this.parts;
        const at = destination(nudged ?? toPosition(marker.getLatLng()), bearing, nudgeM(isFar));
        nudged = at;
        marker.setLatLng(toLatLng(at));
        grow(toPosition(toLatLng(at)));
      },
      rest: () => this.commit('Add corner'),
      press: () => {
        if (this.isBusy) return;
        before = this.parts;
        grow(toPosition(this.middleOf(path)));
        this.commit('Add corner');
      },
    });
    this.middles.push({ marker, path });
    marker.addTo(this.handles);
  }

  private pixelsBetween(a: Position, b: Position): number {
    const { map } = this.context;
    return map.latLngToLayerPoint(toLatLng(a)).distanceTo(map.latLngToLayerPoint(toLatLng(b)));
  }

  private placeMiddles(): void {
    for (const { marker, path } of this.middles) marker.setLatLng(this.middleOf(path));
  }

  private offerDelete(path: CornerPath, corner: L.Marker): void {
    this.deleteButton?.remove();
    this.deleteButton = createDeleteButton(this.context.map, corner, () => this.deleteCorner(path)).addTo(
      this.handles,
    );
  }

  private deleteCorner(path: CornerPath): void {
    const fewer = deleteCorner(this.parts, path);
    if (!fewer) {
      this.context.events.message(
        tellIssue('too-few-corners', 'A zone needs at least three corners; delete the zone instead.'),
      );
      return;
    }
    this.change(fewer);
    this.commit('Delete corner');
  }

  private refreshCorners(): void {
    for (const [key, marker] of this.corners) {
      const at = this.cornerAt(JSON.parse(key));
      if (at) marker.setLatLng(toLatLng(at));
    }
    this.placeMiddles();
  }

  private snap(latLng: L.LatLng, from: Position | null): Position {
    const { map, hold } = this.context;
    // Neighbours that follow the corner would hold it to where they stood a moment ago.
    if (!this.isBusy) {
      const rings = ringsToSnapTo(this.context.picture()?.yard.zones ?? [], this.zoneId);
      this.snapLines = from ? linesWithoutCorner(rings, from) : [...rings];
    }
    if (!hold.snapping) return toPosition(latLng);
    const project = (position: Position) => map.project(toLatLng(position));
    return snapToLines(map.project(latLng), this.snapLines, project, SNAP_PX)?.position ?? toPosition(latLng);
  }

  private change(parts: OpenParts): void {
    this.isBusy = true;
    this.parts = parts;
    this.outline.setLatLngs(toLatLngs(closeParts(parts)));
    if (this.frame) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      if (this.isBusy)
        this.context.events.reshaping([{ zoneId: this.zoneId, parts: closeParts(this.parts), curves: [] }]);
    });
  }

  private rest(): void {
    this.isBusy = false;
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.context.events.reshaping(null);
  }

  private commit(label: string): void {
    if (!this.isBusy) return;
    const parts = closeParts(this.parts);
    this.rest();
    this.clearCrossing();
    for (const ring of parts.flat()) {
      const crossing = findCrossings(ring)[0];
      if (!crossing) continue;
      this.clearCrossing = showCrossing(this.context.map, crossing);
      this.context.events.message(
        tellIssue(
          'sides-cross',
          'Sides would cross there, so the shape was put back. The crossing is marked.',
          crossing,
        ),
      );
      this.putBack();
      return;
    }
    this.context.events.reshaped([{ zoneId: this.zoneId, parts, curves: [] }], label);
    // Whatever the document made of it is the truth; a refused change goes back.
    this.settled = this.zoneParts() ?? [];
    this.parts = openParts(this.settled);
    this.refresh();
  }

  private putBack(): void {
    this.parts = openParts(this.settled);
    this.built = '';
    this.refresh();
  }

  /** Escape while dragging puts the shape back; else the tool ends. @returns true when something was put back */
  cancelDrag(): boolean {
    if (!this.isBusy) return false;
    this.whole.letGo();
    this.rest();
    this.putBack();
    return true;
  }

  finish(): void {
    if (this.isBusy) this.commit('Move corner');
    this.context.end();
  }

  backOnePoint(): boolean {
    return false;
  }
  addSide(): void {}
  addPointAt(): void {}
  pointAt(): void {}

  stop(): void {
    const { map } = this.context;
    if (this.isBusy) this.rest();
    map.off('zoomend moveend', this.onView);
    this.whole.letGo();
    this.handles.remove();
    this.outline.remove();
    this.clearCrossing();
    this.context.events.live(null);
  }
}
