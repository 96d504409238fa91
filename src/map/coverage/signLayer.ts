import L from 'leaflet';
import type { DoseCoverage } from '../../cover/passTypes';
import { type MarkSign, markSigns, walkEnds, type ZoneSign, zoneSigns } from '../../cover/walkSigns';
import {
  type Box,
  freePlace,
  type PlacedTag,
  placeTags,
  type Spot,
  type WantedTag,
} from '../../draft/placeTags';
import { WALK_LINES, WALK_SYMBOLS } from '../../draft/walkLines';
import type { XY } from '../../measure/types';
import { formatLength } from '../../units/format';
import { markSign } from '../../words/markWords';
import type { UnitSystem } from '../../yard/types';
import { textIcon, toLatLng } from '../coords';
import type { CoveragePicture } from '../types';
import type { WalkGround } from './ground';
import { drawnSymbol } from './symbols';

/** Least length of a mark's line, px. */
const TICK_PX = 16;
/** With less room between passes no quarters are marked, then halves alone, px. */
const CLOSE_PX = 6;
const ROOMY_PX = 14;
/** Passes nearer to each other than this are seen from afar: start and end are all that is told of them, px. */
const TINY_PX = 3.5;
const TAG_HEIGHT_PX = 18;
/** Mean width of a sign of a tag, and what its border takes, px. */
const SIGN_PX = 7;
const TAG_EDGE_PX = 11;
const END_PX = 26;
const NUMBER_PX = 24;
const STEM_PX = 12;

/** What is shown of a walk's signs. */
export interface SignLook {
  readonly dose: DoseCoverage;
  /** coats drawn. */
  readonly coats: readonly (1 | 2)[];
  readonly swathM: number;
  readonly hose: CoveragePicture['hose'];
  readonly hasPasses: boolean;
  readonly hasMarks: boolean;
  readonly units: UnitSystem;
  readonly ground: WalkGround;
  readonly toLatLng: (at: XY) => L.LatLng;
}

/** Levels that are marked, the first to be labelled first. @param apartPx distance of the passes, px */
function levelsAt(apartPx: number): readonly number[] {
  if (apartPx < CLOSE_PX) return [];
  return apartPx < ROOMY_PX ? [0.5] : [0.5, 0.25, 0.75];
}

/** Start and end, numbers of zones, run-out marks, circles of the hose: all that carries a text, clear of other texts. */
export class SignLayer {
  private readonly fixed: L.LayerGroup;
  private readonly scaled: L.LayerGroup;
  private readonly rest: L.LayerGroup;
  private look: SignLook | null = null;
  private zones: readonly ZoneSign[] = [];
  private marks: readonly MarkSign[] = [];
  private firm: readonly Box[] = [];

  constructor(
    private readonly map: L.Map,
    private readonly pane: string,
  ) {
    this.fixed = L.layerGroup().addTo(map);
    this.scaled = L.layerGroup().addTo(map);
    this.rest = L.layerGroup().addTo(map);
  }

  show(look: SignLook | null): void {
    this.look = look;
    for (const group of [this.fixed, this.scaled, this.rest]) group.clearLayers();
    this.firm = [];
    const isShown = ({ coat }: { coat: 1 | 2 }) => look?.coats.includes(coat) ?? false;
    this.zones = look?.hasPasses ? zoneSigns(look.dose).filter(isShown) : [];
    this.marks = look?.hasMarks ? markSigns(look.dose).filter(isShown) : [];
    if (look?.hasPasses) this.drawHose(look);
  }

  private drawHose({ hose, ground }: SignLook): void {
    for (const { at, lengthM } of hose) {
      if (!(lengthM > 0)) continue;
      const { width, dash } = WALK_LINES.hose;
      const common = { pane: this.pane, interactive: false, fill: false, radius: lengthM } as const;
      L.circle(toLatLng(at), {
        ...common,
        color: ground.casing,
        opacity: ground.casingOpacity,
        weight: width + ground.casingPx,
      }).addTo(this.fixed);
      L.circle(toLatLng(at), {
        ...common,
        color: ground.hose,
        weight: width,
        dashArray: dash.join(' '),
        className: 'yard-hose',
      }).addTo(this.fixed);
    }
  }

  /** Boxes that other labels keep clear of, px of the world at this zoom. */
  firmBoxes(): readonly Box[] {
    return this.firm;
  }

