import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import type { MeasuredYard } from '../../src/measure/types';
import type { Yard } from '../../src/yard/types';
import {
  boxSpots,
  chooseKind,
  clickMap,
  dragBy,
  drawCorners,
  expect,
  exportYard,
  goToStep,
  message,
  middleOf,
  onMap,
  openEmptyYard,
  openZone,
  PHONE,
  type Spot,
  startShape,
  test,
  unfold,
  zoneNamed,
  zoneRows,
} from './journey';

const SQ_FT = 0.3048 ** 2;
const tool = (page: Page) => page.getByRole('region', { name: 'Tool at work' });
const listNow = (page: Page) => page.locator('zone-list td.num').allInnerTexts();
const netOf = (of: { yard: Yard; measured: MeasuredYard }, name: string) =>
  of.measured.zones.get(zoneNamed(of.yard, name).id)?.netM2 ?? Number.NaN;

/** Undo brings the list back to `before`, redo to what it is now. */
async function expectUndoable(page: Page, before: readonly string[]): Promise<void> {
  const after = await listNow(page);
  expect(after).not.toEqual(before);
  await page.locator('.yard-map').focus();
  await page.keyboard.press('Control+z');
  await expect.poll(() => listNow(page)).toEqual(before);
  await page.keyboard.press('Control+Shift+Z');
  await expect.poll(() => listNow(page)).toEqual(after);
}

/** A rectangle with its first corner at a spot, by typed sides in feet: east, north, west. */
async function typeRectangle(
  page: Page,
  kind: string,
  from: Spot,
  eastFt: number,
  northFt: number,
): Promise<void> {
  await chooseKind(page, kind);
  await startShape(page, 'Corners');
  await clickMap(page, [from]);
  for (const [length, bearing] of [
    [eastFt, 90],
    [northFt, 0],
    [eastFt, 270],
  ]) {
    await tool(page).getByLabel('Next side', { exact: true }).fill(String(length));
    await tool(page).getByLabel('Bearing').fill(String(bearing));
    await tool(page).getByRole('button', { name: 'Add side' }).click();
    await expect(tool(page).getByLabel('Next side', { exact: true })).toHaveValue('');
  }
  await tool(page).getByRole('button', { name: 'Finish' }).click();
  await expect(tool(page)).toHaveCount(0);
}

async function takeEdgeTool(page: Page, zone: string, name: string): Promise<void> {
  await goToStep(page, 'Measure');
  const details = await openZone(page, zone);
  await unfold(page, 'Curves, strips');
  await details.getByRole('button', { name }).click();
  await expect(tool(page)).toBeVisible();
  await expect(page.locator('.yard-map')).not.toHaveClass(/is-waiting/);
}

async function reshape(page: Page, zone: string): Promise<void> {
  await goToStep(page, 'Measure');
  await (await openZone(page, zone)).getByRole('button', { name: 'Reshape corners' }).click();
  await expect(page.locator('.yard-map')).not.toHaveClass(/is-waiting/);
}

const done = (page: Page) => tool(page).getByRole('button', { name: 'Done' }).click();

