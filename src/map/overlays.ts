import L from 'leaflet';
import { EDGE_PATTERNS, edgePatternOf } from '../draft/hatches';
import { type Box, boxesMeet } from '../draft/placeTags';
import { edgeKey } from '../words/edgeWords';
import { textIcon, toLatLng, toLatLngs } from './coords';
import type { PatternSheet } from './patterns';
import type { MapPicture } from './types';

/** Places along a line where its number may stand, as shares of its length; the middle is best. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0, 1];
/** A number farther from its line than this has a leader, px. */
const LEADER_PX = 24;
/** Height of a number, and what it is wide: its border, and each of its signs, px. */
const NUMBER_PX = { height: 24, border: 13, sign: 8 } as const;

/** How far beside its line a number may stand when there is no room on it, px. */
const ASIDES_PX = [0, 16, -16, 30, -30, 40, -40, 56, -56, 72, -72];

/** The place a share of the way along and so far to its right, px of the world at the present zoom. */
function alongLine(spots: readonly L.Point[], share: number, aside: number): L.Point | null {
  let left = 0;
  for (let i = 1; i < spots.length; i++) left += (spots[i - 1] as L.Point).distanceTo(spots[i] as L.Point);
  left *= share;
  for (let i = 1; i < spots.length; i++) {
    const a = spots[i - 1] as L.Point;
    const b = spots[i] as L.Point;
    const side = a.distanceTo(b);
    if (side >= left && side > 0) {
      const way = b.subtract(a).divideBy(side);
      return a.add(way.multiplyBy(left)).add([-way.y * aside, way.x * aside]);
    }
    left -= side;
  }
  return spots[spots.length - 1] ?? null;
}

/** What lies over the zones: slips, strips left alone, edges to clean. Made anew when its source changed. */
export class Overlays {
  private readonly slips: L.LayerGroup;
  private readonly visit: L.LayerGroup;
  private readonly numbers: L.LayerGroup;
  private shown: MapPicture | null = null;

  constructor(
    private readonly map: L.Map,
    private readonly patterns: PatternSheet,
  ) {
    this.numbers = L.layerGroup().addTo(map);
    this.slips = L.layerGroup().addTo(map);
    this.visit = L.layerGroup().addTo(map);
  }

  show(picture: MapPicture): void {
    const old = this.shown;
    this.shown = picture;
    const themeChanged = old?.dark !== picture.dark || old?.baseLayer.kind !== picture.baseLayer.kind;
    const theme = picture.dark && picture.baseLayer.kind === 'grid' ? 'dark' : 'light';
    if (themeChanged || old?.slips !== picture.slips) this.showSlips(picture, theme);
    if (
      themeChanged ||
      old?.visit?.rinseEdges !== picture.visit?.rinseEdges ||
      old?.visit?.strips !== picture.visit?.strips
    ) {
      this.showVisit(picture, theme);
    }
  }

  private showSlips(picture: MapPicture, theme: 'light' | 'dark'): void {
    this.slips.clearLayers();
    for (const slip of picture.slips) {
      L.polygon(toLatLngs(slip.parts), {
        pane: 'yard-overlays',
        interactive: false,
        color: theme === 'dark' ? '#ffab8f' : '#9c2f12',
        weight: 2.5,
        dashArray: slip.type === 'gap' ? '2 4' : undefined,
        fillColor: this.patterns.fill('slip'),
        fillOpacity: 1,
        className: `yard-slip yard-slip-${slip.type}`,
      }).addTo(this.slips);
    }
  }

  private showVisit(picture: MapPicture, theme: 'light' | 'dark'): void {
    this.visit.clearLayers();
    if (!picture.visit) return;
    for (const strip of picture.visit.strips) {
      L.polygon(toLatLngs(strip.parts), {
        pane: 'yard-overlays',
        interactive: false,
        color: theme === 'dark' ? '#ffab8f' : '#9c2f12',
        weight: 1.5,
        dashArray: '6 3',
        fillColor: this.patterns.fill('no-apply'),
        fillOpacity: 1,
        className: 'yard-strip',
      }).addTo(this.visit);
    }
    for (const edge of picture.visit.rinseEdges) {
      const pattern = EDGE_PATTERNS[edgePatternOf(edge)];
      const line = edge.line.map(toLatLng);
      const common = { pane: 'yard-overlays', interactive: false, lineCap: 'butt' as const };
      const ground = theme === 'dark' ? '#14202a' : '#ffffff';
      L.polyline(line, { ...common, color: ground, weight: pattern.width + 4, opacity: 0.9 }).addTo(
        this.visit,
      );
      L.polyline(line, {
        ...common,
        color: pattern[theme],
        weight: pattern.width,
        dashArray: pattern.dash.join(' '),
        className: `yard-edge yard-edge-${pattern.id}`,
      }).addTo(this.visit);
    }
  }

  /**
   * Numbers of the edges, each shifted along its line clear of what is taken and of the numbers before it.
   * @param others px of the world at the present zoom. @returns the boxes of the numbers
   */
  placeNumbers(others: readonly Box[]): readonly Box[] {
    this.numbers.clearLayers();
    const picture = this.shown;
    if (!picture?.visit) return [];
    const taken = [...others];
    for (const edge of picture.visit.rinseEdges) {
      const text = edgeKey(edge);
      const { height, border, sign } = NUMBER_PX;
      const size = { width: border + sign * text.length, height };
      const spots = edge.line.map((position) => this.map.project(toLatLng(position)));
      const places = ASIDES_PX.flatMap((aside) =>
        SHARES.map((share) => alongLine(spots, share, aside)),
      ).filter((spot) => spot !== null);
      const isFree = ({ x, y }: L.Point) => !taken.some((box) => boxesMeet(box, { x, y, ...size }));
      const isShort =
        spots.length > 0 &&
        L.bounds([...spots])
          .getSize()
          .distanceTo([0, 0]) < size.width;
      const at = places.find(isFree) ?? (isShort ? null : places[0]);
      if (!at) continue;
      taken.push({ x: at.x, y: at.y, ...size });
      this.drawLeader(at, spots);
      L.marker(this.map.unproject(at), {
        icon: textIcon(`yard-edge-number is-${EDGE_PATTERNS[edgePatternOf(edge)].id}`, text),
        interactive: false,
        keyboard: false,
        pane: 'yard-labels',
        zIndexOffset: 500,
      }).addTo(this.numbers);
    }
    return taken.slice(others.length);
  }

  /** A thin line from a number that stands off to the nearest place of its edge. */
  private drawLeader(at: L.Point, spots: readonly L.Point[]): void {
    const near = SHARES.map((share) => alongLine(spots, share, 0)).filter((spot) => spot !== null);
    const [foot] = near.sort((a, b) => a.distanceTo(at) - b.distanceTo(at));
    if (!foot || foot.distanceTo(at) < LEADER_PX) return;
    const line = [foot, at].map((spot) => this.map.unproject(spot));
    for (const [color, weight] of [
      ['#ffffff', 3.5],
      ['#1d2a33', 1],
    ] as const)
      L.polyline(line, { pane: 'yard-overlays', interactive: false, smoothFactor: 0, color, weight }).addTo(
        this.numbers,
      );
  }
}
