import type { Locator, Page } from '@playwright/test';
import { areaOfRingM2 } from '../../src/measure/geodesic';
import { createPlane } from '../../src/measure/plane';
import type { XY } from '../../src/measure/types';
import { createNormal, createRandom } from '../fixtures/simulateWalk';
import {
  axeFindings,
  expect,
  exportYard,
  goToStep,
  openApp,
  openEmptyYard,
  openWay,
  PHONE,
  test,
  unfold,
  zoneRows,
} from './journey';

/*
 * Walks with a stream of places that the browser is told in place of its receiver's. The truth is the
 * area of the corners that were walked round, by geodesic area.
 */

const PLANE = createPlane([-96.5432, 41.2345]);
const TOLD_M = 3;
/** the walker errs by less than is told: sigma in each of x and y. */
const SIGMA_M = 0.3;
/** longest step between two places; anyone walks it within what two accuracies leave. */
const STEP_M = 4;
const LOT: readonly XY[] = [
  [0, 0],
  [40, 0],
  [40, 30],
  [0, 30],
];
const LAWN: readonly XY[] = Array.from({ length: 40 }, (_, i): XY => {
  const angle = (i * Math.PI) / 20;
  return [25 * Math.cos(angle), 18 * Math.sin(angle)];
});

const form = (page: Page): Locator => page.locator('walk-form');
const press = (page: Page, name: string | RegExp) => form(page).getByRole('button', { name }).click();
const areaOf = (corners: readonly XY[]) => areaOfRingM2(corners.map((corner) => PLANE.toLonLat(corner)));

/** Tells the browser places, and waits until the page has heard each. */
function createWalker(page: Page, seed: number) {
  const normal = createNormal(createRandom(seed));
  let at: XY = LOT[0] ?? [0, 0];
  const tell = async ([x, y]: XY, accuracy: number) => {
    const heard = await countOf(page);
    const [longitude, latitude] = PLANE.toLonLat([x + SIGMA_M * normal(), y + SIGMA_M * normal()]);
    await page.context().setGeolocation({ longitude, latitude, accuracy });
    await expect.poll(() => countOf(page)).toBeGreaterThan(heard);
  };
  return {
    tell,
    async goTo(to: XY) {
      const from = at;
      const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / STEP_M));
      for (let i = 1; i <= steps; i++) {
        const share = i / steps;
        await tell([from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])], TOLD_M);
      }
      at = to;
    },
    async stand(count: number) {
      for (let i = 0; i < count; i++) await tell(at, TOLD_M);
    },
  };
}

/** Positions used and left out, by the page's own words. */
async function countOf(page: Page): Promise<number> {
  const words =
    (await form(page)
      .getByText(/positions? good/)
      .count()) > 0
      ? await form(page)
          .getByText(/positions? good/)
          .textContent()
      : '';
  const found = words?.match(/(\d+) positions? good, (\d+) left out/);
  return Number(found?.[1] ?? 0) + Number(found?.[2] ?? 0);
}

async function begin(page: Page, mode: 'Corner by corner' | 'All along the edge'): Promise<void> {
  await page.context().grantPermissions(['geolocation']);
  await page.context().setGeolocation({ longitude: -96.5432, latitude: 41.2345, accuracy: TOLD_M });
  await openEmptyYard(page, 'Walked yard');
  await openWay(page, 'Walk');
  await form(page).getByLabel(mode).check();
  await press(page, mode === 'Corner by corner' ? 'Start walking' : 'Turn on location');
  await expect(form(page).getByText(/1 position good/)).toBeVisible();
}

async function takeCorners(
  page: Page,
  walker: ReturnType<typeof createWalker>,
  corners: readonly XY[],
  first = 1,
) {
  for (const [i, corner] of corners.entries()) {
    await walker.goTo(corner);
    await press(page, `Corner ${first + i} is here`);
    await walker.stand(6);
    await press(page, /Tap to walk on/);
    await expect(form(page).getByText(`Corner ${first + i} is taken, from 6 positions.`)).toBeVisible();
  }
}

