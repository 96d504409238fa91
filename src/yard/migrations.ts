import { MEMBER } from './encode';

type Members = Readonly<Record<string, unknown>>;

/**
 * Steps from one version of the file to the next, by the version they start from. Each is a pure
 * function of the whole FeatureCollection. A file whose `measuredYard` has no version counts as 0.
 */
export const MIGRATIONS: Readonly<Record<number, (file: Members) => Members>> = {
  /** 0: written before versions were; missing lists and settings were left out. Nothing is renamed. */
  0: (file) => {
    const member = (file[MEMBER] ?? {}) as Members;
    return {
      ...file,
      [MEMBER]: { ...member, products: member.products ?? [], visits: member.visits ?? [], schemaVersion: 1 },
    };
  },
  /** 1: before zones had curves, slopes and locks and yards a parcel; all of these may be missing. */
  1: (file) => ({ ...file, [MEMBER]: { ...((file[MEMBER] ?? {}) as Members), schemaVersion: 2 } }),
  /** 2: before labels had several uses, and yards soil tests, needs, programs, caps and rules; all may be missing. */
  2: (file) => ({ ...file, [MEMBER]: { ...((file[MEMBER] ?? {}) as Members), schemaVersion: 3 } }),
  /** 3: before equipment, passes of a dose, a hose and the fall of the ground; all may be missing. */
  3: (file) => ({ ...file, [MEMBER]: { ...((file[MEMBER] ?? {}) as Members), schemaVersion: 4 } }),
};

/**
 * Runs the steps from `from` up to `to`.
 * @throws Error when a step is missing from the table (a programmer's mistake)
 */
export function migrate(
  file: Members,
  from: number,
  to: number,
  table: Readonly<Record<number, (file: Members) => Members>> = MIGRATIONS,
): Members {
  let current = file;
  for (let version = from; version < to; version++) {
    const step = table[version];
    if (step === undefined) throw new Error(`No migration from version ${version}.`);
    current = step(current);
  }
  return current;
}
