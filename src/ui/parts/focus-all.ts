import type { LitElement } from 'lit';

/** Puts the cursor in a field once its part is drawn, all of it chosen. @param field asked for when it is drawn */
export function focusAll(part: LitElement, field: () => HTMLInputElement | undefined): void {
  void part.updateComplete.then(() => {
    field()?.focus();
    field()?.select();
  });
}