  /** Draws what must be seen for the present zoom: ends, numbers of zones, where vessels run out. @param taken symbols of the yard */
  placeFirm(taken: readonly Box[], metresPerPx: number): void {
    this.scaled.clearLayers();
    this.rest.clearLayers();
    this.firm = [];
    const { look } = this;
    if (!look) return;
    const used: Box[] = [...taken];
    const take = (box: Box) => {
      used.push(box);
      this.firm = [...this.firm, { x: box.x, y: box.y, width: box.width, height: box.height }];
    };
    const isTiny = look.swathM / metresPerPx < TINY_PX;
    if (!isTiny) this.drawTicks(look, metresPerPx);
    const half = this.tickHalfPx(look, metresPerPx);
    const ends = look.hasPasses ? walkEnds(look.dose.legs) : null;
    const wanted: WantedTag[] = this.marks
      .filter(({ mark }) => mark.left === 0 && !isTiny)
      .map((sign) => this.tagOf(sign, half, false));
    if (ends) {
      const size = {
        width: END_PX,
        height: END_PX,
        aside: { x: 1, y: 0 },
        reach: -END_PX / 2,
        isOptional: false,
      };
      wanted.unshift({ ...size, id: 'start', at: this.spot(ends.start) });
      wanted.push({ ...size, id: 'end', at: this.spot(ends.end) });
    }
    for (const { number, entry } of isTiny ? [] : this.zones)
      wanted.push({
        id: `zone ${number}`,
        at: this.spot(entry),
        aside: { x: 0, y: -1 },
        width: NUMBER_PX,
        height: NUMBER_PX,
        reach: -NUMBER_PX / 3,
        isOptional: false,
      });
    for (const tag of placeTags(wanted, used)) {
      take(tag);
      this.drawTag(tag, wanted, look);
    }
  }

  /** Draws what may be left out where there is no room: levels of quarters, the length of the hose. */
  placeRest(taken: readonly Box[], metresPerPx: number): void {
    this.rest.clearLayers();
    const { look } = this;
    if (!look) return;
    const half = this.tickHalfPx(look, metresPerPx);
    const wanted = levelsAt(look.swathM / metresPerPx).flatMap((level) =>
      this.marks.filter(({ mark }) => mark.left === level).map((sign) => this.tagOf(sign, half, true)),
    );
    const tags = placeTags(wanted, taken);
    for (const tag of tags) this.drawTag(tag, wanted, look, this.rest);
    const used = [...taken, ...tags];
    if (look.swathM / metresPerPx < TINY_PX) return;
    for (const { at, lengthM } of look.hasPasses ? look.hose : []) this.drawHoseTag(at, lengthM, used, look);
  }

  private drawHoseTag(
    at: SignLook['hose'][number]['at'],
    lengthM: number,
    used: Box[],
    look: SignLook,
  ): void {
    if (!(lengthM > 0)) return;
    const centre = this.map.project(toLatLng(at));
    const metres = this.metresPerPxAt(toLatLng(at));
    const text = `hose ${formatLength(lengthM, look.units)}`;
    const size = { width: text.length * SIGN_PX, height: TAG_HEIGHT_PX };
    const view = this.map.getPixelBounds();
    for (let i = 0; i < 24; i++) {
      const turn = (2 * Math.PI * i) / 24 - Math.PI / 4;
      const spot = centre.add(L.point(Math.cos(turn), Math.sin(turn)).multiplyBy(lengthM / metres));
      const box = { x: spot.x, y: spot.y, ...size };
      const isSeen = view.contains(L.bounds(spot.subtract([40, 20]), spot.add([40, 20])));
      if (!isSeen || !freePlace([spot], size, used)) continue;
      used.push(box);
      this.addText(spot, 'yard-hose-label', text, this.rest);
      return;
    }
  }

  private metresPerPxAt(at: L.LatLng): number {
    const px = this.map.latLngToContainerPoint(at);
    return this.map.distance(at, this.map.containerPointToLatLng(px.add([100, 0]))) / 100;
  }

  private tickHalfPx({ swathM }: SignLook, metresPerPx: number): number {
    return Math.max(TICK_PX, swathM / metresPerPx) / 2;
  }

  private spot(at: XY): Spot {
    return this.map.project(this.look ? this.look.toLatLng(at) : L.latLng(0, 0));
  }

