import type { HatchId } from '../draft/hatches';
import type { VesselHatchId } from '../draft/vesselHatches';
import type { WalkSymbolId } from '../draft/walkLines';
import type { MarkKind } from '../yard/types';

export const SHEET_PARTS = [
  'map',
  'zones',
  'products',
  'order',
  'passes',
  'rinse',
  'cautions',
  'record',
] as const;
export type SheetPart = (typeof SHEET_PARTS)[number];

export interface SheetOptions {
  readonly paper: 'letter' | 'a4';
  readonly orientation: 'auto' | 'portrait' | 'landscape';
  /** 'auto', or the scale's second number: 240 stands for 1:240. */
  readonly scale: 'auto' | number;
  readonly parts: readonly SheetPart[];
  readonly bigType: boolean;
  /** dose of the visit whose passes are drawn and listed; null or absent: all of them, one map each. */
  readonly doseId?: string | null;
  /** the day the sheet is drawn, YYYY-MM-DD. */
  readonly drawnOn: string;
}

/** Sizes in mm. */
export interface Paper {
  readonly name: 'letter' | 'a4';
  readonly landscape: boolean;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marginMm: number;
}

/** One thing drawn on the map page; x to the right, y down, mm from the paper's upper left corner. */
export type Drawn =
  | {
      readonly type: 'area';
      readonly d: string;
      readonly hatch: HatchId | VesselHatchId | null;
      readonly strokeMm: number;
      readonly paper: boolean;
    }
  | {
      readonly type: 'line';
      readonly d: string;
      readonly widthMm: number;
      readonly dashMm: readonly number[];
      readonly role: string;
      /** dots of a dotted line are round. */
      readonly isRound?: boolean;
    }
  | {
      readonly type: 'text';
      readonly x: number;
      readonly y: number;
      readonly sizeMm: number;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly bold: boolean;
      readonly halo: boolean;
      readonly light: boolean;
    }
  | {
      readonly type: 'badge';
      /** `round`: a zone; `square`: an edge; `disc`: a zone's place in the walk; `tag`: a level on the way; `out`: a vessel runs out. */
      readonly shape: 'round' | 'square' | 'disc' | 'tag' | 'out';
      readonly x: number;
      readonly y: number;
      readonly halfW: number;
      readonly halfH: number;
      readonly sizeMm: number;
      readonly text: string;
    }
  | {
      readonly type: 'mark';
      readonly kind: MarkKind;
      readonly x: number;
      readonly y: number;
      /** of the usual size; 1 where absent. */
      readonly scale?: number;
    }
  /** where a walk begins or ends. */
  | {
      readonly type: 'sign';
      readonly sign: WalkSymbolId;
      readonly x: number;
      readonly y: number;
      readonly scale?: number;
    };

export interface MapPage {
  readonly type: 'map';
  /** 240 stands for 1:240. */
  readonly ratio: number;
  readonly scaleWords: string;
  readonly bar: {
    readonly x: number;
    readonly y: number;
    readonly lengthMm: number;
    readonly lengthM: number;
  };
  /** what is drawn within the map's frame; the renderer clips it there. */
  readonly frame: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly ground: readonly Drawn[];
  /** title block, key, legend, bar. */
  readonly margin: readonly Drawn[];
  readonly title: string;
}

export interface Column {
  readonly head: string;
  /** share of the width; the shares of a table add up to 1. */
  readonly share: number;
  readonly align: 'left' | 'right';
}
export type Block =
  | {
      readonly type: 'heading';
      readonly text: string;
      /** stands again on each further sheet that what is under it runs on to. */
      readonly runs?: boolean;
      /** such a repetition. */
      readonly continued?: boolean;
    }
  | { readonly type: 'text'; readonly text: string; readonly strong: boolean }
  | {
      readonly type: 'table';
      readonly caption: string;
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly string[])[];
      /** those of the rows that are set in bold; none by default. */
      readonly strong?: readonly (readonly string[])[];
      /** the last row is a sum. */
      readonly sum: boolean;
      /** the heading above says what the caption would: the caption is for screen readers only. */
      readonly plain: boolean;
      /** carried over from the sheet before. */
      readonly continued: boolean;
    }
  | { readonly type: 'list'; readonly ticks: boolean; readonly items: readonly string[] }
  | { readonly type: 'write'; readonly fields: readonly string[] };

export interface TablePage {
  readonly type: 'tables';
  readonly blocks: readonly Block[];
}

export interface SheetModel {
  readonly paper: Paper;
  readonly baseMm: number;
  readonly yardName: string;
  readonly visitName: string | null;
  readonly visitDate: string | null;
  readonly drawnOn: string;
  /** areas with their ± stand on it: the head says what ± is. */
  readonly hasAreas: boolean;
  readonly pages: readonly (MapPage | TablePage)[];
}
