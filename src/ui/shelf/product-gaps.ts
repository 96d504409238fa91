import type { Issue, Product } from '../../yard/types';

/** What a field that nobody has filled in yet asks for, by the code of its issue. */
const GAP_WORDS: Readonly<Record<string, string>> = {
  'pack-empty': 'what one full pack holds',
  'rate-not-positive': 'the label rate',
  'rate-no-coverage': 'the area that one pack covers',
  'rate-no-nutrient': 'the analysis, which a rate by a nutrient goes by',
  'rate-pack-missing': 'which pack covers the area',
  'rate-no-seed-tag': 'purity and germination of the seed tag',
  'rate-no-lime-value': 'the effective neutralising value of the lime',
};

/** Key of a field in the set of fields left: a pack's content by the pack's id, or the rate of a use (null: the first). */
export function fieldKey(field: { readonly packId: string } | { readonly useId: string | null }): string {
  return 'packId' in field ? `pack ${field.packId}` : `rate ${field.useId ?? ''}`;
}

function keyOf(issue: Issue, product: Product): string {
  const [, list, index] = issue.place.path?.match(/^(packs|otherUses)\[(\d+)\]/) ?? [];
  if (list === 'packs') return fieldKey({ packId: product.packs[Number(index)]?.id ?? '' });
  return fieldKey({ useId: product.otherUses[Number(index)]?.id ?? null });
}

/**
 * The issues of a product with those of empty fields that were not left yet turned into quiet notes:
 * a form just opened has nothing wrong in it.
 * @param left keys (`fieldKey`) of the fields that were gone to and left
 */
export function quietGaps(issues: readonly Issue[], product: Product, left: ReadonlySet<string>): Issue[] {
  return issues.map((issue) => {
    const words = GAP_WORDS[issue.code];
    if (words === undefined || left.has(keyOf(issue, product))) return issue;
    return { ...issue, code: 'still-empty', severity: 'note', message: `Still to fill in: ${words}.` };
  });
}

/** "2 entries cannot be right", or what is still to fill in; null when all is well. */
export function flagWords(
  issues: readonly Issue[],
): { readonly words: string; readonly isFault: boolean } | null {
  const errors = issues.filter((issue) => issue.severity === 'error').length;
  if (errors > 0)
    return {
      words: errors === 1 ? 'One entry cannot be right' : `${errors} entries cannot be right`,
      isFault: true,
    };
  const gaps = issues.filter((issue) => issue.code === 'still-empty').length;
  if (gaps === 0) return null;
  return {
    words: gaps === 1 ? 'One entry still to fill in' : `${gaps} entries still to fill in`,
    isFault: false,
  };
}
