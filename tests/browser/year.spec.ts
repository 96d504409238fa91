import { expect, goToStep, openApp, test } from './journey';

/*
 * The sample's season from step to step. By hand, from its label and sizes: the low-cut square of 7 m by 7 m
 * is 527.4 sq ft; ten visits of 24 fl oz per 1,000 sq ft take 126.6 fl oz from the tank, one jug of 128 fl oz at $54
 * (bottles are for the hose alone). The April visit lays 4 fl oz of 6 % iron at 1.24 kg/L and 10 fl oz of 8 % liquid
 * at 1.12 kg/L on 1,000 sq ft of front lawn: 0.019 and 0.058 lb of N.
 */
test('a visit done goes out of the purchase, into the ledger, and comes back by undo', async ({ page }) => {
  await page.clock.setSystemTime('2027-04-18T12:00:00');
  await openApp(page);
  await goToStep(page, 'Buy');
  const liquid = page.locator('buy-panel buy-product').filter({ hasText: 'Light Liquid 8-0-2' });
  await expect(liquid).toContainText(/for 11 doses; on the shelf 44\.8\sfl\soz/);

  await goToStep(page, 'Visit');
  await expect(page.getByLabel('Visit shown')).toHaveValue('visit-april');
  const done = page.locator('done-form');
  await done.getByLabel('Done on').fill('2027-04-19');
  await done.getByRole('button', { name: 'Mark done' }).click();
  await expect(done.getByRole('alert')).toContainText(/Mon, Apr\s19, 2027, is not yet/);
  await done.getByLabel('Done on').fill('2027-04-17');
  await done.getByRole('button', { name: 'Mark done' }).click();

  await goToStep(page, 'Buy');
  await expect(liquid).toContainText(/Needs 127\sfl\soz for 10 doses; none on the shelf/);
  await expect(liquid).toContainText(/1\s×\s1\sgal/);
  await expect(liquid).toContainText('$54.00');

  await goToStep(page, 'Season');
  await page.locator('season-panel').getByText('Ledger', { exact: true }).click();
  const row = page
    .locator('ledger-view')
    .getByRole('row', { name: /^Front lawn/ })
    .first();
  await expect(row).toContainText('0.08');

  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(row).not.toContainText('0.08');
  await goToStep(page, 'Buy');
  await expect(liquid).toContainText(/for 11 doses; on the shelf 44\.8\sfl\soz/);
});
