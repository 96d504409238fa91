import { test } from '@playwright/test';
import {
  boxSpots,
  chooseKind,
  clickMap,
  dragBy,
  drawCorners,
  onMap,
  openEmptyYard,
  openZone,
  PHONE,
  startShape,
  unfold,
} from './journey';

for (const [name, opts] of [
  ['wide', {}],
  ['phone', { ...PHONE }],
] as const) {
  test.describe(name, () => {
    test.use(opts as never);
    test('look', async ({ page }) => {
      test.setTimeout(120000);
      const isPhone = name === 'phone';
      const k = isPhone ? 0.5 : 1;
      const oy = isPhone ? -40 : 0;
      const sp = (spots: readonly (readonly [number, number])[]) =>
        spots.map(([x, y]) => [x * k, y * k + oy] as const);
      let n = 0;
      const shot = async (what: string) =>
        page.screenshot({ path: `/tmp/shots/${name}-${String(n++).padStart(2, '0')}-${what}.png` });
      page.on('pageerror', (e) => console.log(name, 'ERR', e.stack));
      page.on('console', (m) => {
        if (['error', 'warning'].includes(m.type())) console.log(name, m.text());
      });
      await openEmptyYard(page);
      await drawCorners(page, 'Turf, regular', sp(boxSpots(200, 250, 450, 500)));
      await drawCorners(page, 'Bed', sp(boxSpots(450, 250, 700, 500)));
      await shot('two');
      let d = await openZone(page, 'Turf 1');
      await unfold(page, 'Curves, strips');
      await unfold(page, 'Move, turn');
      await page.waitForTimeout(300);
      await page.getByRole('button', { name: 'Flip' }).scrollIntoViewIfNeeded();
      await shot('tools');
      await page.getByRole('button', { name: 'Bend to an arc' }).click();
      await page.waitForTimeout(300);
      await clickMap(page, sp([[450, 375]]));
      const [mx, my] = await onMap(page, sp([[490, 375]])[0]);
      await page.mouse.move(mx, my);
      await page.waitForTimeout(200);
      await shot('arc-preview');
      await page.mouse.click(mx, my);
      await page.waitForTimeout(300);
      await shot('arc-done');
      await page.getByRole('button', { name: 'Done' }).click();
      d = await openZone(page, 'Turf 1');
      await d.getByRole('button', { name: 'Reshape corners' }).click();
      await page.waitForTimeout(300);
      await shot('reshape');
      const bend = page.getByLabel('Outline, point 1 of the curve after 2', { exact: true });
      await dragBy(page, bend, 20, 5);
      await page.waitForTimeout(300);
      await shot('bend-dragged');
      await page.getByLabel('Move whole sides').check();
      await page.waitForTimeout(300);
      await shot('sides');
      await page.getByRole('button', { name: 'Done' }).click();
      await openZone(page, 'Turf 1');
      await unfold(page, 'Curves, strips');
      await page.getByRole('button', { name: 'Offset a side' }).click();
      await page.waitForTimeout(300);
      await clickMap(page, sp([[330, 250]]));
      await page.waitForTimeout(300);
      await shot('offset');
      await page.getByRole('button', { name: 'Apply' }).click();
      await page.waitForTimeout(300);
      await shot('offset-done');
      await page.getByRole('button', { name: 'More', exact: true }).click();
      await shot('more');
      await page.getByRole('button', { name: 'Band along a line' }).click();
      await page.waitForTimeout(300);
      await clickMap(
        page,
        sp([
          [150, 600],
          [400, 560],
          [600, 640],
        ]),
      );
      const [bx, by] = await onMap(page, sp([[720, 560]])[0]);
      await page.mouse.move(bx, by);
      await shot('band');
      await page.keyboard.press('Enter');
      await page.waitForTimeout(300);
      await shot('band-done');
      await page.getByRole('button', { name: 'More', exact: true }).click();
      await page.getByRole('button', { name: 'Measure lengths' }).click();
      await page.waitForTimeout(300);
      await clickMap(
        page,
        sp([
          [150, 200],
          [400, 180],
          [600, 240],
        ]),
      );
      const [gx, gy] = await onMap(page, sp([[700, 180]])[0]);
      await page.mouse.move(gx, gy);
      await shot('gauge');
      await page.keyboard.press('Enter');
      await page.waitForTimeout(200);
      await shot('gauge-done');
      await page.getByRole('button', { name: 'Done' }).click();
      await openZone(page, 'Bed 1');
      await unfold(page, 'Curves, strips');
      await page.getByRole('button', { name: 'Align a side' }).click();
      await page.waitForTimeout(300);
      await clickMap(
        page,
        sp([
          [600, 500],
          [500, 600],
        ]),
      );
      await page.waitForTimeout(300);
      await shot('align');
      await page.getByRole('button', { name: 'Apply' }).click();
      await page.waitForTimeout(300);
      await shot('align-done');
      await (await openZone(page, 'Turf 1')).getByLabel('Locked: outline').check();
      await page
        .getByRole('button', { name: 'Dark' })
        .click()
        .catch(() => {});
      await startShape(page, 'Corners');
      await clickMap(
        page,
        sp([
          [100, 300],
          [100, 400],
        ]),
      );
      const [cx, cy] = await onMap(page, sp([[60, 401]])[0]);
      await page.mouse.move(cx, cy);
      await page.mouse.move(cx + 2, cy);
      await page.waitForTimeout(200);
      await shot('guide');
    });
  });
}
