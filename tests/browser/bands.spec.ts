import { done, netOf, SQ_FT } from './editing';
import {
  axeFindings,
  chooseKind,
  clickMap,
  expect,
  expectUndoable,
  exportYard,
  goToStep,
  message,
  openEmptyYard,
  test,
  tool,
  zoneNamed,
  zoneRows,
} from './journey';

test('a band along a line: width and bends changed on the way, crossing itself, undone and redone', async ({
  page,
}) => {
  await openEmptyYard(page);
  await chooseKind(page, 'Bed');
  await page.getByRole('button', { name: 'More', exact: true }).click();
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Band along a line' }).click();
  await clickMap(page, [[300, 500]]);
  for (const [length, bearing] of [
    ['60', '90'],
    ['30', '0'],
  ] as const) {
    await tool(page).getByLabel('Next side', { exact: true }).fill(length);
    await tool(page).getByLabel('Bearing').fill(bearing);
    await tool(page).getByRole('button', { name: 'Add side' }).click();
    await expect(tool(page).getByLabel('Next side', { exact: true })).toHaveValue('');
  }
  await tool(page).getByLabel('Width', { exact: true }).fill('5');
  await tool(page).getByLabel('Width', { exact: true }).press('Enter');
  await expect(tool(page)).toContainText('3 points so far');
  expect(await axeFindings(page)).toEqual([]);
  await tool(page).getByRole('button', { name: 'Finish' }).click();
  await expect(zoneRows(page)).toHaveCount(1);
  await expectUndoable(page, []);
  const pointed = await exportYard(page);
  // a mitred band covers length by width: 90 by 5 ft (Pappus)
  expect(Math.abs(netOf(pointed, 'Bed 1') / SQ_FT - 450)).toBeLessThan(0.05);

  await goToStep(page, 'Measure');
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('button', { name: 'Band along a line' }).click();
  await tool(page).getByLabel('Bends').selectOption({ label: 'Rounded' });
  await clickMap(page, [
    [200, 300],
    [400, 300],
    [400, 200],
    [300, 200],
    [300, 400],
  ]);
  await page.keyboard.press('Enter');
  await expect(zoneRows(page)).toHaveCount(2);
  const { yard } = await exportYard(page);
  expect(zoneNamed(yard, 'Bed 2').parts.map((rings) => rings.length)).toEqual([2]);
});

test('the gauge tells sides, angles and their sum, to be copied; nothing is added', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openEmptyYard(page);
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('button', { name: 'Measure lengths and angles' }).click();
  await clickMap(page, [[300, 500]]);
  for (const [length, bearing] of [
    ['40', '90'],
    ['30', '0'],
  ] as const) {
    await tool(page).getByLabel('Next side', { exact: true }).fill(length);
    await tool(page).getByLabel('Bearing').fill(bearing);
    await tool(page).getByRole('button', { name: 'Add side' }).click();
  }
  const list = page.getByLabel('Measured sides');
  await expect(list).toContainText('Side 1: 40.0 ft, bearing 90.0°');
  await expect(list).toContainText('Side 2: 30.0 ft, bearing 0.0°, angle 90.0°');
  await expect(list).toContainText('In all: 70.0 ft');
  expect(await axeFindings(page)).toEqual([]);
  await tool(page).getByRole('button', { name: 'Copy' }).click();
  await expect(message(page)).toContainText('copied');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('In all: 70.0 ft');
  await page.locator('.yard-map').focus();
  await page.keyboard.press('Enter');
  await expect(list).toContainText('In all: 70.0 ft');
  await clickMap(page, [[600, 300]]);
  await expect(list).toHaveCount(0);
  await done(page);
  await expect(zoneRows(page)).toHaveCount(0);
});
