import type { Issue, Product } from '../yard/types';
import { labelIssue } from './labelIssue';

/** What cannot be right in the list of packs and what of them is on hand. */
export function checkPacks(product: Product): Issue[] {
  if (product.packs.length === 0) {
    const sentence = 'add at least one pack size, so that containers can be counted.';
    return [labelIssue(product, 'no-packs', 'packs', sentence)];
  }
  const ids = product.packs.map((pack) => pack.id);
  const strangers = Object.keys(product.onHand)
    .filter((packId) => !ids.includes(packId))
    .map((packId) =>
      labelIssue(
        product,
        'on-hand-unknown',
        `onHand.${packId}`,
        `a count of packs on hand names a pack size (${packId}) that is not listed; it is left out.`,
        'warning',
      ),
    );
  const known = product.packs.flatMap((pack, i) => {
    const path = `packs[${i}]`;
    const issues: Issue[] = [];
    const add = (code: string, at: string, sentence: string) =>
      issues.push(labelIssue(product, code, at, sentence));
    const first = ids.indexOf(pack.id);
    if (first < i)
      add(
        'pack-id-double',
        `${path}.id`,
        `pack ${i + 1} has the same id as pack ${first + 1} (${pack.id}), so they cannot be told apart; take one out and add it anew.`,
      );
    if (!(pack.content.value > 0))
      add('pack-empty', `${path}.content`, `pack ${i + 1} must hold more than zero.`);
    if (pack.price !== null && !(pack.price >= 0))
      add('price-negative', `${path}.price`, `the price of pack ${i + 1} cannot be less than zero.`);
    const onHand = product.onHand[pack.id];
    if (onHand !== undefined && !(onHand >= 0))
      add(
        'on-hand-negative',
        `onHand.${pack.id}`,
        `what is on hand of pack ${i + 1} cannot be less than zero.`,
      );
    return issues;
  });
  return [...known, ...strangers];
}
