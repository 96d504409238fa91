import L from 'leaflet';
import { findCrossings } from '../../measure/crossings';
import {
  collapseParts,
  deleteBendPoint,
  deleteNode,
  endsOf,
  expandParts,
  insertBendPoint,
  insertNode,
  moveBendPoint,
  moveNode,
  type NodeParts,
  type NodePath,
  withNodes,
  withRing,
} from '../../measure/outlineNodes';
import { type Carrier, createCarrier } from '../../measure/sharedEdges';
import type { Position, Zone } from '../../yard/types';
import { toLatLng, toLatLngs, toPosition } from '../coords';
import type { Tool, ZoneOutline } from '../types';
import { showCrossing } from './crossingMark';
import { type Grip, placeOfGrip, ReshapeHandles } from './reshapeHandles';
import { type DrawContext, type DrawSession, tellIssue } from './session';
import { Snapper, type SnapWish } from './snapper';
import { WholeShape } from './wholeShape';

type ReshapeTool = Extract<Tool, { type: 'reshape' }>;

const LABELS: Readonly<Record<Grip['on'], string>> = {
  node: 'Move corner',
  bend: 'Move curve',
  side: 'Move side',
  middle: 'Add corner',
};
const NO_CARRIER: Carrier = {
  hasNeighbours: false,
  follow: () => [],
  settle: () => ({ outlines: [], issues: [] }),
};

/**
 * Outline of one zone, every part and hole of it: corners and points of curves dragged, put in, taken
 * out; sides moved in parallel; the whole moved and turned. Neighbours' shared borders go along. Ours
 * rather than the drawing library's, since that edits neither holes, several parts nor curves. One drag,
 * or one run of arrow keys, is one call of `reshaped`.
 */
export class Reshape implements DrawSession {
  private parts: NodeParts;
  /** the document's zone, to come back to. */
  private settled: Zone | null;
  private isBusy = false;
  /** the shape, the neighbours and what there is to snap to as they were when the drag began. */
  private before: NodeParts = [];
  private zones: readonly Zone[] = [];
  private carrier: Carrier = NO_CARRIER;
  private frame = 0;
  private readonly outline: L.Polygon;
  private readonly handles: ReshapeHandles;
  private readonly snapper: Snapper;
  private readonly whole: WholeShape;
  private clearCrossing = (): void => {};

  constructor(
    private readonly context: DrawContext,
    private readonly tool: ReshapeTool,
  ) {
    const { map } = context;
    this.settled = this.zoneNow();
    this.parts = this.settled ? collapseParts(this.settled) : [];
    this.outline = L.polygon(toLatLngs(this.settled?.parts ?? []), {
      pane: 'yard-drawing',
      className: 'yard-reshape-outline',
      weight: 3,
      fillOpacity: 0,
      smoothFactor: 0,
      bubblingMouseEvents: false,
    }).addTo(map);
    this.snapper = new Snapper(context);
    this.whole = new WholeShape({
      map,
      parts: () => this.parts,
      plane: () => context.picture()?.measured.plane ?? null,
      change: (parts) => {
        this.begin(false);
        this.change(parts);
        this.handles.place(null);
      },
      commit: (label) => this.commit(label),
    });
    this.handles = new ReshapeHandles({
      map,
      parts: () => this.parts,
      movesSides: tool.sides === true,
      grab: () => this.begin(true),
      drag: (grip, at) => this.drag(grip, at),
      nudge: (grip, to) => this.change(this.moved(grip, to)),
      rest: (grip) => this.commit(LABELS[grip.on]),
      press: (grip) => this.press(grip),
      remove: (grip) => this.removeGrip(grip),
      addWhole: (layers) => this.whole.addTo(layers),
    });
    this.outline.on('mousedown', this.whole.grabBody);
    map.on('zoomend moveend', this.onView);
    this.handles.refresh();
  }

  private zoneNow(): Zone | null {
    return this.context.picture()?.yard.zones.find((zone) => zone.id === this.tool.zoneId) ?? null;
  }

  pictureChanged(): void {
    const now = this.zoneNow();
    if (!now) {
      this.context.end();
      return;
    }
    const { settled } = this;
    if (this.isBusy || (now.parts === settled?.parts && now.curves === settled.curves)) return;
    this.settled = now;
    this.parts = collapseParts(now);
    this.refresh();
  }

  private readonly onView = (): void => {
    if (!this.isBusy) this.refresh();
  };

  private refresh(): void {
    this.outline.setLatLngs(toLatLngs(expandParts(this.parts).parts));
    if (!this.handles.refresh()) this.whole.place();
  }

  /** A drag or a run of keys begins. @param carries neighbours go along: not when the whole zone moves away */
  private begin(carries: boolean): void {
    if (this.isBusy) return;
    this.before = this.parts;
    this.zones = this.context.picture()?.yard.zones ?? [];
    const isCarrying = carries && this.tool.isAlone !== true;
    this.carrier = isCarrying
      ? createCarrier(this.zones, this.tool.zoneId, this.context.plane())
      : NO_CARRIER;
  }

  private drag(grip: Grip, at: L.LatLng): Position {
    const to = this.snapper.snap(at, this.wishOf(grip));
    this.change(this.moved(grip, to));
    if (grip.on !== 'side') return to;
    this.snapper.clear();
    return placeOfGrip(this.parts, grip) ?? to;
  }

