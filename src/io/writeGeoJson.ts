import { yardToGeoJson } from '../yard/encode';
import type { Yard } from '../yard/types';

/**
 * The yard as the text of a .geojson file (RFC 7946), one feature a line, so that two states of a
 * yard can be compared line by line. Media type: application/geo+json.
 */
export function yardToText(yard: Yard): string {
  const { features, ...members } = yardToGeoJson(yard);
  const head = Object.entries(members)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`);
  const list = features.map((feature) => JSON.stringify(feature)).join(',\n');
  return `{\n${head.join(',\n')},\n"features": [\n${list}\n]\n}\n`;
}

/** A file name for the yard: letters, digits and dashes of its name, ending in .geojson. */
export function fileNameOf(yard: Yard): string {
  const stem = yard.name
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem === '' ? 'yard' : stem}.geojson`;
}
