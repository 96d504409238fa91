import type { Locator, Page } from '@playwright/test';
import {
  axeFindings,
  clickMap,
  expect,
  exportYard,
  message,
  openEmptyYard,
  openWay,
  PHONE,
  readPm,
  shownArea,
  test,
  unfold,
  zoneNamed,
  zoneRows,
} from './journey';

const FT = 0.3048;
const form = (page: Page): Locator => page.locator('plat-form');
const list = (page: Page): Locator => form(page).getByRole('region', { name: 'What was understood' });
const outcome = (page: Page): Locator => form(page).locator('.outcome');
const calls = (page: Page): Locator => form(page).getByLabel(/Calls, one a line/);

async function openPlat(page: Page): Promise<void> {
  await openEmptyYard(page, 'Deed yard');
  await openWay(page, 'Plat or deed');
}

for (const size of ['desktop', 'phone'] as const) {
  test.describe(size, () => {
    test.use(size === 'phone' ? PHONE : {});

    test('a lot with a rounded corner becomes a zone of its area, its arc editable', async ({ page }) => {
      await openPlat(page);
      // a practice problem of the Fundamentals of Surveying exam, solved by W. Crawford (POB): a lot of
      // 60 by 120 ft with one corner of 20 ft radius has 7,114 sq ft
      await calls(page).fill(
        `due north 100'\ncurve right R=20 delta 90°\ntangent 40 ft\nS 120\n60 feet, N 90 W`,
      );
      await expect(list(page).getByRole('row')).toHaveCount(6);
      await expect(list(page)).toContainText('Curve right, R 20.00 ft, Δ 90°00′00″');
      await expect(list(page).getByRole('row').nth(3)).toContainText('due east');
      await expect(outcome(page)).toContainText('The calls close');
      const told = readPm((await form(page).locator('.figure').textContent()) ?? '');
      expect(Math.abs(told.value - 7114)).toBeLessThanOrEqual(10);
      await expect(form(page).getByRole('img', { name: /Sketch of 5 calls/ })).toBeVisible();
      expect(await axeFindings(page)).toEqual([]);
      await form(page).getByRole('button', { name: 'Add as a zone' }).click();

      await expect(zoneRows(page)).toHaveCount(1);
      expect(readPm(await shownArea(page, 'Turf 1'))).toEqual(told);
      const { yard, measured } = await exportYard(page);
      const zone = zoneNamed(yard, 'Turf 1');
      expect(zone.survey.method).toBe('plat');
      expect(zone.curves).toHaveLength(1);
      const areaM2 = measured.zones.get(zone.id)?.netM2 ?? 0;
      expect(Math.abs(areaM2 / FT ** 2 - (7200 - 400 + 100 * Math.PI))).toBeLessThan(0.1);
    });

    test('lines that are not understood are marked with their words; nothing typed is lost', async ({
      page,
    }) => {
      await openPlat(page);
      await form(page).getByRole('button', { name: 'Add as a zone' }).click();
      await expect(form(page).getByRole('alert')).toContainText('Write the calls first');
      const text = 'N 10 E 100 ft\nS 80 E 90 fet\nS 10 95 W 100\nN 80 W 90';
      await calls(page).fill(text);
      const faulty = list(page).locator('tr.faulty');
      await expect(faulty).toHaveCount(2);
      await expect(faulty.first()).toContainText('Line 2: “fet” is no unit known here');
      await expect(faulty.last()).toContainText('Line 3: “S 10 95 W” has 95 minutes');
      await form(page).getByRole('button', { name: 'Add as a zone' }).click();
      await expect(form(page).getByRole('alert')).toContainText('Mend the lines marked');
      await expect(zoneRows(page)).toHaveCount(0);
      expect(await axeFindings(page)).toEqual([]);
      await page.getByRole('button', { name: '‹ Zones' }).click();
      await openWay(page, 'Plat or deed');
      await expect(calls(page)).toHaveValue(text);
    });
  });
}

test('closure of a textbook traverse: gap, ratio, compass rule or one more side', async ({ page }) => {
  await openPlat(page);
  // Purdue University, course notes ASM 215: five courses, misclosure -0.71 and +0.53 in 2,466.05 ft, 1:2,771
  await calls(page).fill(
    `N 26° 10'E 285.10\nS 75° 25'E 610.45\nS 15° 30'W 720.48\nN 1° 42'W 203.00\nN 53° 06'W 647.02`,
  );
  await expect(outcome(page)).toContainText(
    /calls end 0\.8[89]\sft southeast of their beginning, after 2,466\.05\sft: 1:2,800/,
  );
  await expect(outcome(page)).toContainText('Short of what a survey of a lot must reach (1:5,000)');
  const spread = form(page).getByRole('radio', { name: /compass rule/ });
  await expect(spread).toBeChecked();
  await form(page).getByRole('button', { name: 'Add as a zone' }).click();
  const spreadCorners = await cornersOf(page, 'Turf 1');
  expect(spreadCorners).toBe(5);

  await page
    .getByRole('navigation', { name: 'Steps of the job' })
    .getByRole('button', { name: 'Measure' })
    .click();
  await openWay(page, 'Plat or deed');
  await form(page)
    .getByRole('radio', { name: /one more side, 0\.8[89]\sft/ })
    .check();
  await form(page).getByRole('button', { name: 'Add as a zone' }).click();
  expect(await cornersOf(page, 'Turf 2')).toBe(6);
});