test('corner by corner: poor positions left out with the reason, the zone kept with its error, undone in one step', async ({
  page,
}) => {
  await begin(page, 'Corner by corner');
  const walker = createWalker(page, 1);
  await takeCorners(page, walker, LOT.slice(0, 2));
  await walker.tell([40, 6], 45);
  await expect(form(page).getByText('its accuracy is worse than the limit')).toBeVisible();
  await expect(form(page).getByText('Too poor')).toBeVisible();
  await walker.tell([400, 6], TOLD_M);
  await expect(form(page).getByText('the receiver jumped')).toBeVisible();
  await expect(form(page).getByRole('button', { name: 'Finish' })).toBeDisabled();
  await takeCorners(page, walker, LOT.slice(2), 3);
  await press(page, 'Take corner 4 back');
  await takeCorners(page, walker, LOT.slice(3), 4);
  await press(page, 'Finish');
  await expect(form(page).locator('.figure')).toHaveText(/ ±\s\d/);
  await press(page, 'Keep as turf');
  await expect(zoneRows(page)).toHaveCount(1);
  const { yard, measured } = await exportYard(page);
  const zone = yard.zones[0];
  expect(zone?.survey).toMatchObject({ method: 'walked', scaleSigma: 0 });
  expect(zone?.survey.source).toMatch(/^Walked corner by corner \d{4}-\d\d-\d\d: \d+ positions, 4 corners$/);
  const figures = measured.zones.get(zone?.id ?? '');
  const error = Math.abs((figures?.netM2 ?? 0) - areaOf(LOT));
  expect(error).toBeLessThan(2 * (figures?.netSigmaM2 ?? 0));
  expect(error / areaOf(LOT)).toBeLessThan(0.03);
  await page.getByRole('button', { name: 'Measure' }).click();
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await expect(zoneRows(page)).toHaveCount(0);
});

test('a reload in the middle loses nothing: the walk goes on where it was', async ({ page }) => {
  await begin(page, 'Corner by corner');
  const walker = createWalker(page, 2);
  await takeCorners(page, walker, LOT.slice(0, 3));
  const before = await countOf(page);
  await page.reload();
  await expect(page.locator('.yard-map')).toBeVisible();
  const ways = await unfold(page, 'Other ways to measure');
  await expect(ways.getByText('A walk with 3 corners is waiting')).toBeVisible();
  await openWay(page, 'Walk');
  await expect(form(page).getByText('Paused')).toBeVisible();
  expect(await countOf(page)).toBeGreaterThanOrEqual(before - 1);
  await press(page, 'Go on walking');
  await expect(form(page).getByText(/positions good/)).toBeVisible();
  await walker.stand(1);
  await takeCorners(page, walker, LOT.slice(3), 4);
  await press(page, 'Finish');
  await press(page, 'Keep as turf');
  const { yard } = await exportYard(page);
  const ring = yard.zones[0]?.parts[0]?.[0] ?? [];
  expect(ring).toHaveLength(5);
  expect(Math.abs(areaOfRingM2(ring) / areaOf(LOT) - 1)).toBeLessThan(0.03);
  // what is kept is no longer an unfinished walk
  // (the page opens again on the step it was on)
  await page.reload();
  await goToStep(page, 'Measure');
  await openWay(page, 'Walk');
  await expect(form(page).getByRole('button', { name: 'Start walking' })).toBeVisible();
});

test('a reload on the edge keeps what was walked of it', async ({ page }) => {
  await begin(page, 'All along the edge');
  const walker = createWalker(page, 8);
  await press(page, 'I am on the edge: begin');
  for (const corner of LOT.slice(1, 3)) await walker.goTo(corner);
  await page.reload();
  await expect(page.locator('.yard-map')).toBeVisible();
  await openWay(page, 'Walk');
  await expect(form(page).getByText('Paused')).toBeVisible();
  await press(page, 'Go on walking');
  await expect(form(page).getByText(/positions good/)).toBeVisible();
  await press(page, 'I am on the edge again');
  for (const corner of [...LOT.slice(3), ...LOT.slice(0, 1)]) await walker.goTo(corner);
  await press(page, 'Finish');
  await press(page, 'Keep as turf');
  const { yard } = await exportYard(page);
  const ring = yard.zones[0]?.parts[0]?.[0] ?? [];
  expect(Math.abs(areaOfRingM2(ring) / areaOf(LOT) - 1)).toBeLessThan(0.06);
});

