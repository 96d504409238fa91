/**
 * Ground between an arc and its chord, m²: R²/2·(t - sin t); holds up to a full circle.
 * Source: CRC Standard Mathematical Tables (Beyer 1987).
 * @param turnRad the angle that the arc spans at its centre, rad, 0 to 2π
 */
export function segmentArea(radiusM: number, turnRad: number): number {
  return (radiusM * radiusM * (turnRad - Math.sin(turnRad))) / 2;
}
