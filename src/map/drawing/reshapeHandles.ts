import L from 'leaflet';
import { destination } from '../../measure/geodesic';
import { endsOf, lineOfSide, type NodeParts, type NodePath, type NodeRing } from '../../measure/outlineNodes';
import type { Position } from '../../yard/types';
import { toLatLng, toPosition } from '../coords';
import { createDeleteButton, createHandle, type HandleKind } from './handles';
import { nudgeM } from './wholeShape';

/** With more corners than this only those in view get handles, and no middles. */
const MANY_CORNERS = 250;
const LEAST_SIDE_PX = 40;
const CROWDED_PX = 22;

/** What a handle moves: a corner or end of a curve, a point of a curve, a whole side, or a corner to be. */
export type Grip =
  | { readonly on: 'node'; readonly path: NodePath }
  | { readonly on: 'bend'; readonly path: NodePath; readonly index: number }
  | { readonly on: 'side'; readonly path: NodePath }
  | { readonly on: 'middle'; readonly path: NodePath; readonly index: number };

export interface HandleHost {
  readonly map: L.Map;
  parts(): NodeParts;
  /** the handles between corners move whole sides. */
  readonly movesSides: boolean;
  grab(grip: Grip): void;
  /** the grip goes to a place by pointer. @returns where it is held to */
  drag(grip: Grip, at: L.LatLng): Position;
  /** the grip goes to a place by arrow keys. */
  nudge(grip: Grip, to: Position): void;
  rest(grip: Grip): void;
  /** a tap or Enter on a middle. */
  press(grip: Grip): void;
  remove(grip: Grip): void;
  addWhole(layers: L.LayerGroup): void;
}

/** The place of a grip in the parts as they are. */
export function placeOfGrip(parts: NodeParts, grip: Grip): Position | null {
  const ring = parts[grip.path.part]?.[grip.path.ring];
  if (!ring) return null;
  if (grip.on === 'node') return ring.nodes[grip.path.node] ?? null;
  if (grip.on === 'bend') return ring.bends[grip.path.node]?.inner[grip.index] ?? null;
  return middleOf(ring, grip.path.node, grip.on === 'middle' ? grip.index : -1);
}

/** Middle of a straight side, or of the stretch of a smooth one before its point `index`. */
function middleOf(ring: NodeRing, side: number, index: number): Position {
  const [a, b] = endsOf(ring, side);
  const bend = ring.bends[side];
  if (!bend || index < 0) return halfway(a, b);
  // halfway along the corners between two points of the curve
  const line = lineOfSide(ring, side);
  const stops = [a, ...bend.inner, b];
  const at = (p: Position | undefined, from: number) =>
    line.findIndex((q, i) => i >= from && q[0] === p?.[0] && q[1] === p[1]);
  let from = 0;
  for (let i = 1; i <= index; i++) from = Math.max(from, at(stops[i], from));
  const to = index + 1 === stops.length - 1 ? line.length - 1 : at(stops[index + 1], from + 1);
  return line[Math.round((from + to) / 2)] ?? halfway(a, b);
}

