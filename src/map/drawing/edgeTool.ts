import type L from 'leaflet';
import { findCrossings } from '../../measure/crossings';
import {
  collapseParts,
  expandParts,
  type NodeParts,
  type NodePath,
  ringOfNodes,
} from '../../measure/outlineNodes';
import { createCarrier } from '../../measure/sharedEdges';
import type { Position, Zone } from '../../yard/types';
import { toLatLng, toPosition } from '../coords';
import type { EdgePick, Tool } from '../types';
import { showCrossing } from './crossingMark';
import { EdgeView } from './edgeView';
import { type Hit, hitOutline } from './hitOutline';
import { lineOfSpan, type NodeSpan, spanBetween, spanOfSide } from './nodeSpans';
import { type DrawContext, type DrawSession, tellIssue } from './session';
import {
  arcOver,
  bendSpan,
  type EdgeEdit,
  endsOfSpan,
  placeAbove,
  smoothSpan,
  straightenSpan,
} from './spanEdits';

type EdgeTool = Extract<Tool, { type: 'edge' }>;

const NO_FIGURES = {
  points: [],
  sideM: null,
  bearingDeg: null,
  areaM2: null,
  perimeterM: null,
  crossing: null,
};
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
  private readonly view: EdgeView;

  constructor(
    private readonly context: DrawContext,
    private readonly tool: EdgeTool,
  ) {
    const { map } = context;
    this.zone = this.zoneNow();
    this.parts = this.zone ? collapseParts(this.zone) : [];
    this.view = new EdgeView(map);
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
    this.view.showHover(this.lineUnderPointer());
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
    if (task === 'smooth') this.settleEdit(smoothSpan(this.parts, span), 'Smooth corners');
    else if (task === 'straighten') this.settleEdit(straightenSpan(this.parts, span), 'Straighten');
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

  /** Takes the outline that an edit gives, or tells why there is none. */
  private settleEdit(made: EdgeEdit, label: string): void {
    if (made.ok) this.commit(made.parts, label);
    else {
      this.say(made.code, made.message);
      this.show();
    }
  }

  private bend(through: Position): void {
    if (this.span) this.settleEdit(bendSpan(this.parts, this.span, through), 'Bend side');
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
    const { span, target, zone } = this;
    const stretch = span ? lineOfSpan(this.ringOf(span), span) : [];
    this.view.show(zone?.parts ?? [], this.parts, this.start, stretch, target?.edge ?? []);
    this.view.showHover(this.lineUnderPointer());
    this.showPreview();
  }

  /** What a click would take. */
  private lineUnderPointer(): readonly Position[] {
    const { pointer, span, start } = this;
    const { task } = this.tool;
    if (!pointer || (task === 'arc' && span)) return [];
    if (task === 'align' && span) return this.edgeAt(pointer)?.edge ?? [];
    const hit = hitOutline(this.context.map, this.parts, pointer, task !== 'align');
    if (!hit) return [];
    const reached =
      hit.on === 'side'
        ? spanOfSide(this.parts, hit.path)
        : start && spanBetween(this.parts, start, hit.path);
    if (reached) return lineOfSpan(this.ringOf(reached), reached);
    return hit.on === 'node' ? [hit.at, hit.at] : [];
  }

  /** The arc as it would be. */
  private showPreview(): void {
    const { span, pointer } = this;
    if (this.tool.task !== 'arc' || !span || !pointer) {
      this.view.showPreview([]);
      return;
    }
    const [a, b] = endsOfSpan(this.parts, span);
    const flat = arcOver(this.parts, span, toPosition(pointer))?.flat ?? [];
    this.view.showPreview([a, ...flat, b]);
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
    const toward = this.pointer && toPosition(this.pointer);
    const through = placeAbove(endsOfSpan(this.parts, span), heightM, toward, this.context.plane());
    this.bend(toPosition(toLatLng(through)));
  }

  stop(): void {
    const { map } = this.context;
    map.off('click', this.onClick).off('mousemove', this.onMove);
    map.doubleClickZoom.enable();
    this.view.remove();
    this.clearCrossing();
    this.context.events.live(null);
  }
}
