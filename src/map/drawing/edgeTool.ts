import L from 'leaflet';
import { findCrossings } from '../../measure/crossings';
import {
  type Bend,
  bendBetween,
  collapseParts,
  expandParts,
  type NodeParts,
  type NodePath,
  ringOfNodes,
  withRing,
} from '../../measure/outlineNodes';
import { createCarrier } from '../../measure/sharedEdges';
import type { Position, Zone } from '../../yard/types';
import { toLatLng, toLatLngs, toPosition } from '../coords';
import type { EdgePick, Tool } from '../types';
import { showCrossing } from './crossingMark';
import {
  type Hit,
  hitOutline,
  lineOfSpan,
  type NodeSpan,
  pointsOfSpan,
  replaceSpan,
  spanBetween,
  spanOfSide,
} from './outlinePick';
import { type DrawContext, type DrawSession, tellIssue } from './session';

type EdgeTool = Extract<Tool, { type: 'edge' }>;

const NO_FIGURES = {
  points: [],
  sideM: null,
  bearingDeg: null,
  areaM2: null,
  perimeterM: null,
  crossing: null,
};
/** An arc that bows less than this is a straight side, m. */
const LEAST_BOW_M = 0.001;

/**
 * Stretches of one zone's outline: bend to an arc, smooth, straighten; or pick one to offset or align.
 * A click on a side takes it; clicks on two corners take the stretch between, the shorter way.
 */
export class EdgeSession implements DrawSession {
  private parts: NodeParts;
  private zone: Zone | null;
  /** first corner of a stretch that is being picked. */
  private start: NodePath | null = null;
  private span: NodeSpan | null = null;
  private target: EdgePick['target'] = null;
  private pointer: L.LatLng | null = null;
  private clearCrossing = (): void => {};
  private readonly outline: L.Polygon;
  private readonly hover: L.Polyline;
  private readonly chosen: L.Polyline;
  private readonly aim: L.Polyline;
  private readonly preview: L.Polyline;
  private readonly dots = L.layerGroup();

  constructor(
    private readonly context: DrawContext,
    private readonly tool: EdgeTool,
  ) {
    const { map } = context;
    const line = (className: string, weight: number) =>
      L.polyline([], { pane: 'yard-drawing', interactive: false, className, weight }).addTo(map);
    this.zone = this.zoneNow();
    this.parts = this.zone ? collapseParts(this.zone) : [];
    this.outline = L.polygon([], {
      pane: 'yard-drawing',
      interactive: false,
      className: 'yard-edge-outline',
      weight: 2,
      fill: false,
    }).addTo(map);
    this.hover = line('yard-edge-hover', 8);
    this.chosen = line('yard-edge-chosen', 6);
    this.aim = line('yard-edge-aim', 6);
    this.preview = line('yard-draw-rubber', 3);
    this.dots.addTo(map);
    map.doubleClickZoom.disable();
    map.on('click', this.onClick).on('mousemove', this.onMove);
    this.show();
    this.tell(false);
  }

  private zoneNow(): Zone | null {
    return this.context.picture()?.yard.zones.find((zone) => zone.id === this.tool.zoneId) ?? null;
  }

  private readonly onClick = (event: L.LeafletMouseEvent): void => this.addPointAt(event.latlng);
  private readonly onMove = (event: L.LeafletMouseEvent): void => this.pointAt(event.latlng);

  pictureChanged(): void {
    const now = this.zoneNow();
    if (!now) {
      this.context.end();
      return;
    }
    if (now.parts === this.zone?.parts && now.curves === this.zone?.curves) return;
    this.zone = now;
    this.parts = collapseParts(now);
    this.reset();
  }

  private reset(): void {
    this.start = null;
    this.span = null;
    this.target = null;
    this.show();
    this.tell(false);
  }

  pointAt(at: L.LatLng): void {
    this.pointer = at;
    this.showHover();
    this.showPreview();
  }

  addPointAt(at: L.LatLng): void {
    this.pointer = at;
    const { task } = this.tool;
    if (task === 'arc' && this.span) {
      this.bend(toPosition(at));
      return;
    }
    if (task === 'align' && this.span) {
      this.pickTarget(at);
      return;
    }
    const hit = hitOutline(this.context.map, this.parts, at, task !== 'align');
    if (!hit) {
      this.say('no-side-there', 'Point at a side or a corner of the chosen zone.');
      return;
    }
    this.take(hit);
  }

  private take(hit: Hit): void {
    if (hit.on === 'side') {
      this.start = null;
      this.settleSpan(spanOfSide(this.parts, hit.path));
    } else if (!this.start) {
      this.start = hit.path;
      this.span = null;
      this.show();
      this.tell(false);
    } else {
      const span = spanBetween(this.parts, this.start, hit.path);
      if (!span) {
        this.say('two-outlines', 'Both corners must be on the same outline.');
        return;
      }
      this.start = null;
      this.settleSpan(span);
    }
  }

