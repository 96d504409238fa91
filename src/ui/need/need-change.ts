import type { NutrientNeed } from '../../yard/types';

/** Detail of `need-change`: the field (typing in one makes one step of undo) and its new members. */
export interface NeedChange {
  readonly field: string;
  readonly change: Partial<NutrientNeed>;
}

/** Sends a change of the need up to its form. */
export function sendNeedChange(from: HTMLElement, field: string, change: Partial<NutrientNeed>): void {
  from.dispatchEvent(
    new CustomEvent<NeedChange>('need-change', { detail: { field, change }, bubbles: true, composed: true }),
  );
}
