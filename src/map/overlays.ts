import L from 'leaflet';
import { EDGE_PATTERNS, edgePatternOf } from '../draft/hatches';
import { edgeKey } from '../words/edgeWords';
import type { Position } from '../yard/types';
import { textIcon, toLatLng, toLatLngs } from './coords';
import type { PatternSheet } from './patterns';
import type { MapPicture } from './types';

function middleOf(line: readonly Position[], map: L.Map): L.LatLng | null {
  const spots = line.map((position) => map.project(toLatLng(position), 22));
  let left = 0;
  for (let i = 1; i < spots.length; i++) left += (spots[i - 1] as L.Point).distanceTo(spots[i] as L.Point);
  left /= 2;
  for (let i = 1; i < spots.length; i++) {
    const a = spots[i - 1] as L.Point;
    const b = spots[i] as L.Point;
    const side = a.distanceTo(b);
    if (side >= left && side > 0) return map.unproject(a.add(b.subtract(a).multiplyBy(left / side)), 22);
    left -= side;
  }
  return line[0] ? toLatLng(line[0]) : null;
}

/** What lies over the zones: slips, strips left alone, edges to clean. Made anew when its source changed. */
export class Overlays {
  private readonly slips: L.LayerGroup;
  private readonly visit: L.LayerGroup;
  private shown: MapPicture | null = null;

  constructor(
    private readonly map: L.Map,
    private readonly patterns: PatternSheet,
  ) {
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
      const middle = middleOf(edge.line, this.map);
      if (!middle) continue;
      L.marker(middle, {
        icon: textIcon(`yard-edge-number is-${pattern.id}`, edgeKey(edge)),
        interactive: false,
        keyboard: false,
        pane: 'yard-labels',
        zIndexOffset: 500,
      }).addTo(this.visit);
    }
  }
}
