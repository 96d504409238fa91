import L from 'leaflet';
import { ZONE_INKS } from '../draft/hatches';
import { type Box, boxesMeet } from '../draft/placeTags';
import type { MeasuredZone, XY } from '../measure/types';
import { formatAreaOfPm } from '../units/format';
import type { Zone } from '../yard/types';
import { textIcon, toLatLng, toLatLngs } from './coords';
import { type LabelSpot, labelSpot, placeLabel, wrapName } from './labels';
import { drawOrder, type PatternSheet } from './patterns';
import type { MapPicture } from './types';

interface Drawn {
  zone: Zone;
  measured: MeasuredZone | undefined;
  look: string;
  readonly casing: L.Polygon;
  readonly net: L.Polygon;
  readonly gross: L.Polygon;
  spot: LabelSpot | null;
  label: L.Marker | null;
  labelText: string;
  /** where its label was put last, for what it shows still; undefined: to be placed. */
  placed: Placed | null | undefined;
}

const LINE_PX = 15;
/** The halo round a label, px. */
const HALO_PX = 4;
/** Side of a mark's symbol with a little air, px. */
const MARK_PX = 34;

interface Placed {
  readonly lines: readonly string[];
  readonly isUpright: boolean;
  readonly at: XY;
}

/** Zones by hatch, outline and label. Kept between pictures; only what changed is drawn again. */
export class ZoneLayers {
  private readonly drawn = new Map<string, Drawn>();
  private order = '';
  private picture: MapPicture | null = null;
  private readonly pen = document.createElement('canvas').getContext('2d');
  private readonly widths = new Map<string, number>();
  private boxesPx: readonly Box[] = [];
  private boxCount = 0;
  /** scale, units, marks and choice for which the labels were placed. */
  private placedFor: readonly unknown[] = [];

  constructor(
    private readonly map: L.Map,
    private readonly patterns: PatternSheet,
    private readonly onPick: (zoneId: string, event: L.LeafletMouseEvent) => void,
  ) {}

  show(picture: MapPicture): void {
    this.picture = picture;
    const present = new Set(picture.yard.zones.map((zone) => zone.id));
    for (const [id, old] of this.drawn) {
      if (present.has(id)) continue;
      this.drop(old);
      this.drawn.delete(id);
    }
    for (const zone of picture.yard.zones) this.showZone(zone, picture);
    this.restack(picture);
  }

  private drop(old: Drawn): void {
    for (const layer of [old.casing, old.net, old.gross, old.label]) layer?.remove();
  }

  private showZone(zone: Zone, picture: MapPicture): void {
    const measured = picture.measured.zones.get(zone.id);
    let drawn = this.drawn.get(zone.id);
    if (!drawn) {
      const common = { pane: 'yard-zones', smoothFactor: 0 };
      const net = L.polygon([], { ...common, className: 'yard-zone' });
      const gross = L.polygon([], { ...common, fill: false, className: 'yard-gross' });
      const casing = L.polygon([], { ...common, fill: false, interactive: false });
      for (const layer of [net, gross]) layer.on('click', (event) => this.onPick(zone.id, event));
      drawn = {
        zone,
        measured,
        look: '',
        casing,
        net,
        gross,
        spot: null,
        label: null,
        labelText: '',
        placed: undefined,
      };
      this.drawn.set(zone.id, drawn);
      this.order = '';
    }
    const isNew = drawn.look === '';
    if (isNew || drawn.zone.parts !== zone.parts || drawn.measured?.netParts !== measured?.netParts) {
      const net = measured ? measured.netParts : zone.parts;
      const isCut = !measured || measured.cutBy.length > 0;
      drawn.net.setLatLngs(toLatLngs(net));
      drawn.casing.setLatLngs(toLatLngs(net));
      drawn.gross.setLatLngs(isCut ? toLatLngs(zone.parts) : []);
      drawn.spot = measured ? labelSpot(measured.netPlaneParts) : null;
    }
    if (drawn.zone !== zone || drawn.measured !== measured) drawn.placed = undefined;
    if (drawn.zone.kind !== zone.kind) this.order = '';
    drawn.zone = zone;
    drawn.measured = measured;
    this.style(drawn, picture);
  }

