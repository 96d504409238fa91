import { choiceWithout } from './choose';
import type {
  BaseLayer,
  Mark,
  NutrientCaps,
  Parcel,
  Product,
  Settings,
  Visit,
  Yard,
  Zone,
  ZoneChoice,
} from './types';

/*
 * Pure edits: a new document that shares every untouched part, or the very same document when
 * nothing changes (the session takes that as "no step"). Replacing or removing what is not there
 * changes nothing; adding an id twice is a programmer's mistake and throws.
 */

type OwnPicture = Extract<BaseLayer, { kind: 'own-picture' }>;

interface Named {
  readonly id: string;
}

function added<T extends Named>(items: readonly T[], item: T, what: string): readonly T[] {
  if (items.some((other) => other.id === item.id)) {
    throw new Error(`The yard already has a ${what} with the id "${item.id}".`);
  }
  return [...items, item];
}

function replaced<T extends Named>(items: readonly T[], item: T): readonly T[] {
  const index = items.findIndex((other) => other.id === item.id);
  if (index < 0 || items[index] === item) return items;
  return items.with(index, item);
}

function removed<T extends Named>(items: readonly T[], ids: readonly string[]): readonly T[] {
  const left = items.filter((item) => !ids.includes(item.id));
  return left.length === items.length ? items : left;
}

/** Adds a zone after the others. @throws Error when a zone has its id. */
export function addZone(yard: Yard, zone: Zone): Yard {
  return { ...yard, zones: added(yard.zones, zone, 'zone') };
}

/** Puts `zone` in the place of the zone with its id. */
export function replaceZone(yard: Yard, zone: Zone): Yard {
  const zones = replaced(yard.zones, zone);
  return zones === yard.zones ? yard : { ...yard, zones };
}

/** Removes zones, and their ids from every choice: of visits, doses, soil tests, needs and programs. */
export function removeZones(yard: Yard, zoneIds: readonly string[]): Yard {
  const zones = removed(yard.zones, zoneIds);
  if (zones === yard.zones) return yard;
  return {
    ...yard,
    zones,
    visits: mapped(yard.visits, (visit) => withoutZones(visit, zoneIds)),
    soilTests: mapped(yard.soilTests, (test) => onlyOwn(test, zoneIds)),
    needs: mapped(yard.needs, (need) => onlyOwn(need, zoneIds)),
    programs: mapped(yard.programs, (program) => withoutZones(program, zoneIds)),
  };
}

/** Moves a zone to place `toIndex` (0 is first; held within the list): later zones are drawn over earlier ones. */
export function reorderZone(yard: Yard, zoneId: string, toIndex: number): Yard {
  const from = yard.zones.findIndex((zone) => zone.id === zoneId);
  const zone = yard.zones[from];
  const to = Math.max(0, Math.min(yard.zones.length - 1, toIndex));
  if (zone === undefined || from === to) return yard;
  return { ...yard, zones: yard.zones.toSpliced(from, 1).toSpliced(to, 0, zone) };
}

/** Adds a mark. @throws Error when a mark has its id. */
export function addMark(yard: Yard, mark: Mark): Yard {
  return { ...yard, marks: added(yard.marks, mark, 'mark') };
}

/** Puts `mark` in the place of the mark with its id. */
export function replaceMark(yard: Yard, mark: Mark): Yard {
  const marks = replaced(yard.marks, mark);
  return marks === yard.marks ? yard : { ...yard, marks };
}

/** Removes a mark; no walk begins or ends at it any longer. */
export function removeMark(yard: Yard, markId: string): Yard {
  const marks = removed(yard.marks, [markId]);
  if (marks === yard.marks) return yard;
  const visits = mapped(yard.visits, (visit) => {
    if (visit.startMarkId !== markId && visit.endMarkId !== markId) return visit;
    const startMarkId = visit.startMarkId === markId ? null : visit.startMarkId;
    return { ...visit, startMarkId, endMarkId: visit.endMarkId === markId ? null : visit.endMarkId };
  });
  return { ...yard, marks, visits };
}

/** Adds a product to the shelf. @throws Error when a product has its id. */
export function addProduct(yard: Yard, product: Product): Yard {
  return { ...yard, products: added(yard.products, product, 'product') };
}

/** Puts `product` in the place of the product with its id. */
export function replaceProduct(yard: Yard, product: Product): Yard {
  const products = replaced(yard.products, product);
  return products === yard.products ? yard : { ...yard, products };
}

/**
 * Removes a product, and every dose of it from the programs and the visits still planned. Doses that are done
 * stay: what was laid down is history. Settings of a spreader for it go.
 */
export function removeProduct(yard: Yard, productId: string): Yard {
  const products = removed(yard.products, [productId]);
  if (products === yard.products) return yard;
  const visits = mapped(yard.visits, (visit) =>
    visit.doneOn === null ? withoutDoses(visit, productId) : visit,
  );
  const programs = mapped(yard.programs, (program) => withoutDoses(program, productId));
  const equipment = mapped(yard.equipment, (each) => {
    const settings = each.settings.filter((setting) => setting.productId !== productId);
    return settings.length === each.settings.length ? each : { ...each, settings };
  });
  return { ...yard, products, visits, programs, equipment };
}

/** Adds a visit. @throws Error when a visit has its id. */
export function addVisit(yard: Yard, visit: Visit): Yard {
  return { ...yard, visits: added(yard.visits, visit, 'visit') };
}

