import { paceFigures } from '../../pace/paceFigures';
import type { DosePace } from '../../pace/types';
import type { DoseFigures } from '../../plan/types';
import { type PaceLine, paceLines } from '../../words/paceWords';
import { groundName, UNPLACED_WORDS } from '../../words/zoneWords';
import type { Equipment, UnitSystem } from '../../yard/types';

/** The pace of a dose as a list; ground that has no place on the map is no part of the walk, and says so. */
export function paceLinesOf(
  pace: DosePace,
  figures: Pick<DoseFigures, 'zones' | 'areaM2' | 'dose'>,
  equipment: Equipment,
  units: UnitSystem,
): readonly PaceLine[] {
  const zones = figures.zones.map((zone) =>
    zone.isPlaced === false
      ? { ...zone, name: `${groundName(zone.name)} (${UNPLACED_WORDS}: not in the walk)` }
      : zone,
  );
  return paceLines(paceFigures(pace, { ...figures, zones }, equipment), units);
}