test('a call read the wrong way round is found', async ({ page }) => {
  await openPlat(page);
  await calls(page).fill('N 12 E 141.20\nS 81 30 W 205.00\nS 5 W 168.40\nS 89 49 38 W 217.43');
  await expect(outcome(page)).toContainText('What may have been misread');
  await expect(outcome(page)).toContainText(
    'Call 2 the other way round (N 81°30′00″ E) would close it to 0.0',
  );
  // so bad a gap is neither spread nor closed until the person says so
  await expect(form(page).getByRole('radio', { checked: true })).toHaveCount(0);
  await expect(form(page).locator('.figure')).toHaveCount(0);
  expect(await axeFindings(page)).toEqual([]);
  await form(page).getByRole('button', { name: 'Add as a zone' }).click();
  await expect(form(page).getByRole('alert')).toContainText('choose first what becomes of the gap');
  await form(page)
    .getByRole('button', { name: /^Use it: Call 2 the other way round/ })
    .click();
  await expect(calls(page)).toHaveValue(/\nN 81°30'00" E 205\.00 ft\n/);
  await expect(form(page).locator('.figure')).toContainText('±');
});

test('a deed is read over its line ends; placed by pointing, turned, made the property’s outline', async ({
  page,
}) => {
  await openPlat(page);
  await calls(page).fill(`Commencing at the corner of Section 12; thence South 500 feet to the Point of
Beginning; thence East along the north line of Lot 5 a distance of 100.00 feet to a 5/8 inch iron rod; thence South
80 feet; thence West 100 feet; thence North 80 feet to the point of beginning, containing 0.184 acres, more or less.`);
  await expect(list(page).getByRole('row')).toHaveCount(6);
  await expect(list(page).locator('tr.tie')).toHaveCount(1);
  await expect(outcome(page)).toContainText(/The text states 8,015\ssq ft; the calls give 8,000(\.\d)?\s±\s/);

  await form(page).getByRole('button', { name: 'Pick it on the map' }).click();
  await clickMap(page, [[300, 300]]);
  await expect(form(page).getByLabel('Point of beginning')).toHaveValue(/^41\.23\d+, -96\.54\d+$/);
  const start = await form(page).getByLabel('Point of beginning').inputValue();
  await form(page).getByLabel('The plat’s north lies').fill('90');
  await form(page).getByRole('button', { name: 'Make it the property’s outline' }).click();
  await expect(message(page)).toContainText('outline of the property');
  const { yard } = await exportYard(page);
  const ring = yard.parcel?.parts[0]?.[0] ?? [];
  expect(yard.parcel?.survey.method).toBe('plat');
  const [lat = 0, lon = 0] = start.split(',').map(Number);
  expect(ring[0]?.[1]).toBeCloseTo(lat, 7);
  expect(ring[0]?.[0]).toBeCloseTo(lon, 7);
  // files run counter-clockwise (RFC 7946): the end of the first call is the corner before the beginning. The
  // plat's east is now south; a degree of latitude is 111,058 m at 41.23° on WGS 84 (textbook radii)
  const second = ring.at(-2);
  const southM = (lat - (second?.[1] ?? 0)) * 111_058;
  expect(Math.abs(southM - 100 * FT)).toBeLessThan(0.01);
  expect(second?.[0]).toBeCloseTo(lon, 7);

  await page.locator('.yard-map').focus();
  await page.keyboard.press('Control+z');
  const undone = await exportYard(page);
  expect(undone.yard.parcel).toBeNull();
});

test('units of old plats: chains, rods, and the US survey foot', async ({ page }) => {
  await openPlat(page);
  await calls(page).fill('N 1 chain 50 links\nE 4 rods\nS 1.5 ch\nW 66 ft');
  // 99 by 66 ft: BLM, Manual of Surveying Instructions 1973, sect. 2-1 (66 ft to the chain, 4 rods)
  await expect(outcome(page)).toContainText('6,534');
  await form(page).getByLabel('The foot is').selectOption({ label: 'US survey (older plats)' });
  await expect(list(page).getByRole('row').nth(1)).toContainText('99.00 ft');
  await form(page).getByLabel('Numbers without a unit are').selectOption({ label: 'chains of 66 ft' });
  await calls(page).fill('N 1.5\nE 1\nS 1.5\nW 1');
  await expect(list(page).getByRole('row').nth(1)).toContainText('99.00 ft');
  const survey = await unfold(page, 'How well the figures are known');
  await survey.getByLabel('They come from').selectOption({ label: 'your own tape, corners by eye' });
  await form(page).getByRole('button', { name: 'Add as a zone' }).click();
  const { yard } = await exportYard(page);
  expect(zoneNamed(yard, 'Turf 1').survey.method).toBe('tape');
});

async function cornersOf(page: Page, name: string): Promise<number> {
  await expect(page.locator('way-form')).toHaveCount(0);
  const { yard } = await exportYard(page);
  return (zoneNamed(yard, name).parts[0]?.[0]?.length ?? 1) - 1;
}
