import type { DeskContext } from '../../io/deskTypes';
import type { Box } from '../../io/importTypes';
import { figuresOfParts } from '../../measure/geodesic';
import type { Position } from '../../yard/types';
import type { AppController } from '../app-controller';

/** What the reader of files must know of the open yard. */
export function importContext(app: AppController, checksTwins: boolean): DeskContext {
  const placed = app.yard.zones.filter((zone) => zone.isPlaced);
  const zones = placed.flatMap((zone) => {
    const box = boxOf(zone.parts.flatMap((rings) => rings[0] ?? []));
    return box ? [{ name: zone.name, areaM2: figuresOfParts(zone.parts).areaM2, box }] : [];
  });
  const yardBox = boxOf(
    zones.flatMap(({ box }): Position[] => [
      [box[0], box[1]],
      [box[2], box[3]],
    ]),
  );
  return {
    units: app.units,
    yardBox: app.yard.settings.isLocal ? null : yardBox,
    zones,
    outlines: placed.flatMap((zone) => zone.parts.flatMap((rings) => rings.slice(0, 1))),
    view: app.map?.center() ?? null,
    checksTwins,
  };
}

function boxOf(positions: readonly Position[]): Box | null {
  const [first] = positions;
  if (!first) return null;
  let [west, south, east, north] = [first[0], first[1], first[0], first[1]];
  for (const [lon, lat] of positions) {
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  return [west, south, east, north];
}
