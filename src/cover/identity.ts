const identities = new WeakMap<object, number>();
let last = 0;

/**
 * A number for an object, the same each time and no other's. To remember what a result came from by
 * numbers holds none of it in memory: results kept for old ground would else hold one another for ever.
 */
export function identityOf(thing: object): number {
  const known = identities.get(thing);
  if (known !== undefined) return known;
  last += 1;
  identities.set(thing, last);
  return last;
}
