import type { Locator, Page } from '@playwright/test';
import {
  addTypedRectangle,
  chooseKind,
  expect,
  fold,
  goToPlace,
  goToStep,
  nameZone,
  openApp,
  openEmptyYard,
  openWay,
  shownArea,
  test,
  unfold,
  zoneButton,
  zoneRows,
} from './journey';

const CORNER = '41.2345, -96.5432';
const form = (page: Page): Locator => page.locator('product-form');

async function addProduct(page: Page, name: string): Promise<Locator> {
  await goToStep(page, 'Shelf');
  await page.getByRole('button', { name: 'Add a product' }).click();
  await form(page).getByLabel('Name', { exact: true }).fill(name);
  return form(page);
}

async function fill(place: Locator, label: string, text: string): Promise<void> {
  const field = place.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Tab');
}

/** A zone from a corner all share: sides one a line. */
async function addTypedSides(page: Page, kind: string, sides: string, start = CORNER): Promise<void> {
  await chooseKind(page, kind);
  const count = await zoneRows(page).count();
  const typed = await openWay(page, 'Plat or deed');
  await typed.getByLabel(/^Calls, one a line/).fill(sides);
  await typed.getByLabel('Point of beginning: latitude').fill(start);
  await typed.getByRole('button', { name: 'Add as a zone' }).click();
  await expect(zoneRows(page)).toHaveCount(count + 1);
}

async function addToVisit(page: Page, product: string): Promise<void> {
  await page.getByLabel('Add a product').selectOption({ label: product });
  await page.getByRole('button', { name: 'Add to visit' }).click();
}

async function addVisitWith(page: Page, product: string): Promise<Locator> {
  await goToStep(page, 'Visit');
  await page.getByRole('button', { name: 'Add a visit' }).click();
  await addToVisit(page, product);
  const card = page.locator('dose-card').filter({ hasText: product });
  await expect(card).toHaveCount(1);
  return card;
}

test('a wrong label is told of in plain words', async ({ page }) => {
  await openApp(page);
  const product = await addProduct(page, 'Doubtful liquid');
  await fill(product, 'One full pack holds', '32');
  await fill(product, 'N', '60');
  await fill(product, 'P₂O₅', '50');
  await expect(product.locator('.note.error', { hasText: /100/ })).toBeVisible();
  await fill(product, 'N', '10');
  await fill(product, 'P₂O₅', '0');
  await expect(product.locator('.note.error', { hasText: /100\s%/ })).toHaveCount(0);

  await product.getByLabel('The label gives').selectOption({ label: 'Weight of a nutrient per area' });
  await fill(product, 'N laid down', '0.1');
  await expect(product.locator('.note.error', { hasText: /density/i })).toBeVisible();
  await fill(product, 'Density', '10');
  await expect(product.locator('.note.error', { hasText: /density/i })).toHaveCount(0);

  await product.getByLabel('The label gives').selectOption({ label: 'One pack covers an area' });
  await fill(product, 'covers', '0');
  await expect(product.locator('.note.error').first()).toBeVisible();
  await expect(page.locator('shelf-panel .flag')).toContainText('cannot be right');
  await fill(product, 'covers', '3200');
  await expect(product.locator('.note.error')).toHaveCount(0);
});

test('a product just added has nothing wrong in it; a number keeps its digits when its unit is chosen', async ({
  page,
}) => {
  await openApp(page);
  const product = await addProduct(page, 'New liquid');
  await expect(product.locator('.note.error')).toHaveCount(0);
  await expect(page.locator('shelf-panel')).toContainText('2 entries still to fill in');
  const holds = product.getByLabel('One full pack holds', { exact: true });
  await fill(product, 'One full pack holds', '2.5');
  await product.getByLabel('Unit of One full pack holds').selectOption('gal');
  await expect(holds).toHaveValue('2.5');
  await expect(product.locator('legend')).toHaveText(/^2\.5\sgal$/);
  // once something else was gone to, the unit only changes how the amount is shown: 2.5 gal = 320 fl oz
  await product.getByLabel('Name', { exact: true }).focus();
  await product.getByLabel('Unit of One full pack holds').selectOption('fl oz');
  await expect(holds).toHaveValue('320');
  await fill(product, 'Product', '');
  await product.getByLabel('Name', { exact: true }).focus();
  await expect(product.locator('.note.error')).toContainText('must be more than zero');

  await product.getByLabel('Form').selectOption({ label: 'Granular' });
  await expect(product.getByLabel('The label gives')).toHaveValue('mass-per-area');
  await expect(product.getByText('Water to mix in')).toHaveCount(0);
  await fill(product, 'N', '80');
  await fill(product, 'P₂O₅', '60');
  await expect(product.locator('.three + .note.error')).toContainText('140 %');
});

