import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { PNG } from 'pngjs';
import type { SheetOptions } from '../../src/print/types';
import type { PrintHarness } from './print/harness';
import { HARNESS } from './tools';

declare const printing: PrintHarness;

const DPI = 300;
const PX_PER_MM = DPI / 25.4;
const MM_PER_IN = 25.4;
const MM_PER_FT = 304.8;
/** ANSI Y14.1 size A and ISO 216 A4, mm. */
const PAPERS = { letter: [215.9, 279.4], a4: [210, 297] } as const;
const SAMPLES = ['corner-lot', 'townhouse', 'long-acre'] as const;

interface Sheet {
  readonly name: (typeof SAMPLES)[number];
  readonly paper: keyof typeof PAPERS;
  readonly orientation: 'portrait' | 'landscape';
  readonly withVisit: boolean;
  readonly bigType: boolean;
}

async function openSheets(page: Page): Promise<string[]> {
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' && !message.location().url.endsWith('/favicon.ico'))
      faults.push(message.text());
  });
  await page.goto(`${HARNESS.url}print/index.html`);
  await page.waitForFunction(() => 'printing' in window);
  await page.emulateMedia({ media: 'print' });
  return faults;
}

const readYard = (page: Page, name: Sheet['name']) =>
  page.evaluate(
    (file) => printing.read(file),
    JSON.parse(readFileSync(new URL(`../../sample-geojson/${name}.geojson`, import.meta.url), 'utf8')),
  );

const mount = (page: Page, { withVisit, paper, orientation, bigType }: Sheet) =>
  page.evaluate(([visit, options]) => printing.mount(visit, options), [
    withVisit,
    { paper, orientation, bigType } as Partial<SheetOptions>,
  ] as const);

/** What is cut off on the sheet in the page, or has left its page: texts, with where they are. */
const cutOff = (page: Page) =>
  page.evaluate(() => {
    const lost: string[] = [];
    for (const one of document.querySelectorAll('.ws-tables')) {
      const style = getComputedStyle(one);
      const edge = one.getBoundingClientRect();
      const bottom = edge.bottom - Number.parseFloat(style.paddingBottom);
      const right = edge.right - Number.parseFloat(style.paddingRight);
      for (const part of one.querySelectorAll('*')) {
        const box = part.getBoundingClientRect();
        if (box.bottom > bottom + 0.5 || box.right > right + 0.5) lost.push(`tables: ${part.textContent}`);
      }
    }
    for (const map of document.querySelectorAll('.ws-map svg')) {
      const edge = map.getBoundingClientRect();
      for (const text of map.querySelectorAll('text')) {
        const box = text.getBoundingClientRect();
        const isWithin =
          box.left >= edge.left + 20 && box.right <= edge.right - 20 && box.bottom <= edge.bottom - 20;
        if (!isWithin) lost.push(`map: ${text.textContent}`);
      }
    }
    return lost;
  });

/** What the scale bar on the page is said to be long, as printed at the scale the sheet states, mm. */
async function trueBarMm(page: Page, scaleWords: string): Promise<number> {
  const texts = await page.locator('.ws-map text').allTextContents();
  const end = texts.map((text) => /^([\d,.]+) (ft|m)$/.exec(text)).find((found) => found !== null);
  const feet = /1 in = ([\d.]+) ft/.exec(scaleWords)?.[1];
  const ratio = feet ? (Number(feet) * MM_PER_FT) / MM_PER_IN : Number(/1:(\d+)/.exec(scaleWords)?.[1]);
  return (Number(end?.[1]?.replace(',', '')) * (end?.[2] === 'ft' ? MM_PER_FT : 1000)) / ratio;
}

for (const name of SAMPLES) {
  test(`every sheet of ${name}: nothing is cut off, the bar is as long as the scale says`, async ({
    page,
  }) => {
    const faults = await openSheets(page);
    await readYard(page, name);
    for (const paper of ['letter', 'a4'] as const)
      for (const orientation of ['portrait', 'landscape'] as const)
        for (const withVisit of [true, false])
          for (const bigType of withVisit ? [false, true] : [false]) {
            const sheet = { name, paper, orientation, withVisit, bigType };
            const { pages } = await mount(page, sheet);
            expect(await cutOff(page), JSON.stringify(sheet)).toEqual([]);
            const map = pages[0];
            if (map?.type !== 'map') throw new Error('the first sheet is no map');
            const trueMm = await trueBarMm(page, map.scaleWords);
            expect(Math.abs(map.bar.lengthMm / trueMm - 1), JSON.stringify(sheet)).toBeLessThan(0.005);
          }
    expect(faults).toEqual([]);
  });
}

