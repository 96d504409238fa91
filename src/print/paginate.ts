import { countLines } from './textWidth';
import type { Block, TablePage } from './types';

type Table = Extract<Block, { type: 'table' }>;

export interface PageRoom {
  readonly widthMm: number;
  /** height for blocks, heads and feet taken off, mm. */
  readonly heightMm: number;
  /** size of running type, mm. */
  readonly baseMm: number;
}

/** Sizes as multiples of the base size; `sheetStyles.ts` uses the same ones. */
export const SIZES = {
  line: 1.28,
  headingSize: 1.3,
  headingAbove: 1.5,
  headingBelow: 0.4,
  cellPadX: 0.45,
  cellPadY: 0.28,
  rule: 0.1,
  captionSize: 1,
  blockBelow: 0.9,
  itemBelow: 0.35,
  tick: 1.9,
  writeHeight: 3.1,
} as const;

function rowHeight(cells: readonly string[], table: Table, room: PageRoom, bold: boolean): number {
  const { baseMm: b } = room;
  const lines = table.columns.map((column, i) => {
    const width = column.share * room.widthMm - 2 * SIZES.cellPadX * b;
    return countLines(cells[i] ?? '', width, b, bold);
  });
  return (Math.max(...lines) * SIZES.line + 2 * SIZES.cellPadY + SIZES.rule) * b;
}

function headHeight(table: Table, room: PageRoom): number {
  const heads = table.columns.map((column) => column.head);
  return (
    SIZES.line * SIZES.captionSize * room.baseMm + 0.3 * room.baseMm + rowHeight(heads, table, room, true)
  );
}

/** Height of a block on the page, mm, on the safe side. */
export function blockHeight(block: Block, room: PageRoom): number {
  const b = room.baseMm;
  switch (block.type) {
    case 'heading':
      return (SIZES.headingAbove + SIZES.headingSize * SIZES.line + SIZES.headingBelow) * b;
    case 'text':
      return (countLines(block.text, room.widthMm, b, block.strong) * SIZES.line + SIZES.blockBelow) * b;
    case 'list':
      return block.items.reduce((sum, item) => sum + itemHeight(item, room), SIZES.blockBelow * b);
    case 'write':
      return (Math.ceil(block.fields.length / 2) * SIZES.writeHeight + SIZES.blockBelow) * b;
    case 'table': {
      const rows = block.rows.reduce((sum, row, i) => sum + rowHeight(row, block, room, isSum(block, i)), 0);
      return headHeight(block, room) + rows + SIZES.blockBelow * b;
    }
  }
}

const isSum = (block: Table, i: number) => block.sum && i === block.rows.length - 1;

function itemHeight(item: string, room: PageRoom): number {
  const lines = countLines(item, room.widthMm - SIZES.tick * room.baseMm, room.baseMm);
  return (lines * SIZES.line + SIZES.itemBelow) * room.baseMm;
}

/**
 * Blocks set on pages: a row is never split, a table's head repeats, a heading stays with what follows
 * it, a head with its first row, and a sum with the row above it.
 */
export function paginate(blocks: readonly Block[], room: PageRoom): TablePage[] {
  const pages: Block[][] = [];
  let page: Block[] = [];
  let left = room.heightMm;
  const turn = () => {
    if (page.length > 0) pages.push(page);
    page = [];
    left = room.heightMm;
  };
  const put = (block: Block) => {
    page.push(block);
    left -= blockHeight(block, room);
  };
  const queue = [...blocks];
  while (queue.length > 0) {
    const block = queue.shift() as Block;
    const height = blockHeight(block, room);
    const lead = leadHeight([block, ...queue], room);
    if (lead > left && page.length > 0) turn();
    if (height <= left) {
      put(block);
      continue;
    }
    const [head, rest] = cutBlock(block, left, room);
    if (head) put(head);
    if (rest) {
      turn();
      if (!head && blockHeight(rest, room) > left && cutBlock(rest, left, room)[0] === null) put(rest);
      else queue.unshift(rest);
    }
  }
  turn();
  return pages.map((own) => ({ type: 'tables', blocks: own }));
}

/** Height that must be free for a block to begin: headings and strong lines with the start of what follows. */
function leadHeight(blocks: readonly Block[], room: PageRoom): number {
  let sum = 0;
  for (const block of blocks) {
    if (block.type === 'heading' || (block.type === 'text' && block.strong)) {
      sum += blockHeight(block, room);
      continue;
    }
    return sum + leastStart(block, room);
  }
  return sum;
}

function leastStart(block: Block, room: PageRoom): number {
  if (block.type === 'table') {
    const count = block.rows.length <= 4 ? block.rows.length : 2;
    return blockHeight({ ...block, rows: block.rows.slice(0, count), sum: false }, room);
  }
  if (block.type === 'list') return blockHeight({ ...block, items: block.items.slice(0, 2) }, room);
  return blockHeight(block, room);
}

function cutBlock(block: Block, left: number, room: PageRoom): [Block | null, Block | null] {
  if (block.type === 'table') {
    let n = block.rows.length - (block.sum ? 2 : 1);
    const headOf = (count: number): Table => ({ ...block, rows: block.rows.slice(0, count), sum: false });
    while (n > 0 && blockHeight(headOf(n), room) > left) n -= 1;
    return n > 0 ? [headOf(n), { ...block, rows: block.rows.slice(n), continued: true }] : [null, block];
  }
  if (block.type === 'list') {
    let n = block.items.length - 1;
    while (n > 0 && blockHeight({ ...block, items: block.items.slice(0, n) }, room) > left) n -= 1;
    return n > 0
      ? [
          { ...block, items: block.items.slice(0, n) },
          { ...block, items: block.items.slice(n) },
        ]
      : [null, block];
  }
  return [null, block];
}
