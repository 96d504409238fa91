import { describe, expect, it } from 'vitest';
import { countPoorBreaks, paginate, stackHeight } from './paginate';
import type { Block } from './types';

const room = { widthMm: 180, heightMm: 100, baseMm: 3.35 };
const table = (count: number): Block => ({
  type: 'table',
  caption: 'Rows',
  columns: [
    { head: 'No.', share: 0.3, align: 'left' },
    { head: 'What', share: 0.7, align: 'left' },
  ],
  rows: [...Array.from({ length: count }, (_, i) => [String(i), `row ${i}`]), ['', 'sum']],
  sum: true,
  plain: false,
  continued: false,
});
const heading: Block = { type: 'heading', text: 'Head' };

describe('paginate', () => {
  it('keeps every row once, in order, and no page too full', () => {
    const pages = paginate([heading, table(70), heading, table(3)], room);
    const rows = pages.flatMap((p) =>
      p.blocks.flatMap((b) => (b.type === 'table' ? b.rows.map((r) => r[1]) : [])),
    );
    const rowsOf = (count: number) => [...Array.from({ length: count }, (_, i) => `row ${i}`), 'sum'];
    expect(rows).toEqual([...rowsOf(70), ...rowsOf(3)]);
    for (const page of pages) {
      expect(stackHeight(page.blocks, room)).toBeLessThanOrEqual(100);
      expect(page.blocks.at(-1)?.type).not.toBe('heading');
    }
  });
  it('does not leave a sum alone on a page', () => {
    for (let n = 5; n < 60; n++) {
      for (const page of paginate([heading, table(n)], room)) {
        for (const block of page.blocks)
          if (block.type === 'table') expect(block.rows).not.toEqual([['', 'sum']]);
      }
    }
  });
  it('leaves no room on a page for the row that begins the next', () => {
    const pages = paginate([heading, table(70)], room);
    for (const page of pages.slice(0, -1)) expect(stackHeight(page.blocks, room)).toBeGreaterThan(93);
  });
  it('repeats a heading that runs where its blocks go on, and no other', () => {
    const runs: Block = { type: 'heading', text: 'Passes', runs: true };
    const pages = paginate([runs, table(40), table(60), heading, table(40)], room);
    const heads = pages.map(({ blocks }) =>
      blocks.flatMap((block) => (block.type === 'heading' ? block.text : [])),
    );
    expect(heads[0]).toEqual(['Passes']);
    const last = heads.findIndex((texts) => texts.includes('Head'));
    expect(last).toBeGreaterThan(2);
    for (const texts of heads.slice(1, last)) expect(texts).toEqual(['Passes, continued']);
    for (const texts of heads.slice(last + 1)) expect(texts).toEqual([]);
    for (const page of pages) expect(stackHeight(page.blocks, room)).toBeLessThanOrEqual(100);
    const rows = pages.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.type === 'table' ? block.rows : [])),
    );
    expect(rows).toHaveLength(41 + 61 + 41);
    // a new heading at the head of a page is not preceded by the old one
    for (let n = 1; n < 40; n++)
      for (const { blocks } of paginate([runs, table(n), heading, table(3)], room))
        if (blocks[1]?.type === 'heading') expect(blocks[0]).not.toHaveProperty('continued');
  });
  it('counts a torn short table and a torn note as poor breaks', () => {
    const note: Block = { type: 'text', strong: false, text: 'A note.' };
    const page = (...blocks: Block[]) => ({ type: 'tables', blocks }) as const;
    const rest = (count: number): Block => ({ ...table(count), continued: true }) as Block;
    expect(countPoorBreaks([page(heading, table(3)), page(rest(2))])).toBe(1);
    expect(countPoorBreaks([page(heading, table(30)), page(rest(2))])).toBe(0);
    expect(countPoorBreaks([page(heading, table(3)), page(note)])).toBe(1);
    expect(countPoorBreaks([page(heading, table(3)), page(heading, note)])).toBe(0);
  });
  it('ends on a block taller than a page', () => {
    expect(paginate([{ type: 'write', fields: Array.from({ length: 99 }, () => 'x') }], room)).toHaveLength(
      1,
    );
  });
});