test('leaving the screen pauses the walk; thrown away it is gone', async ({ page }) => {
  await begin(page, 'Corner by corner');
  await takeCorners(page, createWalker(page, 3), LOT.slice(0, 1));
  await page.getByRole('button', { name: '‹ Zones' }).click();
  await openWay(page, 'Walk');
  await expect(form(page).getByText('Paused')).toBeVisible();
  await press(page, 'Throw this walk away…');
  await press(page, 'Yes, throw this walk away');
  await press(page, 'Bring the last walk back');
  await expect(form(page).getByText('Paused')).toBeVisible();
  await press(page, 'Throw this walk away…');
  await press(page, 'Yes, throw this walk away');
  await expect(form(page).getByRole('button', { name: 'Start walking' })).toBeVisible();
  await page.reload();
  await openApp(page);
  await openWay(page, 'Walk');
  await expect(form(page).getByRole('button', { name: 'Start walking' })).toBeVisible();
});

test('a refused permission is told, with what to do', async ({ page }) => {
  await page.context().grantPermissions([]);
  await openEmptyYard(page, 'Refused');
  await openWay(page, 'Walk');
  await press(page, 'Start walking');
  await expect(form(page).getByRole('alert')).toContainText('not allowed to tell the location');
  await expect(form(page).getByText('Paused')).toBeVisible();
});

async function checkScreen(page: Page, what: string): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect.soft(over, `${what}: no scrolling sideways`).toBeLessThanOrEqual(0);
  const small = await form(page)
    .locator('button, select, summary, label.mode')
    .evaluateAll((all) =>
      all
        .map((one) => ({ words: one.textContent?.trim().slice(0, 20), box: one.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
        .map(({ words }) => words),
    );
  expect.soft(small, `${what}: small targets`).toEqual([]);
  expect.soft(await axeFindings(page), `${what}: axe`).toEqual([]);
}

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`on a phone, ${colorScheme}`, () => {
    test.use({ ...PHONE, colorScheme });

    test('along a curved edge, begun where the person says: axe, targets, the outline of the property', async ({
      page,
    }) => {
      test.setTimeout(120_000);
      await begin(page, 'All along the edge');
      const walker = createWalker(page, 4);
      // from the house to the edge: no part of the outline
      await walker.goTo(LAWN[0] ?? [0, 0]);
      await checkScreen(page, 'before the edge');
      await press(page, 'I am on the edge: begin');
      for (const corner of [...LAWN, ...LAWN.slice(0, 1)]) await walker.goTo(corner);
      await expect(page.locator('.yard-map')).toBeVisible();
      await checkScreen(page, 'on the edge');
      await press(page, 'Finish');
      await expect(form(page).getByText(/\d corners: bends of more than/)).toBeVisible();
      await form(page).getByText('What counts as a good position').click();
      await checkScreen(page, 'finished');
      await form(page).getByLabel('Keep it as').selectOption('Outline of the property');
      await press(page, 'Keep as outline of the property');
      await expect(page.getByRole('heading', { name: 'Measure', level: 2 })).toBeAttached();
      const { yard } = await exportYard(page);
      expect(yard.zones).toHaveLength(0);
      expect(yard.parcel?.survey.method).toBe('walked');
      const ring = yard.parcel?.parts[0]?.[0] ?? [];
      expect(ring.length).toBeGreaterThan(7);
      expect(Math.abs(areaOfRingM2(ring) / areaOf(LAWN) - 1)).toBeLessThan(0.03);
    });
  });
}
