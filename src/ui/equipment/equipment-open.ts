import type { CalibrationKind } from '../../yard/types';
import type { App } from '../app';

/** A dose that a calibration is done for. */
export interface AskedDose {
  readonly productId: string;
  /** what the dose lays down in all its coats, kg/m²; null: not known by weight. */
  readonly kgPerM2: number | null;
  readonly coats: 1 | 2;
}

/** What of the equipment is asked for. */
export interface EquipmentAsk {
  /** null: the list. */
  readonly equipmentId: string | null;
  /** a calibration of it to begin with; null: its form. */
  readonly kind: CalibrationKind | null;
  /** the dose that it is to be held against; null: none. */
  readonly dose: AskedDose | null;
}

let asked: EquipmentAsk | null = null;

/** Opens the shelf on its equipment, from any other screen. */
export function openEquipment(
  app: App,
  equipmentId: string | null = null,
  kind: CalibrationKind | null = null,
  dose: AskedDose | null = null,
): void {
  asked = { equipmentId, kind, dose };
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
