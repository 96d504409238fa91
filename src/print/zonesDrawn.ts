import { hatchIdOfZone } from '../draft/hatches';
import { formatAreaOfPm } from '../units/format';
import { zoneKeys, zoneName } from '../words/zoneWords';
import { drawLine, drawText, pathOfRings } from './drawn';
import type { MapInput } from './mapFrame';
import { type Box, type Mm, placeLabels, ringSize, type Wanted } from './placeLabels';
import { textWidthMm } from './textWidth';
import type { Drawn } from './types';

/** Zones as areas, and what their labels want; the labels are placed last of all (see `drawZoneLabels`). */
export interface ZonesDrawn {
  readonly drawn: readonly Drawn[];
  readonly wanted: readonly Wanted[];
  /** the forms of each label, best first, by its id. */
  readonly texts: ReadonlyMap<string, readonly (readonly string[])[]>;
  /** labels are names alone, as beside a walk: every line of them is bold, and none is a badge. */
  readonly isNamesAlone: boolean;
}

/** Zones by hatch and outline. Where a walk is drawn, its own ground is left bare for it and labels give no areas. */
export function drawZones(
  { yard, derived, visit, walk }: MapInput,
  toMm: (at: readonly [number, number]) => Mm,
  size: number,
): ZonesDrawn {
  const keys = zoneKeys(yard);
  const walked = new Set(walk?.dose.walks.map(({ zoneId }) => zoneId));
  const drawn: Drawn[] = [];
  const wanted: Wanted[] = [];
  const texts = new Map<string, string[][]>();
  for (const zone of yard.zones) {
    const measured = derived.measured.zones.get(zone.id);
    if (!zone.isPlaced || !measured || measured.netPlaneParts.length === 0) continue;
    const parts = measured.netPlaneParts.map((rings) => rings.map((ring) => ring.map(toMm)));
    const hatch = walked.has(zone.id) ? null : hatchIdOfZone(zone);
    drawn.push({ type: 'area', d: pathOfRings(parts), hatch, strokeMm: 0.35, paper: true });
    const key = keys.get(zone.id) ?? '';
    // beside the numbers of a walk the key stands behind the name in brackets, never in a circle
    const sign = walk ? `(${key})` : key;
    const name = walk ? `${zoneName(zone)} ${sign}` : `${key}  ${zoneName(zone)}`;
    const treated = visit?.treated.get(zone.id);
    const area = treated
      ? `treat ${formatAreaOfPm(treated.areaM2, treated.areaSigmaM2, yard.settings.units)}`
      : formatAreaOfPm(measured.netM2, measured.netSigmaM2, yard.settings.units);
    // beside the numbers of a walk the keys of other zones would only confuse
    const forms = walk ? [[name], wrapped(name), [sign]] : [[name, area], [name], [key]];
    const optional = walk !== null && walk !== undefined && !walked.has(zone.id);
    texts.set(zone.id, forms);
    const sizes = forms.map((lines, i) =>
      sizeOf(lines, i === forms.length - 1, size, (walk ?? null) !== null),
    );
    const whole = optional ? sizes.slice(0, -1) : sizes;
    const left = treated?.planeParts.length ? treated.planeParts : measured.netPlaneParts;
    const shapes = left
      .map((rings) => rings.map((ring) => ring.map(toMm)))
      .sort((a, b) => ringSize(b) - ringSize(a));
    wanted.push({ id: zone.id, parts: shapes.slice(0, 1), forms: whole, optional });
    // further pieces carry the key alone, where it fits
    shapes.slice(walk ? shapes.length : 1).forEach((shape, n) => {
      texts.set(`${zone.id}/${n}`, [[sign]]);
      wanted.push({ id: `${zone.id}/${n}`, parts: [shape], forms: sizes.slice(-1), optional: true });
    });
  }
  return { drawn, wanted, texts, isNamesAlone: (walk ?? null) !== null };
}

/** A name over two lines, parted at the space nearest its middle. */
function wrapped(name: string): string[] {
  const spaces = [...name.matchAll(/ +/g)].map(({ index }) => index);
  const [at] = spaces.sort((a, b) => Math.abs(a - name.length / 2) - Math.abs(b - name.length / 2));
  return at === undefined ? [name] : [name.slice(0, at), name.slice(at).trim()];
}

/** Half sizes of a label, mm. */
function sizeOf(
  lines: readonly string[],
  isKey: boolean,
  size: number,
  isBold: boolean,
): { halfW: number; halfH: number } {
  if (isKey)
    return {
      halfW: Math.max(size * 0.85, textWidthMm(lines[0] ?? '', size, true) / 2 + 0.8),
      halfH: size * 0.85,
    };
  return {
    halfW: Math.max(...lines.map((text, n) => textWidthMm(text, size, n === 0 || isBold))) / 2 + 0.6,
    halfH: (lines.length * size * 1.25) / 2 + 0.4,
  };
}

/** Labels of zones, clear of what is taken: in their zone, or its key beside it on a leader. @returns boxes they take */
export function drawZoneLabels(
  { wanted, texts, isNamesAlone }: ZonesDrawn,
  taken: readonly Box[],
  frame: Box,
  size: number,
): { readonly drawn: readonly Drawn[]; readonly boxes: readonly Box[] } {
  const drawn: Drawn[] = [];
  const placed = placeLabels(wanted, taken, frame);
  for (const label of placed) {
    if (label.leaderTo) {
      drawn.push(drawLine([label.leaderTo, [label.x, label.y]], 0.7, 'under'));
      drawn.push(drawLine([label.leaderTo, [label.x, label.y]], 0.25, 'leader'));
    }
    const forms = texts.get(label.id) ?? [];
    const lines = forms[label.form] ?? [];
    if (!isNamesAlone && lines.length === 1 && label.form === forms.length - 1) {
      const { x, y, halfW, halfH } = label;
      drawn.push({ type: 'badge', shape: 'round', x, y, halfW, halfH, sizeMm: size, text: lines[0] ?? '' });
      continue;
    }
    lines.forEach((text, i) => {
      const y = label.y - label.halfH + 0.4 + size * (0.98 + i * 1.25);
      drawn.push(
        drawText(label.x, y, size, text, { anchor: 'middle', bold: i === 0 || isNamesAlone, halo: true }),
      );
    });
  }
  return { drawn, boxes: placed };
}
