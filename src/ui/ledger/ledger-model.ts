import type { MeasuredYard } from '../../measure/types';
import { plannedEntries } from '../../season/ledgerEntries';
import {
  itemsLaid,
  type LedgerItem,
  type LedgerYear,
  type LedgerZone,
  ledgerSums,
  ledgerYears,
  meanOfZones,
  type ZoneYear,
} from '../../season/ledgerSums';
import type { LedgerEntry } from '../../season/types';
import type { Derived } from '../../session/types';
import { CLASS_WORDS } from '../../words/productWords';
import { groundName } from '../../words/zoneWords';
import { treatableZones, zoneClass } from '../../yard/choose';
import { type Yard, ZONE_CLASSES, type Zone, type ZoneClass } from '../../yard/types';

/** Ground a ledger is shown for: all of it, a class (`class bed`), a zone (`zone z-1`), or what is treated no more. */
export type LedgerGround = 'all' | 'gone' | `class ${ZoneClass}` | `zone ${string}`;

/** What the views of the ledger share: a year of some ground. */
export interface LedgerModel {
  /** the objects that the sums came from. */
  readonly from: readonly unknown[];
  readonly yard: Yard;
  readonly year: number;
  readonly item: LedgerItem;
  readonly zones: readonly Zone[];
  /** ground of done doses that is no zone any more, or none that can be treated, under its recorded name. */
  readonly gone: readonly GoneGround[];
  /** by zone id, of what is gone too. */
  readonly years: ReadonlyMap<string, ZoneYear>;
  /** what the plan said of each dose and zone, by `planKey`; worked out at the first call. */
  planned(): ReadonlyMap<string, LedgerEntry>;
}

/** Ground that was treated and is no more, m² as recorded. */
export interface GoneGround extends LedgerZone {
  readonly name: string;
}

/** Words for ground that is no zone any more. */
export function goneName({ name }: GoneGround): string {
  return `${groundName(name)} (gone)`;
}

/** Ground of the entries that is none of the yard's treatable zones, in the order it is first met. */
export function goneGround(entries: readonly LedgerEntry[], yard: Yard): readonly GoneGround[] {
  const ids = new Set(treatableZones(yard).map((zone) => zone.id));
  const gone = new Map<string, GoneGround>();
  for (const { zoneId, zoneName: name, areaM2, isDone } of entries) {
    if (!isDone || ids.has(zoneId)) continue;
    gone.set(zoneId, { zoneId, name, areaM2: Math.max(areaM2, gone.get(zoneId)?.areaM2 ?? 0) });
  }
  return [...gone.values()];
}

/** The zones of a ground, in document order. */
export function zonesOfGround(yard: Yard, ground: LedgerGround): readonly Zone[] {
  const all = treatableZones(yard);
  if (ground === 'all') return all;
  if (ground === 'gone') return [];
  if (ground.startsWith('zone ')) return all.filter((zone) => zone.id === ground.slice(5));
  return all.filter((zone) => zoneClass(zone) === ground.slice(6));
}

/** A ground in words: "All ground", "Regular turf", or the zone's name. */
export function groundWords(yard: Yard, ground: LedgerGround): string {
  if (ground === 'all') return 'All ground';
  if (ground === 'gone') return 'Ground that is gone';
  if (ground.startsWith('class ')) return CLASS_WORDS[ground.slice(6) as ZoneClass];
  return groundName(yard.zones.find((zone) => zone.id === ground.slice(5))?.name ?? '');
}

/** Grounds that can be chosen: all, the classes that have zones, the zones, and what is gone where there is any. */
export function groundChoices(yard: Yard, gone: readonly GoneGround[]): readonly LedgerGround[] {
  const zones = treatableZones(yard);
  const classes = ZONE_CLASSES.filter((each) => zones.some((zone) => zoneClass(zone) === each));
  return [
    'all',
    ...classes.map((each): LedgerGround => `class ${each}`),
    ...zones.map((zone): LedgerGround => `zone ${zone.id}`),
    ...(gone.length > 0 ? (['gone'] as const) : []),
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
  const isWhole = ground === 'all' || ground === 'gone';
  const lost = isWhole ? goneGround(entries, yard) : [];
  const sums = ledgerSums(entries, [...ledgerZones(zones, measured), ...lost], year);
  const gone = lost.filter(({ zoneId }) =>
    sums.some((each) => each.zoneId === zoneId && each.entries.length > 0),
  );
  let planned: ReadonlyMap<string, LedgerEntry> | null = null;
  return {
    from,
    yard,
    year,
    item,
    zones,
    gone,
    years: new Map(sums.map((each) => [each.zoneId, each])),
    planned() {
      if (planned) return planned;
      const figures = yard.visits.flatMap((visit) => derived.visit(visit.id)?.figures ?? []);
      planned = new Map(plannedEntries(figures).map((entry) => [planKey(entry), entry]));
      return planned;
    },
  };
}

/** The mean over the ground of the model; what is gone is in it only where nothing else is shown. */
export function meanOfModel({ zones, gone, years }: LedgerModel): LedgerYear {
  const ids = zones.length > 0 ? zones.map(({ id }) => id) : gone.map(({ zoneId }) => zoneId);
  return meanOfZones(ids.flatMap((id) => years.get(id) ?? []));
}
