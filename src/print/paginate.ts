import { countLines } from './textWidth';
import type { Block, TablePage } from './types';

/** What the thick rules of a head or a sum add to their row, mm. */
const HEAD_RULES_MM = 0.6;

type Table = Extract<Block, { type: 'table' }>;
type Heading = Extract<Block, { type: 'heading' }>;

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
  /** more room before a left column that follows a right one. */
  turnGap: 0.8,
  rule: 0.1,
  captionBelow: 0.3,
  blockBelow: 0.9,
  itemBelow: 0.35,
  tick: 1.9,
  writeHeight: 3.1,
} as const;

function rowHeight(cells: readonly string[], table: Table, room: PageRoom, bold: boolean): number {
  const { baseMm: b } = room;
  const lines = table.columns.map((column, i) => {
    const gap = column.align === 'left' && table.columns[i - 1]?.align === 'right' ? SIZES.turnGap : 0;
    const width = column.share * room.widthMm - (2 * SIZES.cellPadX + gap) * b;
    return countLines(cells[i] ?? '', width, b, bold);
  });
  return (Math.max(...lines) * SIZES.line + 2 * SIZES.cellPadY + SIZES.rule) * b;
}

function headHeight(table: Table, room: PageRoom): number {
  const { baseMm: b } = room;
  const heads = table.columns.map((column) => column.head);
  const isUnseen = table.plain && !table.continued;
  const caption = isUnseen ? 0 : (SIZES.line + SIZES.captionBelow) * b;
  return caption + rowHeight(heads, table, room, true) + HEAD_RULES_MM;
}

/** Space kept above and under a block, mm; between two blocks the larger one counts. */
function spaceAbove(block: Block, room: PageRoom): number {
  return block.type === 'heading' ? SIZES.headingAbove * room.baseMm : 0;
}
function spaceBelow(block: Block, room: PageRoom): number {
  if (block.type === 'list') return Math.max(SIZES.blockBelow, SIZES.itemBelow) * room.baseMm;
  return (block.type === 'heading' ? SIZES.headingBelow : SIZES.blockBelow) * room.baseMm;
}

/** Height of a block on the page without the space round it, mm, on the safe side. */
export function blockHeight(block: Block, room: PageRoom): number {
  const b = room.baseMm;
  switch (block.type) {
    case 'heading':
      return (
        countLines(block.text, room.widthMm, SIZES.headingSize * b, true) * SIZES.headingSize * SIZES.line * b
      );
    case 'text':
      return countLines(block.text, room.widthMm, b, block.strong) * SIZES.line * b;
    case 'list':
      return block.items.reduce((sum, item) => sum + itemHeight(item, room), 0);
    case 'write':
      return Math.ceil(block.fields.length / 2) * SIZES.writeHeight * b;
    case 'table': {
      const rows = block.rows.reduce(
        (sum, row, i) =>
          sum + rowHeight(row, block, room, isSum(block, i) || block.strong?.includes(row) === true),
        0,
      );
      return headHeight(block, room) + rows + (block.sum ? HEAD_RULES_MM : 0);
    }
  }
}

/** Height of blocks one under the other from the top of a page, mm. */
export function stackHeight(blocks: readonly Block[], room: PageRoom): number {
  return blocks.reduce((sum, block, i) => {
    const before = blocks[i - 1];
    const space = before ? Math.max(spaceBelow(before, room), spaceAbove(block, room)) : 0;
    return sum + space + blockHeight(block, room);
  }, 0);
}

const isSum = (block: Table, i: number) => block.sum && i === block.rows.length - 1;

function itemHeight(item: string, room: PageRoom): number {
  const lines = countLines(item, room.widthMm - SIZES.tick * room.baseMm, room.baseMm);
  return (lines * SIZES.line + SIZES.itemBelow) * room.baseMm;
}

/**
 * Blocks set on pages: a row is never split, a table's head repeats, a heading stays with what follows
 * it, a head with its first row, and a sum with the row above it. A heading that `runs` stands again above what goes
 * on over a page.
 */
export function paginate(blocks: readonly Block[], room: PageRoom): TablePage[] {
  const pages: Block[][] = [];
  let page: Block[] = [];
  let running: Heading | null = null;
  const queue = [...blocks];
  const isBare = () => page.every((block) => block.type === 'heading' && block.continued);
  const turn = () => {
    if (!isBare()) pages.push(page);
    const goesOn = running !== null && queue.length > 0 && queue[0]?.type !== 'heading';
    page = goesOn && running ? [{ ...running, text: `${running.text}, continued`, continued: true }] : [];
  };
  const fits = (...more: readonly Block[]) => stackHeight([...page, ...more], room) <= room.heightMm;
  while (queue.length > 0) {
    if (!isBare() && !fits(...leastStart(queue))) turn();
    const block = queue.shift() as Block;
    if (block.type === 'heading') running = block.runs ? block : null;
    if (fits(block)) {
      page.push(block);
      continue;
    }
    const [head, rest] = cutBlock(block, fits);
    if (head) {
      page.push(head);
      queue.unshift(rest);
      turn();
    } else if (!isBare()) {
      queue.unshift(block);
      turn();
    } else {
      // taller than a page and not to be cut
      page.push(block);
    }
  }
  turn();
  return pages.map((own) => ({ type: 'tables', blocks: own }));
}

/** A table of at most so many rows should not be cut. */
const SHORT_TABLE = 8;

/** Pages that begin with a torn-off note or with the rest of a short table. */
export function countPoorBreaks(pages: readonly TablePage[]): number {
  return pages.filter((page, i) => {
    const first = page.blocks.find((block) => block.type !== 'heading' || !block.continued);
    const before = pages[i - 1]?.blocks.at(-1);
    if (!first || !before) return false;
    if (first.type === 'text') return !first.strong;
    if (first.type !== 'table' || before.type !== 'table' || !first.continued) return false;
    return before.rows.length + first.rows.length <= SHORT_TABLE;
  }).length;
}

/** What must stand together where a page goes on: headings and strong lines with the start of what follows. */
function leastStart(blocks: readonly Block[]): readonly Block[] {
  const lead: Block[] = [];
  for (const block of blocks) {
    if (block.type === 'table') {
      const count = block.rows.length <= 4 ? block.rows.length : 2;
      return [
        ...lead,
        count === block.rows.length ? block : { ...block, rows: block.rows.slice(0, count), sum: false },
      ];
    }
    if (block.type === 'list') return [...lead, { ...block, items: block.items.slice(0, 2) }];
    lead.push(block);
    if (block.type !== 'heading' && !(block.type === 'text' && block.strong)) return lead;
  }
  return lead;
}

/** The longest head of a table or list that fits, and the rest; no head when none does. */
function cutBlock(block: Block, fits: (head: Block) => boolean): readonly [Block | null, Block] {
  if (block.type === 'table') {
    for (let n = block.rows.length - (block.sum ? 2 : 1); n > 0; n--) {
      const head = { ...block, rows: block.rows.slice(0, n), sum: false };
      if (fits(head)) return [head, { ...block, rows: block.rows.slice(n), continued: true }];
    }
  } else if (block.type === 'list') {
    for (let n = block.items.length - 1; n > 0; n--) {
      const head = { ...block, items: block.items.slice(0, n) };
      if (fits(head)) return [head, { ...block, items: block.items.slice(n) }];
    }
  }
  return [null, block];
}
