import type L from 'leaflet';
import { lineOfSide, type NodeParts, type NodePath } from '../../measure/outlineNodes';
import type { Position } from '../../yard/types';
import { toLatLng } from '../coords';

/** A corner of the outline, or a side of it, under the pointer. */
export type Hit =
  | { readonly on: 'node'; readonly path: NodePath; readonly at: Position }
  | { readonly on: 'side'; readonly path: NodePath };

/** Corners count within this of the pointer, sides within the next, px. */
const NODE_PX = 16;
const SIDE_PX = 20;

function distancePx(map: L.Map, at: L.Point, a: Position, b: Position): number {
  const [p, q] = [map.latLngToLayerPoint(toLatLng(a)), map.latLngToLayerPoint(toLatLng(b))];
  const d = q.subtract(p);
  const squared = d.x * d.x + d.y * d.y;
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - p.x) * d.x + (at.y - p.y) * d.y) / squared));
  return Math.hypot(at.x - p.x - t * d.x, at.y - p.y - t * d.y);
}

/** The corner within reach, else the nearest side. @param nodes false: sides only */
export function hitOutline(map: L.Map, parts: NodeParts, latLng: L.LatLng, nodes = true): Hit | null {
  const at = map.latLngToLayerPoint(latLng);
  let best: { hit: Hit; px: number } | null = null;
  for (const [part, rings] of parts.entries()) {
    for (const [r, ring] of rings.entries()) {
      for (const [node, place] of ring.nodes.entries()) {
        const path = { part, ring: r, node };
        const px = map.latLngToLayerPoint(toLatLng(place)).distanceTo(at);
        if (nodes && px <= NODE_PX && (!best || best.hit.on === 'side' || px < best.px))
          best = { hit: { on: 'node', path, at: place }, px };
        if (best?.hit.on === 'node') continue;
        const line = lineOfSide(ring, node);
        for (let i = 1; i < line.length; i++) {
          const away = distancePx(map, at, line[i - 1] ?? place, line[i] ?? place);
          if (away <= SIDE_PX && (!best || away < best.px)) best = { hit: { on: 'side', path }, px: away };
        }
      }
    }
  }
  return best?.hit ?? null;
}
