import type { SoilTest } from '../../yard/types';

/** Entry of one soil test. Parts of its form send `soil-change` with the changed fields. */
export interface SoilChange {
  /** names the field: changes of one field in a row are one step of undo. */
  readonly field: string;
  readonly change: Partial<SoilTest>;
}

/** Sends a change of the test up to the section. */
export function sendSoilChange(from: HTMLElement, field: string, change: Partial<SoilTest>): void {
  from.dispatchEvent(
    new CustomEvent<SoilChange>('soil-change', { detail: { field, change }, bubbles: true, composed: true }),
  );
}
