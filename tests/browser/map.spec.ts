import { expect, type Page, test } from '@playwright/test';
import type { Tool } from '../../src/map/types';
import { axeFindings } from './journey';
import type { Harness } from './map/harness';
import { HARNESS } from './tools';

declare const harness: Harness;

async function openMap(page: Page): Promise<void> {
  page.on('pageerror', (error) => {
    throw error;
  });
  await page.goto(`${HARNESS.url}map/index.html`);
  await page.waitForFunction(() => 'harness' in window);
}
/** Takes a tool and waits until it is fetched. */
async function setTool(page: Page, tool: Tool): Promise<void> {
  await page.evaluate((next) => harness.map.setTool(next), tool);
  await expect(page.locator('#map')).not.toHaveClass(/is-waiting/);
}
const drawTool = (shape: Extract<Tool, { type: 'draw' }>['shape']): Tool => ({
  type: 'draw',
  shape,
  purpose: 'zone',
  kind: 'bed',
  zoneId: null,
});
const takeLog = (page: Page) => page.evaluate(() => harness.log.splice(0));
const names = (log: unknown[][]) => log.map(([name]) => name);
const lastRing = (page: Page) => page.evaluate(() => harness.yard().zones.at(-1)?.parts[0]?.[0] ?? []);
const corners = (page: Page, id: string) =>
  page.evaluate((zoneId) => harness.yard().zones.find((zone) => zone.id === zoneId)?.parts[0]?.[0] ?? [], id);

async function middleOf(page: Page, label: string): Promise<[number, number]> {
  const found = await page.getByLabel(label, { exact: true }).boundingBox();
  if (!found) throw new Error(`nothing is called ${label}`);
  return [found.x + found.width / 2, found.y + found.height / 2];
}

test('asks no other host for anything until a base layer is chosen, then asks WMS as its version wants', async ({
  page,
}) => {
  const asked: URL[] = [];
  await page.route(/\.example\//, (route) => {
    asked.push(new URL(route.request().url()));
    return route.abort();
  });
  const hosts = new Set<string>();
  page.on('request', (request) => hosts.add(new URL(request.url()).hostname));
  await openMap(page);
  await page.mouse.wheel(0, -300);
  await page.waitForTimeout(300);
  expect([...hosts].filter((host) => host !== '127.0.0.1' && host !== '')).toEqual([]);

  for (const version of ['1.1.1', '1.3.0'] as const) {
    await page.evaluate(
      (v) =>
        harness.setBase({
          kind: 'wms',
          id: v,
          name: v,
          url: 'https://aerial.example/wms',
          layers: 'ortho',
          version: v,
          attribution: '<b>me</b>',
        }),
      version,
    );
    const parameterOf = (request: URL | undefined, name: string) =>
      request?.searchParams.get(name) ?? request?.searchParams.get(name.toUpperCase());
    const ofVersion = () => asked.find((request) => parameterOf(request, 'version') === version);
    await expect.poll(ofVersion).toBeDefined();
    const get = (name: string) => parameterOf(ofVersion(), name);
    // OGC 06-042: 1.3.0 asks by CRS; 1.1.1 (OGC 01-068r3) by SRS.
    expect(get(version === '1.3.0' ? 'crs' : 'srs')).toBe('EPSG:3857');
    expect(get('bbox')?.split(',')).toHaveLength(4);
  }
  await expect(page.locator('.leaflet-control-attribution')).toHaveText('<b>me</b>');
  await expect.poll(async () => names(await takeLog(page))).toContain('message');
});

test('draws a polygon by mouse, snaps to a neighbour’s corner exactly, refuses a crossing', async ({
  page,
}) => {
  await openMap(page);
  const east = await corners(page, 'east');
  await setTool(page, { type: 'reshape', zoneId: 'east' });
  const [x, y] = await middleOf(page, 'Outline, corner 3 of 4');
  await setTool(page, drawTool('polygon'));
  await page.mouse.click(x + 5, y - 6);
  await page.mouse.click(x + 150, y);
  await page.mouse.click(x + 150, y + 150);
  await page.mouse.click(x + 60, y - 60);
  const refused = await takeLog(page);
  expect(refused).toEqual([['message', 'sides-cross']]);
  await expect(page.locator('.yard-crossing')).toBeVisible();
  await page.keyboard.press('Enter');
  expect(await takeLog(page)).toEqual([['message', 'corner-left-out']]);
  await page.keyboard.press('Enter');
  expect(names(await takeLog(page))).toEqual(['drawn', 'toolEnded']);
  const ring = await lastRing(page);
  expect(ring).toHaveLength(4);
  expect(ring[0]).toEqual(east[2]);
  expect(ring[3]).toEqual(ring[0]);
});

