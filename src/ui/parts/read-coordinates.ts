import type { Position } from '../../yard/types';

export type CoordinatesRead =
  | { readonly ok: true; readonly position: Position }
  | { readonly ok: false; readonly message: string };

const HELP = 'Write latitude then longitude, such as 40.446, -79.982 or 40°26\'46"N 79°58\'56"W.';
interface Angle {
  readonly degrees: number;
  readonly side: string;
}

/**
 * A place from typed text: decimal degrees or degrees with minutes and seconds, each with a sign or
 * a letter N, S, E, W; latitude first unless letters say otherwise.
 * @returns [longitude, latitude] in degrees, or what is wrong in words.
 */
export function readCoordinates(text: string): CoordinatesRead {
  const plain = text
    .trim()
    .replace(/[−–]/g, '-')
    .replace(/[′’ʹ]/g, "'")
    .replace(/[″”]|''/g, '"')
    .replace(/º/g, '°')
    .toUpperCase();
  const halves = splitInTwo(plain);
  const [first, second] = halves.map(readAngle);
  if (!first || !second) return { ok: false, message: HELP };
  const isSwapped =
    'EW'.includes(first.side || 'N') ||
    (first.side === '' && second.side !== '' && 'NS'.includes(second.side));
  const [lat, lon] = isSwapped ? [second, first] : [first, second];
  if (/[EW]/.test(lat.side) || /[NS]/.test(lon.side)) return { ok: false, message: HELP };
  if (Math.abs(lat.degrees) > 90) return { ok: false, message: 'Latitude lies between -90 and 90 degrees.' };
  if (Math.abs(lon.degrees) > 180)
    return { ok: false, message: 'Longitude lies between -180 and 180 degrees.' };
  return { ok: true, position: [lon.degrees, lat.degrees] };
}

/** At the comma or semicolon, after the first letter of a side, or in the middle of the numbers. */
function splitInTwo(text: string): readonly string[] {
  const byMark = text.split(/[,;]/);
  if (byMark.length === 2) return byMark;
  const letters =
    text.match(/^([^NSEW]*[NSEW])([^NSEW]*[NSEW])$/) ?? text.match(/^([NSEW][^NSEW]*)([NSEW][^NSEW]*)$/);
  if (letters) return [letters[1] ?? '', letters[2] ?? ''];
  const words = text.split(/\s+/);
  if (words.length % 2 !== 0) return [];
  return [words.slice(0, words.length / 2).join(' '), words.slice(words.length / 2).join(' ')];
}

function readAngle(text: string): Angle | null {
  const match = text
    .replace(/[°'":]/g, ' ')
    .match(/^\s*([NSEW]?)\s*([+-]?[\d.]+(?:\s+[\d.]+){0,2})\s*([NSEW]?)\s*$/);
  if (!match) return null;
  const [, before = '', numbers = '', after = ''] = match;
  if (before && after) return null;
  const words = numbers.trim().split(/\s+/);
  const [degrees = Number.NaN, minutes = 0, seconds = 0] = words.map(Number);
  if (![degrees, minutes, seconds].every(Number.isFinite) || minutes >= 60 || seconds >= 60) return null;
  const side = before || after;
  const size = Math.abs(degrees) + minutes / 60 + seconds / 3600;
  const isNegative = numbers.startsWith('-') || side === 'S' || side === 'W';
  return { degrees: isNegative ? -size : size, side };
}
