import {
  HATCH_IDS,
  HATCHES,
  type Hatch,
  type HatchId,
  hatchIdOfZone,
  type Inks,
  NO_APPLY_INKS,
  SLIP_INKS,
  ZONE_INKS,
} from '../draft/hatches';
import { ZONE_KINDS, type Zone, type ZoneKind } from '../yard/types';

const SVG = 'http://www.w3.org/2000/svg';

export type Ground = 'light' | 'dark' | 'imagery';

/** How much of the tint shows: little on paper, more over a picture. */
const TINT_OPACITY: Readonly<Record<Ground, number>> = { light: 0.2, dark: 0.22, imagery: 0.34 };

export function svgElement(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  return made;
}

/** A hatch as an SVG pattern. @param groundInk laid under the tint, so that what lies below is muted; none without it */
export function patternTile(
  id: string,
  hatch: Omit<Hatch, 'id'>,
  inks: Inks,
  tintOpacity: number,
  hasHalo: boolean,
  groundInk: { readonly fill: string; readonly opacity: number } | null = null,
): SVGElement {
  const tile = svgElement('pattern', {
    id,
    width: hatch.width,
    height: hatch.height,
    patternUnits: 'userSpaceOnUse',
  });
  const size = { width: hatch.width, height: hatch.height };
  if (groundInk)
    tile.append(svgElement('rect', { ...size, fill: groundInk.fill, 'fill-opacity': groundInk.opacity }));
  tile.append(
    svgElement('rect', {
      width: hatch.width,
      height: hatch.height,
      fill: inks.tint,
      'fill-opacity': tintOpacity,
    }),
  );
  if (hasHalo) tile.append(...halo(hatch));
  for (const d of hatch.lines) {
    tile.append(svgElement('path', { d, fill: 'none', stroke: inks.ink, 'stroke-width': hatch.strokeWidth }));
  }
  for (const d of hatch.blots) tile.append(svgElement('path', { d, fill: inks.ink }));
  for (const [cx, cy, r] of hatch.dots) tile.append(svgElement('circle', { cx, cy, r, fill: inks.ink }));
  return tile;
}

/** White under the ink, so that it reads over any picture. */
function halo(hatch: Omit<Hatch, 'id'>): SVGElement[] {
  const white = { stroke: '#ffffff', 'stroke-opacity': 0.8, fill: 'none' };
  const width = hatch.strokeWidth + 1.8;
  return [
    ...hatch.lines.map((d) => svgElement('path', { ...white, d, 'stroke-width': width })),
    ...hatch.dots.map(([cx, cy, r]) => svgElement('circle', { ...white, cx, cy, r, 'stroke-width': 1.8 })),
  ];
}

const KIND_OF_HATCH: Readonly<Partial<Record<HatchId, ZoneKind>>> = {
  'turf-low-cut': 'turf',
  'turf-regular': 'turf',
  bed: 'bed',
  structure: 'structure',
  water: 'water',
  other: 'other',
};

function inksOfHatch(id: HatchId, theme: 'light' | 'dark'): Inks {
  if (id === 'no-apply') return NO_APPLY_INKS[theme];
  if (id === 'slip' || id === 'unassigned') return SLIP_INKS[theme];
  return ZONE_INKS[KIND_OF_HATCH[id] ?? 'hardscape'][theme];
}

let made = 0;

/** All hatches as SVG patterns in one hidden drawing inside the map, so that fills can name them. */
export class PatternSheet {
  private readonly svg: SVGElement;
  private readonly prefix: string;
  private ground: Ground | null = null;

  constructor(container: HTMLElement) {
    made += 1;
    this.prefix = `yard-hatch-${made}-`;
    this.svg = svgElement('svg', { width: 0, height: 0, 'aria-hidden': 'true', focusable: 'false' });
    this.svg.classList.add('yard-patterns');
    container.append(this.svg);
  }

  /** Draws the patterns anew when the ground under them changed. */
  setGround(ground: Ground): void {
    if (this.ground === ground) return;
    this.ground = ground;
    const defs = svgElement('defs', {});
    const theme = ground === 'dark' ? 'dark' : 'light';
    for (const id of HATCH_IDS) {
      const opacity = id === 'no-apply' || id === 'slip' ? 0.72 : TINT_OPACITY[ground];
      defs.append(
        patternTile(this.prefix + id, HATCHES[id], inksOfHatch(id, theme), opacity, ground === 'imagery'),
      );
    }
    this.svg.replaceChildren(defs);
  }

  fill(id: HatchId): string {
    return `url(#${this.prefix}${id})`;
  }

  fillOf(zone: Zone): string {
    return this.fill(hatchIdOfZone(zone));
  }
}

/** Drawing order: what is cut lies under what cuts. */
export function drawOrder(kind: ZoneKind): number {
  return ZONE_KINDS.length - ZONE_KINDS.indexOf(kind);
}