  private settleSpan(span: NodeSpan): void {
    const { task } = this.tool;
    const ring = this.parts[span.part]?.[span.ring];
    if (!ring) return;
    if (task === 'smooth') this.smooth(span);
    else if (task === 'straighten') this.straighten(span);
    else if (task === 'arc' && span.from === span.to) {
      this.say('arc-whole-ring', 'An arc needs a corner where it begins and another where it ends.');
      this.show();
    } else {
      this.span = span;
      this.show();
      this.tell(false);
    }
  }

  private ringOf(span: NodeSpan) {
    return this.parts[span.part]?.[span.ring] ?? { nodes: [], bends: [] };
  }

  private replaced(span: NodeSpan, bend: Bend | null): NodeParts {
    return withRing(this.parts, span, (ring) => replaceSpan(ring, span, bend));
  }

  private arcThrough(span: NodeSpan, through: Position): Bend | null {
    const line = pointsOfSpan(this.ringOf(span), span);
    const [a, b] = [line[0], line.at(-1)];
    return a && b ? bendBetween(a, [through], b, 'arc') : null;
  }

  private bend(through: Position): void {
    const { span } = this;
    if (!span) return;
    const bend = this.arcThrough(span, through);
    if (!bend || bend.flat.length === 0) {
      this.say('arc-flat', 'That place lies on the straight line between the two corners. Point beside it.');
      return;
    }
    this.commit(this.replaced(span, bend), 'Bend side');
  }

  private smooth(span: NodeSpan): void {
    const points = pointsOfSpan(this.ringOf(span), span);
    const isWhole = span.from === span.to;
    if (points.length < (isWhole ? 4 : 3)) {
      this.say(
        'smooth-too-few',
        'A smooth stretch needs a corner between its ends. Pick corners further apart.',
      );
      this.show();
      return;
    }
    const [a, b] = [points[0], points.at(-1)];
    if (!a || !b) return;
    this.commit(this.replaced(span, bendBetween(a, points.slice(1, -1), b, 'smooth')), 'Smooth corners');
  }

  private straighten(span: NodeSpan): void {
    const ring = this.ringOf(span);
    const line = pointsOfSpan(ring, span);
    const next = span.from === span.to ? null : this.replaced(span, null);
    if (line.length < 3 || !next) {
      this.say(
        'already-straight',
        next ? 'This side is straight already. Pick a curve, or two corners.' : 'Pick two different corners.',
      );
      this.show();
      return;
    }
    this.commit(next, 'Straighten');
  }

  private commit(next: NodeParts, label: string): void {
    const { zone } = this;
    if (!zone) return;
    const rings = next.flat().map(ringOfNodes);
    const crossing = rings.flatMap((ring) => findCrossings(ring))[0];
    this.clearCrossing();
    const isTooSmall = rings.some((ring) => new Set(ring.map(String)).size < 3);
    if (crossing || isTooSmall) {
      if (crossing) this.clearCrossing = showCrossing(this.context.map, crossing);
      const message = crossing
        ? 'Sides would cross there, so the outline stays. The crossing is marked.'
        : 'Too little of the outline would be left.';
      this.say(crossing ? 'sides-cross' : 'too-few-corners', message, crossing);
      this.reset();
      return;
    }
    const carrier = createCarrier(this.context.picture()?.yard.zones ?? [], zone.id, this.context.plane());
    const { outlines, issues } = carrier.settle(next);
    this.span = null;
    this.start = null;
    this.context.events.reshaped([{ zoneId: zone.id, ...expandParts(next) }, ...outlines], label);
    for (const issue of issues.slice(0, 1)) this.context.events.message(issue);
    this.pictureChanged();
    this.show();
  }

  private pickTarget(at: L.LatLng): void {
    const target = this.edgeAt(at);
    if (!target) {
      this.say('no-edge-there', 'Point at an edge of another zone, or use “To north”.');
      return;
    }
    this.target = target;
    this.show();
    this.tell(false);
  }

  /** The edge of another zone, or of the property, under the pointer. */
  private edgeAt(at: L.LatLng): EdgePick['target'] {
    const { map } = this.context;
    const zones = this.context.picture()?.yard.zones ?? [];
    for (const zone of zones) {
      if (zone.id === this.tool.zoneId) continue;
      const parts = zone.parts.map((rings) =>
        rings.map((ring) => ({ nodes: ring.slice(0, -1), bends: ring.slice(0, -1).map(() => null) })),
      );
      const hit = hitOutline(map, parts, at, false);
      const ring = hit && parts[hit.path.part]?.[hit.path.ring];
      const [a, b] =
        hit && ring ? [ring.nodes[hit.path.node], ring.nodes[(hit.path.node + 1) % ring.nodes.length]] : [];
      if (a && b) return { zoneId: zone.id, edge: [a, b] };
    }
    return null;
  }

  private say(code: string, message: string, position?: Position): void {
    this.context.events.message(tellIssue(code, message, position));
  }

