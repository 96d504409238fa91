import L from 'leaflet';
import { partOfLine, pointAlong } from '../../cover/marks/alongLine';
import type { Leg } from '../../cover/passTypes';
import { WALK_SYMBOLS } from '../../draft/walkLines';
import type { XY } from '../../measure/types';
import type { WalkGround } from './ground';
import { legAt } from './legAt';
import { drawnSymbol } from './symbols';

/** Weight of what is done, px. */
const DONE_PX = 3;

/**
 * The one who walks, and what is done so far. Made for a call at every frame: a frame within a leg moves one
 * symbol and redraws two short lines; what is done whole is drawn again only when a leg is over.
 */
export class WalkerLayer {
  private readonly group: L.LayerGroup;
  private readonly casing: L.Polyline;
  private readonly done: L.Polyline;
  private readonly now: L.Polyline;
  private readonly bar: L.Polyline;
  private readonly marker: L.Marker;
  private readonly symbol: SVGElement;
  private legs: readonly Leg[] = [];
  private starts: readonly number[] = [];
  private lines: readonly L.LatLng[][] = [];
  private toLatLng: (at: XY) => L.LatLng = () => L.latLng(0, 0);
  private halfM = 0;
  /** legs done whole; -1: nothing drawn. */
  private count = -1;

  constructor(
    private readonly map: L.Map,
    donePane: string,
    pane: string,
  ) {
    const common = { pane: donePane, interactive: false, smoothFactor: 0.5, lineCap: 'butt' } as const;
    this.casing = L.polyline([], { ...common, weight: DONE_PX + 2 });
    this.done = L.polyline([], { ...common, weight: DONE_PX, className: 'yard-walk-done' });
    this.now = L.polyline([], { ...common, weight: DONE_PX, className: 'yard-walk-now' });
    this.bar = L.polyline([], { ...common, pane, weight: 4, className: 'yard-walk-bar' });
    this.symbol = drawnSymbol(WALK_SYMBOLS.walker, 36);
    const box = document.createElement('div');
    box.className = 'yard-walker';
    box.append(this.symbol);
    const icon = L.divIcon({ html: box, className: 'yard-icon', iconSize: [0, 0] });
    this.marker = L.marker([0, 0], { icon, pane, interactive: false, keyboard: false, zIndexOffset: 2000 });
    this.group = L.layerGroup([this.casing, this.done, this.now, this.bar, this.marker]);
  }

  /** Takes another walk. */
  setWalk(
    legs: readonly Leg[],
    swathM: number,
    toLatLng: (at: XY) => L.LatLng,
    { ink, casing, casingOpacity }: WalkGround,
  ): void {
    this.legs = legs;
    this.toLatLng = toLatLng;
    this.halfM = swathM / 2;
    this.lines = legs.map((leg) => leg.line.map(toLatLng));
    const starts = [0];
    for (const { lengthM } of legs) starts.push((starts.at(-1) as number) + lengthM);
    this.starts = starts;
    this.count = -1;
    this.casing.setStyle({ color: casing, opacity: casingOpacity });
    for (const line of [this.done, this.now, this.bar]) line.setStyle({ color: ink });
  }

  /** @param walkedM m along all legs; null: no walker */
  show(walkedM: number | null): void {
    const { legs, starts } = this;
    const isShown = walkedM !== null && legs.length > 0;
    if (!isShown) {
      this.group.remove();
      this.count = -1;
      return;
    }
    const index = legAt(starts, walkedM);
    const leg = legs[index] as Leg;
    if (index !== this.count) {
      this.count = index;
      const done = this.lines.slice(0, index).filter((_, i) => legs[i]?.kind !== 'carry');
      this.casing.setLatLngs(done);
      this.done.setLatLngs(done);
    }
    const share = leg.lengthM > 0 ? Math.min(1, (walkedM - (starts[index] ?? 0)) / leg.lengthM) : 1;
    const { at, headingDeg } = pointAlong(leg.line, share);
    this.now.setLatLngs(leg.kind === 'carry' ? [] : partOfLine(leg.line, 0, share).map(this.toLatLng));
    const turn = (headingDeg * Math.PI) / 180;
    const [dx, dy] = [Math.cos(turn) * this.halfM, -Math.sin(turn) * this.halfM];
    const isShut = leg.kind === 'carry' || leg.kind === 'turn';
    const ends: XY[] = [
      [at[0] - dx, at[1] - dy],
      [at[0] + dx, at[1] + dy],
    ];
    this.bar.setLatLngs(isShut ? [] : ends.map(this.toLatLng));
    this.marker.setLatLng(this.toLatLng(at));
    this.symbol.style.setProperty('transform', `rotate(${headingDeg.toFixed(1)}deg)`);
    if (!this.map.hasLayer(this.group)) this.group.addTo(this.map);
  }
}
