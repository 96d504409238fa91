import type { CalibrationKind } from '../../yard/types';
import type { App } from '../app';

/** What of the equipment is asked for. */
export interface EquipmentAsk {
  /** null: the list. */
  readonly equipmentId: string | null;
  /** a calibration of it to begin with; null: its form. */
  readonly kind: CalibrationKind | null;
}

let asked: EquipmentAsk | null = null;

/** Opens the shelf on its equipment, from any other screen. */
export function openEquipment(
  app: App,
  equipmentId: string | null = null,
  kind: CalibrationKind | null = null,
): void {
  asked = { equipmentId, kind };
  app.setView({ step: 'shelf' });
}

/** Whether the equipment is asked for. */
export function isEquipmentAsked(): boolean {
  return asked !== null;
}

/** What is asked for, which then is asked for no more. */
export function takeEquipmentAsk(): EquipmentAsk | null {
  const ask = asked;
  asked = null;
  return ask;
}
