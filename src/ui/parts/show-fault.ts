import type { LitElement } from 'lit';

/** Brings the words about a refused entry into view once they are drawn: below the fold nobody sees them. */
export function showFault(field: LitElement): void {
  void field.updateComplete.then(() =>
    field.shadowRoot?.querySelector('#fault')?.scrollIntoView({ block: 'nearest' }),
  );
}