  private tagOf({ mark, across }: MarkSign, halfPx: number, isOptional: boolean): WantedTag {
    return {
      id: `${mark.vessel} ${mark.left}`,
      at: this.spot(mark.at),
      // north is up the sheet, y runs down it
      aside: { x: across[0], y: -across[1] },
      width: markSign(mark).length * SIGN_PX + TAG_EDGE_PX,
      height: TAG_HEIGHT_PX,
      reach: halfPx,
      isOptional,
    };
  }

  /** Lines across the walk: fine for quarters, heavy with end bars where a vessel runs out. */
  private drawTicks(look: SignLook, metresPerPx: number): void {
    const halfM = this.tickHalfPx(look, metresPerPx) * metresPerPx;
    const levels = levelsAt(look.swathM / metresPerPx);
    const { ground } = look;
    const lineOf = ({ mark: { at }, across: [u, v] }: MarkSign, half: number) =>
      [-half, half].map((off) => look.toLatLng([at[0] + u * off, at[1] + v * off]));
    const quarters = this.marks.filter(({ mark }) => levels.includes(mark.left));
    const outs = this.marks.filter(({ mark }) => mark.left === 0);
    for (const [signs, weight, kind] of [
      [quarters, 2.4, 'level'],
      [outs, 5, 'out'],
    ] as const) {
      if (signs.length === 0) continue;
      const lines = signs.map((sign) => lineOf(sign, halfM));
      const common = { pane: this.pane, interactive: false, lineCap: 'butt', smoothFactor: 0 } as const;
      L.polyline(
        signs.map((sign) => lineOf(sign, halfM + 1.5 * metresPerPx)),
        { ...common, color: ground.casing, weight: weight + 3.5, opacity: 0.95 },
      ).addTo(this.scaled);
      L.polyline(lines, {
        ...common,
        color: ground.ink,
        weight,
        className: `yard-run-line is-${kind}`,
      }).addTo(this.scaled);
    }
  }

  private drawTag(tag: PlacedTag, wanted: readonly WantedTag[], look: SignLook, into = this.scaled): void {
    const want = wanted.find(({ id }) => id === tag.id);
    if (!want) return;
    const isAway = Math.hypot(tag.x - want.at.x, tag.y - want.at.y) > STEM_PX + tag.width / 2;
    if (tag.isFar && isAway) this.drawLeader(want.at, tag, look, into);
    if (tag.id === 'start' || tag.id === 'end') {
      const box = document.createElement('div');
      box.className = 'yard-walk-end';
      box.append(drawnSymbol(WALK_SYMBOLS[tag.id], END_PX));
      this.addIcon(tag, L.divIcon({ html: box, className: 'yard-icon', iconSize: [0, 0] }), into, 400);
      return;
    }
    if (tag.id.startsWith('zone ')) {
      this.addText(tag, 'yard-walk-number', tag.id.slice(5), into, 300);
      return;
    }
    const sign = this.marks.find(({ mark }) => `${mark.vessel} ${mark.left}` === tag.id);
    if (!sign) return;
    const isOut = sign.mark.left === 0;
    this.addText(tag, `yard-run-tag${isOut ? ' is-out' : ''}`, markSign(sign.mark), into, isOut ? 350 : 200);
  }

  private drawLeader(from: Spot, to: Spot, { ground }: SignLook, into: L.LayerGroup): void {
    const line = [from, to].map((spot) => this.map.unproject(L.point(spot.x, spot.y)));
    const common = { pane: this.pane, interactive: false, smoothFactor: 0 } as const;
    L.polyline(line, { ...common, color: ground.casing, weight: 3.5, opacity: 0.9 }).addTo(into);
    L.polyline(line, { ...common, color: ground.ink, weight: 1 }).addTo(into);
  }

  private addText(at: Spot, className: string, text: string, into: L.LayerGroup, zIndexOffset = 100): void {
    this.addIcon(at, textIcon(className, text), into, zIndexOffset);
  }

  private addIcon({ x, y }: Spot, icon: L.DivIcon, into: L.LayerGroup, zIndexOffset: number): void {
    L.marker(this.map.unproject(L.point(x, y)), {
      icon,
      interactive: false,
      keyboard: false,
      pane: 'yard-labels',
      zIndexOffset,
    }).addTo(into);
  }
}