  /** The pick so far, for the bar; picked points are counted there. */
  private tell(isFinished: boolean): void {
    const { span, start, target } = this;
    const stretch = span ? lineOfSpan(this.ringOf(span), span) : [];
    const points =
      stretch.length > 0
        ? stretch.slice(0, 1)
        : start
          ? [this.ringOf({ ...start, from: 0, to: 0 }).nodes[start.node] as Position]
          : [];
    const edgePick = span ? { stretch, target, isFinished } : null;
    this.context.events.live({ ...NO_FIGURES, points, edgePick });
  }

  private show(): void {
    const { span, start, target, zone } = this;
    this.outline.setLatLngs(zone ? toLatLngs(zone.parts) : []);
    this.chosen.setLatLngs(span ? lineOfSpan(this.ringOf(span), span).map(toLatLng) : []);
    this.aim.setLatLngs(target ? target.edge.map(toLatLng) : []);
    this.dots.clearLayers();
    for (const [p, rings] of this.parts.entries()) {
      for (const [r, ring] of rings.entries()) {
        for (const [i, node] of ring.nodes.entries()) {
          const isStart = start?.part === p && start.ring === r && start.node === i;
          L.circleMarker(toLatLng(node), {
            pane: 'yard-drawing',
            interactive: false,
            radius: isStart ? 8 : 5,
            weight: 2.5,
            fillOpacity: 1,
            className: isStart ? 'yard-draw-dot is-first' : 'yard-draw-dot',
          }).addTo(this.dots);
        }
      }
    }
    this.showHover();
    this.showPreview();
  }

  private showHover(): void {
    const { map } = this.context;
    const { task } = this.tool;
    if (!this.pointer || (task === 'arc' && this.span)) {
      this.hover.setLatLngs([]);
      return;
    }
    if (task === 'align' && this.span) {
      this.hover.setLatLngs(this.edgeAt(this.pointer)?.edge.map(toLatLng) ?? []);
      return;
    }
    const hit = hitOutline(map, this.parts, this.pointer, task !== 'align');
    const span = !hit
      ? null
      : hit.on === 'side'
        ? spanOfSide(this.parts, hit.path)
        : this.start && spanBetween(this.parts, this.start, hit.path);
    this.hover.setLatLngs(
      span
        ? lineOfSpan(this.ringOf(span), span).map(toLatLng)
        : hit?.on === 'node'
          ? [toLatLng(hit.at), toLatLng(hit.at)]
          : [],
    );
  }

  /** The arc as it would be. */
  private showPreview(): void {
    const { span, pointer } = this;
    if (this.tool.task !== 'arc' || !span || !pointer) {
      this.preview.setLatLngs([]);
      return;
    }
    const line = pointsOfSpan(this.ringOf(span), span);
    const bend = this.arcThrough(span, toPosition(pointer));
    const ends = [line[0], line.at(-1)].filter((p): p is Position => p !== undefined);
    const [a, b] = ends;
    this.preview.setLatLngs(a && b ? [a, ...(bend?.flat ?? []), b].map(toLatLng) : []);
  }

  finish(): void {
    const { task } = this.tool;
    if ((task === 'offset' || (task === 'align' && this.target)) && this.span) this.tell(true);
    else if (task === 'arc' && this.span && this.pointer) this.bend(toPosition(this.pointer));
    else this.say('nothing-picked', 'Pick a side, or the first and last corner of a stretch, first.');
  }

  backOnePoint(): boolean {
    if (this.target) this.target = null;
    else if (this.span) this.span = null;
    else if (this.start) this.start = null;
    else return false;
    this.show();
    this.tell(false);
    return true;
  }

  /** Typed height of an arc above its chord, to the side where the pointer is, else outward. */
  addSide(heightM: number): void {
    const { span } = this;
    if (this.tool.task !== 'arc' || !span) {
      this.say('nothing-picked', 'Pick the side to bend first.');
      return;
    }
    const line = pointsOfSpan(this.ringOf(span), span);
    const plane = this.context.plane();
    const [a, b] = [line[0], line.at(-1)].map((p) => (p ? plane.toPlane(p) : ([0, 0] as const)));
    if (!a || !b || heightM < LEAST_BOW_M) return;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const length = Math.hypot(dx, dy) || 1;
    const at = this.pointer && plane.toPlane(toPosition(this.pointer));
    const side = at ? Math.sign(dx * (at[1] - a[1]) - dy * (at[0] - a[0])) || 1 : 1;
    const through = plane.toLonLat([
      (a[0] + b[0]) / 2 - (dy / length) * heightM * side,
      (a[1] + b[1]) / 2 + (dx / length) * heightM * side,
    ]);
    this.bend(toPosition(toLatLng(through)));
  }

  stop(): void {
    const { map } = this.context;
    map.off('click', this.onClick).off('mousemove', this.onMove);
    map.doubleClickZoom.enable();
    for (const layer of [this.outline, this.hover, this.chosen, this.aim, this.preview, this.dots])
      layer.remove();
    this.clearCrossing();
    this.context.events.live(null);
  }
}