  /** What a grip can be held to: neighbours as they stood, right angles and parallels from the corners beside it. */
  private wishOf(grip: Grip): SnapWish {
    const ring = this.before[grip.path.part]?.[grip.path.ring];
    const wish = { zones: this.zones, exceptId: this.tool.zoneId };
    if (!ring) return wish;
    const n = ring.nodes.length;
    const node = (i: number) => ring.nodes[(i + n) % n] as Position;
    const { node: i } = grip.path;
    const isStraight = (side: number) => ring.bends[(side + n) % n] === null;
    if (grip.on === 'node') {
      const anchors = [
        ...(isStraight(i - 1)
          ? [{ from: node(i - 1), before: isStraight(i - 2) && n > 2 ? node(i - 2) : null }]
          : []),
        ...(isStraight(i)
          ? [{ from: node(i + 1), before: isStraight(i + 1) && n > 2 ? node(i + 2) : null }]
          : []),
      ];
      return { ...wish, anchors, hidden: [node(i)] };
    }
    if (grip.on === 'middle' && isStraight(i)) {
      const anchors = [
        { from: node(i), before: isStraight(i - 1) ? node(i - 1) : null },
        { from: node(i + 1), before: isStraight(i + 1) ? node(i + 2) : null },
      ];
      return { ...wish, anchors };
    }
    return grip.on === 'side' ? { ...wish, hidden: [node(i), node(i + 1)] } : wish;
  }

  /** The shape as it was with the grip elsewhere. */
  private moved(grip: Grip, to: Position): NodeParts {
    const { before } = this;
    switch (grip.on) {
      case 'node':
        return moveNode(before, grip.path, to);
      case 'bend':
        return moveBendPoint(before, grip.path, grip.index, to);
      case 'side':
        return this.sideMoved(grip.path, to);
      case 'middle': {
        const isBent = before[grip.path.part]?.[grip.path.ring]?.bends[grip.path.node];
        return isBent
          ? insertBendPoint(before, grip.path, grip.index, to)
          : insertNode(before, grip.path, to);
      }
    }
  }

  /** Both ends of a side by as much, square to it, so that it passes through the place. */
  private sideMoved(path: NodePath, to: Position): NodeParts {
    const plane = this.context.plane();
    return withRing(this.before, path, (ring) => {
      const ends = endsOf(ring, path.node);
      const [a, b] = ends.map((p) => plane.toPlane(p)) as [
        readonly [number, number],
        readonly [number, number],
      ];
      const [x, y] = plane.toPlane(to);
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const squared = dx * dx + dy * dy || 1;
      const off = ((x - a[0]) * -dy + (y - a[1]) * dx) / squared;
      const place = (p: readonly [number, number]) =>
        toPosition(toLatLng(plane.toLonLat([p[0] - dy * off, p[1] + dx * off])));
      const next = (path.node + 1) % ring.nodes.length;
      return withNodes(
        ring,
        new Map([
          [path.node, place(a)],
          [next, place(b)],
        ]),
      );
    });
  }

  private press(grip: Grip): void {
    if (this.isBusy || grip.on !== 'middle') return;
    this.begin(true);
    const at = placeOfGrip(this.parts, grip);
    if (!at) return;
    this.change(this.moved(grip, toPosition(toLatLng(at))));
    this.commit('Add corner');
  }

  private removeGrip(grip: Grip): void {
    if (this.isBusy) return;
    const fewer =
      grip.on === 'bend'
        ? deleteBendPoint(this.parts, grip.path, grip.index)
        : deleteNode(this.parts, grip.path);
    if (!fewer) {
      const message = 'A zone needs at least three corners; delete the zone instead.';
      this.context.events.message(tellIssue('too-few-corners', message));
      return;
    }
    this.begin(true);
    this.change(fewer);
    this.commit(grip.on === 'bend' ? 'Delete curve point' : 'Delete corner');
  }

  private change(parts: NodeParts): void {
    this.isBusy = true;
    this.parts = parts;
    if (this.frame) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      if (!this.isBusy) return;
      const own = expandParts(this.parts);
      this.outline.setLatLngs(toLatLngs(own.parts));
      this.context.events.reshaping([
        { zoneId: this.tool.zoneId, ...own },
        ...this.carrier.follow(this.parts),
      ]);
    });
  }

  private rest(): void {
    this.isBusy = false;
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.snapper.clear();
    this.context.events.reshaping(null);
  }

  private commit(label: string): void {
    if (!this.isBusy) return;
    const { parts, carrier } = this;
    const own: ZoneOutline = { zoneId: this.tool.zoneId, ...expandParts(parts) };
    this.rest();
    this.clearCrossing();
    const crossing = own.parts.flat().flatMap((ring) => findCrossings(ring))[0];
    if (crossing) {
      this.clearCrossing = showCrossing(this.context.map, crossing);
      const message = 'Sides would cross there, so the shape was put back. The crossing is marked.';
      this.context.events.message(tellIssue('sides-cross', message, crossing));
      this.putBack();
      return;
    }
    const { outlines, issues } = carrier.settle(parts);
    this.context.events.reshaped([own, ...outlines], label);
    const [issue] = issues;
    if (issue) this.context.events.message(issue);
    // Whatever the document made of it is the truth; a refused change goes back.
    this.settled = this.zoneNow();
    this.parts = this.settled ? collapseParts(this.settled) : [];
    this.refresh();
  }

  private putBack(): void {
    this.parts = this.settled ? collapseParts(this.settled) : [];
    this.handles.forget();
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

  stop(): void {
    const { map } = this.context;
    if (this.isBusy) this.rest();
    map.off('zoomend moveend', this.onView);
    this.whole.letGo();
    this.handles.remove();
    this.snapper.remove();
    this.outline.remove();
    this.clearCrossing();
    this.context.events.live(null);
  }
}