/** First and last dark pixel of a row. */
function darkSpan(png: PNG, y: number): [number, number] {
  let [first, last] = [-1, -1];
  for (let x = 0; x < png.width; x++) {
    if ((png.data[(y * png.width + x) * 4] ?? 255) > 127) continue;
    if (first < 0) first = x;
    last = x;
  }
  return [first, last];
}

/** Pixels of the page that are neither grey, white nor black. */
function colouredPixels(png: PNG): number {
  let count = 0;
  for (let i = 0; i < png.data.length; i += 4) {
    const [r = 0, g = 0, b = 0] = png.data.subarray(i, i + 3);
    if (Math.max(r, g, b) - Math.min(r, g, b) > 8) count++;
  }
  return count;
}

/** Each yard, both papers, both ways of lying, both systems of units, large type: as paper comes out of the printer. */
const PRINTED: readonly Sheet[] = [
  { name: 'corner-lot', paper: 'letter', orientation: 'portrait', withVisit: true, bigType: false },
  { name: 'corner-lot', paper: 'a4', orientation: 'landscape', withVisit: false, bigType: false },
  { name: 'townhouse', paper: 'a4', orientation: 'portrait', withVisit: true, bigType: false },
  { name: 'long-acre', paper: 'letter', orientation: 'landscape', withVisit: true, bigType: true },
];

for (const sheet of PRINTED) {
  const { name, paper, orientation, withVisit, bigType } = sheet;
  const id = `${name}-${paper}-${orientation}${withVisit ? '' : '-areas'}${bigType ? '-big' : ''}`;
  test(`printed ${id}: paper, pages, black and white, the bar measured`, async ({ page }) => {
    const faults = await openSheets(page);
    await readYard(page, name);
    const model = await mount(page, sheet);
    const dir = test.info().outputPath();
    mkdirSync(dir, { recursive: true });
    const pdf = `${dir}/${id}.pdf`;
    await page.pdf({ path: pdf, preferCSSPageSize: true, printBackground: false });

    const info = execFileSync('pdfinfo', [pdf], { encoding: 'utf8' });
    expect(info).toMatch(new RegExp(`Pages:\\s+${model.pages.length}\\n`));
    const [short, long] = PAPERS[paper];
    const isLying = orientation === 'landscape';
    const found = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(info);
    expect(Math.abs((Number(found?.[1]) / 72) * MM_PER_IN - (isLying ? long : short))).toBeLessThan(0.4);
    expect(Math.abs((Number(found?.[2]) / 72) * MM_PER_IN - (isLying ? short : long))).toBeLessThan(0.4);

    /** The first page turned into pixels: all of it, or the box of it at `px`. */
    const picture = (dpi: number, px: { x: number; y: number; width: number; height: number } | null) => {
      const cut = px ? ['-x', px.x, '-y', px.y, '-W', px.width, '-H', px.height].map(String) : [];
      const file = `${dir}/first-${dpi}`;
      execFileSync('pdftoppm', ['-r', `${dpi}`, '-png', '-f', '1', '-singlefile', ...cut, pdf, file]);
      return PNG.sync.read(readFileSync(`${file}.png`));
    };
    expect(colouredPixels(picture(50, null))).toBe(0);
    const map = model.pages[0];
    if (map?.type !== 'map') throw new Error('the first sheet is no map');
    const strip = {
      x: Math.round((map.bar.x - 2) * PX_PER_MM),
      y: Math.round((map.bar.y + 0.9) * PX_PER_MM),
      width: Math.round((map.bar.lengthMm + 4) * PX_PER_MM),
      height: 1,
    };
    const [first, last] = darkSpan(picture(DPI, strip), 0);
    // The end ticks are 0.25 mm wide and centred on the ends.
    const measuredMm = (last - first + 1) / PX_PER_MM - 0.25;
    const trueMm = await trueBarMm(page, map.scaleWords);
    test
      .info()
      .annotations.push({ type: 'bar', description: `${measuredMm.toFixed(3)} of ${trueMm.toFixed(3)} mm` });
    expect(Math.abs(measuredMm / trueMm - 1)).toBeLessThan(0.005);
    expect(faults).toEqual([]);
  });
}
