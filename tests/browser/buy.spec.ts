import { Buffer } from 'node:buffer';
import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { yardToGeoJson } from '../../src/yard/codec';
import { newDose, newVisit } from '../../src/yard/defaults';
import type { Yard } from '../../src/yard/types';
import { granules, testYard } from '../fixtures/testYard';
import { axeFindings, expect, goToStep, message, openApp, PHONE, test, unfold } from './journey';

const turf = { classes: ['turf-regular', 'turf-low-cut'], include: [], exclude: [] } as const;

/** Four visits of granules from 10 kg and 22 kg bags. */
function yard(): Yard {
  const packs = [
    { id: 'small', content: { unit: 'kg', value: 10 }, price: 30 },
    { id: 'large', content: { unit: 'kg', value: 22 }, price: 50 },
  ] as const;
  const product = { ...granules, packs, onHand: { small: 0.5 }, canPour: true };
  const visits = ['2031-04-01', '2031-05-15', '2031-07-01', '2031-09-01'].map((date, i) =>
    newVisit(`v${i}`, { name: `Round ${i + 1}`, date, zones: turf, doses: [newDose(`d${i}`, product.id)] }),
  );
  return { ...testYard(), name: 'Bought for', products: [product], visits, extra: {} };
}

async function openYard(page: Page): Promise<void> {
  await openApp(page);
  await goToStep(page, 'Yards');
  await page.getByLabel('Files', { exact: true }).setInputFiles({
    name: 'bought-for.geojson',
    mimeType: 'application/geo+json',
    buffer: Buffer.from(JSON.stringify(yardToGeoJson(yard()))),
  });
  await page
    .getByRole('dialog', { name: /^What is in/ })
    .getByRole('button', { name: 'Bring in' })
    .click();
  await expect(message(page)).toContainText('Brought in');
  const tab = page.getByRole('navigation', { name: 'Steps of the job' }).getByRole('button', { name: 'Buy' });
  await tab.click();
  await expect(page.getByRole('heading', { name: 'Buy', exact: true, level: 2 })).toBeVisible();
}

const order = (page: Page): Locator => page.locator('buy-order');
const sum = (page: Page): Locator => order(page).locator('tfoot td.num').last();

test('packs are bought for the season, priced in place, saved, printed and shelved', async ({ page }) => {
  await openYard(page);
  const card = page.locator('buy-product');
  await expect(card.getByText(/^Needs .* for 4 doses; on the shelf/)).toBeVisible();
  const before = (await sum(page).textContent()) ?? '';

  // the season's cost: at the head, by product and in all
  await expect(page.locator('buy-panel .sum')).toContainText(`Whole packs to buy: ${before}.`);
  await expect(page.locator('buy-costs tbody tr')).toHaveCount(1);
  await expect(page.locator('buy-costs tfoot td').nth(1)).toHaveText(before);
  await expect(page.locator('buy-costs tfoot td').nth(2)).toHaveText(/^\$\d/);

  // a dearer large bag: small ones alone are cheaper then
  const large = card.locator('.pack').nth(1);
  await large.getByLabel('Price, $').fill('500');
  await expect(order(page).locator('tbody tr')).toHaveCount(1);
  await expect(sum(page)).not.toHaveText(before);
  await large.getByLabel('Price, $').fill('50');
  await expect(sum(page)).toHaveText(before);

  const visits = await unfold(page, 'Visit by visit');
  await expect(visits.locator('tbody tr')).toHaveCount(4);
  await expect(visits.locator('tbody tr').first()).toContainText('from the shelf');

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    order(page).getByRole('button', { name: 'Save as CSV' }).click(),
  ]);
  const csv = await readFile(await download.path(), 'utf8');
  expect(csv).toContain(granules.name);
  expect(csv.trimEnd().split('\r\n').at(-1)?.split(',').at(-2)).toBe(before.replace(/[$,]/g, ''));

  // the browser's own dialog would wait for a person
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', '');
  });
  await order(page).getByRole('button', { name: 'Print the order' }).click();
  await expect(page.locator('body[data-printed]')).toBeAttached();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.ws-print-root').getByText('Order list')).toBeVisible();
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));

  await order(page).getByRole('button', { name: 'Put it on the shelf' }).click();
  await expect(order(page)).toContainText('there is nothing to buy');
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect(sum(page)).toHaveText(before);

  await page.getByLabel('Buy for').selectOption({ label: 'One visit' });
  await expect(card.getByText(/for one dose/)).toBeVisible();

  // what the first round still takes comes off the shelf first
  await page.getByLabel('Buy for').selectOption({ label: 'Visits between two days' });
  await page.getByLabel('First day').fill('2031-05-01');
  await expect(card.getByText(/all of it for visits before Thu, May.1, 2031/)).toBeVisible();
  await expect(order(page)).toContainText(/opened on Thu, May.15, 2031; have it by then/);
  await page.getByLabel('Last day').fill('2031-04-01');
  await expect(page.getByRole('alert')).toContainText('is before the first');
  await expect(card).toHaveCount(0);
  await page.getByLabel('Last day').fill('2031-09-01');
  await expect(card).toHaveCount(1);
  expect(await axeFindings(page)).toEqual([]);
});

test.describe('on a phone', () => {
  test.use(PHONE);
  test('choices and order are read as cards', async ({ page }) => {
    await openYard(page);
    await page.locator('buy-product label.choice').first().tap();
    const line = order(page).locator('tbody tr').first();
    await expect(line.locator('td.product')).toBeVisible();
    await expect(line.locator('td.price')).toBeHidden();
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(390);
    expect(await axeFindings(page)).toEqual([]);
  });
});
