import { expect, exportYard, openApp, openWay, PHONE, test, unfold, zoneRows } from './journey';

/** The sample lot is 36 m by 42 m: 1,512 m² or 16,275 sq ft (0.09290304 m² a square foot, NIST Handbook 44). */
const LOT = /16,2[78]\d\ssq ft/;

/** Numbers of a column of sq ft. */
const sqFt = (texts: readonly string[]): number[] =>
  texts.map((text) => Number(text.replace(/[^\d.]/g, ''))).filter((value) => value > 0);

test('every square foot of the property is in the table, which adds up', async ({ page }) => {
  await openApp(page);
  const form = await openWay(page, 'Outline of the property');
  await expect(form.locator('tfoot td').last()).toHaveText(LOT);
  await expect(form.getByText('Every bit of ground inside the outline is in a zone.')).toBeVisible();
  const rows = sqFt(await form.locator('tbody tr td:last-child').allTextContents());
  const [total] = sqFt(await form.locator('tfoot td:last-child').allTextContents());
  expect(rows.reduce((sum, value) => sum + value, 0)).toBe(total);
  await expect(page.locator('path.yard-parcel')).toHaveCount(1);
});

test('ground that a deleted zone leaves is listed, and made a zone again in one step', async ({ page }) => {
  await openApp(page);
  // two walks of 1.5 m: nothing but the lawn's drawn edge lies under them
  await page.getByLabel('Choose Driveway', { exact: true }).check();
  await page.getByLabel('Choose Street sidewalks', { exact: true }).check();
  await page.getByRole('button', { name: 'Delete 2' }).click();
  const form = await openWay(page, 'Outline of the property');
  const open = form.locator('tr.open');
  await expect(open).toBeVisible();
  const rows = sqFt(await form.locator('tbody tr td:last-child').allTextContents());
  const [total] = sqFt(await form.locator('tfoot td:last-child').allTextContents());
  expect(rows.reduce((sum, value) => sum + value, 0)).toBe(total);
  const items = form.locator('parcel-check li');
  const count = await items.count();
  expect(count).toBeGreaterThan(0);
  await items.first().getByRole('combobox').selectOption({ label: 'hardscape' });
  await items.first().getByRole('button', { name: 'Make it a zone' }).click();
  await expect(items).toHaveCount(count - 1);
  await page.getByRole('button', { name: /^Undo: add hardscape/i }).click();
  await expect(items).toHaveCount(count);
  await items
    .first()
    .getByRole('button', { name: /^Give it to/ })
    .click();
  await expect(items).toHaveCount(count - 1);
});

test('an outline is taken from the zones, removed, and given back by undo', async ({ page }) => {
  await openApp(page);
  const form = await openWay(page, 'Outline of the property');
  await unfold(page, 'Another outline');
  await form.getByRole('button', { name: 'Remove the outline' }).click();
  await expect(page.locator('path.yard-parcel')).toHaveCount(0);
  await form.getByRole('button', { name: 'Take it round all zones' }).click();
  await expect(form.locator('tfoot td').last()).toHaveText(LOT);
  await form.getByRole('button', { name: '‹ Zones' }).click();
  await expect(zoneRows(page)).toHaveCount(13);
  const { yard } = await exportYard(page);
  expect(yard.parcel?.parts).toHaveLength(1);
});

test.describe('on a phone', () => {
  test.use(PHONE);

  test('nothing is wider than the screen', async ({ page }) => {
    await openApp(page);
    await openWay(page, 'Outline of the property');
    await expect(page.locator('parcel-check table')).toBeAttached();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
  });
});
