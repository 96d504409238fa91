import {
  drawCorners,
  expect,
  exportYard,
  openApp,
  openEmptyYard,
  openWay,
  openZone,
  readPm,
  shownArea,
  test,
  unfold,
  zoneNamed,
} from './journey';

test('a larger corner error and a scale error make the ± of the area larger, as much as they should', async ({
  page,
}) => {
  await openApp(page);
  const house = await openZone(page, 'House');
  await unfold(page, 'How measured, note');
  await house.getByLabel('Corner error, one sigma', { exact: true }).fill('0');
  await house.getByLabel('Corner error, one sigma', { exact: true }).press('Enter');
  await house.getByLabel('Scale error, one sigma').fill('1');
  await house.getByLabel('Measured by').fill('long tape');
  await house.getByLabel('Measured by').press('Tab');
  // the area goes with the square of lengths: one sigma 2 %, ± two sigma 4 %
  await expect
    .poll(async () => {
      const { value, pm } = readPm(await shownArea(page, 'House'));
      return Math.abs(pm / value - 0.04);
    })
    .toBeLessThan(0.002);
  const { yard } = await exportYard(page);
  expect(zoneNamed(yard, 'House').survey).toMatchObject({
    method: 'tape',
    vertexSigmaM: 0,
    scaleSigma: 0.01,
    source: 'long tape',
  });
});

test('a zone drawn over a picture has an error by picture, zoom and pointer', async ({ page }) => {
  await openApp(page);
  const grounds = await unfold(page, 'Ground under the drawing');
  await grounds.getByRole('radio', { name: 'Drawn aerial picture of the sample' }).check();
  await drawCorners(page, 'Bed', [
    [40, 500],
    [100, 500],
    [100, 560],
  ]);
  const { yard } = await exportYard(page);
  const { survey } = zoneNamed(yard, 'Bed 1');
  expect(survey).toMatchObject({ method: 'traced', source: 'Drawn aerial picture of the sample' });
  // at least half a pixel of 0.3 m, and no more than that and 2.5 px of a map some 50 m wide on 900 px
  expect(survey.vertexSigmaM).toBeGreaterThanOrEqual(0.15);
  expect(survey.vertexSigmaM).toBeLessThan(0.4);
});

test('a slope is typed in three ways and shown beside the flat area', async ({ page }) => {
  await openApp(page);
  const lawn = await openZone(page, 'Front lawn');
  await unfold(page, /^Slope/);
  await lawn.getByLabel('Slope', { exact: true }).fill('75');
  // 3, 4, 5: a quarter more
  await expect(lawn.getByText('25 % more than the flat area')).toBeVisible();
  await expect(lawn.getByText('Steeper than 3 to 1')).toBeVisible();
  await lawn.getByLabel('Slope by').selectOption({ label: 'Degrees' });
  await lawn.getByLabel('Slope', { exact: true }).fill('10');
  // secant of 10 degrees: 1.0154
  await expect(lawn.getByText('1.5 % more than the flat area')).toBeVisible();
  await lawn.getByLabel('Slope by').selectOption({ label: 'Two heights and a distance' });
  await lawn.getByLabel('Height of one end', { exact: true }).fill('100');
  await lawn.getByLabel('Height of the other', { exact: true }).fill('103');
  await lawn.getByLabel('Distance between', { exact: true }).fill('5');
  await lawn.getByLabel('The distance was taped along the slope').check();
  await lawn.getByRole('button', { name: 'Set the slope' }).click();
  await expect(page.locator('summary', { hasText: 'Slope: 75 % (37°)' })).toBeVisible();
  await lawn.getByLabel('Show the ground along the slope').check();
  const row = page
    .locator('zone-list tr')
    .filter({ has: page.getByLabel('Choose Front lawn', { exact: true }) });
  await expect(row.locator('td.num .slope')).toHaveText(/along the slope, 25 % more/);
});

test('a zone without a place counts, is not drawn, and is put on the map', async ({ page }) => {
  await openEmptyYard(page);
  const form = await openWay(page, 'Tape');
  await form.getByRole('button', { name: 'Rectangle', exact: true }).click();
  await form.getByLabel('a: Length', { exact: true }).fill('40 ft');
  await form.getByLabel('b: Width', { exact: true }).fill('25 ft');
  await form.getByLabel('b: Width', { exact: true }).press('Tab');
  await expect(form.getByText('1,000').first()).toBeVisible();
  await form.getByRole('button', { name: 'Keep without a place' }).click();
  const zone = page.getByRole('region', { name: 'Chosen zone' });
  await expect(zone.locator('zone-sketch')).toBeVisible();
  expect(readPm(await shownArea(page, 'Turf 1')).value).toBe(1000);
  await expect(page.locator('path.yard-zone')).toHaveCount(0);
  await zone.getByRole('button', { name: 'Put on the map' }).click();
  const map = await page.locator('.yard-map').boundingBox();
  if (!map) throw new Error('the map has no box');
  await page.mouse.click(map.x + map.width / 2, map.y + map.height / 2);
  await expect(page.locator('path.yard-zone')).toHaveCount(1);
  expect(readPm(await shownArea(page, 'Turf 1')).value).toBe(1000);
});

test('a locked zone stays when it is to be deleted with others', async ({ page }) => {
  await openApp(page);
  const house = await openZone(page, 'House');
  await house.getByLabel('Locked: outline and place stay').check();
  await page.getByLabel('Choose Pond', { exact: true }).check();
  await page.getByRole('button', { name: 'Delete 2' }).click();
  await expect(page.getByText('“House” is locked, so it stays as it is.')).toBeVisible();
  await expect(page.getByLabel('Choose Pond', { exact: true })).toBeVisible();
});