function halfway(a: Position, b: Position): Position {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

/** Handles of a zone's outline, made anew only when there are others than before. */
export class ReshapeHandles {
  private readonly layers = L.layerGroup();
  private readonly markers: { marker: L.Marker; grip: Grip }[] = [];
  private deleteButton: L.Marker | null = null;
  private built = '';

  constructor(private readonly host: HandleHost) {
    this.layers.addTo(host.map);
  }

  /** Forgets what was built, so that the next refresh builds anew. */
  forget(): void {
    this.built = '';
  }

  /** @returns true when the handles were made anew */
  refresh(): boolean {
    if (this.built !== this.buildKey()) {
      this.build();
      return true;
    }
    this.place(null);
    return false;
  }

  /** Handles to where the shape is now. @param held the one in hand, left where it is */
  place(held: Grip | null): void {
    for (const { marker, grip } of this.markers) {
      if (grip === held) continue;
      const at = placeOfGrip(this.host.parts(), grip);
      if (at) marker.setLatLng(toLatLng(at));
    }
  }

  private count(): number {
    return this.host
      .parts()
      .flat()
      .reduce((sum, ring) => sum + ring.nodes.length, 0);
  }

  private buildKey(): string {
    const { map } = this.host;
    const counts = this.host
      .parts()
      .map((rings) =>
        rings.map((ring) => ring.bends.map((bend) => (bend ? `${bend.kind}${bend.inner.length}` : 0))),
      );
    const view = this.count() > MANY_CORNERS ? map.getBounds().toBBoxString() : '';
    return JSON.stringify(counts) + map.getZoom() + view;
  }

  private build(): void {
    const { map } = this.host;
    const focused = document.activeElement?.getAttribute('aria-label') ?? null;
    this.built = this.buildKey();
    this.layers.clearLayers();
    this.markers.length = 0;
    this.deleteButton = null;
    const isMany = this.count() > MANY_CORNERS;
    const view = map.getBounds().pad(0.1);
    for (const [part, rings] of this.host.parts().entries()) {
      for (const [r, ring] of rings.entries()) {
        const name = this.ringName(part, r);
        for (const [node, at] of ring.nodes.entries()) {
          if (isMany && !view.contains(toLatLng(at))) continue;
          const path = { part, ring: r, node };
          this.addNode(path, ring, `${name}, corner ${node + 1} of ${ring.nodes.length}`);
          this.addBend(path, ring, name, isMany);
        }
      }
    }
    this.host.addWhole(this.layers);
    if (focused) this.focusByName(focused);
  }

  private focusByName(name: string): void {
    this.layers.eachLayer((layer) => {
      const element = layer instanceof L.Marker ? layer.getElement() : undefined;
      if (element?.getAttribute('aria-label') === name) element.focus();
    });
  }

  private ringName(part: number, ring: number): string {
    const outline = ring === 0 ? 'Outline' : `Hole ${ring}`;
    return this.host.parts().length > 1 ? `Part ${part + 1}, ${outline.toLowerCase()}` : outline;
  }

  private addNode(path: NodePath, ring: NodeRing, title: string): void {
    const at = ring.nodes[path.node];
    const [, next] = endsOf(ring, path.node);
    if (!at) return;
    const marker = this.add({ on: 'node', path }, 'corner', title, true);
    marker?.getElement()?.classList.toggle('is-small', this.pixelsBetween(at, next) < CROWDED_PX);
  }

  /** Points of a curved side; middles of a straight one, and between the points of a smooth one. */
  private addBend(path: NodePath, ring: NodeRing, name: string, isMany: boolean): void {
    const bend = ring.bends[path.node];
    const after = path.node + 1;
    for (const index of bend?.inner.keys() ?? [])
      this.add(
        { on: 'bend', path, index },
        'bend',
        `${name}, point ${index + 1} of the curve after ${after}`,
        true,
      );
    if (isMany || bend?.kind === 'arc') return;
    if (this.host.movesSides) {
      if (!bend && this.isLong(ring, path.node))
        this.add({ on: 'side', path }, 'side', `${name}, move the side after ${after}`, false);
      return;
    }
    if (!bend) {
      if (this.isLong(ring, path.node))
        this.add({ on: 'middle', path, index: 0 }, 'middle', `${name}, add a corner after ${after}`, false);
      return;
    }
    for (let index = 0; index <= bend.inner.length; index++)
      this.add(
        { on: 'middle', path, index },
        'middle',
        `${name}, add a point ${index + 1} to the curve after ${after}`,
        false,
      );
  }

  private isLong(ring: NodeRing, side: number): boolean {
    const [a, b] = endsOf(ring, side);
    return this.pixelsBetween(a, b) >= LEAST_SIDE_PX;
  }

  private pixelsBetween(a: Position, b: Position): number {
    const { map } = this.host;
    return map.latLngToLayerPoint(toLatLng(a)).distanceTo(map.latLngToLayerPoint(toLatLng(b)));
  }

  private add(grip: Grip, kind: HandleKind, title: string, canGo: boolean): L.Marker | null {
    const at = placeOfGrip(this.host.parts(), grip);
    if (!at) return null;
    let nudged: Position | null = null;
    const marker = createHandle(kind, at, title, {
      grab: () => this.host.grab(grip),
      drag: (latLng) => {
        marker.setLatLng(toLatLng(this.host.drag(grip, latLng)));
        this.place(grip);
      },
      drop: () => this.host.rest(grip),
      nudge: (bearing, isFar) => {
        if (!nudged) this.host.grab(grip);
        nudged = destination(nudged ?? toPosition(marker.getLatLng()), bearing, nudgeM(isFar));
        const to = toPosition(toLatLng(nudged));
        marker.setLatLng(toLatLng(to));
        this.host.nudge(grip, to);
        this.place(grip);
      },
      rest: () => {
        nudged = null;
        this.host.rest(grip);
      },
      press: canGo ? undefined : () => this.host.press(grip),
      remove: canGo ? () => this.host.remove(grip) : undefined,
      focus: () => {
        this.deleteButton?.remove();
        if (canGo)
          this.deleteButton = createDeleteButton(this.host.map, marker, () => this.host.remove(grip)).addTo(
            this.layers,
          );
      },
    });
    this.markers.push({ marker, grip });
    marker.addTo(this.layers);
    return marker;
  }

  remove(): void {
    this.layers.remove();
  }
}