/** Puts `visit` in the place of the visit with its id. */
export function replaceVisit(yard: Yard, visit: Visit): Yard {
  const visits = replaced(yard.visits, visit);
  return visits === yard.visits ? yard : { ...yard, visits };
}

/** Removes a visit. The program it came from remembers the day, and does not put it back by itself. */
export function removeVisit(yard: Yard, visitId: string): Yard {
  const visits = removed(yard.visits, [visitId]);
  if (visits === yard.visits) return yard;
  const made = yard.visits.find((visit) => visit.id === visitId)?.program;
  const programs = mapped(yard.programs, (program) =>
    program.id === made?.id && !program.skips?.includes(made.date)
      ? { ...program, skips: [...(program.skips ?? []), made.date] }
      : program,
  );
  return { ...yard, visits, programs };
}

/** Lists of the yard beside zones, marks, products and visits, whose entries stand by themselves. */
type OwnList = 'equipment' | 'soilTests' | 'needs' | 'programs' | 'rules' | 'overrides';

/** Adds an entry to one of the yard's lists. @throws Error when an entry has its id. */
export function addEntry<K extends OwnList>(yard: Yard, list: K, item: Yard[K][number]): Yard {
  return { ...yard, [list]: added<Named>(yard[list], item, 'entry') };
}

/** Puts `item` in the place of the entry with its id. */
export function replaceEntry<K extends OwnList>(yard: Yard, list: K, item: Yard[K][number]): Yard {
  const items = replaced<Named>(yard[list], item);
  return items === yard[list] ? yard : { ...yard, [list]: items };
}

/** Removes an entry. A program's visits stay, as made by hand; doses that named a piece of equipment take what is at hand. */
export function removeEntry(yard: Yard, list: OwnList, id: string): Yard {
  const items = removed<Named>(yard[list], [id]);
  if (items === yard[list]) return yard;
  const left: Partial<Record<OwnList, (visit: Visit) => Visit>> = {
    programs: (visit) => (visit.program?.id === id ? { ...visit, program: null } : visit),
    equipment: (visit) => {
      const doses = mapped(visit.doses, (dose) =>
        dose.passes.equipmentId === id ? { ...dose, passes: { ...dose.passes, equipmentId: null } } : dose,
      );
      return doses === visit.doses ? visit : { ...visit, doses };
    },
  };
  const change = left[list];
  const visits = change === undefined ? yard.visits : mapped(yard.visits, change);
  return { ...yard, visits, [list]: items };
}

/** Sets the given settings and leaves the others. */
export function changeSettings(yard: Yard, change: Partial<Settings>): Yard {
  const keys = Object.keys(change) as (keyof Settings)[];
  if (keys.every((key) => Object.is(yard.settings[key], change[key]))) return yard;
  return { ...yard, settings: { ...yard.settings, ...change } };
}

/** Changes a picture of the person's own in the list and, where it is the one shown, under the drawing. */
export function changePicture(yard: Yard, id: string, change: (picture: OwnPicture) => OwnPicture): Yard {
  const { baseLayer, ownLayers } = yard.settings;
  const edit = (layer: BaseLayer): BaseLayer =>
    layer.kind === 'own-picture' && layer.id === id ? change(layer) : layer;
  return changeSettings(yard, { baseLayer: edit(baseLayer), ownLayers: ownLayers.map(edit) });
}

/** Sets or removes the outline of the property. */
export function setParcel(yard: Yard, parcel: Parcel | null): Yard {
  return yard.parcel === parcel ? yard : { ...yard, parcel };
}

/** Sets what no zone should get more of; the very yard when nothing changes. */
export function setCaps(yard: Yard, caps: NutrientCaps): Yard {
  const keys = Object.keys(caps) as (keyof NutrientCaps)[];
  return keys.every((key) => yard.caps[key] === caps[key]) ? yard : { ...yard, caps };
}

/** Names the yard. */
export function rename(yard: Yard, name: string): Yard {
  return yard.name === name ? yard : { ...yard, name };
}

/** Maps and keeps the very list when no entry changed. */
function mapped<T>(items: readonly T[], change: (item: T) => T): readonly T[] {
  const next = items.map(change);
  return next.every((item, i) => item === items[i]) ? items : next;
}

function withoutDoses<T extends { readonly doses: readonly { readonly productId: string }[] }>(
  item: T,
  productId: string,
): T {
  const doses = item.doses.filter((dose) => dose.productId !== productId);
  return doses.length === item.doses.length ? item : { ...item, doses };
}

function onlyOwn<T extends { readonly zones: ZoneChoice }>(item: T, zoneIds: readonly string[]): T {
  const zones = choiceWithout(item.zones, zoneIds);
  return zones === item.zones ? item : { ...item, zones };
}

interface WithDoses {
  readonly zones: ZoneChoice;
  readonly doses: readonly { readonly zones: ZoneChoice | null }[];
}

function withoutZones<T extends WithDoses>(item: T, zoneIds: readonly string[]): T {
  const doses = mapped(item.doses, (dose) => {
    if (dose.zones === null) return dose;
    const own = choiceWithout(dose.zones, zoneIds);
    return own === dose.zones ? dose : { ...dose, zones: own };
  });
  const own = onlyOwn(item, zoneIds);
  return doses === item.doses ? own : { ...own, doses };
}
