import { MOST_MISSED } from './prices';
import { type GroundSeen, seenOnGround } from './trimWorks';
import type { Work } from './work';
import type { ZoneGround } from './zoneGround';

/** Passes shorter than this, and than this share of the swath, are hardly walked between two turns. Common practice, no source. */
const STUB_M = 1;
const STUB_SHARE = 0.5;

/** Whether a pass is one that no one would turn for. */
export function isStub({ kind, lengthM }: Pick<Work, 'kind' | 'lengthM'>, swathM: number): boolean {
  return kind === 'pass' && lengthM < Math.max(STUB_M, STUB_SHARE * swathM);
}

/**
 * Stubs that may be left out: those that cover the least ground alone, as many as leave what is missed within the goal.
 * @param works of a layout, as they are walked; @param missedM2 what they miss, out of reach left aside
 */
export function stubsToDrop(zone: ZoneGround, works: readonly Work[], missedM2: number): ReadonlySet<Work> {
  const gone = new Set<Work>();
  const stubs = works.filter((work) => isStub(work, zone.options.swathM));
  // something is walked in any case
  if (stubs.length === 0 || stubs.length === works.length) return gone;
  const ground: GroundSeen = seenOnGround(zone, works);
  let spareM2 = MOST_MISSED * zone.areaM2 - missedM2;
  const order = stubs.toSorted((a, b) => ground.ownM2(a) - ground.ownM2(b));
  for (const stub of order) {
    const ownM2 = ground.ownM2(stub);
    if (ownM2 > 0 && ownM2 > spareM2) continue;
    spareM2 -= ownM2;
    ground.remove(stub);
    gone.add(stub);
  }
  return gone;
}
