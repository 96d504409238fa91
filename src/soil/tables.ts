import type { Extractant } from '../yard/types';
import { MEHLICH_3_TABLES } from './mehlich3Tables';
import { OTHER_TABLES } from './otherTables';
import type { SoilTable } from './types';

/** Every published interpretation table that is kept. */
export const SOIL_TABLES: readonly SoilTable[] = [...MEHLICH_3_TABLES, ...OTHER_TABLES];

/** The table that is used where the person chose none. */
const USUAL_TABLES: Readonly<Record<Extractant, string | null>> = {
  'mehlich-3': 'rutgers-m3',
  'mehlich-1': 'virginia-m1',
  'bray-1': 'purdue-lawn-bray',
  olsen: 'wsu-lawn-olsen',
  morgan: 'umass-morgan',
  other: null,
};

/** The usual table of an extractant; null for `other`: only the lab's words count there. */
export function usualTable(extractant: Extractant): SoilTable | null {
  return SOIL_TABLES.find((table) => table.id === USUAL_TABLES[extractant]) ?? null;
}

/** Every table of an extractant, the usual one first. */
export function tablesOf(extractant: Extractant): readonly SoilTable[] {
  const own = SOIL_TABLES.filter((table) => table.extractant === extractant);
  const usual = usualTable(extractant);
  return usual === null ? own : [usual, ...own.filter((table) => table !== usual)];
}
