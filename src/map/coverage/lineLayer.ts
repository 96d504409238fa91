import L from 'leaflet';
import type { Leg } from '../../cover/passTypes';
import { arrowSigns } from '../../cover/walkSigns';
import { WALK_LINES, type WalkLineId, walkLineOf } from '../../draft/walkLines';
import type { XY } from '../../measure/types';
import type { WalkGround } from './ground';

/** Nearest that two arrows may come, and their half size, px. */
const ARROWS_APART_PX = 38;
const ARROW_PX = 4.5;
/** Passes nearer to each other than this have no casing; nearer still, they are drawn finer and lose their turns, px. */
const TIGHT_PX = 13;
const CLOSE_PX = 6;

/** Ink lines of a walk by kind of leg, with arrows that thin out with the scale. One path for all legs of a kind. */
export class LineLayer {
  private readonly group: L.LayerGroup;
  private readonly arrows: L.LayerGroup;
  private legs: readonly Leg[] = [];
  private toLatLng: (at: XY) => L.LatLng = () => L.latLng(0, 0);
  private look: { ground: WalkGround; swathM: number; isFaint: boolean } | null = null;

  constructor(
    map: L.Map,
    private readonly pane: string,
  ) {
    this.group = L.layerGroup().addTo(map);
    this.arrows = L.layerGroup().addTo(map);
  }

  /** @param isFaint a walker is under way: what is not walked yet steps back */
  show(
    legs: readonly Leg[],
    toLatLng: (at: XY) => L.LatLng,
    look: { ground: WalkGround; swathM: number; isFaint: boolean } | null,
    metresPerPx: number,
  ): void {
    this.legs = legs;
    this.toLatLng = toLatLng;
    this.look = look;
    this.drawScaled(metresPerPx);
  }

  /** Draws for a scale. */
  drawScaled(metresPerPx: number): void {
    this.group.clearLayers();
    this.arrows.clearLayers();
    const { look } = this;
    if (!look) return;
    const { ground, swathM, isFaint } = look;
    const isClose = swathM / metresPerPx < CLOSE_PX;
    const byLine = new Map<WalkLineId, L.LatLng[][]>();
    for (const leg of this.legs) {
      const id = walkLineOf(leg);
      if (isClose && id === 'turn') continue;
      const lines = byLine.get(id) ?? [];
      lines.push(leg.line.map(this.toLatLng));
      byLine.set(id, lines);
    }
    const common = { pane: this.pane, interactive: false, smoothFactor: 0.5 } as const;
    if (swathM / metresPerPx >= TIGHT_PX)
      L.polyline([...byLine.values()].flat(), {
        ...common,
        color: ground.casing,
        opacity: ground.casingOpacity,
        weight: 1.3 + ground.casingPx,
        className: 'yard-walk-casing',
      }).addTo(this.group);
    for (const [id, lines] of byLine) {
      const { width, dash } = WALK_LINES[id];
      L.polyline(lines, {
        ...common,
        color: ground.ink,
        weight: isClose ? width * 0.6 : width,
        opacity: isFaint ? 0.6 : 0.95,
        dashArray: dash.join(' '),
        lineCap: id === 'carry' ? 'round' : 'butt',
        className: `yard-walk-line is-${id}`,
      }).addTo(this.group);
    }
    this.drawArrows(metresPerPx, ground, isFaint);
  }

  private drawArrows(metresPerPx: number, ground: WalkGround, isFaint: boolean): void {
    const half = ARROW_PX * metresPerPx;
    const heads = arrowSigns(this.legs, ARROWS_APART_PX * metresPerPx).map(({ at: [x, y], way: [u, v] }) => {
      const wing = (side: 1 | -1): XY => [x - half * (u + 0.7 * side * v), y - half * (v - 0.7 * side * u)];
      return [wing(1), [x + half * u, y + half * v] as XY, wing(-1)].map(this.toLatLng);
    });
    if (heads.length === 0) return;
    const common = { pane: this.pane, interactive: false, smoothFactor: 0, fill: false } as const;
    L.polyline(heads, { ...common, color: ground.casing, opacity: ground.casingOpacity, weight: 4.2 }).addTo(
      this.arrows,
    );
    L.polyline(heads, {
      ...common,
      color: ground.ink,
      opacity: isFaint ? 0.6 : 1,
      weight: 1.8,
      lineJoin: 'miter',
      className: 'yard-walk-arrows',
    }).addTo(this.arrows);
  }
}
