import L from 'leaflet';
import { vesselGround } from '../../cover/vesselGround';
import { VESSEL_HATCH_IDS, VESSEL_HATCHES, VESSEL_INKS, vesselHatchOf } from '../../draft/vesselHatches';
import { toLatLngs } from '../coords';
import { type Ground, patternTile, svgElement } from '../patterns';
import type { CoveragePicture, MapPicture } from '../types';
import type { WalkGround } from './ground';

/** How much of the tint shows, and how far what lies below is muted. */
const TINT: Readonly<Record<Ground, { readonly tint: number; readonly mute: number }>> = {
  light: { tint: 0.26, mute: 0.86 },
  dark: { tint: 0.22, mute: 0.86 },
  imagery: { tint: 0.3, mute: 0.45 },
};
const PAPER = { light: '#fbf9f3', dark: '#1a2833', imagery: '#ffffff' } as const;

let made = 0;

/** The ground that each container, tank load or hopper fill does, each in a light hatch and a tint of its own. */
export class TintLayer {
  private readonly group: L.LayerGroup;
  private readonly svg: SVGElement;
  private readonly prefix: string;
  private patternsFor: Ground | null = null;

  constructor(
    map: L.Map,
    private readonly pane: string,
  ) {
    made += 1;
    this.prefix = `yard-vessel-${made}-`;
    this.group = L.layerGroup().addTo(map);
    this.svg = svgElement('svg', { width: 0, height: 0, 'aria-hidden': 'true', focusable: 'false' });
    this.svg.classList.add('yard-patterns');
    map.getContainer().append(this.svg);
  }

  /** @param coat whose ground is tinted; null: both coats lie on each other, so what is below is muted and no more */
  show(
    walk: Pick<CoveragePicture, 'dose' | 'swathM'> | null,
    coat: 1 | 2 | null,
    measured: MapPicture['measured'],
    { ground, theme, ink }: WalkGround,
  ): void {
    this.group.clearLayers();
    if (!walk) return;
    this.setPatterns(ground);
    const zoneIds = new Set(walk.dose.walks.map(({ zoneId }) => zoneId));
    const within = [...zoneIds].flatMap((id) => measured.zones.get(id)?.netPlaneParts ?? []);
    const { toLonLat } = measured.plane;
    for (const { vessel, parts } of vesselGround(walk.dose, coat ?? 1, walk.swathM, within)) {
      const hatch = vesselHatchOf(vessel);
      const rings = parts.map((part) => part.map((ring) => ring.map((at) => toLonLat(at))));
      L.polygon(toLatLngs(rings), {
        pane: this.pane,
        interactive: false,
        smoothFactor: 0,
        color: ground === 'imagery' ? ink : VESSEL_INKS[hatch][theme].ink,
        weight: coat === null ? 0 : 0.8,
        opacity: 0.55,
        fillColor: coat === null ? PAPER[ground] : `url(#${this.prefix}${hatch})`,
        fillOpacity: coat === null ? TINT[ground].mute : 1,
        className: `yard-vessel ${hatch}`,
      }).addTo(this.group);
    }
  }

  private setPatterns(ground: Ground): void {
    if (this.patternsFor === ground) return;
    this.patternsFor = ground;
    const defs = svgElement('defs', {});
    const theme = ground === 'dark' ? 'dark' : 'light';
    const under = { fill: PAPER[ground], opacity: TINT[ground].mute };
    for (const id of VESSEL_HATCH_IDS)
      defs.append(
        patternTile(
          this.prefix + id,
          VESSEL_HATCHES[id],
          VESSEL_INKS[id][theme],
          TINT[ground].tint,
          ground === 'imagery',
          under,
        ),
      );
    this.svg.replaceChildren(defs);
  }
}