test('draws over zones with each library shape, and typed sides come out true', async ({ page }) => {
  await openMap(page);
  await setTool(page, drawTool('rectangle'));
  await expect(page.locator('#map')).toHaveClass(/is-drawing/);
  await page.waitForTimeout(1500);
  await page.mouse.click(600, 500);
  await page.evaluate(() => {
    harness.map.addSide(10, 60);
    harness.map.addSide(5, null);
  });
  expect(names(await takeLog(page))).toEqual(['drawn', 'toolEnded']);
  const area = () => page.evaluate(() => [...harness.measured().zones.values()].at(-1)?.grossM2 ?? 0);
  // 10 m by 5 m: 50 m2
  expect(Math.abs((await area()) - 50)).toBeLessThan(0.02);

  await setTool(page, drawTool('circle'));
  await page.waitForTimeout(300);
  await page.mouse.click(600, 500);
  await page.evaluate(() => harness.map.addSide(3, 10));
  expect(names(await takeLog(page))).toEqual(['drawn', 'toolEnded']);
  // pi r squared
  expect(Math.abs((await area()) - Math.PI * 9)).toBeLessThan(0.02);

  await setTool(page, drawTool('freehand'));
  await page.waitForTimeout(300);
  await page.mouse.move(700, 400);
  await page.mouse.down();
  for (let i = 0; i <= 30; i++) await page.mouse.move(700 + 60 * Math.sin(i / 5), 460 - 60 * Math.cos(i / 5));
  await page.mouse.up();
  expect(names(await takeLog(page))).toEqual(['drawn', 'toolEnded']);
});

test('a drag draws a rectangle with sides north and east, and a circle', async ({ page }) => {
  await openMap(page);
  const drag = async (from: readonly [number, number], to: readonly [number, number]) => {
    await page.mouse.move(...from);
    await page.mouse.down();
    await page.mouse.move(...to, { steps: 6 });
    await page.mouse.up();
    await expect.poll(async () => names(await takeLog(page))).toEqual(['drawn', 'toolEnded']);
  };
  const centre = await page.evaluate(() => harness.map.center());
  await setTool(page, drawTool('rectangle'));
  await page.waitForTimeout(1500);
  await drag([500, 700], [620, 780]);
  expect(await page.evaluate(() => harness.map.center())).toEqual(centre);
  const ring = await lastRing(page);
  expect(ring).toHaveLength(5);
  expect(new Set(ring.map(([lon]) => lon.toFixed(9))).size).toBe(2);
  expect(new Set(ring.map(([, lat]) => lat.toFixed(9))).size).toBe(2);
  const area = () => page.evaluate(() => [...harness.measured().zones.values()].at(-1)?.grossM2 ?? 0);
  const rectangle = await area();
  await setTool(page, drawTool('circle'));
  await page.waitForTimeout(300);
  await drag([500, 700], [560, 700]);
  // pi 60² px against 120 by 80 px; snapping off the neighbours' corners moves neither
  expect((await area()) / rectangle / ((Math.PI * 3600) / 9600)).toBeCloseTo(1, 1);
});

test('back a point keeps the first side of a rectangle', async ({ page }) => {
  await openMap(page);
  await setTool(page, drawTool('rectangle'));
  await page.waitForTimeout(1500);
  await page.mouse.click(600, 500);
  await page.evaluate(() => {
    harness.map.addSide(9, 60);
    harness.map.backOnePoint();
    harness.map.addSide(10, 60);
    harness.map.addSide(5, null);
  });
  expect(names(await takeLog(page))).toEqual(['drawn', 'toolEnded']);
  const area = await page.evaluate(() => [...harness.measured().zones.values()].at(-1)?.grossM2 ?? 0);
  // 10 m by 5 m: 50 m2
  expect(Math.abs(area - 50)).toBeLessThan(0.02);
});

test('draws square typed sides and takes a point back', async ({ page }) => {
  await openMap(page);
  await setTool(page, drawTool('polygon'));
  await page.evaluate(() => harness.map.setRightAngle(true));
  await page.mouse.click(700, 750);
  await page.evaluate(() => {
    harness.map.addSide(8, 75);
    harness.map.addSide(6, 165);
    harness.map.addSide(1, 255);
    harness.map.backOnePoint();
    harness.map.addSide(8, 255);
    harness.map.finish();
  });
  expect(names(await takeLog(page))).toEqual(['drawn', 'toolEnded']);
  const area = await page.evaluate(() => [...harness.measured().zones.values()].at(-1)?.grossM2 ?? 0);
  // 8 m by 6 m: 48 m2
  expect(Math.abs(area - 48)).toBeLessThan(0.02);
});

test('draws by keyboard alone', async ({ page }) => {
  await openMap(page);
  await setTool(page, drawTool('polygon'));
  await page.locator('#map').focus();
  for (const key of ['Space', 'Shift+ArrowRight', 'Space', 'Shift+ArrowDown', 'Space', 'Enter']) {
    await page.keyboard.press(key);
  }
  expect(names(await takeLog(page))).toEqual(['drawn', 'toolEnded']);
  expect(await lastRing(page)).toHaveLength(4);
});

