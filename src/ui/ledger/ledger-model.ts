import type { MeasuredYard } from '../../measure/types';
import { plannedEntries } from '../../season/ledgerEntries';
import { itemsLaid, type LedgerItem, ledgerSums, ledgerYears, type ZoneYear } from '../../season/ledgerSums';
import type { LedgerEntry } from '../../season/types';
import type { Derived } from '../../session/types';
import { CLASS_WORDS } from '../../words/productWords';
import { groundName } from '../../words/zoneWords';
import { chosenZones, zoneClass } from '../../yard/choose';
import { type Yard, ZONE_CLASSES, type Zone, type ZoneClass } from '../../yard/types';

/** Ground a ledger is shown for: all of it, a class (`class bed`) or a zone (`zone z-1`). */
export type LedgerGround = 'all' | `class ${ZoneClass}` | `zone ${string}`;

/** What the views of the ledger share: a year of some ground. */
export interface LedgerModel {
  /** the objects that the sums came from. */
  readonly from: readonly unknown[];
  readonly yard: Yard;
  readonly year: number;
  readonly item: LedgerItem;
  readonly zones: readonly Zone[];
  /** by zone id. */
  readonly years: ReadonlyMap<string, ZoneYear>;
  /** what the plan said of each dose and zone, by `planKey`; worked out at the first call. */
  planned(): ReadonlyMap<string, LedgerEntry>;
}

/** Every zone that can be treated, in document order. */
export function treatableZones(yard: Yard): readonly Zone[] {
  return chosenZones(yard, { classes: ZONE_CLASSES, include: [], exclude: [] });
}

/** The zones of a ground, in document order. */
export function zonesOfGround(yard: Yard, ground: LedgerGround): readonly Zone[] {
  const all = treatableZones(yard);
  if (ground === 'all') return all;
  if (ground.startsWith('zone ')) return all.filter((zone) => zone.id === ground.slice(5));
  return all.filter((zone) => zoneClass(zone) === ground.slice(6));
}

/** A ground in words: "All ground", "Regular turf", or the zone's name. */
export function groundWords(yard: Yard, ground: LedgerGround): string {
  if (ground === 'all') return 'All ground';
  if (ground.startsWith('class ')) return CLASS_WORDS[ground.slice(6) as ZoneClass];
  return groundName(yard.zones.find((zone) => zone.id === ground.slice(5))?.name ?? '');
}

/** Grounds that can be chosen: all, the classes that have zones, the zones. */
export function groundChoices(yard: Yard): readonly LedgerGround[] {
  const zones = treatableZones(yard);
  const classes = ZONE_CLASSES.filter((each) => zones.some((zone) => zoneClass(zone) === each));
  return [
    'all',
    ...classes.map((each): LedgerGround => `class ${each}`),
    ...zones.map((zone): LedgerGround => `zone ${zone.id}`),
  ];
}

/** Names a dose on a zone. */
export function planKey({ doseId, zoneId }: LedgerEntry): string {
  return `${doseId} ${zoneId}`;
}

/** Net ground of each zone, m². */
export function ledgerZones(zones: readonly Zone[], measured: MeasuredYard) {
  return zones.map(({ id }) => ({ zoneId: id, areaM2: measured.zones.get(id)?.netM2 ?? 0 }));
}

/** Years and items of a ledger, worked out once for it. */
export function ledgerScope(entries: readonly LedgerEntry[]): LedgerScope {
  const known = scopes.get(entries);
  if (known) return known;
  const scope = { years: ledgerYears(entries), items: itemsLaid(entries) };
  scopes.set(entries, scope);
  return scope;
}
interface LedgerScope {
  readonly years: readonly number[];
  readonly items: readonly LedgerItem[];
}
const scopes = new WeakMap<readonly LedgerEntry[], LedgerScope>();

/**
 * The year of a ground, from all that is derived.
 * @param before an earlier model: its sums are taken over where they came from the same objects
 */
export function ledgerModel(
  derived: Derived,
  ground: LedgerGround,
  year: number,
  item: LedgerItem,
  before: LedgerModel | null,
): LedgerModel {
  const { yard, measured } = derived;
  const { entries } = derived.season();
  const from = [entries, measured, yard.zones, ground, year];
  const isSame = before?.from.every((each, index) => each === from[index]) ?? false;
  if (before && isSame)
    return before.yard === yard && before.item === item ? before : { ...before, yard, item };
  const zones = zonesOfGround(yard, ground);
  const sums = ledgerSums(entries, ledgerZones(zones, measured), year);
  let planned: ReadonlyMap<string, LedgerEntry> | null = null;
  return {
    from,
    yard,
    year,
    item,
    zones,
    years: new Map(sums.map((each) => [each.zoneId, each])),
    planned() {
      if (planned) return planned;
      const figures = yard.visits.flatMap((visit) => derived.visit(visit.id)?.figures ?? []);
      planned = new Map(plannedEntries(figures).map((entry) => [planKey(entry), entry]));
      return planned;
    },
  };
}
