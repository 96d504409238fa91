import type { Page } from '@playwright/test';
import { axeFindings, expect, exportYard, goToStep, message, openApp, PHONE, test } from './journey';

const entry = (page: Page, name: string) =>
  page.locator('equipment-view button.open').filter({ hasText: name });

async function openEquipment(page: Page): Promise<void> {
  await openApp(page);
  await goToStep(page, 'Shelf');
  await page.getByRole('button', { name: 'Equipment', exact: true }).click();
  await expect(page.locator('equipment-view')).toBeVisible();
}

async function fill(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Tab');
}

async function openTest(page: Page, name: string): Promise<void> {
  await page
    .locator('calibration-list')
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .click();
  await expect(page.getByRole('heading', { name, level: 2 })).toBeVisible();
}

test.describe('on a phone', () => {
  test.use(PHONE);

  test('a bottle is added, timed by the bucket and paced, and the test can be undone', async ({ page }) => {
    await openEquipment(page);
    await page.getByLabel(/^Kind of equipment/).selectOption('hose-end');
    await page.getByRole('button', { name: 'Add equipment' }).click();
    await fill(page, 'Name', 'Trial bottle');
    await fill(page, 'Swath: what one pass covers', '0');
    await expect(page.locator('equipment-form').getByRole('alert')).toContainText('or more');
    await fill(page, 'Swath: what one pass covers', '6');
    await openTest(page, 'Bucket test');
    // the stopwatch makes a reading, which is taken out again
    await page.getByRole('button', { name: 'Start', exact: true }).click();
    await expect(page.getByRole('timer')).toHaveText(/0\.[2-9]|[1-9]\.\d/);
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await expect(page.getByLabel('Time 1', { exact: true })).toHaveValue(/^\d/);
    await page.getByRole('button', { name: 'Take out time 1' }).click();
    for (const seconds of ['19', '21']) {
      await page.getByRole('button', { name: 'Type a time' }).click();
      await page.keyboard.type(seconds);
      await page.keyboard.press('Enter');
    }
    await fill(page, 'Bucket to the mark holds', '1.25');
    await page.getByLabel(/^Share of product/).selectOption('neat');
    await expect(page.locator('calibration-result')).toContainText('all of it');
    await page.getByLabel(/^Share of product/).selectOption('ratio');
    await page.getByLabel('One part of product to this many of water').fill('24');
    const result = page.locator('calibration-result');
    // pesticidestewardship.org, hose-end on turf: 1.25 gal in 20 s
    await expect(result).toContainText(/Comes out\s*3\.75\sgal\/min/);
    await expect(result).toContainText(/Share of product\s*4\s%/);
    await expect(result).toContainText('by single readings');
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Put it into the equipment' }).click();
    await expect(entry(page, 'Trial bottle')).toContainText(/3\.75\sgal\/min, 4\s% of it product/);
    await message(page).getByRole('button', { name: 'Undo' }).click();
    await expect(entry(page, 'Trial bottle')).not.toContainText('gal/min');
  });
});

test('a spreader is caught, judged against the label and given its setting', async ({ page }) => {
  await openEquipment(page);
  await entry(page, 'Drop spreader').click();
  await openTest(page, 'Catch test');
  await page.getByLabel(/^Product/).selectOption({ index: 1 });
  await fill(page, 'Setting on the dial', '7');
  await fill(page, 'Length of the run', '50');
  await fill(page, 'Width', '1');
  // by hand: half a pound on 50 sq ft, twenty times that on 1,000
  await fill(page, 'Weight 1', '8');
  const result = page.locator('calibration-result');
  await expect(result).toContainText(/10\slb per 1,000\ssq\sft/);
  await expect(result).toContainText(/more than the .* wanted: close the setting a little/);
  // what is under way is still there when the page is loaded anew
  await page.reload();
  await openEquipment(page);
  await page.getByRole('button', { name: 'Go on with it' }).click();
  await expect(page.getByLabel('Weight 1', { exact: true })).toHaveValue('8');
  await page.getByRole('button', { name: 'Put it into the equipment' }).click();
  await page.locator('calibration-list summary').click();
  await expect(page.locator('calibration-list')).toContainText(/Catch test, /);
  expect(await axeFindings(page)).toEqual([]);
  const { yard } = await exportYard(page);
  const spreader = yard.equipment.find((each) => each.applicator === 'drop-spreader');
  const setting = spreader?.settings.find((each) => each.words === '7');
  expect((setting?.rateKgPerM2 ?? 0) / (0.45359237 / 92.90304)).toBeCloseTo(10, 6);
  expect(spreader?.calibrations.filter((each) => each.productId === 'p-granules')).toHaveLength(1);
});
