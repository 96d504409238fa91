import L from 'leaflet';
import { destination } from '../../measure/geodesic';
import type { NodeParts } from '../../measure/outlineNodes';
import type { LocalPlane } from '../../measure/types';
import type { Position } from '../../yard/types';
import { toLatLng, toPosition } from '../coords';
import { boxOfParts, rotateParts, shiftParts } from './corners';
import { createHandle } from './handles';

const NUDGE_M = 0.1;
const FAR_NUDGE_M = 1;
const NUDGE_TURN_DEG = 1;
const FAR_NUDGE_TURN_DEG = 10;
const TURN_HANDLE_PX = 48;

/** Length of one press of an arrow key, m. */
export function nudgeM(isFar: boolean): number {
  return isFar ? FAR_NUDGE_M : NUDGE_M;
}

/** What moving the whole asks of the reshaping it belongs to. */
export interface WholeHost {
  readonly map: L.Map;
  parts(): NodeParts;
  plane(): LocalPlane | null;
  /** shows changed parts; nothing is settled yet. */
  change(parts: NodeParts): void;
  commit(label: string): void;
}

function centreOf(parts: NodeParts): Position {
  const [west, south, east, north] = boxOfParts(parts);
  return [(west + east) / 2, (south + north) / 2];
}

/** Moving and turning a whole zone: two handles, and its ground by mouse or pen. */
export class WholeShape {
  private moveHandle: L.Marker | null = null;
  private turnHandle: L.Marker | null = null;
  private bodyDrag: { from: Position; parts: NodeParts } | null = null;

  constructor(private readonly host: WholeHost) {}

  private topSpot(): L.LatLng {
    const [west, , east, north] = boxOfParts(this.host.parts());
    const top = this.host.map.latLngToLayerPoint([north, (west + east) / 2]);
    return this.host.map.layerPointToLatLng(top.subtract([0, TURN_HANDLE_PX]));
  }

  /** Handles to where the shape is now. */
  place(): void {
    this.moveHandle?.setLatLng(toLatLng(centreOf(this.host.parts())));
    this.turnHandle?.setLatLng(this.topSpot());
  }

  addTo(layers: L.LayerGroup): void {
    const plane = this.host.plane();
    if (!plane) return;
    let before = this.host.parts();
    let centre = centreOf(before);
    let turnedDeg = 0;
    const grab = () => {
      before = this.host.parts();
      centre = centreOf(before);
    };
    const shiftTo = (at: Position) => this.host.change(shiftParts(before, plane, centre, at));
    const turn = (deg: number) => this.host.change(rotateParts(before, plane, centre, deg));
    const bearingTo = (latLng: L.LatLng) => {
      const [x, y] = plane.toPlane(toPosition(latLng));
      const [cx, cy] = plane.toPlane(centre);
      return (Math.atan2(x - cx, y - cy) * 180) / Math.PI;
    };
    this.moveHandle = createHandle('move', centre, 'Move the whole zone', {
      grab,
      drag: (latLng) => shiftTo(toPosition(latLng)),
      drop: () => this.host.commit('Move zone'),
      nudge: (bearing, isFar) => {
        grab();
        shiftTo(destination(centre, bearing, nudgeM(isFar)));
        this.place();
      },
      rest: () => this.host.commit('Move zone'),
    });
    this.turnHandle = createHandle('turn', toPosition(this.topSpot()), 'Turn the whole zone', {
      grab,
      drag: (latLng) => turn(bearingTo(latLng)),
      drop: () => this.host.commit('Turn zone'),
      nudge: (bearing, isFar) => {
        if (turnedDeg === 0) grab();
        const isClockwise = bearing === 90 || bearing === 0;
        turnedDeg += (isClockwise ? 1 : -1) * (isFar ? FAR_NUDGE_TURN_DEG : NUDGE_TURN_DEG);
        turn(turnedDeg);
      },
      rest: () => {
        turnedDeg = 0;
        this.host.commit('Turn zone');
      },
    });
    this.moveHandle.addTo(layers);
    this.turnHandle.addTo(layers);
  }

  /** A mouse or pen went down on the zone's ground. Fingers pan the map there and use the move handle. */
  readonly grabBody = (event: L.LeafletMouseEvent): void => {
    if (event.originalEvent.button !== 0) return;
    L.DomEvent.stop(event.originalEvent);
    this.host.map.getContainer().focus({ preventScroll: true });
    this.bodyDrag = { from: toPosition(event.latlng), parts: this.host.parts() };
    this.host.map.dragging.disable();
    this.host.map.on('mousemove', this.onBodyMove);
    window.addEventListener('mouseup', this.onBodyUp, { once: true });
  };

  private readonly onBodyMove = (event: L.LeafletMouseEvent): void => {
    const plane = this.host.plane();
    if (!this.bodyDrag || !plane) return;
    this.host.change(shiftParts(this.bodyDrag.parts, plane, this.bodyDrag.from, toPosition(event.latlng)));
    this.place();
  };

  private readonly onBodyUp = (): void => {
    this.letGo();
    this.host.commit('Move zone');
  };

  /** Ends a drag of the ground, if there is one, without settling it. */
  letGo(): void {
    this.bodyDrag = null;
    this.host.map.dragging.enable();
    this.host.map.off('mousemove', this.onBodyMove);
    window.removeEventListener('mouseup', this.onBodyUp);
  }
}
