import type { Locator, Page } from '@playwright/test';
import {
  addTypedRectangle,
  axeFindings,
  expect,
  exportYard,
  goToStep,
  openApp,
  openEmptyYard,
  PHONE,
  test,
  unfold,
} from './journey';

const form = (page: Page): Locator => page.locator('need-form');

/** A row of the chart's table: month, then its figures. */
async function monthRow(page: Page, month: string): Promise<string[]> {
  const row = page
    .locator('year-chart tr')
    .filter({ has: page.getByRole('rowheader', { name: month, exact: true }) });
  return row.locator('td').allInnerTexts();
}

test('a lawn gets its published year by month, holds back in spring, and follows the climate once it is known', async ({
  page,
}) => {
  await openEmptyYard(page, 'Need yard');
  await addTypedRectangle(page, { kind: 'Turf, regular', side: '50 ft', other: '20 ft' });
  await addTypedRectangle(page, {
    kind: 'Turf, low-cut',
    side: '40 ft',
    other: '25 ft',
    middle: '41.2355, -96.5432',
  });
  await goToStep(page, 'Need');
  const section = page.locator('need-section');
  await expect(section.getByRole('button', { name: 'Set up from my zones' })).toBeDisabled();
  await section.getByLabel('Grass of the lawn').selectOption({ label: 'Bermudagrass' });
  await section.getByRole('button', { name: 'Set up from my zones' }).click();
  await expect(section.getByRole('button', { name: /^Low-cut turf/ })).toBeVisible();
  await expect(section.getByRole('button', { name: /^Regular turf.*1,000\ssq ft/ })).toBeVisible();

  // NC State Extension, Caring for Your Lawn and the Environment: bermudagrass 1 lb in each of May to August, 4.0 a year
  await form(page)
    .getByRole('radio', { name: /North Carolina/ })
    .check();
  await expect(form(page).getByLabel('Nitrogen of the year', { exact: true })).toHaveValue('4');
  await unfold(page, 'The same as a table');
  for (const month of ['May', 'June', 'July', 'August'])
    expect(await monthRow(page, month)).toEqual(['1.00']);
  expect(await monthRow(page, 'April')).toEqual(['0']);
  expect(await monthRow(page, 'Year')).toEqual(['4.00']);
  await expect(form(page).getByLabel('First day: day')).toHaveValue('15');

  // the hold over May moves its pound to June, July and August alike
  await form(page)
    .getByRole('group', { name: 'Last day' })
    .getByLabel(/^Last day/)
    .first()
    .selectOption({ label: 'May' });
  await form(page).getByLabel('Last day: day').selectOption('31');
  await expect.poll(() => monthRow(page, 'May')).toEqual(['0']);
  expect(await monthRow(page, 'June')).toEqual(['1.33']);
  await expect(
    form(page).getByText(/1\slb per 1,000\ssq\sft of the year moves to later months/),
  ).toBeVisible();
  await page.locator('.yard-map').focus();
  await page.keyboard.press('Control+z');
  await expect.poll(() => monthRow(page, 'May')).not.toEqual(['0']);

  // by growth there must be a climate
  await form(page)
    .getByLabel('Share the year out')
    .selectOption({ label: 'By growth, from the monthly temperatures' });
  await expect(form(page).getByText(/wants the monthly mean temperatures/)).toBeVisible();
  const climate = page.locator('climate-section');
  await climate.getByText('Paste a table or a list of days').click();
  await climate.getByLabel(/^Twelve numbers/).fill('Jan 24\nFeb 29\nMar 40');
  await climate.getByRole('button', { name: 'Read it' }).click();
  await expect(climate.getByText(/No line for April, May/)).toBeVisible();
  // what was told of a reading is gone with the next entry
  await climate.getByLabel('July', { exact: true }).fill('76');
  await expect(climate.getByText(/No line for April, May/)).toHaveCount(0);
  await climate.getByLabel(/^Twelve numbers/).fill('24 29 40 52 63 73 77 75 67 54 40 28 °F');
  await climate.getByRole('button', { name: 'Read it' }).click();
  await expect(climate.getByLabel('July', { exact: true })).toHaveValue('77');
  await expect(form(page).getByText(/wants the monthly mean temperatures/)).toHaveCount(0);
  await climate.getByLabel(/^Twelve numbers/).fill('24 29 40 52 63 173 77 75 67 54 40 28 °F');
  await climate.getByRole('button', { name: 'Read it' }).click();
  await expect(climate.getByText(/not possible/)).toBeVisible();
  await page.locator('.yard-map').focus();
  await page.keyboard.press('Control+z');
  await expect(climate.getByText(/not possible/)).toHaveCount(0);
  await page.keyboard.press('Control+y');
  // 77 °F is 25 °C: exp(-0.5 ((25 - 31) / 7)²) = 69 %
  expect((await monthRow(page, 'July'))[1]).toMatch(/^69\s%$/);
  await expect(page.getByRole('img', { name: /^Nitrogen by month.*most of it in July/ })).toBeVisible();
  expect(await axeFindings(page)).toEqual([]);

  const { yard } = await exportYard(page);
  expect(yard.needs.map((need) => [need.speciesId, need.split.kind])).toEqual([
    ['bermudagrass', 'growth'],
    ['bermudagrass', 'even'],
  ]);
  expect(yard.climate.monthlyMeanC?.[6]).toBeCloseTo(25, 9);
});

test.describe('on a phone', () => {
  test.use(PHONE);
  test('the need of the sample is read and moved with one hand', async ({ page }) => {
    await openApp(page);
    await goToStep(page, 'Need');
    const open = page.locator('need-section button.open').first();
    await open.click();
    await form(page)
      .getByLabel(/^Grass/)
      .selectOption({ label: 'Tall fescue' });
    await form(page)
      .getByRole('radio', { name: /Virginia/ })
      .check();
    const slider = form(page).getByRole('slider', { name: /^Nitrogen of the year/ });
    const before = await slider.getAttribute('aria-valuetext');
    await slider.focus();
    for (let press = 0; press < 6; press++) await page.keyboard.press('ArrowRight');
    await expect(slider).not.toHaveAttribute('aria-valuetext', before ?? '');
    await unfold(page, 'The same as a table');
    const chart = page.locator('year-chart').first();
    await expect(chart.getByRole('img')).toBeVisible();
    // nothing runs out of the panel to the side
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(390);
    const box = await chart.boundingBox();
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(390);
    expect(await axeFindings(page)).toEqual([]);
  });
});