  private style(drawn: Drawn, picture: MapPicture): void {
    const { zone } = drawn;
    const isSelected = picture.selectedZoneIds.includes(zone.id);
    const isFaded = picture.visit !== null && !picture.visit.zoneIds.includes(zone.id);
    const isTreated = picture.visit !== null && !isFaded;
    const fill = this.patterns.fillOf(zone);
    const look = [
      isSelected,
      isFaded,
      isTreated,
      picture.dark,
      picture.baseLayer.kind === 'grid',
      fill,
    ].join();
    if (drawn.look === look) return;
    drawn.look = look;
    const theme = picture.dark && picture.baseLayer.kind === 'grid' ? 'dark' : 'light';
    const { ink } = ZONE_INKS[zone.kind][theme];
    const ground = theme === 'dark' ? '#14202a' : '#ffffff';
    const weight = isSelected ? 5 : isTreated ? 3 : 1.8;
    drawn.net.setStyle({
      color: isSelected ? (theme === 'dark' ? '#ffffff' : '#10181d') : ink,
      weight,
      opacity: isFaded && !isSelected ? 0.45 : 1,
      fillColor: fill,
      fillOpacity: isFaded ? 0.3 : 1,
      lineJoin: 'round',
    });
    drawn.casing.setStyle({
      color: ground,
      weight: weight + (isSelected ? 5 : 2.5),
      opacity: isFaded ? 0.3 : 0.85,
    });
    drawn.gross.setStyle({ color: ink, weight: 1.2, dashArray: '3 4', opacity: isFaded ? 0.35 : 0.9 });
  }

  /** Puts the shapes in the order in which they cut, selected ones on top; only when that changed. */
  private restack(picture: MapPicture): void {
    const sorted = [...picture.yard.zones].sort((a, b) => drawOrder(a.kind) - drawOrder(b.kind));
    const isSelected = (zone: Zone) => picture.selectedZoneIds.includes(zone.id);
    const stack = [...sorted.filter((z) => !isSelected(z)), ...sorted.filter(isSelected)];
    const order = stack.map((zone) => zone.id).join();
    if (order === this.order) return;
    this.order = order;
    for (const zone of stack) {
      const drawn = this.drawn.get(zone.id);
      if (!drawn) continue;
      for (const layer of [drawn.casing, drawn.net, drawn.gross]) {
        if (this.map.hasLayer(layer)) layer.bringToFront();
        else layer.addTo(this.map);
      }
    }
  }

  /**
   * Places the labels anew where that is called for.
   * @param firm what they keep clear of beside marks, px of the world at the present zoom
   */
  placeLabels(firm: readonly Box[]): void {
    const { picture } = this;
    if (!picture) return;
    const a = this.map.containerPointToLatLng([0, 0]);
    const b = this.map.containerPointToLatLng([100, 0]);
    const { plane } = picture.measured;
    const metresPerPx = (plane.toPlane([b.lng, b.lat])[0] - plane.toPlane([a.lng, a.lat])[0]) / 100;
    const avoid = picture.yard.marks.map(({ position }): Box => {
      const [x, y] = plane.toPlane(position);
      return { x, y, width: MARK_PX * metresPerPx, height: MARK_PX * metresPerPx };
    });
    for (const { x, y, width, height } of firm) {
      const { lng, lat } = this.map.unproject([x, y]);
      const [east, north] = plane.toPlane([lng, lat]);
      avoid.push({ x: east, y: north, width: width * metresPerPx, height: height * metresPerPx });
    }
    const isAnew = this.forgetPlaces([
      metresPerPx,
      firm.length === 0 || firm,
      plane,
      picture.units,
      picture.yard.marks,
      picture.yard.zones.length,
      picture.selectedZoneIds.join(),
    ]);
    const boxes: Box[] = [];
    /** boxes of labels placed anew: one that stays where it was must be clear of them. */
    const anew: Box[] = [];
    const isChosen = (drawn: Drawn) => picture.selectedZoneIds.includes(drawn.zone.id);
    const all = [...this.drawn.values()];
    let isOther = isAnew || all.length !== this.boxCount;
    this.boxCount = all.length;
    for (const drawn of [...all.filter(isChosen), ...all.filter((each) => !isChosen(each))]) {
      const kept = drawn.placed && this.boxM(drawn.placed, metresPerPx);
      const isKept = kept ? !anew.some((box) => boxesMeet(box, kept)) : drawn.placed === null;
      if (!isKept) drawn.placed = this.placeOne(drawn, picture, metresPerPx, avoid);
      const { placed } = drawn;
      const isSelected = isChosen(drawn);
      const isFaded = picture.visit !== null && !picture.visit.zoneIds.includes(drawn.zone.id);
      const latLng = placed && toLatLng(plane.toLonLat(placed.at));
      if (placed && latLng) {
        const box = this.boxM(placed, metresPerPx);
        boxes.push(this.boxPx(latLng, placed));
        avoid.push(box);
        if (!isKept) anew.push(box);
      }
      const { isLocked } = drawn.zone;
      const text = JSON.stringify([placed, isSelected, isFaded, isLocked]);
      if (text === drawn.labelText) continue;
      isOther = true;
      drawn.labelText = text;
      drawn.label?.remove();
      drawn.label = null;
      if (!placed || !latLng) continue;
      const className = `yard-label${isSelected ? ' is-selected' : ''}${isFaded ? ' is-faded' : ''}${placed.isUpright ? ' is-upright' : ''}${isLocked ? ' is-locked' : ''}`;
      drawn.label = L.marker(latLng, {
        icon: textIcon(className, ...placed.lines),
        interactive: false,
        keyboard: false,
        pane: 'yard-labels',
      }).addTo(this.map);
    }
    if (isOther) this.boxesPx = boxes;
  }

