import { done, drawPair, netOf, reshape, takeEdgeTool } from './editing';
import {
  axeFindings,
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
  onMap,
  openEmptyYard,
  openZone,
  PHONE,
  type Spot,
  startShape,
  test,
  tool,
  unfold,
  zoneNamed,
  zoneRows,
} from './journey';

test('a shared side is bent, and its curve, corners and sides moved, for both zones at once', async ({
  page,
}) => {
  await openEmptyYard(page);
  await drawPair(page);
  const start = await exportYard(page);
  const sum = netOf(start, 'Turf 1') + netOf(start, 'Bed 1');
  await takeEdgeTool(page, 'Turf 1', 'Bend to an arc');
  await clickMap(page, [
    [450, 375],
    [490, 380],
  ]);
  await done(page);
  await reshape(page, 'Turf 1');
  let before = await listNow(page);
  await dragBy(page, page.locator('[aria-label^="Outline, point 1 of the curve"]'), 30, 10);
  await expect.poll(() => listNow(page)).not.toEqual(before);
  await expectUndoable(page, before);
  before = await listNow(page);
  await tool(page).getByLabel('Move whole sides').check();
  // a side of the turf alone, by keys: the bed keeps its size
  const side = page.locator('[aria-label^="Outline, move the side after"]').first();
  await side.focus();
  await page.keyboard.press('Shift+ArrowUp');
  await expect.poll(() => listNow(page)).not.toEqual(before);
  await page.locator('.yard-map').focus();
  await page.keyboard.press('Control+z');
  await expect.poll(() => listNow(page)).toEqual(before);
  await tool(page).getByLabel('Move whole sides').uncheck();
  await done(page);
  const end = await exportYard(page);
  expect(netOf(end, 'Turf 1')).toBeGreaterThan(netOf(start, 'Turf 1') * 1.02);
  expect(Math.abs(netOf(end, 'Turf 1') + netOf(end, 'Bed 1') - sum)).toBeLessThan(0.02);
  for (const name of ['Turf 1', 'Bed 1']) expect(zoneNamed(end.yard, name).curves).toHaveLength(1);
});

test('a whole side goes with its neighbour’s; a locked neighbour stays and is named', async ({ page }) => {
  await openEmptyYard(page);
  await drawPair(page);
  const start = await exportYard(page);
  await reshape(page, 'Turf 1');
  await tool(page).getByLabel('Move whole sides').check();
  const shared = page.getByLabel('Outline, move the side after 2', { exact: true });
  await expect(shared).toBeVisible();
  const before = await listNow(page);
  await dragBy(page, shared, 50, 0);
  await expect.poll(() => listNow(page)).not.toEqual(before);
  await expectUndoable(page, before);
  await done(page);
  const moved = await exportYard(page);
  // 50 px of the 250 px between the sides
  expect(netOf(moved, 'Turf 1') / netOf(start, 'Turf 1')).toBeCloseTo(1.2, 2);
  expect(netOf(moved, 'Bed 1') / netOf(start, 'Bed 1')).toBeCloseTo(0.8, 2);

  await goToStep(page, 'Measure');
  const bed = await openZone(page, 'Bed 1');
  await bed.getByLabel('Locked: outline and place stay').check();
  await bed.getByRole('button', { name: 'Reshape corners' }).click();
  await expect(message(page)).toContainText('“Bed 1” is locked');
  await expect(tool(page)).toHaveCount(0);
  await bed.getByRole('button', { name: 'Delete' }).click();
  await expect(zoneRows(page)).toHaveCount(2);
  await expect(page.locator('.yard-label.is-locked')).toHaveCount(1);
  await reshape(page, 'Turf 1');
  await dragBy(page, page.getByLabel('Outline, corner 2 of 4', { exact: true }), 20, 15);
  await expect(message(page)).toContainText('stays where it was: it is locked');
  await done(page);
  const locked = await exportYard(page);
  expect(zoneNamed(locked.yard, 'Bed 1').parts).toEqual(zoneNamed(moved.yard, 'Bed 1').parts);
});

test('guides are drawn and named; Alt lets go of them; a corner put on a neighbour’s side is shared', async ({
  page,
}) => {
  await openEmptyYard(page);
  await drawCorners(page, 'Turf, regular', boxSpots(200, 250, 450, 500));
  await startShape(page, 'Corners');
  await clickMap(page, [[600, 520]]);
  const hover = async (spot: Spot) => page.mouse.move(...(await onMap(page, spot)));
  await clickMap(page, [[600, 400]]);
  await hover([700, 403]);
  await expect(page.locator('.yard-guide-label')).toContainText('right angle');
  await page.keyboard.down('Alt');
  await hover([701, 403]);
  await expect(page.locator('.yard-guide-label')).toHaveCount(0);
  await page.keyboard.up('Alt');
  await hover([690, 403]);
  await expect(page.locator('.yard-guide')).toHaveCount(1);
  await page.keyboard.press('Escape');
  await expect(page.locator('.yard-guide')).toHaveCount(0);

  // a T: two corners on the side of the turf
  await drawCorners(page, 'Bed', [
    [452, 300],
    [600, 300],
    [600, 400],
    [447, 400],
  ]);
  let { yard } = await exportYard(page);
  const turf = () => zoneNamed(yard, 'Turf 1').parts[0]?.[0] ?? [];
  expect(turf()).toHaveLength(7);
  const bed = zoneNamed(yard, 'Bed 1').parts[0]?.[0] ?? [];
  expect(bed.slice(0, -1).filter((p) => turf().some((q) => p[0] === q[0] && p[1] === q[1]))).toHaveLength(2);
  await reshape(page, 'Turf 1');
  const before = await listNow(page);
  await dragBy(page, page.getByLabel('Outline, corner 3 of 6', { exact: true }), 30, 0);
  await expect.poll(() => listNow(page)).not.toEqual(before);
  await done(page);
  ({ yard } = await exportYard(page));
  const moved = zoneNamed(yard, 'Bed 1').parts[0]?.[0] ?? [];
  expect(moved.slice(0, -1).filter((p) => turf().some((q) => p[0] === q[0] && p[1] === q[1]))).toHaveLength(
    2,
  );
});

