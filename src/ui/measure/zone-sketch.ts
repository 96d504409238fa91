import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { findAllCurves } from '../../measure/curves';
import { findCircle } from '../../measure/findCircle';
import { createPlane } from '../../measure/plane';
import { signedArea } from '../../measure/signedArea';
import type { XY } from '../../measure/types';
import { formatLength } from '../../units/format';
import { zoneName } from '../../words/zoneWords';
import type { UnitSystem, Zone } from '../../yard/types';
import { drawSketch, type SketchLine, sketchStyles } from '../parts/sketch-drawing';

/** Sides shorter than this share of the largest extent carry no words. */
const LEAST_SHARE = 0.06;
/** With more sides than this only the long ones would be read: none is labelled below twice the share. */
const MANY_SIDES = 14;

/** A zone to scale, north up, with the lengths of its sides. Properties `zone` and `units`. */
@customElement('zone-sketch')
export class ZoneSketch extends LitElement {
  static override styles = [
    sketchStyles,
    css`
      :host { display: block; color: var(--ink); font-family: var(--font); }
    `,
  ];

  @property({ attribute: false }) zone!: Zone;
  @property({ attribute: false }) units: UnitSystem = 'us';

  protected override render() {
    const { zone, units } = this;
    const first = zone.parts[0]?.[0]?.[0];
    if (!first) return html``;
    const plane = createPlane(first);
    const parts = zone.parts.map((rings) =>
      rings.map((ring, i) =>
        turned(
          ring.map((p) => plane.toPlane(p)),
          i === 0,
        ),
      ),
    );
    const isRound = parts.map((rings) => rings.map((ring) => findCircle(ring) !== null));
    const others = parts.map((rings, i) => rings.filter((_, k) => !isRound[i]?.[k]));
    const lines = [
      ...radiusLines(parts.flat(), units),
      ...curveLines(zone, plane.toPlane, units, (part, ring) => isRound[part]?.[ring] === true),
      ...sideLines(zone, others, units),
    ];
    const sketch = { rings: parts.flat(), lines, hasNorth: zone.isPlaced };
    const lengths = lines.map((line) => line.words).join(', ');
    return html`${drawSketch(sketch, `${zoneName(zone)} to scale: ${lengths}`)}`;
  }
}

/** An outer ring with the ground at its left, a hole the other way round. */
function turned(ring: readonly XY[], isOuter: boolean): readonly XY[] {
  return signedArea(ring) > 0 === isOuter ? ring : ring.toReversed();
}

const keyOf = (p: readonly number[]) => `${p[0]},${p[1]}`;

/** A circle is known by its radius, not by the arcs that it is made of. */
function radiusLines(rings: readonly (readonly XY[])[], units: UnitSystem): SketchLine[] {
  return rings.flatMap((ring) => {
    const circle = findCircle(ring);
    if (!circle) return [];
    const { middle, radiusM } = circle;
    const to: XY = [middle[0] + radiusM, middle[1]];
    return [{ from: middle, to, words: `r ${formatLength(radiusM, units)}`, role: 'help' as const }];
  });
}

/** One line for each curve, from end to end, with the length along it. */
function curveLines(
  zone: Zone,
  toPlane: (p: Zone['parts'][0][0][0]) => XY,
  units: UnitSystem,
  isRound: (part: number, ring: number) => boolean,
): SketchLine[] {
  return findAllCurves(zone).found.flatMap((found) => {
    if (isRound(found.part, found.ring)) return [];
    const open = (zone.parts[found.part]?.[found.ring] ?? []).slice(0, -1);
    const count = (found.to - found.from + open.length) % open.length || open.length;
    const run = Array.from({ length: count + 1 }, (_, i) => open[(found.from + i) % open.length]).filter(
      (p) => p !== undefined,
    );
    const places = run.map(toPlane);
    let lengthM = 0;
    for (let i = 1; i < places.length; i++) {
      const [a, b] = [places[i - 1], places[i]];
      if (a && b) lengthM += Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
    const at = Math.floor(places.length / 2);
    const [from, to] = [places[at - 1], places[at]];
    if (!from || !to) return [];
    const ring = open.map(toPlane);
    const isLeft = signedArea([...ring, ring[0] ?? [0, 0]]) > 0 === (found.ring === 0);
    const [p, q] = isLeft ? [from, to] : [to, from];
    return [{ from: p, to: q, words: formatLength(lengthM, units), role: 'side' as const }];
  });
}

/** The straight sides that are long enough to be read on the sketch. */
function sideLines(
  zone: Zone,
  parts: readonly (readonly (readonly XY[])[])[],
  units: UnitSystem,
): SketchLine[] {
  const curved = new Set(
    findAllCurves(zone).found.flatMap((found) => {
      const open = (zone.parts[found.part]?.[found.ring] ?? []).slice(0, -1);
      const count = (found.to - found.from + open.length) % open.length || open.length;
      const plane = createPlane(zone.parts[0]?.[0]?.[0] ?? [0, 0]);
      // a side is curved when it begins or ends inside a curve
      return Array.from({ length: count - 1 }, (_, i) => open[(found.from + 1 + i) % open.length]).flatMap(
        (p) => (p ? [keyOf(plane.toPlane(p))] : []),
      );
    }),
  );
  const all = parts.flat().flat();
  if (all.length === 0) return [];
  const extent = Math.max(
    Math.max(...all.map((p) => p[0])) - Math.min(...all.map((p) => p[0])),
    Math.max(...all.map((p) => p[1])) - Math.min(...all.map((p) => p[1])),
  );
  const sides = parts.flat().flatMap((ring) => ring.slice(1).map((to, i) => [ring[i] ?? to, to] as const));
  const straight = sides.filter(([p, q]) => !curved.has(keyOf(p)) && !curved.has(keyOf(q)));
  const least = extent * LEAST_SHARE * (straight.length > MANY_SIDES ? 2 : 1);
  return straight.flatMap(([from, to]) => {
    const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return lengthM < least ? [] : [{ from, to, words: formatLength(lengthM, units), role: 'side' as const }];
  });
}

declare global {
  interface HTMLElementTagNameMap {
    'zone-sketch': ZoneSketch;
  }
}
