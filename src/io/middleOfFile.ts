import type { Position } from '../yard/types';
import type { ImportRules, SourceFeature } from './importTypes';
import { parseFeature } from './judgeFeature';
import type { ToLonLat } from './projection';
import { readShape } from './readShape';

/** So many features, spread over the file, tell where most of it lies. */
const SAMPLE = 300;

/** Where most features of a file lie: the middle one by longitude and by latitude; null when none has a place. */
export function middleOfFile(
  sources: readonly SourceFeature[],
  rules: Pick<ImportRules, 'isSwapped'>,
  toLonLat: ToLonLat | null,
): Position | null {
  const step = Math.max(1, Math.floor(sources.length / SAMPLE));
  const lons: number[] = [];
  const lats: number[] = [];
  for (let i = 0; i < sources.length; i += step) {
    const read = readShape(parseFeature(sources[i]?.text ?? '')?.geometry, rules, toLonLat);
    if (!read.ok) continue;
    const { polygons, lines, points } = read.shape;
    const at = polygons[0]?.[0]?.[0] ?? lines[0]?.[0] ?? points[0];
    if (!at) continue;
    lons.push(at[0]);
    lats.push(at[1]);
  }
  const middle = (values: number[]) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
  const [lon, lat] = [middle(lons), middle(lats)];
  return lon === undefined || lat === undefined ? null : [lon, lat];
}
