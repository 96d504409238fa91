import type { Locator, Page } from '@playwright/test';
import { measureYard } from '../../src/measure/measureYard';
import {
  axeFindings,
  dragBy,
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

const form = (page: Page): Locator => page.locator('tape-form');
const figure = (page: Page): Locator => form(page).locator('.figure');

async function openTape(page: Page, shape: string): Promise<void> {
  await openWay(page, 'Tape');
  await form(page).getByRole('button', { name: shape, exact: true }).click();
}

async function type(page: Page, label: string, text: string): Promise<void> {
  const field = form(page).getByRole('textbox', { name: label });
  await field.fill(text);
  await field.press('Tab');
}

/** A new yard of the person's own; on a phone with the panel in full. */
async function begin(page: Page): Promise<void> {
  await openEmptyYard(page, 'Taped yard');
}

for (const size of ['desktop', 'phone'] as const) {
  test.describe(size, () => {
    test.use(size === 'phone' ? PHONE : {});

    test('a trapezoid of an extension example goes on the map, is dragged, and keeps its area', async ({
      page,
    }) => {
      await begin(page);
      await openTape(page, 'Trapezoid');
      await expect(figure(page)).toHaveCount(0);
      await type(page, 'a: First parallel side', '90');
      await type(page, 'b: Second parallel side', '60 ft');
      await type(page, 'h: Height', "80'");
      // Purdue Turf Program, "How Big is Your Lawn?", 2014: ((90 ft + 60 ft)/2) x 80 ft = 6,000 sq ft
      const told = readPm((await figure(page).textContent()) ?? '');
      expect(told.value).toBe(6000);
      await expect(form(page).getByRole('img', { name: /Sketch to scale: a 90\.0/ })).toBeVisible();
      await form(page).getByRole('button', { name: 'Put on the map' }).click();

      await expect(page.getByRole('region', { name: 'Tool at work' })).toBeVisible();
      await expect(message(page)).toContainText('Drag the crossed arrows');
      await expect(page.locator('.yard-label', { hasText: 'Turf 1' })).toBeInViewport();
      if (size === 'desktop')
        await dragBy(page, page.getByRole('button', { name: /^Move/ }).first(), 60, -40);
      await page.getByRole('button', { name: 'Done' }).click();
      expect(readPm(await shownArea(page, 'Turf 1'))).toEqual(told);

      const { yard, measured } = await exportYard(page);
      const zone = zoneNamed(yard, 'Turf 1');
      expect(zone.survey.method).toBe('tape');
      expect(zone.isPlaced).toBe(true);
      const areaM2 = measured.zones.get(zone.id)?.netM2 ?? 0;
      expect(Math.abs(areaM2 / (6000 * 0.3048 ** 2) - 1)).toBeLessThan(1e-4);
    });

    test('the first press on a button counts, right out of the last field', async ({ page }) => {
      await begin(page);
      await openTape(page, 'Rectangle');
      await type(page, 'a: ', '50');
      await form(page).getByRole('textbox', { name: 'b: ' }).fill('20');
      const put = form(page).getByRole('button', { name: 'Put on the map' });
      await put.scrollIntoViewIfNeeded();
      const box = await put.boundingBox();
      if (!box) throw new Error('the button is not drawn');
      // a finger that comes down, leaves the field by it, and goes up at the same place
      await page.mouse.move(box.x + box.width / 2, box.y + 6);
      await page.mouse.down();
      await expect(figure(page)).toHaveText(/^1,000 ±/);
      await page.mouse.up();
      await expect(page.getByRole('region', { name: 'Tool at work' })).toBeVisible();
    });

    test('offsets along a base line: rules side by side, the outline by the chosen one, kept without a place', async ({
      page,
    }) => {
      await begin(page);
      await page.getByRole('button', { name: 'Metric units' }).click();
      await openTape(page, 'Offsets');
      await form(page).getByLabel('Stations').selectOption({ label: 'Equally spaced' });
      await type(page, 'Spacing', '3.5');
      const table = form(page).getByLabel(/One line a station/);
      // course handout "Area by Offsets from a Straight Line", E1 and E2: 211.4 and 211.17 m²
      await table.fill('0.8\n3.6\n4.7\n5.3\n3.9\n2.7\n4.6\n5.5\n4.9\n7.6\n8.8\n5.4\n6.0');
      const rule = (name: string) => form(page).locator('label.rule', { hasText: name });
      expect(readPm((await rule('Trapezoid').locator('b').textContent()) ?? '').value).toBeCloseTo(211.4, 1);
      expect(readPm((await rule('Simpson').locator('b').textContent()) ?? '').value).toBeCloseTo(211.2, 1);
      await rule('Simpson').getByRole('radio').check();
      expect(await axeFindings(page)).toEqual([]);
      const told = (await figure(page).textContent()) ?? '';
      await form(page).getByRole('button', { name: 'Keep without a place' }).click();

      await expect(zoneRows(page)).toHaveCount(1);
      expect(await shownArea(page, 'Turf 1')).toBe(told.trim());
      const { yard } = await exportYard(page);
      const zone = zoneNamed(yard, 'Turf 1');
      expect(zone.isPlaced).toBe(false);
      const areaM2 = measureYard(yard).zones.get(zone.id)?.netM2 ?? 0;
      expect(Math.abs(areaM2 - 211.1667)).toBeLessThan(0.01);
    });

    test('what cannot be is said where it stands, and nothing typed is lost', async ({ page }) => {
      await begin(page);
      await openTape(page, 'Triangle');
      await form(page).getByRole('button', { name: 'Put on the map' }).click();
      await expect(form(page).getByRole('alert')).toContainText('Type a: first side.');
      await type(page, 'a: First side', '40');
      await type(page, 'b: Second side', '30');
      await type(page, 'c: Third side', '75');
      await expect(form(page).getByRole('alert')).toContainText(
        'c (75.0 ft) is 5.0 ft longer than a and b together (70.0 ft)',
      );
      await form(page).getByRole('button', { name: 'Put on the map' }).click();
      await expect(zoneRows(page)).toHaveCount(0);
      expect(await axeFindings(page)).toEqual([]);

      await form(page).getByRole('button', { name: 'Offsets', exact: true }).click();
      await form(page)
        .getByLabel(/One line a station/)
        .fill('0 8\' 4"\n10 12\' 6"\n5 3');
      await expect(form(page).getByRole('alert')).toContainText('Line 3: station 5.0');
      await page.getByRole('button', { name: '‹ Zones' }).click();
      await openWay(page, 'Tape');
      await expect(form(page).getByLabel(/One line a station/)).toHaveValue('0 8\' 4"\n10 12\' 6"\n5 3');
      await form(page).getByRole('button', { name: 'Triangle', exact: true }).click();
      await expect(form(page).getByLabel('c: Third side', { exact: true })).toHaveValue('75');
      // what the field could not take is not passed over for what it held before
      await type(page, 'c: Third side', '50');
      await expect(figure(page)).toHaveText(/^600(\.0)? ±\s/);
      await type(page, 'c: Third side', '5o');
      await form(page).getByRole('button', { name: 'Put on the map' }).click();
      await expect(message(page)).toContainText('could not be read');
      await expect(zoneRows(page)).toHaveCount(0);
    });
  });
}

test('each shape has a sketch before and after its dimensions are typed', async ({ page }) => {
  await begin(page);
  await openWay(page, 'Tape');
  const shapes: readonly (readonly [string, readonly string[], number])[] = [
    // Clemson HGIC 1220: 50 by 25 ft are 1,250 sq ft
    ['Rectangle', ['a 50', 'b 25'], 1250],
    // LSU AgCenter: 30 by 15 and 15 by 10 ft are 600 sq ft
    ['L', ['a 30', 'b 25', 'c 15', 'd 15'], 600],
    // 3, 4 and 5 make a right angle: 30 × 40 / 2
    ['Triangle', ['a 40', 'b 30', 'c 50'], 600],
    // two right angles of 3, 4 and 5: 30 × 40
    ['Four sides', ['a 40', 'b 30', 'c 40', 'd 30', 'e 50'], 1200],
    // π r², π a b / 4, half a circle, a quarter of one
    ['Circle', ['r 10'], Math.PI * 100],
    ['Ellipse', ['a 40', 'b 20'], Math.PI * 200],
    ['Segment', ['c 20', 'h 10'], Math.PI * 50],
    ['Sector', ['r 20', 't 90'], Math.PI * 100],
  ];
  for (const [shape, dimensions, area] of shapes) {
    await form(page).getByRole('button', { name: shape, exact: true }).click();
    const letters = dimensions.map((each) => each[0]).join(', ');
    await expect(form(page).getByRole('img', { name: /^What to measure: / }), letters).toBeVisible();
    for (const each of dimensions) {
      const [key = '', value = ''] = each.split(' ');
      const field = form(page).getByRole('textbox', { name: new RegExp(`^${key}: `) });
      await field.fill(value);
      await field.press('Tab');
    }
    await expect(form(page).getByRole('img', { name: /^Sketch to scale: / })).toBeVisible();
    const told = readPm((await figure(page).textContent()) ?? '');
    expect(Math.abs(told.value - area), shape).toBeLessThanOrEqual(0.5);
  }
  await unfold(page, 'How well it is taped');
  expect(await axeFindings(page)).toEqual([]);
  const before = readPm((await figure(page).textContent()) ?? '');
  await type(page, 'Error of one reading, one sigma', '12');
  // the sigma of π r²/4 is π r s/2: 2 × π × 20 ft × 1 ft / 2, and the half degree besides
  expect(readPm((await figure(page).textContent()) ?? '').pm).toBeGreaterThan(62);
  expect(before.pm).toBeLessThan(20);
});
