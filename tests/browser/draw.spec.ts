import type { Page } from '@playwright/test';
import {
  boxSpots,
  chooseKind,
  clickMap,
  dragBy,
  drawCorners,
  expect,
  expectUndoable,
  exportYard,
  goToStep,
  listNow,
  message,
  middleOf,
  nameZone,
  onMap,
  openApp,
  openEmptyYard,
  openZone,
  PHONE,
  readPm,
  shownArea,
  startShape,
  test,
  tool,
  zoneNamed,
  zoneRows,
} from './journey';

const area = async (page: Page, name: string) => readPm(await shownArea(page, name)).value;
const undo = (page: Page) => page.keyboard.press('Control+z');
const redo = (page: Page) => page.keyboard.press('Control+Shift+Z');

test('polygon by clicks: snaps to a neighbour’s corner, Enter finishes, Escape cancels', async ({ page }) => {
  await openEmptyYard(page);
  await drawCorners(page, 'Turf, regular', boxSpots(200, 250, 400, 450));
  await expect(zoneRows(page)).toHaveCount(1);
  await expectUndoable(page, []);
  await drawCorners(page, 'Bed', [
    [405, 246],
    [560, 250],
    [560, 450],
    [396, 453],
  ]);
  await expect(zoneRows(page)).toHaveCount(2);

  await startShape(page, 'Corners');
  await clickMap(page, [
    [600, 300],
    [700, 300],
    [700, 400],
  ]);
  await page.keyboard.press('Escape');
  await expect(tool(page)).toHaveCount(0);
  await expect(zoneRows(page)).toHaveCount(2);

  const { yard } = await exportYard(page);
  const turf = zoneNamed(yard, 'Turf 1').parts[0]?.[0] ?? [];
  const bed = zoneNamed(yard, 'Bed 1').parts[0]?.[0] ?? [];
  const shared = bed
    .slice(0, -1)
    .filter((corner) => turf.some((each) => each[0] === corner[0] && each[1] === corner[1]));
  expect(shared, 'two corners taken over exactly').toHaveLength(2);
});

test('a shape that crosses itself is refused in words, with the place marked', async ({ page }) => {
  await openEmptyYard(page);
  await chooseKind(page, 'Bed');
  await startShape(page, 'Corners');
  await clickMap(page, [
    [300, 300],
    [500, 300],
    [500, 450],
    [400, 200],
  ]);
  await expect(message(page)).toContainText('cross');
  await expect(page.locator('.yard-crossing')).toBeVisible();
  await expect(tool(page)).toContainText('3 corners so far');
  await expect(tool(page)).not.toContainText('Area 0');
  await page.keyboard.press('Enter');
  await expect(message(page)).toContainText('left out');
  await expect(zoneRows(page)).toHaveCount(0);
  await page.keyboard.press('Enter');
  await expect(zoneRows(page)).toHaveCount(1);
  const { yard } = await exportYard(page);
  expect(yard.zones[0]?.parts[0]?.[0]).toHaveLength(4);
});

test('rectangle, circle and freehand; each undone and redone', async ({ page }) => {
  await openEmptyYard(page);
  await chooseKind(page, 'Bed');
  await startShape(page, 'Rectangle');
  await expect(page.locator('.yard-map.is-drawing')).toBeVisible();
  await clickMap(page, [
    [200, 250],
    [400, 250],
    [400, 350],
  ]);
  await expect(zoneRows(page)).toHaveCount(1);
  await expectUndoable(page, []);
  const rectangle = await area(page, 'Bed 1');

  await startShape(page, 'Circle');
  await clickMap(page, [
    [600, 300],
    [660, 300],
  ]);
  await expect(zoneRows(page)).toHaveCount(2);
  // 200 by 100 px against pi 60² px
  expect((await area(page, 'Bed 2')) / rectangle).toBeCloseTo((Math.PI * 3600) / 20_000, 1);

  await startShape(page, 'Freehand');
  const [x, y] = await onMap(page, [400, 600]);
  await page.mouse.move(x, y - 70);
  await page.mouse.down();
  for (let i = 1; i < 40; i++) {
    await page.mouse.move(x + 70 * Math.sin((i * Math.PI) / 20), y - 70 * Math.cos((i * Math.PI) / 20));
  }
  await page.mouse.up();
  await expect(zoneRows(page)).toHaveCount(3);
  expect((await area(page, 'Bed 3')) / rectangle).toBeCloseTo((Math.PI * 4900) / 20_000, 1);
  const before = await listNow(page);
  await undo(page);
  await expect(zoneRows(page)).toHaveCount(2);
  await redo(page);
  await expect.poll(() => listNow(page)).toEqual(before);
});

