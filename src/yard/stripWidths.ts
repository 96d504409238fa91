import type { LocalRule, RuleTerms, Settings, Yard } from './types';

type BufferRound = Extract<RuleTerms, { readonly kind: 'buffer' }>['round'];

const MEMBERS: Readonly<Record<BufferRound, keyof Settings['strips']>> = {
  water: 'waterM',
  'storm-drain': 'stormDrainM',
  well: 'wellM',
};

/**
 * Widths of the no-apply strips, m: those of the settings, or wider where a buffer rule that is on asks for
 * more. Both are the person's own entries; the label and the local code decide.
 */
export function stripWidths(yard: Pick<Yard, 'settings' | 'rules'>): Settings['strips'] {
  const widths: Record<keyof Settings['strips'], number> = { ...yard.settings.strips };
  for (const { isOn, terms } of yard.rules) {
    if (!isOn || terms.kind !== 'buffer') continue;
    const member = MEMBERS[terms.round];
    widths[member] = Math.max(widths[member] || 0, terms.widthM);
  }
  return widths;
}

/**
 * The rule that sets the width of the strips round one kind of source: the widest of those that are on, the
 * first of them where several are as wide; null where the settings ask for as much.
 */
export function stripRule(
  { settings, rules }: Pick<Yard, 'settings' | 'rules'>,
  round: BufferRound,
): LocalRule | null {
  let [widest, widthM]: [LocalRule | null, number] = [null, settings.strips[MEMBERS[round]] || 0];
  for (const rule of rules) {
    if (!rule.isOn || rule.terms.kind !== 'buffer' || rule.terms.round !== round) continue;
    if (rule.terms.widthM > widthM) [widest, widthM] = [rule, rule.terms.widthM];
  }
  return widest;
}
