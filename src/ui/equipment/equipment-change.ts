import type { Equipment } from '../../yard/types';

/** Entry of one piece of equipment. Parts of its form send `equipment-change` with the changed fields. */
export interface EquipmentChange {
  /** names the field: changes of one field in a row are one step of undo. */
  readonly field: string;
  readonly change: Partial<Equipment>;
}

/** Sends a change of the equipment up to the list. */
export function sendEquipmentChange(from: HTMLElement, field: string, change: Partial<Equipment>): void {
  const detail: EquipmentChange = { field, change };
  from.dispatchEvent(
    new CustomEvent<EquipmentChange>('equipment-change', { detail, bubbles: true, composed: true }),
  );
}