test('a freehand circle and a quick ellipse keep their area; the bar said the same', async ({ page }) => {
  await openEmptyYard(page);
  await chooseKind(page, 'Bed');
  await startShape(page, 'Rectangle');
  await expect(page.locator('.yard-map.is-drawing')).toBeVisible();
  await clickMap(page, [
    [200, 250],
    [300, 250],
    [300, 350],
  ]);
  await expect(zoneRows(page)).toHaveCount(1);
  const perPx = (await area(page, 'Bed 1')) / 10_000;
  for (const [name, a, b, count] of [
    ['Bed 2', 60, 60, 40],
    ['Bed 3', 90, 45, 16],
  ] as const) {
    await startShape(page, 'Freehand');
    const [x, y] = await onMap(page, [name === 'Bed 2' ? 450 : 700, 400]);
    await page.mouse.move(x + a, y);
    await page.mouse.down();
    for (let i = 1; i < count; i++) {
      const turn = (2 * Math.PI * i) / count;
      await page.mouse.move(x + a * Math.cos(turn), y + b * Math.sin(turn));
    }
    const live = (await tool(page).locator('dd').first().textContent())?.replaceAll(',', '');
    await page.mouse.up();
    await expect(zoneRows(page)).toHaveCount(name === 'Bed 2' ? 2 : 3);
    const saved = await area(page, name);
    expect(Math.abs(Number.parseFloat(live ?? '') / saved - 1)).toBeLessThan(0.01);
    // area of an ellipse: pi a b; the shown areas are rounded
    expect(Math.abs(saved / perPx / (Math.PI * a * b) - 1)).toBeLessThan(0.02);
  }
});

test('a split that does not cut through keeps its line to be corrected', async ({ page }) => {
  await openEmptyYard(page);
  await drawCorners(page, 'Turf, regular', boxSpots(200, 250, 500, 550));
  await (await openZone(page, 'Turf 1')).getByRole('button', { name: 'Split by a line' }).click();
  await clickMap(page, [
    [150, 250],
    [152, 400],
  ]);
  await page.keyboard.press('Enter');
  await expect(message(page)).toContainText('Turf 1');
  await expect(tool(page)).toContainText('2 points so far');
  await expect(zoneRows(page)).toHaveCount(1);
  await clickMap(page, [[600, 420]]);
  await page.keyboard.press('Enter');
  await expect(zoneRows(page)).toHaveCount(2);
  await expect(tool(page)).toHaveCount(0);
});

test('typed sides with right angles: 40 by 25 ft are 1,000 sq ft', async ({ page }) => {
  await openEmptyYard(page);
  await chooseKind(page, 'Turf, regular');
  await startShape(page, 'Corners');
  await tool(page).getByLabel('Hold right angles').check();
  await clickMap(page, [[300, 500]]);
  for (const [length, bearing] of [
    ['40', '90'],
    ['25 ft', '0'],
    ["40'", '270'],
  ] as const) {
    await tool(page).getByLabel('Next side', { exact: true }).fill(length);
    await tool(page).getByLabel('Bearing').fill(bearing);
    await tool(page).getByRole('button', { name: 'Add side' }).click();
    await expect(tool(page).getByLabel('Next side', { exact: true })).toHaveValue('');
  }
  await tool(page).getByRole('button', { name: 'Finish' }).click();
  await expect(zoneRows(page)).toHaveCount(1);
  const shown = readPm(await shownArea(page, 'Turf 1'));
  expect(Math.abs(shown.value - 1000)).toBeLessThanOrEqual(Math.max(shown.pm, 1));
  // 1,000 sq ft = 92.90304 m² (0.3048 m to the foot, NIST SP 811)
  const { measured } = await exportYard(page);
  expect(Math.abs(([...measured.zones.values()][0]?.netM2 ?? 0) - 92.90304)).toBeLessThan(0.01);
});