test('a circle is two arcs: its points reshape it; copies in a row; flipped', async ({ page }) => {
  await openEmptyYard(page);
  await chooseKind(page, 'Bed');
  await startShape(page, 'Circle');
  await clickMap(page, [
    [400, 350],
    [460, 350],
  ]);
  await expect(zoneRows(page)).toHaveCount(1);
  await reshape(page, 'Bed 1');
  await expect(page.locator('[aria-label^="Outline, point 1 of the curve"]')).toHaveCount(2);
  await expect(page.locator('[aria-label^="Outline, corner"]')).toHaveCount(2);
  const before = await listNow(page);
  await dragBy(page, page.locator('[aria-label^="Outline, point 1 of the curve after 1"]'), 0, -40);
  await expect.poll(() => listNow(page)).not.toEqual(before);
  await expectUndoable(page, before);
  await done(page);
  const details = await openZone(page, 'Bed 1');
  await unfold(page, 'Move, turn');
  await details.getByLabel('Move east', { exact: true }).fill('80');
  await details.getByLabel('Move east', { exact: true }).press('Enter');
  await details.getByLabel('Copies in a row').fill('3');
  await details.getByRole('button', { name: 'Copy that far apart' }).click();
  await expect(zoneRows(page)).toHaveCount(4);
  await page.getByRole('button', { name: 'Choose none' }).click();
  const copy = await openZone(page, 'Bed 1 copy 2');
  await unfold(page, 'Move, turn');
  await copy.getByLabel('Flip').selectOption({ label: 'North for south' });
  await copy.getByRole('button', { name: 'Flip' }).click();
  const made = await exportYard(page);
  for (const zone of made.yard.zones) {
    expect(zone.curves).toHaveLength(2);
    expect(Math.abs((made.measured.zones.get(zone.id)?.netM2 ?? 0) - netOf(made, 'Bed 1'))).toBeLessThan(
      0.01,
    );
  }
});

test.describe('by finger', () => {
  test.use(PHONE);

  test('bends a side, drags the curve, measures, and lays a band', async ({ page }) => {
    const tap = async (spots: readonly Spot[]) => {
      for (const spot of spots) await page.touchscreen.tap(...(await onMap(page, spot)));
    };
    await openEmptyYard(page);
    await chooseKind(page, 'Turf, regular');
    await startShape(page, 'Corners');
    await tap(boxSpots(80, 80, 280, 240));
    await tool(page).getByRole('button', { name: 'Finish' }).tap();
    await expect(zoneRows(page)).toHaveCount(1);
    await expect(tool(page)).toHaveCount(0);
    await page.waitForTimeout(300);
    await takeEdgeTool(page, 'Turf 1', 'Bend to an arc');
    const at = await page.locator('.yard-edge-outline').boundingBox();
    const map = await page.locator('.yard-map').boundingBox();
    if (!at || !map) throw new Error('no outline');
    const [left, top] = [at.x - map.x, at.y - map.y];
    const before = await listNow(page);
    await tap([
      [left + at.width / 2, top + at.height - 1],
      [left + at.width / 2, top + at.height + 30],
    ]);
    await expect.poll(() => listNow(page)).not.toEqual(before);
    expect(await axeFindings(page)).toEqual([]);
    await done(page);
    await page.waitForTimeout(300);
    await reshape(page, 'Turf 1');
    const told = await listNow(page);
    const point = page.locator('[aria-label^="Outline, point 1 of the curve"]');
    const [x, y] = await middleOf(point);
    const client = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dy: number) =>
      client.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x, y: y + dy }],
      });
    await touch('touchStart', 0);
    for (const dy of [4, 10, 16, 22]) await touch('touchMove', dy);
    await touch('touchEnd', 0);
    await expect.poll(() => listNow(page)).not.toEqual(told);
    expect(await axeFindings(page)).toEqual([]);
    await done(page);
    await page.waitForTimeout(300);

    await page.getByRole('button', { name: 'More', exact: true }).tap();
    const menu = await page.getByRole('button', { name: 'Measure lengths and angles' }).boundingBox();
    expect((menu?.x ?? -1) >= 0 && (menu?.x ?? 0) + (menu?.width ?? 999) <= 390).toBe(true);
    await page.getByRole('button', { name: 'Measure lengths and angles' }).tap();
    await tap([
      [60, 40],
      [200, 40],
      [200, 60],
    ]);
    await expect(page.getByLabel('Measured sides')).toContainText('Side 2');
    expect(await axeFindings(page)).toEqual([]);
    await done(page);
    await page.waitForTimeout(300);
    await page.getByRole('button', { name: 'More', exact: true }).tap();
    await page.getByRole('button', { name: 'Band along a line' }).tap();
    await tap([
      [40, 20],
      [300, 20],
    ]);
    expect(await axeFindings(page)).toEqual([]);
    await tool(page).getByRole('button', { name: 'Finish' }).tap();
    await expect(zoneRows(page)).toHaveCount(2);
  });
});
