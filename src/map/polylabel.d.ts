declare module 'polylabel' {
  /** Pole of inaccessibility of a polygon (outer ring, then holes), in the units given. */
  export default function polylabel(
    polygon: readonly (readonly (readonly [number, number])[])[],
    precision?: number,
  ): [number, number] & { distance: number };
}