test('hole, bed cut out, split, join: areas add up, each undone and redone', async ({ page }) => {
  await openEmptyYard(page);
  await drawCorners(page, 'Turf, regular', boxSpots(200, 250, 700, 550));
  const whole = await area(page, 'Turf 1');

  let before = await listNow(page);
  await (await openZone(page, 'Turf 1')).getByRole('button', { name: 'Cut a hole' }).click();
  await clickMap(page, boxSpots(250, 300, 350, 400));
  await page.keyboard.press('Enter');
  // 100 by 100 px of 500 by 300
  await expect.poll(async () => (await area(page, 'Turf 1')) / whole).toBeCloseTo(1 - 1 / 15, 2);
  await expectUndoable(page, before);

  before = await listNow(page);
  await (await openZone(page, 'Turf 1')).getByRole('button', { name: /^Cut out/ }).click();
  await clickMap(page, boxSpots(550, 300, 650, 400));
  await page.keyboard.press('Enter');
  await expect(zoneRows(page)).toHaveCount(2);
  const turf = await area(page, 'Turf 1');
  expect((turf + (await area(page, 'Bed 1'))) / whole).toBeCloseTo(1 - 1 / 15, 2);
  await expectUndoable(page, before);

  before = await listNow(page);
  await (await openZone(page, 'Turf 1')).getByRole('button', { name: 'Split by a line' }).click();
  await clickMap(page, [
    [450, 200],
    [455, 600],
  ]);
  await page.keyboard.press('Enter');
  await expect(zoneRows(page)).toHaveCount(3);
  await expectUndoable(page, before);
  const { yard, measured } = await exportYard(page);
  const turfs = yard.zones.filter((zone) => zone.kind === 'turf');
  const nets = turfs.map((zone) => measured.zones.get(zone.id)?.netM2 ?? 0);
  expect(turfs).toHaveLength(2);
  expect(Math.min(...nets)).toBeGreaterThan(1);

  await goToStep(page, 'Measure');
  before = await listNow(page);
  for (const zone of turfs) await page.getByLabel(`Choose ${zone.name}`, { exact: true }).check();
  await page.getByRole('button', { name: 'Join the two' }).click();
  await expect(zoneRows(page)).toHaveCount(2);
  await expectUndoable(page, before);
  const joined = await exportYard(page);
  const net = joined.measured.zones.get(zoneNamed(joined.yard, 'Turf 1').id)?.netM2 ?? 0;
  expect(Math.abs(net - (nets[0] ?? 0) - (nets[1] ?? 0))).toBeLessThan(1e-4);
});

test('reshape: drag, insert and delete a corner; a shared corner moves both zones', async ({ page }) => {
  await openEmptyYard(page);
  await drawCorners(page, 'Turf, regular', boxSpots(200, 250, 450, 500));
  await drawCorners(page, 'Bed', boxSpots(450, 250, 700, 500));
  const sum = (await area(page, 'Turf 1')) + (await area(page, 'Bed 1'));
  await (await openZone(page, 'Turf 1')).getByRole('button', { name: 'Reshape corners' }).click();

  let before = await listNow(page);
  await dragBy(page, page.getByLabel('Outline, corner 2 of 4', { exact: true }), 50, 40);
  await expect.poll(() => listNow(page)).not.toEqual(before);
  // the border between them moved; its outer line is bent in by 40 px at the shared corner: 500 px base
  const after = (await area(page, 'Turf 1')) + (await area(page, 'Bed 1'));
  expect(after / sum).toBeCloseTo(1 - (0.5 * 500 * 40) / (500 * 250), 2);
  await expectUndoable(page, before);

  before = await listNow(page);
  await dragBy(page, page.getByLabel('Outline, add a corner after 4', { exact: true }), -40, 0);
  await expect(page.getByLabel('Outline, corner 5 of 5', { exact: true })).toBeVisible();
  await expectUndoable(page, before);

  before = await listNow(page);
  await page.getByLabel('Outline, corner 5 of 5', { exact: true }).click();
  await page.getByTitle('Delete this corner').click();
  await expect(page.getByLabel('Outline, corner 4 of 4', { exact: true })).toBeVisible();
  await expectUndoable(page, before);
  await tool(page).getByRole('button', { name: 'Done' }).click();

  const { yard } = await exportYard(page);
  const corner = (name: string) => zoneNamed(yard, name).parts[0]?.[0] ?? [];
  const shared = corner('Turf 1').filter((a) => corner('Bed 1').some((b) => a[0] === b[0] && a[1] === b[1]));
  expect(new Set(shared.map(String)).size).toBe(2);
});

