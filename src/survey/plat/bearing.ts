import type { ArcCall, PlatCall } from './types';

const RAD = Math.PI / 180;

/** A direction brought into 0 to 360 degrees, 360 left out. */
export function normaliseBearing(deg: number): number {
  const turned = deg % 360;
  return turned < 0 ? turned + 360 : turned === 0 ? 0 : turned;
}

/** Signed difference between two directions, from `from` to `to`, over -180 to 180 degrees; right is positive. */
export function turnBetween(fromDeg: number, toDeg: number): number {
  const turn = normaliseBearing(toDeg - fromDeg);
  return turn > 180 ? turn - 360 : turn;
}

/** Direction of a vector, degrees clockwise from north (y). 0 for no vector. */
export function bearingOf(xM: number, yM: number): number {
  return normaliseBearing(Math.atan2(xM, yM) / RAD);
}

/** Degrees of a quadrant bearing such as N 45 E from its angle, 0 to 90 degrees. */
export function quadrantToBearing(northOrSouth: 'n' | 's', angleDeg: number, eastOrWest: 'e' | 'w'): number {
  const side = eastOrWest === 'e' ? angleDeg : -angleDeg;
  return normaliseBearing(northOrSouth === 'n' ? side : 180 - side);
}

/** Direction of the chord of an arc, degrees. */
export function chordBearing(arc: ArcCall): number {
  const half = arc.deltaDeg / 2;
  return normaliseBearing(arc.entryBearingDeg + (arc.turn === 'right' ? half : -half));
}

/** Direction in which a call ends. */
export function exitBearing(call: PlatCall): number {
  if (call.kind === 'line') return call.bearingDeg;
  const { entryBearingDeg, deltaDeg, turn } = call;
  return normaliseBearing(entryBearingDeg + (turn === 'right' ? deltaDeg : -deltaDeg));
}

/** An angle in degrees, minutes and seconds, such as 45°30′15″; seconds rounded, a decimal only where asked for. */
export function formatDms(deg: number, secondDecimals = 0): string {
  const unit = 10 ** secondDecimals;
  const total = Math.round(Math.abs(deg) * 3600 * unit);
  const seconds = (total / unit) % 60;
  const minutes = Math.floor(total / unit / 60) % 60;
  const degrees = Math.floor(total / unit / 3600);
  const two = (text: string) => (text.split('.')[0]?.length === 1 ? `0${text}` : text);
  return `${degrees}°${two(String(minutes))}′${two(seconds.toFixed(secondDecimals))}″`;
}

/** A direction in the standard form of plats, such as N 45°30′15″ E; the four main ones as “due north”. */
export function formatBearing(bearingDeg: number): string {
  const seconds = Math.round(normaliseBearing(bearingDeg) * 3600) % 1296000;
  const quarter = 324000;
  if (seconds % quarter === 0)
    return ['due north', 'due east', 'due south', 'due west'][seconds / quarter] ?? '';
  const deg = seconds / 3600;
  const isNorth = deg < 90 || deg > 270;
  const angle = deg < 90 ? deg : deg < 270 ? Math.abs(180 - deg) : 360 - deg;
  return `${isNorth ? 'N' : 'S'} ${formatDms(angle)} ${deg < 180 ? 'E' : 'W'}`;
}