test('reshapes by mouse and keys: one drag is one report, a crossing goes back', async ({ page }) => {
  await openMap(page);
  await setTool(page, { type: 'reshape', zoneId: 'east' });
  const drag = async (label: string, dx: number, dy: number) => {
    const [x, y] = await middleOf(page, label);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 4 });
    await page.mouse.move(x + dx, y + dy, { steps: 4 });
    await page.mouse.up();
  };
  await drag('Outline, corner 2 of 4', 40, 30);
  expect(await takeLog(page)).toEqual([['reshaped', 'east', 'Move corner']]);
  await drag('Outline, add a corner after 2', 30, 0);
  expect(await takeLog(page)).toEqual([['reshaped', 'east', 'Add corner']]);
  const [x, y] = await middleOf(page, 'Outline, corner 3 of 5');
  await page.mouse.click(x, y, { button: 'right' });
  expect(await takeLog(page)).toEqual([['reshaped', 'east', 'Delete corner']]);
  const before = await corners(page, 'east');
  const [fromX, fromY] = await middleOf(page, 'Outline, corner 3 of 4');
  const [leftX, topY] = await middleOf(page, 'Outline, corner 4 of 4');
  const [, lowY] = await middleOf(page, 'Outline, corner 1 of 4');
  await drag('Outline, corner 3 of 4', leftX - 80 - fromX, (topY + lowY) / 2 - fromY);
  expect(await takeLog(page)).toEqual([['message', 'sides-cross']]);
  expect(await corners(page, 'east')).toEqual(before);
  await page.getByLabel('Outline, corner 2 of 4', { exact: true }).focus();
  await page.keyboard.press('Shift+ArrowRight');
  expect(await takeLog(page)).toEqual([['reshaped', 'east', 'Move corner']]);
  const after = await corners(page, 'east');
  // one metre east at latitude 40.1: 1 / 85,270 degree (WGS 84 length of a degree of longitude there)
  expect(((after[1]?.[0] ?? 0) - (before[1]?.[0] ?? 0)) * 85_270).toBeCloseTo(1, 2);
  await drag('Move the whole zone', 20, -20);
  await drag('Turn the whole zone', 60, 30);
  expect(await takeLog(page)).toEqual([
    ['reshaped', 'east', 'Move zone'],
    ['reshaped', 'east', 'Turn zone'],
  ]);
  await page.keyboard.press('Escape');
  expect(names(await takeLog(page))).toEqual(['toolEnded']);
});

test('selects, splits, marks; names are text; axe finds nothing', async ({ page }) => {
  await openMap(page);
  await setTool(page, { type: 'reshape', zoneId: 'east' });
  const [x, y] = await middleOf(page, 'Move the whole zone');
  await setTool(page, { type: 'select' });
  await page.mouse.click(x, y);
  expect(await takeLog(page)).toEqual([['select', ['east']]]);
  await expect(page.locator('.yard-label', { hasText: '<img' })).toBeVisible();
  expect(await page.locator('.yard-label img').count()).toBe(0);
  await setTool(page, { type: 'split', zoneId: 'east' });
  await page.mouse.click(x, y - 300);
  await page.mouse.click(x + 10, y + 300);
  await page.keyboard.press('Enter');
  await setTool(page, { type: 'mark', kind: 'gate' });
  await page.mouse.click(x, y);
  expect(names(await takeLog(page))).toEqual(['splitLine', 'toolEnded', 'markPlaced', 'toolEnded']);
  await setTool(page, { type: 'reshape', zoneId: 'east' });
  expect(await axeFindings(page)).toEqual([]);
});

test.describe('by finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  test('draws by taps and moves and deletes a corner', async ({ page, context }) => {
    await openMap(page);
    await setTool(page, drawTool('polygon'));
    for (const [x, y] of [
      [80, 600],
      [300, 620],
      [280, 740],
      [80, 600],
    ] as const) {
      await page.touchscreen.tap(x, y);
    }
    expect(names(await takeLog(page))).toEqual(['drawn', 'toolEnded']);
    await setTool(page, { type: 'reshape', zoneId: 'east' });
    const [x, y] = await middleOf(page, 'Outline, corner 2 of 4');
    const cdp = await context.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dx = 0, dy = 0) =>
      cdp.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x: x + dx, y: y + dy }],
      });
    await touch('touchStart');
    for (let i = 1; i <= 6; i++) await touch('touchMove', 3 * i, 5 * i);
    await touch('touchEnd');
    expect(await takeLog(page)).toEqual([['reshaped', 'east', 'Move corner']]);
    await page.touchscreen.tap(...(await middleOf(page, 'Outline, corner 2 of 4')));
    const button = await page.getByTitle('Delete this corner').boundingBox();
    if (!button) throw new Error('no delete button');
    await page.touchscreen.tap(button.x + 22, button.y + 22);
    expect(await takeLog(page)).toEqual([['reshaped', 'east', 'Delete corner']]);
  });
});
