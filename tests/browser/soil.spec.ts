import type { Page } from '@playwright/test';
import {
  addTypedRectangle,
  axeFindings,
  expect,
  exportYard,
  goToStep,
  nameZone,
  openEmptyYard,
  test,
  zoneNamed,
} from './journey';

const card = (page: Page, name: string) => page.locator('dose-card').filter({ hasText: name });

async function fill(place: ReturnType<Page['locator']>, label: string, text: string): Promise<void> {
  const field = place.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Tab');
}

/** A granule by its analysis, at 5 lb per 1,000 sq ft in bags of 50 lb. */
async function addGranule(page: Page, name: string, p2o5: string): Promise<void> {
  await goToStep(page, 'Shelf');
  await page.getByRole('button', { name: 'Add a product' }).click();
  const form = page.locator('product-form');
  await form.getByLabel('Name', { exact: true }).fill(name);
  await form.getByRole('combobox', { name: /^Form/ }).selectOption({ label: 'Granular' });
  await fill(form, 'One full pack holds', '50');
  await fill(form, 'N', '20');
  await fill(form, 'P₂O₅', p2o5);
  await fill(form, 'Product', '5');
}

test('a soil test with much phosphorus refuses a product, and says what can be done', async ({ page }) => {
  await openEmptyYard(page, 'Soil yard');
  await addTypedRectangle(page, { kind: 'Turf, regular', side: '50 ft', other: '20 ft' });
  await nameZone(page, 'Turf', 'Back lawn');
  await addTypedRectangle(page, {
    kind: 'Turf, regular',
    side: '40 ft',
    other: '25 ft',
    middle: '41.2355, -96.5432',
  });
  await nameZone(page, 'Turf', 'Front lawn');
  await addGranule(page, 'Starter granules', '10');
  await addGranule(page, 'Plain granules', '0');

  // without a test the dose stands as a fallback
  await goToStep(page, 'Visit');
  await page.getByRole('button', { name: 'Add a visit' }).click();
  await page.getByLabel('Add a product').selectOption({ label: 'Starter granules' });
  await page.getByRole('button', { name: 'Add to visit' }).click();
  await expect(card(page, 'Starter granules').getByText(/no soil test on file/)).toBeVisible();
  await card(page, 'Starter granules').getByRole('button', { name: 'Enter a soil test' }).click();

  // P 184 lb/acre is 92 ppm, over 137 lb/acre: Rutgers NJAES, Relative Levels of Nutrients, Mehlich-3
  await expect(page.getByRole('heading', { name: 'Soil tests' })).toBeVisible();
  await page.getByRole('button', { name: 'Add a soil test' }).click();
  const soil = page.locator('soil-form');
  await soil.getByLabel('Name', { exact: true }).fill('Behind the house');
  await soil.getByText(/^One by one/).click();
  await soil.getByRole('checkbox', { name: /^Front lawn/ }).uncheck();
  await soil.getByLabel('Unit of the report').selectOption({ label: 'lb per acre' });
  await fill(soil, 'Phosphorus (P)', '9500');
  await expect(page.locator('soil-section').getByText(/^Check: Phosphorus of 9,500/)).toBeVisible();
  await fill(soil, 'Phosphorus (P)', '184');
  await expect(soil.getByLabel('Depth of the sample', { exact: true })).toHaveValue('4');
  await fill(soil, 'Potassium (K)', '100');
  const scale = page.locator('soil-scale');
  await expect(scale.getByRole('img', { name: /^Phosphorus: P 184.lb\/acre, very high/ })).toBeVisible();
  await expect(scale.getByRole('img', { name: /^Potassium: .*medium by Rutgers/ })).toBeVisible();
  await expect(page.locator('soil-section').getByText(/Without a soil test: Front lawn/)).toBeVisible();
  expect(await axeFindings(page)).toEqual([]);

  // the dose is refused for the ground it names, and each way out is one step of undo
  await goToStep(page, 'Visit');
  const starter = card(page, 'Starter granules');
  await expect(starter.locator('.note.error')).toContainText(
    /Back lawn has P 184.lb\/acre \(very high by Rutgers NJAES/,
  );
  await expect(starter.locator('dose-result')).toHaveCount(0);
  // 5 lb of 20 % are 1 lb N, all of it soluble: of that 0.7 lb may go out at once (UF/IFAS EP353)
  const offer = starter.getByRole('button', { name: /^Take Plain granules instead/ });
  await expect(offer).toContainText(/at 70\s?% of its label rate/);
  await expect(offer).toContainText(/Soluble nitrogen of 1(\.00)?\slb.* is over 0\.70*\slb/);
  await offer.click();
  await expect(card(page, 'Plain granules').locator('dose-result')).toBeVisible();
  await expect(card(page, 'Plain granules').getByLabel('Share of label rate')).toHaveValue('70');
  await expect(page.locator('visit-panel').getByText(/is over .* at once/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await starter.getByRole('button', { name: /^Leave out Back lawn/ }).click();
  await expect(starter.locator('dose-result')).toContainText('Front lawn');
  await expect(starter.locator('.note.error')).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).first().click();

  // put out all the same: with a reason, which is kept
  await starter.getByText('Put it out all the same').first().click();
  await starter.getByLabel(/^Reason/).fill('New sod goes down on Friday.');
  await starter.getByRole('button', { name: 'Put it out all the same' }).click();
  await expect(starter.locator('dose-result')).toContainText('Back lawn');
  const { yard } = await exportYard(page);
  expect(yard.overrides).toMatchObject([
    { code: 'soil-phosphorus-excess', reason: 'New sod goes down on Friday.', visitId: yard.visits[0]?.id },
  ]);
  expect(yard.soilTests[0]?.mgPerKg.P).toBe(92);
  expect(yard.soilTests[0]?.zones.exclude).toEqual([zoneNamed(yard, 'Front lawn').id]);
  await goToStep(page, 'Need');
  await expect(page.locator('override-list')).toContainText(
    'For Back lawn at the label rate, by the soil test “Behind the house”.',
  );
  // a newer test of the same ground asks anew
  await page.getByRole('button', { name: /^Behind the house/ }).click();
  const again = page.locator('soil-section').getByRole('button', { name: 'Copy', exact: true });
  await again.click();
  await expect(page.locator('override-list')).toContainText(
    'It no longer holds: the soil test that counts now is “Behind the house, copy',
  );
  await goToStep(page, 'Visit');
  await expect(starter.locator('.note.error')).toContainText(/The decision of .* was for Back lawn/);
  await goToStep(page, 'Need');
  await page.getByRole('button', { name: 'Withdraw the decision on Starter granules' }).click();
  await goToStep(page, 'Visit');
  await expect(starter.locator('.note.error')).toContainText('no phosphorus is called for');
});
