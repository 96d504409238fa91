import type { Locator, Page } from '@playwright/test';
import { expect, openApp, openEmptyYard, readPm, shownArea, test, zoneRows } from './journey';

/** Tabs on (or back) until the thing wanted has the focus: nothing here uses the pointer. */
async function tabTo(page: Page, wanted: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  const hasFocus = () =>
    wanted.evaluate((it) => {
      const root = it.getRootNode() as Document | ShadowRoot;
      return root.activeElement === it;
    });
  for (let i = 0; i < 150; i++) {
    if ((await wanted.count()) > 0 && (await hasFocus())) return;
    await page.keyboard.press(key);
  }
  throw new Error(`no way by ${key} to ${wanted}`);
}

const step = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Steps of the job' }).getByRole('button', { name });

async function goByKeys(page: Page, name: string): Promise<void> {
  await tabTo(page, step(page, name));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name, exact: true, level: 2 })).toBeVisible();
}

/** Puts text in place of what the field holds. */
async function typeIn(page: Page, field: Locator, text: string): Promise<void> {
  await tabTo(page, field);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
}

/** Chooses in a closed list by typing its first letters. */
async function chooseByKeys(page: Page, list: Locator, letters: string): Promise<void> {
  await tabTo(page, list);
  await page.keyboard.type(letters);
}

test('the whole job by keyboard: zone, product, visit, containers, sheet', async ({ page }) => {
  test.setTimeout(120_000);
  await openApp(page);
  await goByKeys(page, 'Yards');
  await typeIn(page, page.getByLabel('Name of a new yard'), 'Key yard');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Nothing is drawn yet.')).toBeVisible();
  await expect(step(page, 'Measure')).toBeFocused();

  await chooseByKeys(page, page.getByLabel('Kind of ground to draw'), 'Turf, r');
  await expect(page.getByLabel('Kind of ground to draw')).toHaveValue('turf/regular');
  // an empty yard has the ways to measure before it
  await tabTo(page, page.getByRole('button', { name: /^Plat or deed/ }));
  await page.keyboard.press('Enter');
  await typeIn(page, page.getByLabel('Calls, one a line'), '40 ft, N\n80 ft, E\n40 ft, S');
  await tabTo(page, page.getByRole('button', { name: /^Add as/ }));
  await page.keyboard.press('Enter');
  await expect(zoneRows(page)).toHaveCount(1);
  const area = readPm(await shownArea(page, 'Turf 1'));
  expect(Math.abs(area.value - 3200)).toBeLessThanOrEqual(area.pm);

  await tabTo(page, page.getByLabel('Name', { exact: true }), 'Shift+Tab');
  await typeIn(page, page.getByLabel('Name', { exact: true }), 'Front lawn');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Choose Front lawn')).toBeChecked();
  await chooseByKeys(page, page.getByLabel('Mowing class'), 'Low');
  await expect(page.locator('zone-list .words')).toContainText('low-cut');

  await goByKeys(page, 'Shelf');
  await tabTo(page, page.getByRole('button', { name: 'Add a product' }));
  await page.keyboard.press('Enter');
  await typeIn(page, page.getByLabel('Name', { exact: true }), 'Test liquid');
  await typeIn(page, page.getByLabel('One full pack holds', { exact: true }), '32');
  await chooseByKeys(page, page.getByLabel('The label gives'), 'One pack');
  await typeIn(page, page.getByLabel('covers', { exact: true }), '3200');
  await page.keyboard.press('Tab');

  await tabTo(page, step(page, 'Visit'), 'Shift+Tab');
  await goByKeys(page, 'Visit');
  await tabTo(page, page.getByRole('button', { name: 'Add a visit' }));
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByLabel('Low-cut turf'));
  await expect(page.getByLabel('Low-cut turf')).toBeChecked();
  await chooseByKeys(page, page.getByLabel('Add a product'), 'Test');
  await tabTo(page, page.getByRole('button', { name: 'Add to visit' }));
  await page.keyboard.press('Enter');
  const packs = page.locator('dose-result .packs');
  await expect(packs).toContainText('pack of 32 fl oz');
  await expect(packs.locator('.figure')).toHaveText('1');

  await tabTo(page, step(page, 'Sheet'), 'Shift+Tab');
  await goByKeys(page, 'Sheet');
  await expect(page.getByRole('button', { name: 'Print' })).toBeEnabled();
  await expect(page.locator('work-sheet')).toContainText('Front lawn');
});

test('draws on the map by keys: crosshair, points, Backspace, Enter, Escape', async ({ page }) => {
  await openEmptyYard(page);
  const shape = page.getByRole('group', { name: 'Shape to draw' }).getByRole('button', { name: 'Corners' });
  const map = page.locator('.yard-map');
  await tabTo(page, shape, 'Shift+Tab');
  await page.keyboard.press('Enter');
  await tabTo(page, map);
  const press = async (...keys: string[]) => {
    for (const key of keys) await page.keyboard.press(key);
  };
  await press('Space', 'Shift+ArrowRight', 'Space', 'Shift+ArrowDown', 'Space', 'Shift+ArrowDown', 'Space');
  await expect(page.locator('.yard-crosshair')).toBeVisible();
  await press('Backspace', 'Enter');
  await expect(zoneRows(page)).toHaveCount(1);

  await tabTo(page, shape, 'Shift+Tab');
  await page.keyboard.press('Enter');
  await tabTo(page, map);
  await press('Space', 'Shift+ArrowLeft', 'Space', 'Escape');
  await expect(page.getByRole('region', { name: 'Tool at work' })).toHaveCount(0);
  await expect(zoneRows(page)).toHaveCount(1);
});
