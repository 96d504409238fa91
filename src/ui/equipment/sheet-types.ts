import type { Quantity } from '../../units/choices';
import type { Applicator } from '../../yard/types';

/** One thing to be read, with the name it is kept by. */
export type SheetField =
  | {
      readonly type: 'quantity';
      readonly key: string;
      readonly label: string;
      readonly quantity: Quantity;
      readonly unit?: string;
      readonly max: number;
    }
  | { readonly type: 'times'; readonly label: string }
  | {
      readonly type: 'quantities';
      readonly key: string;
      readonly label: string;
      readonly quantity: Quantity;
      readonly unit?: string;
      readonly max: number;
    }
  | { readonly type: 'counts'; readonly key: string; readonly label: string }
  | { readonly type: 'draw' }
  | { readonly type: 'pans' }
  | { readonly type: 'product'; readonly label: string; readonly isNeeded: boolean }
  | { readonly type: 'dial' }
  | { readonly type: 'coats' };

/** One thing to do in the yard, and what is read by it. */
export interface SheetStep {
  readonly words: string;
  readonly fields: readonly SheetField[];
}

/** A sheet to calibrate by. */
export interface CalibrationSheet {
  /** things to have at hand. */
  readonly needs: string;
  readonly steps: readonly SheetStep[];
}

/** Repeated times, by the stopwatch. */
export const TIMES: SheetField = { type: 'times', label: 'Time' };

/** A length to be read. */
export function length(key: string, label: string): SheetField {
  return { type: 'quantity', key, label, quantity: 'length', max: 1000 };
}

/** A step with its fields. */
export function step(words: string, ...fields: readonly SheetField[]): SheetStep {
  return { words, fields };
}

/** What strews from a hopper. */
export const isSpreader = (applicator: Applicator) =>
  applicator === 'broadcast-spreader' || applicator === 'drop-spreader';
