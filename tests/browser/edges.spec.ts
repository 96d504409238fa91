import { done, netOf, reshape, SQ_FT, takeEdgeTool, typeRectangle } from './editing';
import {
  axeFindings,
  boxSpots,
  clickMap,
  drawCorners,
  expect,
  expectUndoable,
  exportYard,
  listNow,
  message,
  onMap,
  openEmptyYard,
  type Spot,
  test,
  tool,
  zoneNamed,
  zoneRows,
} from './journey';

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
  expect(await axeFindings(page)).toEqual([]);
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
  expect(await axeFindings(page)).toEqual([]);
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
  expect(await axeFindings(page)).toEqual([]);
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
