/** How much is tried: all of it for plain shapes, less for those of many corners. */
export interface Effort {
  readonly rounds: number;
  /** distances between laps, as shares of the spacing: nearer ones leave less at corners. */
  readonly lapShares: readonly number[];
  /** corners of laps pushed out by these shares of their tips, too. */
  readonly pushes: readonly number[];
  readonly headings: number;
  readonly outlines: number;
  readonly measured: number;
  readonly lapStarts: number;
}

const EFFORTS: readonly (readonly [number, Effort])[] = [
  [
    80,
    {
      rounds: 60,
      lapShares: [1, 0.98, 0.96, 0.94],
      pushes: [0.2, 0.35, 0.5, 0.7],
      headings: 4,
      outlines: 16,
      measured: 14,
      lapStarts: 20,
    },
  ],
  [400, { rounds: 3, lapShares: [1], pushes: [0.4], headings: 4, outlines: 4, measured: 3, lapStarts: 12 }],
  [Infinity, { rounds: 1, lapShares: [1], pushes: [], headings: 3, outlines: 3, measured: 2, lapStarts: 6 }],
];

/** @param corners of all rings of the zone */
export function effortFor(corners: number): Effort {
  return (EFFORTS.find(([most]) => corners <= most) as (typeof EFFORTS)[number])[1];
}