test('sizes that cannot be meant are refused where they stand and stay as typed', async ({ page }) => {
  await openEmptyYard(page);
  const taped = await openWay(page, 'Tape');
  await fill(taped, 'a: Length', '1000000000000');
  await expect(taped.getByText(/Must be 32,8\d0 ft or less/)).toBeInViewport();
  await expect(taped.getByLabel('a: Length', { exact: true })).toHaveValue('1000000000000');
  await taped.getByRole('button', { name: '‹ Zones' }).click();
  // far from what the drawing shows: it goes there
  await addTypedSides(page, 'Turf, regular', '100 ft, E\n50 ft, S\n100 ft, W\n50 ft, N', '39.5, -95.1');
  expect(await shownArea(page, 'Turf 1')).toMatch(/^5,000/);
  await expect(page.locator('.yard-label', { hasText: 'Turf 1' })).toBeInViewport();

  await goToStep(page, 'Visit');
  await page.getByRole('button', { name: 'Add a visit' }).click();
  await fill(
    page.locator('visit-panel'),
    "What the sprayer's tank holds (empty: as its equipment tells)",
    '0.001',
  );
  await expect(page.locator('visit-panel').getByText(/Must be 0\.13\d* gal or more/)).toBeInViewport();
  await goToStep(page, 'Yards');
  const settings = await unfold(page, 'Settings of');
  await fill(settings, 'Round a storm drain', '999999');
  await expect(settings.getByText(/Must be 3,280 ft or less/)).toBeInViewport();
  await expect(settings.getByLabel('Round a storm drain', { exact: true })).toHaveValue('999999');
});

test('3,200 sq ft take one bottle for 3,200 sq ft, and 16 fl oz in 3.2 gal at 5 fl oz in a gallon per 1,000', async ({
  page,
}) => {
  await openEmptyYard(page);
  await addTypedRectangle(page, { kind: 'Turf, regular', side: '40', other: '80' });
  expect(await shownArea(page, 'Turf 1')).toMatch(/^3,200/);

  const bottle = await addProduct(page, 'Hose-end bottle');
  await bottle.getByLabel('Form').selectOption({ label: 'Ready to use (hose-end or as it is)' });
  await fill(bottle, 'One full pack holds', '32');
  await bottle.getByLabel('The label gives').selectOption({ label: 'One pack covers an area' });
  await fill(bottle, 'covers', '3200');
  await page.getByRole('button', { name: 'Close', exact: true }).click();

  const mix = await addProduct(page, 'Tank mix');
  await fill(mix, 'One full pack holds', '128');
  await fill(mix, 'Product', '5');
  await fill(mix, 'Carrier water (leave empty when none is mixed in)', '1');
  await expect(mix.locator('.note.error')).toHaveCount(0);

  const first = await addVisitWith(page, 'Hose-end bottle');
  await expect(first.locator('.packs .figure')).toHaveText('1');
  await expect(first).toContainText('pack of 32 fl oz');
  await expect(first.locator('tr.sum')).toContainText('32 fl oz');

  // 3.2 thousands at 5 fl oz in 1 gal each: 16 fl oz, 3.2 gal (arithmetic of the label)
  await addToVisit(page, 'Tank mix');
  const second = page.locator('dose-card').last();
  await expect(second.locator('tr.sum')).toContainText('16 fl oz');
  await expect(second).toContainText(/Water to mix in\s*3\.2\sgal/);
  await fill(
    page.locator('visit-panel'),
    "What the sprayer's tank holds (empty: as its equipment tells)",
    '2',
  );
  await expect(second).toContainText('Tank loads, 2 gal tank');

  // A third of the bottle goes on 1,000 sq ft: common practice, and 1,000 / 3,200 = 31 %
  await goToStep(page, 'Measure');
  await addTypedRectangle(page, {
    kind: 'Turf, low-cut',
    side: '40',
    other: '25',
    middle: '41.2355, -96.5432',
  });
  await goToStep(page, 'Visit');
  await page.getByLabel('Regular turf').first().uncheck();
  await expect(first).toContainText(/6[89](\.\d+)?\s% of it is left/);

  // Everything in metric: 1,000 sq ft = 92.9 m²
  await page.getByRole('button', { name: 'Metric units' }).click();
  await expect(first.locator('tr.sum')).toContainText('92.9');
  const words = await page.locator('visit-panel').evaluate((panel) => {
    const gather = (root: ParentNode): string =>
      [...root.querySelectorAll('*')]
        .map((each) =>
          each.shadowRoot
            ? gather(each.shadowRoot)
            : each.children.length === 0 && !each.matches('style')
              ? each.textContent
              : '',
        )
        .join(' ');
    return panel.shadowRoot ? gather(panel.shadowRoot) : '';
  });
  expect(words).not.toMatch(/sq\sft|fl\soz|\bgal\b|\blb\b|\d\sft\b/);
  await goToStep(page, 'Measure');
  expect(await shownArea(page, 'Turf 1')).toMatch(/^297.*m²/);
  await expect(page.locator('.leaflet-control-scale-line')).toHaveText(/\d\s?m$/);
  await goToStep(page, 'Shelf');
  await expect(page.locator('shelf-panel')).toContainText('mL');
});

