import type { Locator, Page } from '@playwright/test';
import { axeFindings, expect, goToStep, openApp, PHONE, test } from './journey';

/*
 * The sample's products side by side. By hand: 0.75 lb N at most per 1,000 sq ft of granules at the label
 * rate, 42 days apart: 2.5 lb take 4 visits over 126 days, 2.5 / 0.24 = 10.4 lb per 1,000 sq ft.
 */
const view = (page: Page): Locator => page.locator('compare-view');

async function openComparison(page: Page): Promise<void> {
  await openApp(page);
  await goToStep(page, 'Shelf');
  await page.getByRole('button', { name: 'Compare', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Compare products' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Back to the shelf' })).toBeFocused();
}

async function chooseRegular(page: Page): Promise<void> {
  await view(page).getByLabel('Regular turf').check();
  await view(page).getByLabel('Low-cut turf').uncheck();
  // the need of that ground
  await expect(view(page).getByLabel('Nitrogen wanted in all', { exact: true })).toHaveValue('2.5');
}

test('products side by side: visits, order, what speaks against one, and back', async ({ page }) => {
  await openComparison(page);
  await chooseRegular(page);
  const rows = page.locator('compare-result tbody');
  await expect(rows).toHaveCount(7);
  const granules = rows.filter({ hasText: 'Full rate' });
  await expect(granules).toContainText('over 126 days');
  await expect(granules).toContainText('in all, 25.1 lb at each visit');
  await expect(rows.filter({ hasText: 'Soluble Powder' })).toContainText(/soil test refuses its phosphorus/);
  await expect(granules).not.toContainText('Against it');
  // least cost first; a heading sorts by its figure
  await expect(rows.first()).toContainText('Slow Granules');
  await page.getByRole('button', { name: /^Salt at once/ }).click();
  await expect(page.getByRole('columnheader', { name: /^Salt at once/ })).toHaveAttribute(
    'aria-sort',
    'ascending',
  );
  await expect(rows.last()).toContainText('Full rate');
  await expect(rows.first()).toContainText('least');
  // the label's most is 4.2 lb of product, 1.008 lb of N: three visits; the yard's cap of 1 lb holds as well
  await view(page).getByLabel('Each visit lays down').selectOption({ label: 'up to the label’s most' });
  await expect(granules).toContainText('over 84 days');
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Back to the shelf' }).click();
  await expect(page.getByRole('heading', { name: 'Shelf', exact: true, level: 2 })).toBeVisible();
});

test.describe('phone', () => {
  test.use(PHONE);
  test('products as cards, in order', async ({ page }) => {
    await openComparison(page);
    await page.getByRole('button', { name: 'Show the panel', exact: true }).click();
    await chooseRegular(page);
    const cards = page.locator('compare-result article');
    await expect(cards).toHaveCount(7);
    await expect(cards.first()).toContainText('Slow Granules');
    await view(page).getByLabel('Least first').selectOption({ label: 'Soluble N at once' });
    await expect(cards.first()).not.toContainText('Slow Granules');
    const body = page.locator('sheet-drawer .body');
    expect(await body.evaluate((it) => it.scrollWidth - it.clientWidth)).toBeLessThanOrEqual(0);
    expect(await axeFindings(page)).toEqual([]);
  });
});
