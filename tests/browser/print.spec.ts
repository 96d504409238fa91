import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { PNG } from 'pngjs';
import { createServer, type ViteDevServer } from 'vite';
import type { PrintHarness } from './print/harness';

declare const printing: PrintHarness;

const DPI = 300;
const MM_PER_IN = 25.4;
const MM_PER_FT = 304.8;
/** ANSI Y14.1 size A and ISO 216 A4, mm. */
const PAPERS = { letter: [215.9, 279.4], a4: [210, 297] } as const;

let server: ViteDevServer;
let url = '';
let cacheDir = '';
test.beforeAll(async () => {
  const root = fileURLToPath(new URL('print', import.meta.url));
  const project = fileURLToPath(new URL('../..', import.meta.url));
  cacheDir = `${project}/node_modules/.vite-print-${process.pid}`;
  server = await createServer({
    root,
    configFile: false,
    logLevel: 'error',
    cacheDir,
    // a page under test is not loaded anew when a source is saved
    server: { host: '127.0.0.1', port: 0, fs: { allow: [project] }, hmr: false, watch: null },
    optimizeDeps: {
      include: ['lit', 'polylabel', 'clipper2-ts', 'geographiclib-geodesic', 'flatbush', 'valibot'],
    },
  });
  await server.listen();
  url = server.resolvedUrls?.local[0] ?? '';
});
test.afterAll(async () => {
  await server.close();
  await rm(cacheDir, { recursive: true, force: true });
});

const sample = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../sample-geojson/${name}.geojson`, import.meta.url), 'utf8'));

/** First and last dark pixel of a row between two columns. */
function darkSpan(png: PNG, y: number, from: number, to: number): [number, number] {
  let [first, last] = [-1, -1];
  for (let x = from; x <= to; x++) {
    if ((png.data[(y * png.width + x) * 4] ?? 255) > 127) continue;
    if (first < 0) first = x;
    last = x;
  }
  return [first, last];
}

const CASES = ['corner-lot', 'townhouse', 'long-acre'].flatMap((name) =>
  (['letter', 'a4'] as const).flatMap((paper) =>
    (['portrait', 'landscape'] as const).flatMap((orientation) =>
      [true, false].map((withVisit) => ({ name, paper, orientation, withVisit, bigType: false })),
    ),
  ),
);
CASES.push({ name: 'long-acre', paper: 'letter', orientation: 'portrait', withVisit: true, bigType: true });

for (const { name, paper, orientation, withVisit, bigType } of CASES) {
  const id = `${name}-${paper}-${orientation}${withVisit ? '' : '-areas'}${bigType ? '-big' : ''}`;
  test(`sheet ${id}`, async ({ page }) => {
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error' && !message.location().url.endsWith('/favicon.ico'))
        faults.push(message.text());
    });
    await page.goto(url);
    await page.waitForFunction(() => 'printing' in window);
    const model = await page.evaluate(([file, visit, options]) => printing.mount(file, visit, options), [
      sample(name),
      withVisit,
      { paper, orientation, bigType },
    ] as const);
    await page.emulateMedia({ media: 'print' });

    await test.step('nothing on a page of tables is cut off or reaches into the margin', async () => {
      const over = await page.$$eval('.ws-tables', (pages) =>
        pages.flatMap((one) => {
          const style = getComputedStyle(one);
          const edge = one.getBoundingClientRect();
          const bottom = edge.bottom - Number.parseFloat(style.paddingBottom);
          const right = edge.right - Number.parseFloat(style.paddingRight);
          return [...one.querySelectorAll('*')].flatMap((part) => {
            const box = part.getBoundingClientRect();
            return box.bottom > bottom + 0.5 || box.right > right + 0.5 ? (part.textContent ?? '') : [];
          });
        }),
      );
      expect(over).toEqual([]);
    });
    await test.step('text of the map stays on its page', async () => {
      const out = await page.$$eval('.ws-map svg', (maps) =>
        maps.flatMap((map) => {
          const edge = map.getBoundingClientRect();
          return [...map.querySelectorAll('text')].flatMap((text) => {
            const box = text.getBoundingClientRect();
            const within =
              box.left >= edge.left + 20 && box.right <= edge.right - 20 && box.bottom <= edge.bottom - 20;
            return within ? [] : (text.textContent ?? '');
          });
        }),
      );
      expect(out).toEqual([]);
    });

    const dir = test.info().outputPath();
    mkdirSync(dir, { recursive: true });
    const pdf = `${dir}/${id}.pdf`;
    await page.pdf({ path: pdf, preferCSSPageSize: true, printBackground: false });
    execFileSync('pdftoppm', ['-r', String(DPI), '-png', '-f', '1', '-l', '1', pdf, `${dir}/first`]);
    const info = execFileSync('pdfinfo', [pdf], { encoding: 'utf8' });
    expect(info).toMatch(new RegExp(`Pages:\\s+${model.pages.length}\\n`));
    const [short, long] = PAPERS[paper];
    const lying = orientation === 'landscape';
    const found = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(info);
    expect(Math.abs((Number(found?.[1]) / 72) * MM_PER_IN - (lying ? long : short))).toBeLessThan(0.4);
    expect(Math.abs((Number(found?.[2]) / 72) * MM_PER_IN - (lying ? short : long))).toBeLessThan(0.4);

    const map = model.pages[0];
    if (map?.type !== 'map') throw new Error('the first sheet is no map');
    const digits = model.pages.length > 9 ? '01' : '1';
    const png = PNG.sync.read(readFileSync(`${dir}/first-${digits}.png`));
    const px = DPI / MM_PER_IN;
    const row = Math.round((map.bar.y + 0.9) * px);
    const from = Math.round((map.bar.x - 2) * px);
    const [first, last] = darkSpan(png, row, from, Math.round((map.bar.x + map.bar.lengthMm + 2) * px));
    // The end ticks are 0.25 mm wide and centred on the ends.
    const measuredMm = (last - first + 1) / px - 0.25;
    const ends = await page.$$eval('.ws-map text', (texts) =>
      texts.map((text) => /^([\d,.]+) (ft|m)$/.exec(text.textContent ?? '')).filter((m) => m !== null),
    );
    const end = ends.find((m) => m !== null);
    const length = Number(end?.[1]?.replace(',', ''));
    const feet = /1 in = ([\d.]+) ft/.exec(map.scaleWords)?.[1];
    const ratio = feet ? (Number(feet) * MM_PER_FT) / MM_PER_IN : Number(/1:(\d+)/.exec(map.scaleWords)?.[1]);
    const trueMm = (length * (end?.[2] === 'ft' ? MM_PER_FT : 1000)) / ratio;
    test
      .info()
      .annotations.push({ type: 'bar', description: `${measuredMm.toFixed(3)} of ${trueMm.toFixed(3)} mm` });
    expect(Math.abs(measuredMm / trueMm - 1)).toBeLessThan(0.005);
    expect(faults).toEqual([]);
  });
}
