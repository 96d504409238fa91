import L from 'leaflet';
import { boxOf } from '../../measure/planeBox';
import { findSnap, type Guide, type SnapShape } from '../../measure/snapping';
import type { LocalPlane, XY } from '../../measure/types';
import type { Parcel, Position, Zone } from '../../yard/types';
import { textIcon, toLatLng, toPosition } from '../coords';
import { type DrawContext, SNAP_PX } from './session';

/** What a place can be held to beside the neighbours. */
export interface SnapWish {
  /** zones to hold to; those of the picture when not given. */
  readonly zones?: readonly Zone[];
  /** the zone in hand: no target. */
  readonly exceptId?: string;
  /** corners from which a side goes out to the place, with the corner before each. */
  readonly anchors?: readonly { readonly from: Position; readonly before: Position | null }[];
  /** what is drawn so far: its corners are targets, its sides give directions. */
  readonly own?: readonly Position[];
  /** corners that go along with the place. */
  readonly hidden?: readonly Position[];
}

const LABEL_STEP_PX = 20;
const LABEL_RISE_PX = 26;
/** About half the width of a label, px. */
const LABEL_HALF_PX = 90;

const shapes = new WeakMap<Zone | Parcel, { plane: LocalPlane; shape: SnapShape }>();

/** The outline of a zone, or of the property, as something to hold to; kept while both are the same objects. */
function shapeOf(outline: Zone | Parcel, plane: LocalPlane, name: string): SnapShape {
  const kept = shapes.get(outline);
  if (kept?.plane === plane && kept.shape.name === name) return kept.shape;
  const places = outline.parts.flat();
  const lines = places.map((ring) => ring.map((p) => plane.toPlane(p)));
  const shape = { name, lines, places, box: boxOf([lines]) };
  shapes.set(outline, { plane, shape });
  return shape;
}

/** Holds places to what is near, and draws the lines they are held to with their names. */
export class Snapper {
  private readonly lines: L.LayerGroup;
  private isShown = false;

  constructor(private readonly context: DrawContext) {
    this.lines = L.layerGroup().addTo(context.map);
  }

  /** Where a place of the map is held to; the place itself when snapping is off or nothing is near. */
  snap(at: L.LatLng, wish: SnapWish = {}): Position {
    const { hold, map } = this.context;
    this.clear();
    if (!hold.snapping || hold.isSuspended) return toPosition(at);
    const plane = this.context.plane();
    const pointer = plane.toPlane([at.lng, at.lat]);
    const aside = map.containerPointToLatLng(map.latLngToContainerPoint(at).add([SNAP_PX, 0]));
    const toXY = (p: Position): XY => plane.toPlane(p);
    const own = (wish.own ?? []).map(toXY);
    const snap = findSnap({
      pointer,
      reachM: Math.abs(plane.toPlane([aside.lng, aside.lat])[0] - pointer[0]),
      shapes: this.shapes(plane, wish, own),
      anchors: (wish.anchors ?? []).map(({ from, before }) => ({
        from: toXY(from),
        before: before && toXY(before),
      })),
      own,
      hidden: (wish.hidden ?? []).map(toXY),
    });
    if (!snap) return toPosition(at);
    const position = snap.position ?? toPosition(toLatLng(plane.toLonLat(snap.at)));
    this.show(snap.guides, plane);
    return position;
  }

  private shapes(plane: LocalPlane, wish: SnapWish, own: readonly XY[]): SnapShape[] {
    const yard = this.context.picture()?.yard;
    const zones = (wish.zones ?? yard?.zones ?? []).filter(
      (zone) => zone.isPlaced && zone.id !== wish.exceptId,
    );
    const found = zones.map((zone) => shapeOf(zone, plane, zone.name || 'the zone beside'));
    if (yard?.parcel) found.push(shapeOf(yard.parcel, plane, 'the property'));
    // its own corners are targets, its own sides are not
    if (own.length > 0)
      found.push({
        name: '',
        lines: own.map((p) => [p]),
        places: (wish.own ?? []).map((p) => [p]),
        box: boxOf([[own]]),
      });
    return found;
  }

  private show(guides: readonly Guide[], plane: LocalPlane): void {
    const { map } = this.context;
    for (const [i, guide] of guides.entries()) {
      const ends = [guide.from, guide.to].map((p) => toLatLng(plane.toLonLat(p))) as [L.LatLng, L.LatLng];
      this.isShown = true;
      L.polyline(ends, {
        pane: 'yard-drawing',
        interactive: false,
        className: 'yard-guide',
        weight: 1.5,
      }).addTo(this.lines);
      const spot = map.latLngToContainerPoint(ends[1]).subtract([0, LABEL_RISE_PX + i * LABEL_STEP_PX]);
      const room = map.getSize().x / 2;
      const half = Math.min(room, LABEL_HALF_PX);
      // kept within the view, whichever side the pointer is at
      spot.x = Math.min(2 * room - half, Math.max(half, spot.x));
      L.marker(map.containerPointToLatLng(spot), {
        icon: textIcon('yard-guide-label', guide.words),
        interactive: false,
        keyboard: false,
        pane: 'yard-notes',
      }).addTo(this.lines);
    }
  }

  /** Takes the lines off. */
  clear(): void {
    if (this.isShown) this.lines.clearLayers();
    this.isShown = false;
  }

  remove(): void {
    this.lines.remove();
  }
}
