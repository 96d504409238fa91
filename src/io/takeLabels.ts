import { addProduct, replaceProduct } from '../yard/edits';
import type { LabelRate, Pack, Product, ProductUse, Yard } from '../yard/types';
import { withoutStock } from './writeLabels';

/** How a label of a file stands to the shelf. */
export interface LabelMatch {
  readonly label: Product;
  /** the product of the shelf with its name; null: there is none. */
  readonly present: Product | null;
  /** members in which the two differ, prices and stock aside; none where they say the same. */
  readonly differs: readonly (keyof Product)[];
}

/** Holds labels against the shelf, by their names (letters large or small alike). */
export function matchLabels(shelf: readonly Product[], labels: readonly Product[]): readonly LabelMatch[] {
  const named = (name: string) => name.trim().toLowerCase();
  return labels.map((label) => {
    const present = shelf.find((each) => named(each.name) === named(label.name)) ?? null;
    return { label, present, differs: present === null ? [] : differingMembers(present, label) };
  });
}

/** What is done with a label: a new product under a name that is free, or in the place of one of the shelf. */
export type LabelPick =
  | { readonly label: Product; readonly how: 'add'; readonly id: string; readonly name: string }
  | { readonly label: Product; readonly how: 'replace'; readonly productId: string };

/**
 * The yard with labels taken up. Nothing that stands on something is lost by replacing: the product keeps
 * its id, packs keep their ids by what they hold, uses by their name and applicator; prices and stock that
 * the file does not tell stay, and so do packs on hand and uses (with their packs) that a visit or program
 * goes by.
 */
export function takeLabels(yard: Yard, picks: readonly LabelPick[]): Yard {
  let next = yard;
  for (const pick of picks) {
    if (pick.how === 'add') {
      next = addProduct(next, { ...pick.label, id: pick.id, name: pick.name });
      continue;
    }
    const present = next.products.find((each) => each.id === pick.productId);
    if (present)
      next = replaceProduct(next, replacedLabel(present, pick.label, usesGoneBy(next, present.id)));
  }
  return next;
}

/** Ids of the uses of a product that doses of visits and programs name. */
function usesGoneBy(yard: Yard, productId: string): ReadonlySet<string> {
  const doses = [...yard.visits, ...yard.programs].flatMap((one) => [...one.doses]);
  return new Set(doses.flatMap((dose) => (dose.productId === productId && dose.useId ? [dose.useId] : [])));
}

function replacedLabel(present: Product, label: Product, used: ReadonlySet<string>): Product {
  const packIds = idsFor(label.packs, present.packs, (a, b) => isSameContent(a, b));
  const useIds = idsFor(
    label.otherUses,
    present.otherUses,
    (a, b) => a.name === b.name && a.applicator === b.applicator,
  );
  const pack = (id: string) => packIds.get(id) ?? id;
  const ratePack = (rate: LabelRate): LabelRate =>
    rate.basis === 'area-per-container' ? { ...rate, packId: pack(rate.packId) } : rate;
  const moved = <T extends Pick<ProductUse, 'rate' | 'packIds'>>(use: T): T => ({
    ...use,
    rate: ratePack(use.rate),
    packIds: use.packIds?.map(pack) ?? null,
  });
  const packs = label.packs.map((each) => {
    const id = pack(each.id);
    return { ...each, id, price: each.price ?? present.packs.find((one) => one.id === id)?.price ?? null };
  });
  const hasOwn = (items: readonly { readonly id: string }[], id: string) =>
    items.some((one) => one.id === id);
  const otherUses = label.otherUses.map((use) => moved({ ...use, id: useIds.get(use.id) ?? use.id }));
  const keptUses = present.otherUses.filter((use) => used.has(use.id) && !hasOwn(otherUses, use.id));
  const needs = (use: ProductUse, id: string) =>
    use.packIds?.includes(id) || (use.rate.basis === 'area-per-container' && use.rate.packId === id);
  const keptPacks = present.packs.filter(
    ({ id }) =>
      !hasOwn(packs, id) && ((present.onHand[id] ?? 0) > 0 || keptUses.some((use) => needs(use, id))),
  );
  const allPacks: readonly Pack[] = [...packs, ...keptPacks];
  const onHand = Object.fromEntries(
    allPacks.flatMap(({ id }) => {
      const own = label.packs.find((each) => pack(each.id) === id);
      const count = (own && label.onHand[own.id]) ?? present.onHand[id];
      return count === undefined ? [] : [[id, count]];
    }),
  );
  return {
    ...moved(label),
    id: present.id,
    packs: allPacks,
    otherUses: [...otherUses, ...keptUses],
    onHand,
  };
}

/** For each new entry the id of the present one it is like, else its own or one that is free. */
function idsFor<T extends { readonly id: string }>(
  next: readonly T[],
  present: readonly T[],
  isLike: (a: T, b: T) => boolean,
): ReadonlyMap<string, string> {
  const ids = new Map<string, string>();
  const taken = new Set(present.map((each) => each.id));
  const free = [...present];
  for (const each of next) {
    const at = free.findIndex((other) => isLike(each, other));
    const [twin] = at < 0 ? [] : free.splice(at, 1);
    let id = twin?.id ?? each.id;
    for (let n = 2; twin === undefined && taken.has(id); n++) id = `${each.id}-${n}`;
    taken.add(id);
    ids.set(each.id, id);
  }
  return ids;
}

function isSameContent(a: Pack, b: Pack): boolean {
  return (
    a.content.unit === b.content.unit &&
    Math.abs(a.content.value - b.content.value) <= 1e-6 * Math.abs(b.content.value)
  );
}

/** Members in which two labels differ; ids go by their place, figures by nine digits. */
function differingMembers(a: Product, b: Product): readonly (keyof Product)[] {
  const [x, y] = [saysOf(a), saysOf(b)];
  const keys = new Set([...Object.keys(x), ...Object.keys(y)]) as Set<keyof Product>;
  return [...keys].filter((key) => canonical(x[key]) !== canonical(y[key]));
}

/** All that a label says, its ids by their place. */
function saysOf(product: Product): Partial<Product> {
  const { id: _, onHand: __, ...label } = withoutStock(product);
  const ids = new Map(product.packs.map((pack, i) => [pack.id, `pack ${i}`]));
  const named = (id: string) => ids.get(id) ?? id;
  const use = <T extends Pick<ProductUse, 'rate' | 'packIds'>>(one: T): T => ({
    ...one,
    rate:
      one.rate.basis === 'area-per-container' ? { ...one.rate, packId: named(one.rate.packId) } : one.rate,
    packIds: one.packIds?.map(named) ?? null,
  });
  return {
    ...use(label),
    name: label.name.trim().toLowerCase(),
    packs: label.packs.map((pack) => ({ ...pack, id: '' })),
    otherUses: label.otherUses.map((one) => ({ ...use(one), id: '' })),
  };
}

/** Text that two values alike have in common: members in the order of their names, figures to nine digits. */
function canonical(value: unknown): string {
  return (
    JSON.stringify(value, (_key, one: unknown) => {
      if (typeof one === 'number') return Number(one.toPrecision(9));
      if (typeof one !== 'object' || one === null || Array.isArray(one)) return one;
      return Object.fromEntries(Object.entries(one).toSorted(([a], [b]) => (a < b ? -1 : 1)));
    }) ?? ''
  );
}