test('move, turn, rename, delete and change of class are undone and redone', async ({ page }) => {
  await openEmptyYard(page);
  await drawCorners(page, 'Turf, regular', boxSpots(200, 300, 500, 550));
  const words = page.locator('zone-list .words');
  await nameZone(page, 'Turf 1', 'Front lawn');
  await page.locator('.yard-map').focus();
  await undo(page);
  await expect(words).toContainText('Turf 1');
  await redo(page);
  await expect(words).toContainText('Front lawn');
  const details = await openZone(page, 'Front lawn');
  await details.getByLabel('Mowing class').selectOption({ label: 'Low-cut' });
  await expect(words).toContainText('low-cut');
  await page.locator('.yard-map').focus();
  await undo(page);
  await expect(words).toContainText('regular');
  await details.getByRole('button', { name: 'Delete' }).click();
  await expect(zoneRows(page)).toHaveCount(0);
  await page.locator('.yard-map').focus();
  await undo(page);
  await expect(zoneRows(page)).toHaveCount(1);
});

test.describe('by finger', () => {
  test.use(PHONE);
  test('the ground lies still while a tool begins and draws, and what was drawn comes into view', async ({
    page,
  }) => {
    await openApp(page);
    const [x, y] = await middleOf(page.locator('.yard-mark-icon').first());
    const expectStill = async () => {
      const now = await middleOf(page.locator('.yard-mark-icon').first());
      expect(Math.hypot(now[0] - x, now[1] - y)).toBeLessThan(1);
    };
    await startShape(page, 'Corners');
    await expectStill();
    const { height } = (await page.locator('.yard-map').boundingBox()) ?? { height: 0 };
    for (const spot of boxSpots(40, height - 60, 200, height - 25)) {
      await page.touchscreen.tap(...(await onMap(page, spot)));
      await expectStill();
      expect((await page.locator('.yard-map').boundingBox())?.height).toBe(height);
    }
    await tool(page).getByRole('button', { name: 'Finish' }).tap();
    await expect(tool(page)).toHaveCount(0);
    await page.waitForTimeout(300);
    const label = await page.locator('.yard-label.is-selected').boundingBox();
    const map = await page.locator('.yard-map').boundingBox();
    expect((label?.y ?? 0) + (label?.height ?? 0)).toBeLessThan((map?.y ?? 0) + (map?.height ?? 0));
    await page.getByRole('button', { name: /^Undo: / }).tap();
    await expect(message(page)).toContainText('Undone: Add turf');
  });

  test('draws by taps and finishes by the button', async ({ page }) => {
    await openEmptyYard(page);
    await chooseKind(page, 'Bed');
    await startShape(page, 'Corners');
    for (const spot of boxSpots(80, 80, 300, 260)) await page.touchscreen.tap(...(await onMap(page, spot)));
    await tool(page).getByRole('button', { name: 'Finish' }).tap();
    await expect(zoneRows(page)).toHaveCount(1);
    await expect(tool(page)).toHaveCount(0);
    const { measured } = await exportYard(page);
    expect([...measured.zones.values()][0]?.netM2).toBeGreaterThan(10);
  });
});