async function expectNoAxe(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target).join()}`)).toEqual([]);
}

/** Two boxes side by side that share the line x = 450. */
async function drawPair(page: Page): Promise<void> {
  await drawCorners(page, 'Turf, regular', boxSpots(200, 250, 450, 500));
  await drawCorners(page, 'Bed', boxSpots(450, 250, 700, 500));
}

test('an arc of typed height adds the published segment; it stays editable through reload and undo', async ({
  page,
}) => {
  await openEmptyYard(page);
  await typeRectangle(page, 'Turf, regular', [400, 600], 21, 30);
  const before = await listNow(page);
  await page.locator('.yard-fit').click();
  await takeEdgeTool(page, 'Turf 1', 'Bend to an arc');
  const { width, height } = (await page.locator('.yard-map').boundingBox()) ?? { width: 0, height: 0 };
  // the south side of the fitted zone: the lowest line of the drawing
  const outline = await page.locator('.yard-edge-outline').boundingBox();
  const map = await page.locator('.yard-map').boundingBox();
  if (!outline || !map) throw new Error('no outline');
  const low = outline.y + outline.height - map.y - 1;
  await clickMap(page, [[outline.x + outline.width / 2 - map.x, low]]);
  await expect(tool(page)).toContainText('Now a place that the arc passes through');
  await expectNoAxe(page);
  const below = Math.min(height - 8, low + 25);
  expect(below).toBeGreaterThan(low);
  const [x, y] = await onMap(page, [Math.min(width - 10, outline.x + outline.width / 2 - map.x), below]);
  await page.mouse.move(x, y);
  await tool(page).getByLabel('Height of the arc', { exact: true }).fill('6');
  await tool(page).getByRole('button', { name: 'Set height' }).click();
  await expect.poll(() => listNow(page)).not.toEqual(before);
  await expectUndoable(page, before);
  await done(page);
  const made = await exportYard(page);
  // chord 21, height 6: segment 89.254148 (Math-assistant, "Circular Sections", help.matheass.eu)
  expect(Math.abs(netOf(made, 'Turf 1') / SQ_FT - (630 + 89.254148))).toBeLessThan(0.02);
  expect(zoneNamed(made.yard, 'Turf 1').curves).toHaveLength(1);

  await page.reload();
  await reshape(page, 'Turf 1');
  const point = page.locator('[aria-label^="Outline, point 1 of the curve"]');
  await expect(point).toHaveCount(1);
  await point.focus();
  const told = await listNow(page);
  await page.keyboard.press('Shift+ArrowDown');
  await expect.poll(() => listNow(page)).not.toEqual(told);
  await expectUndoable(page, told);
  await done(page);
  const moved = await exportYard(page);
  expect(zoneNamed(moved.yard, 'Turf 1').curves).toHaveLength(1);
  expect(netOf(moved, 'Turf 1')).toBeGreaterThan(netOf(made, 'Turf 1') + 1);
});

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

test('a run of corners is smoothed, the whole outline too, and straightened again', async ({ page }) => {
  await openEmptyYard(page);
  const start: Spot[] = [
    [300, 300],
    [400, 260],
    [500, 300],
    [600, 260],
    [700, 300],
    [700, 500],
    [300, 500],
  ];
  await drawCorners(page, 'Bed', start);
  await takeEdgeTool(page, 'Bed 1', 'Smooth corners');
  const before = await listNow(page);
  await clickMap(page, [
    [300, 300],
    [700, 300],
  ]);
  await expect.poll(() => listNow(page)).not.toEqual(before);
  await expectUndoable(page, before);
  await done(page);
  let { yard } = await exportYard(page);
  expect(zoneNamed(yard, 'Bed 1').curves.map((curve) => [curve.kind, curve.points.length])).toEqual([
    ['smooth', 5],
  ]);
  await takeEdgeTool(page, 'Bed 1', 'Straighten');
  await clickMap(page, [[450, 281]]);
  await done(page);
  ({ yard } = await exportYard(page));
  expect(zoneNamed(yard, 'Bed 1').curves).toEqual([]);
  expect(zoneNamed(yard, 'Bed 1').parts[0]?.[0]).toHaveLength(5);
  await takeEdgeTool(page, 'Bed 1', 'Smooth corners');
  await clickMap(page, [
    [300, 500],
    [300, 500],
  ]);
  await done(page);
  ({ yard } = await exportYard(page));
  expect(zoneNamed(yard, 'Bed 1').curves[0]?.points).toHaveLength(5);
  await takeEdgeTool(page, 'Bed 1', 'Straighten');
  await clickMap(page, [[800, 650]]);
  await expect(message(page)).toContainText('Point at a side or a corner');
});

test('offsets: a strip of its own, all round, inward, outward; refused when too wide', async ({ page }) => {
  await openEmptyYard(page);
  await typeRectangle(page, 'Turf, regular', [300, 550], 40, 25);
  await page.locator('.yard-fit').click();
  await takeEdgeTool(page, 'Turf 1', 'Offset a side');
  const box = await page.locator('.yard-edge-outline').boundingBox();
  const map = await page.locator('.yard-map').boundingBox();
  if (!box || !map) throw new Error('no outline');
  const top: Spot = [box.x + box.width / 2 - map.x, box.y - map.y + 2];
  await clickMap(page, [top]);
  await tool(page).getByLabel('Width', { exact: true }).fill('30');
  await tool(page).getByLabel('Width', { exact: true }).press('Enter');
  await tool(page).getByRole('button', { name: 'Apply' }).click();
  await expect(message(page)).toContainText('would take all of');
  await tool(page).getByLabel('Width', { exact: true }).fill('2');
  await tool(page).getByLabel('Width', { exact: true }).press('Enter');
  await expect(page.locator('.yard-trial')).toHaveCount(1);
  await expectNoAxe(page);
  const before = await listNow(page);
  await tool(page).getByRole('button', { name: 'Apply' }).click();
  await expect(zoneRows(page)).toHaveCount(2);
  await expect(page.locator('.yard-trial')).toHaveCount(0);
  await expectUndoable(page, before);
  const strip = await exportYard(page);
  expect(Math.abs(netOf(strip, 'Turf strip 1') / SQ_FT - 80)).toBeLessThan(0.02);
  expect(Math.abs(netOf(strip, 'Turf 1') / SQ_FT - 920)).toBeLessThan(0.02);

  for (const [way, areaSqFt] of [
    ['Take off the zone', 36 * 19],
    ['Add to the zone', 40 * 23],
  ] as const) {
    await takeEdgeTool(page, 'Turf 1', 'Offset a side');
    // one corner twice: the whole outline
    const at = await page.locator('.yard-edge-outline').boundingBox();
    if (!at) throw new Error('no outline');
    const corner: Spot = [at.x - map.x + 1, at.y + at.height - map.y - 1];
    await clickMap(page, [corner, corner]);
    await tool(page).getByLabel('It becomes').selectOption({ label: way });
    await tool(page).getByLabel('Width', { exact: true }).fill('2');
    await tool(page).getByLabel('Width', { exact: true }).press('Enter');
    await page.locator('.yard-map').focus();
    await page.keyboard.press('Enter');
    await expect(tool(page)).toHaveCount(0);
    const next = await exportYard(page);
    expect(Math.abs(netOf(next, 'Turf 1') / SQ_FT - areaSqFt)).toBeLessThan(0.05);
  }
});

test('a zone is aligned to an edge of another, and to true north, by keys alone on the map', async ({
  page,
}) => {
  await openEmptyYard(page);
  await drawCorners(page, 'Hardscape', [
    [250, 300],
    [650, 420],
    [640, 450],
    [240, 330],
  ]);
  await drawCorners(page, 'Bed', boxSpots(400, 480, 560, 600));
  await takeEdgeTool(page, 'Bed 1', 'Align a side');
  await clickMap(page, [
    [480, 480],
    [440, 390],
  ]);
  await expect(page.locator('.yard-trial')).toHaveCount(1);
  await expectNoAxe(page);
  await tool(page).getByRole('button', { name: 'Apply' }).click();
  await expect(tool(page)).toHaveCount(0);
  const aligned = await exportYard(page);
  const slopeOf = (corners: readonly (readonly [number, number])[], i: number) => {
    const [a, b] = [
      aligned.measured.plane.toPlane(corners[i] as [number, number]),
      aligned.measured.plane.toPlane(corners[i + 1] as [number, number]),
    ];
    return (b[1] - a[1]) / (b[0] - a[0]);
  };
  const [drive] = aligned.yard.zones;
  const bed = zoneNamed(aligned.yard, 'Bed 1').parts[0]?.[0] ?? [];
  const wanted = slopeOf(drive?.parts[0]?.[0] ?? [], 0);
  // the file may begin a ring at another corner
  expect(Math.min(...[0, 1].map((i) => Math.abs(slopeOf(bed, i) - wanted)))).toBeLessThan(1e-3);

  // by keys: the crosshair begins at the middle of the map
  await takeEdgeTool(page, 'Bed 1', 'Align a side');
  const map = page.locator('.yard-map');
  await map.focus();
  await page.keyboard.press('Space');
  for (
    let i = 0;
    i < 60 && (await tool(page).getByRole('button', { name: 'To true north' }).isDisabled());
    i++
  ) {
    await page.keyboard.press(i % 2 === 0 ? 'ArrowDown' : 'ArrowRight');
    await page.keyboard.press('Space');
  }
  await tool(page).getByRole('button', { name: 'To true north' }).press('Enter');
  await expect(tool(page)).toHaveCount(0);
});

test('a band along a line: width and bends changed on the way, crossing itself, undone and redone', async ({
  page,
}) => {
  await openEmptyYard(page);
  await chooseKind(page, 'Bed');
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await expectNoAxe(page);
  await page.getByRole('button', { name: 'Band along a line' }).click();
  await clickMap(page, [[300, 500]]);
  for (const [length, bearing] of [
    ['60', '90'],
    ['30', '0'],
  ] as const) {
    await tool(page).getByLabel('Next side', { exact: true }).fill(length);
    await tool(page).getByLabel('Bearing').fill(bearing);
    await tool(page).getByRole('button', { name: 'Add side' }).click();
    await expect(tool(page).getByLabel('Next side', { exact: true })).toHaveValue('');
  }
  await tool(page).getByLabel('Width', { exact: true }).fill('5');
  await tool(page).getByLabel('Width', { exact: true }).press('Enter');
  await expect(tool(page)).toContainText('3 points so far');
  await expectNoAxe(page);
  await tool(page).getByRole('button', { name: 'Finish' }).click();
  await expect(zoneRows(page)).toHaveCount(1);
  await expectUndoable(page, []);
  const pointed = await exportYard(page);
  // a mitred band covers length by width: 90 by 5 ft (Pappus)
  expect(Math.abs(netOf(pointed, 'Bed 1') / SQ_FT - 450)).toBeLessThan(0.05);

  await goToStep(page, 'Measure');
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('button', { name: 'Band along a line' }).click();
  await tool(page).getByLabel('Bends').selectOption({ label: 'Rounded' });
  await clickMap(page, [
    [200, 300],
    [400, 300],
    [400, 200],
    [300, 200],
    [300, 400],
  ]);
  await page.keyboard.press('Enter');
  await expect(zoneRows(page)).toHaveCount(2);
  const { yard } = await exportYard(page);
  expect(zoneNamed(yard, 'Bed 2').parts.map((rings) => rings.length)).toEqual([2]);
});

test('the gauge tells sides, angles and their sum, to be copied; nothing is added', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openEmptyYard(page);
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('button', { name: 'Measure lengths and angles' }).click();
  await clickMap(page, [[300, 500]]);
  for (const [length, bearing] of [
    ['40', '90'],
    ['30', '0'],
  ] as const) {
    await tool(page).getByLabel('Next side', { exact: true }).fill(length);
    await tool(page).getByLabel('Bearing').fill(bearing);
    await tool(page).getByRole('button', { name: 'Add side' }).click();
  }
  const list = page.getByLabel('Measured sides');
  await expect(list).toContainText('Side 1: 40.0 ft, bearing 90.0°');
  await expect(list).toContainText('Side 2: 30.0 ft, bearing 0.0°, angle 90.0°');
  await expect(list).toContainText('In all: 70.0 ft');
  await expectNoAxe(page);
  await tool(page).getByRole('button', { name: 'Copy' }).click();
  await expect(message(page)).toContainText('copied');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('In all: 70.0 ft');
  await page.locator('.yard-map').focus();
  await page.keyboard.press('Enter');
  await expect(list).toContainText('In all: 70.0 ft');
  await clickMap(page, [[600, 300]]);
  await expect(list).toHaveCount(0);
  await done(page);
  await expect(zoneRows(page)).toHaveCount(0);
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
    await expectNoAxe(page);
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
    await expectNoAxe(page);
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
    await expectNoAxe(page);
    await done(page);
    await page.waitForTimeout(300);
    await page.getByRole('button', { name: 'More', exact: true }).tap();
    await page.getByRole('button', { name: 'Band along a line' }).tap();
    await tap([
      [40, 20],
      [300, 20],
    ]);
    await expectNoAxe(page);
    await tool(page).getByRole('button', { name: 'Finish' }).tap();
    await expect(zoneRows(page)).toHaveCount(2);
  });
});
