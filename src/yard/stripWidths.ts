import type { RuleTerms, Settings, Yard } from './types';

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