  /** All labels are placed anew when what holds for all of them changed. */
  private forgetPlaces(now: readonly unknown[]): boolean {
    if (now.every((value, i) => value === this.placedFor[i])) return false;
    this.placedFor = now;
    for (const drawn of this.drawn.values()) drawn.placed = undefined;
    return true;
  }

  /** The box of a label in the plane, m. */
  private boxM({ at, lines, isUpright }: Placed, metresPerPx: number): Box {
    const [along, across] = this.sizePx(lines).map((px) => px * metresPerPx) as [number, number];
    return { x: at[0], y: at[1], width: isUpright ? across : along, height: isUpright ? along : across };
  }

  /** Boxes of the labels shown, px of the world at the present zoom; the same list while they stand as they stood. */
  labelBoxes(): readonly Box[] {
    return this.boxesPx;
  }

  private boxPx(at: L.LatLng, { lines, isUpright }: Placed): Box {
    const { x, y } = this.map.project(at);
    const [along, across] = this.sizePx(lines);
    return isUpright ? { x, y, width: across, height: along } : { x, y, width: along, height: across };
  }

  private sizePx(lines: readonly string[]): [number, number] {
    return [Math.max(...lines.map((line) => this.widthOf(line))) + HALO_PX, lines.length * LINE_PX];
  }

  /** Width in the label's bold face, px. */
  private widthOf(line: string): number {
    let width = this.widths.get(line);
    if (width === undefined && this.pen) {
      this.pen.font = `650 13px ${getComputedStyle(this.map.getContainer()).fontFamily}`;
      width = this.pen.measureText(line).width;
      this.widths.set(line, width);
    }
    return width ?? line.length * 8;
  }

  /** Name and area, else the name alone; across, else upright; nothing where none of it fits. */
  private placeOne(
    drawn: Drawn,
    picture: MapPicture,
    metresPerPx: number,
    avoid: readonly Box[],
  ): Placed | null {
    const { spot, measured, zone } = drawn;
    if (!spot || !measured) return null;
    const { netM2, netSigmaM2 } = measured;
    const area = formatAreaOfPm(netM2, netSigmaM2, picture.units);
    const full = [zone.name, area].filter((line) => line !== '');
    if (picture.selectedZoneIds.includes(zone.id)) return { lines: full, isUpright: false, at: spot.at };
    const wrapped = wrapName(zone.name);
    const tries: [readonly string[], boolean][] = [[full, false]];
    if (wrapped) tries.push([[...wrapped, area], false]);
    tries.push([full, true]);
    if (zone.name) tries.push([[zone.name], false], [wrapped ?? [], false], [[zone.name], true]);
    for (const [lines, isUpright] of tries) {
      if (lines.length === 0) continue;
      const [along, across] = this.sizePx(lines).map((px) => px * metresPerPx) as [number, number];
      const at = placeLabel(spot, isUpright ? across : along, isUpright ? along : across, avoid);
      if (at) return { lines, isUpright, at };
    }
    return null;
  }
}