test('an overlap is mended in one click', async ({ page }) => {
  await openEmptyYard(page);
  await addTypedSides(page, 'Turf, regular', '40 ft, N\n40 ft, E\n40 ft, S');
  await addTypedSides(page, 'Turf, low-cut', '10 ft, N\n10 ft, E\n10 ft, S');
  const slips = fold(page, 'Overlaps and gaps (1)');
  await page.getByRole('button', { name: '1 overlap to mend' }).click();
  await expect(slips.locator('summary')).toBeFocused();
  await expect(slips.locator('summary')).toBeInViewport();
  await expect(slips).toContainText('Overlap of 100 sq ft');
  await slips.getByRole('button', { name: 'Mend' }).click();
  await expect(page.getByText('Overlaps and gaps')).toHaveCount(0);
  expect(await shownArea(page, 'Turf 1')).toMatch(/^1,500/);
  expect(await shownArea(page, 'Turf 2')).toMatch(/^100/);
  await page.keyboard.press('Control+z');
  await expect(slips).toBeVisible();
});

test('the edge of a driveway is listed for rinsing; a drain keeps a strip free', async ({ page }) => {
  await openEmptyYard(page);
  await addTypedSides(page, 'Turf, regular', '40 ft, N\n80 ft, W\n40 ft, S');
  await addTypedSides(page, 'Hardscape', '40 ft, N\n12 ft, E\n40 ft, S');
  await nameZone(page, 'Hardscape 1', 'Driveway');
  const product = await addProduct(page, 'Iron liquid');
  await fill(product, 'One full pack holds', '32');
  await fill(product, 'Product', '4');
  await fill(product, 'Spread distance past the edge aimed at', '1');
  await product.getByLabel('Stains hardscape').check();
  const card = await addVisitWith(page, 'Iron liquid');
  await expect(card.locator('tr.sum')).toContainText('3,200 sq ft');

  const rinse = page.locator('rinse-list');
  await expect(rinse.getByRole('heading', { name: /Driveway, concrete/ })).toBeVisible();
  await expect(rinse).toContainText('Rinse with plain water, toward the turf.');
  await expect(rinse).toContainText('stains hardscape. Rinse at once');
  // 40 ft along the lawn, and neither end
  await expect(rinse.locator('li > span:last-of-type').first()).toHaveText(/^40(\.0)?\sft/);
  await expect(page.locator('strip-list')).toContainText('No drain, well or water is near enough');

  await goToStep(page, 'Measure');
  await goToPlace(page, CORNER);
  const marks = await unfold(page, 'Drains, wells');
  await marks.getByRole('button', { name: 'Add storm drain' }).click();
  await page.getByRole('button', { name: 'Put at the middle' }).click();
  await expect(marks.getByRole('textbox', { name: 'Storm drain' })).toHaveValue('Storm drain 1');
  await goToStep(page, 'Visit');
  const strips = page.locator('strip-list tbody tr');
  await expect(strips).toHaveCount(1);
  await expect(strips).toContainText('Storm drain 1');
  await expect(strips).toContainText(/10(\.0)?\sft/);
  // a quarter of a circle of 10 ft: 78.54 sq ft (pi r² / 4), drawn as a polygon never narrower than that
  await expect(strips.locator('td').last()).toHaveText(/^78\.[5-8]\d?\ssq ft$/);
  await expect(card).toContainText('Taken off as no-apply strip');
  await expect(card.locator('tr.sum')).toContainText(/3,12[12]\ssq ft/);
  await expect(rinse.locator('.near').first()).toContainText('Storm drain');
  await goToStep(page, 'Measure');
  await expect(zoneButton(page, 'Driveway')).toBeVisible();
});
