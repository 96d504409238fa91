import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import * as turf from '@turf/turf';
import { build, preview } from 'vite';
import type { Yard } from '../../src/yard/types';
import { CHROMIUM_ARGS, ensureTools, findBrowser } from '../browser/tools';
import { makeBenchYard } from './benchYard';

/** Most that one frame may take at 60 frames a second, ms. */
const FRAME_MS = 16.7;
const MOVES = 240;
/** A trace event of the browser, times in µs. */
interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly args?: { readonly name?: string };
}

/**
 * Drags a corner of the bench yard (200 zones, 5,000 corners) in Chromium with the whole program
 * running, and prints the main thread's time of each frame: pointer event, new document, areas, drawing,
 * panels, style, layout and paint. Beside it what turf alone takes for the area of the same zone less
 * those that cut it, with nothing drawn.
 */
export async function benchDrag(report: (label: string, times: readonly number[]) => void): Promise<void> {
  ensureTools();
  const yard = makeBenchYard();
  const outDir = await mkdtemp(join(tmpdir(), 'measured-yard-drag-'));
  await build({ logLevel: 'silent', build: { outDir, emptyOutDir: true } });
  const server = await preview({
    logLevel: 'silent',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0, open: false },
  });
  const browser = await chromium.launch({ executablePath: findBrowser() ?? undefined, args: CHROMIUM_ARGS });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(server.resolvedUrls?.local[0] ?? '');
    await page.locator('.yard-map').waitFor();
    const from = await openAndReshape(page, yard);
    const { handlers, frames } = await traceDrag(page, from);
    report('drag in Chromium, the handler with areas, map and panels', handlers);
    const late = frames.filter((time) => time > FRAME_MS).length;
    report(`  with style, layout, paint (${late} of ${frames.length} over ${FRAME_MS} ms)`, frames);
    report('  the dragged zone alone by turf, in Node, nothing drawn', turfTimes(yard));
  } finally {
    await browser.close();
    await server.close();
    await rm(outDir, { recursive: true, force: true });
  }
}

/** Puts the yard on the table and a middle zone under the reshape tool. @returns page px of one of its corners */
async function openAndReshape(page: Page, yard: Yard): Promise<readonly [number, number]> {
  await page.waitForFunction(() => Boolean((document.querySelector('yard-app') as Shell | null)?.app.isOpen));
  await page.evaluate(async (next) => {
    const { app } = document.querySelector('yard-app') as Shell;
    await app.adopt(next, true);
    const zone = next.zones[54];
    if (!zone) throw new Error('the bench yard is too small');
    app.setView({ selectedZoneIds: [zone.id] });
    app.map?.fit([zone.id]);
    app.setView({ tool: { type: 'reshape', zoneId: zone.id } });
  }, yard);
  const handle = page.locator('.yard-handle-corner').nth(3);
  await handle.waitFor();
  await page.waitForTimeout(1000);
  const box = await handle.boundingBox();
  if (!box) throw new Error('the corner has no box');
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** What this file needs of the running program. */
interface Shell extends Element {
  readonly app: {
    readonly isOpen: boolean;
    readonly map: { fit(ids: readonly string[]): void } | null;
    adopt(yard: Yard, isNew: boolean): Promise<void>;
    setView(change: object): void;
  };
}

/** Moves the corner to and fro with the real pointer. @returns ms of every move that was drawn */
async function traceDrag(page: Page, [x, y]: readonly [number, number]): Promise<Traced> {
  const client = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  client.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 0; i < 30; i++) await page.mouse.move(x + i / 10, y);
  await client.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel', 'devtools.timeline', '__metadata'] },
  });
  for (let i = 0; i < MOVES; i++) {
    await page.mouse.move(x + 6 * Math.sin(i / 7), y + 6 * Math.cos(i / 9));
    await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(resolve)));
  }
  const done = new Promise((resolve) => client.once('Tracing.tracingComplete', resolve));
  await client.send('Tracing.end');
  await done;
  await page.mouse.up();
  return frameTimes(events);
}

/** Main-thread times of a drag, ms: what the program does in a frame, and the whole frame. */
interface Traced {
  readonly handlers: readonly number[];
  readonly frames: readonly number[];
}

/** Frames shorter than this drew no move: the one that waited for the next, ms. */
const IDLE_MS = 2;

/** Time of every task of the page's main thread that ran an animation frame with work in it. */
function frameTimes(events: readonly TraceEvent[]): Traced {
  const main = new Set(
    events.filter((e) => e.name === 'thread_name' && e.args?.name === 'CrRendererMain').map((e) => e.tid),
  );
  const own = events.filter((event) => main.has(event.tid) && event.ph === 'X');
  const fired = own.filter((event) => event.name === 'FireAnimationFrame');
  const tasks = own.filter((event) => event.name.endsWith('RunTask') && event.dur !== undefined);
  const msOf = (all: readonly TraceEvent[]) =>
    all.map(({ dur }) => (dur ?? 0) / 1000).filter((time) => time > IDLE_MS);
  const drawn = tasks.filter((task) =>
    fired.some((f) => f.ts >= task.ts && f.ts < task.ts + (task.dur ?? 0)),
  );
  return { handlers: msOf(fired), frames: msOf(drawn) };
}

function turfTimes(yard: Yard): number[] {
  const polygon = (index: number) =>
    turf.multiPolygon(
      (yard.zones[index]?.parts ?? []).map((rings) => rings.map((r) => r.map((p) => [...p]))),
    );
  const lawn = polygon(54);
  const near = yard.zones
    .map((_zone, index) => polygon(index))
    .filter((other, index) => index !== 54 && turf.booleanIntersects(lawn, other))
    .slice(0, 8);
  return Array.from({ length: 40 }, () => {
    const start = performance.now();
    let net: ReturnType<typeof turf.difference> = lawn;
    for (const other of near) if (net) net = turf.difference(turf.featureCollection([net, other]));
    if (net && turf.area(net) < 0) throw new Error('an area is never negative');
    return performance.now() - start;
  }).slice(5);
}
