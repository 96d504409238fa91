import { gzipSync } from 'node:zlib';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import {
  axeFindings,
  clickMap,
  expect,
  goToStep,
  openApp,
  openZone,
  PHONE,
  type StepName,
  startShape,
  test,
  unfold,
  WIDE,
} from './journey';

const STEPS: readonly StepName[] = ['Measure', 'Shelf', 'Visit', 'Sheet', 'Yards'];
const FIRST_LOAD_LIMIT = 180_000;
/** WCAG 2.2, 2.5.5 (AAA) and the platforms' own guides: 44 CSS px. */
const TOUCH_PX = 44;

test('opens on the sample yard and asks no host but its own', async ({ page }) => {
  await openApp(page);
  await expect(page.getByRole('heading', { level: 1, name: 'Quarry Bend corner lot' }).first()).toBeVisible();
  await expect(page.locator('zone-list').getByRole('checkbox')).toHaveCount(13);
  for (const step of STEPS) await goToStep(page, step);
});

test('first load stays under 180 kB of gzip', async ({ page }) => {
  const bodies: Promise<{ url: string; gzip: number }>[] = [];
  page.on('response', (response) => {
    const type = response.headers()['content-type'] ?? '';
    if (!/html|javascript|css/.test(type)) return;
    bodies.push(response.body().then((body) => ({ url: response.url(), gzip: gzipSync(body).length })));
  });
  await openApp(page);
  await page.waitForLoadState('networkidle');
  const parts = await Promise.all(bodies);
  const total = parts.reduce((sum, part) => sum + part.gzip, 0);
  test.info().annotations.push({ type: 'first load, gzip bytes', description: String(total) });
  expect(parts.length).toBeGreaterThan(2);
  expect(total, JSON.stringify(parts, null, 1)).toBeLessThan(FIRST_LOAD_LIMIT);
});

/** A screen with its folded forms open. */
async function openWhole(page: Page, step: StepName): Promise<void> {
  await goToStep(page, step);
  const isPhone = (page.viewportSize()?.width ?? 0) < 800;
  if (isPhone) await page.getByRole('button', { name: 'Show the panel', exact: true }).click();
  if (step === 'Measure') {
    await page.locator('zone-list button.pick').first().click();
    for (const name of [
      'Other ways to measure',
      'Drains, wells',
      'Ground under the drawing',
      'Find a place',
      'Curves, strips',
      'Move, turn',
      'How measured, note',
    ]) {
      await unfold(page, name);
    }
    await page.getByRole('button', { name: 'Add a source of your own' }).click();
  } else if (step === 'Shelf') {
    await page.getByRole('button', { name: 'Add a product' }).click();
    await expect(page.locator('product-form')).toBeVisible();
    await unfold(page, 'Limits on the label');
  } else if (step === 'Visit') {
    await unfold(page, 'One by one');
  } else if (step === 'Sheet') {
    await expect(page.getByText(/pages? of/)).toBeVisible();
  } else {
    await unfold(page, 'Sample yards');
    await unfold(page, /Settings of/);
  }
}

async function findSmallTargets(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const small: string[] = [];
    const visit = (root: Document | ShadowRoot) => {
      for (const element of root.querySelectorAll<HTMLElement>('*')) {
        if (element.shadowRoot) visit(element.shadowRoot);
        if (!element.matches('button, input, select, summary, textarea, a[href]')) continue;
        if (!element.checkVisibility({ visibilityProperty: true }) || element.closest('.visually-hidden'))
          continue;
        const isTick = element.matches('input[type=checkbox], input[type=radio]');
        const box = ((isTick && element.closest('label')) || element).getBoundingClientRect();
        if (box.width === 0 || (box.width >= least - 0.5 && box.height >= least - 0.5)) continue;
        const words = element.getAttribute('aria-label') ?? element.textContent?.trim().slice(0, 30);
        small.push(`${element.tagName} “${words}” ${box.width.toFixed(1)} × ${box.height.toFixed(1)}`);
      }
    };
    visit(document);
    return small;
  }, TOUCH_PX);
}

async function checkScreens(page: Page, isPhone: boolean, isDark: boolean): Promise<void> {
  test.setTimeout(120_000);
  await openApp(page);
  for (const step of STEPS) {
    await openWhole(page, step);
    if (isPhone) {
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect.soft(over, `${step}: no scrolling sideways`).toBeLessThanOrEqual(0);
      const panel = page.locator('sheet-drawer .body');
      expect
        .soft(await panel.evaluate((it) => it.scrollWidth - it.clientWidth), `${step}: panel`)
        .toBeLessThanOrEqual(0);
      expect.soft(await findSmallTargets(page), `${step}: small targets`).toEqual([]);
    }
    const builder = new AxeBuilder({ page });
    // In the dark only the colours differ.
    const { violations } = await (isDark ? builder.withRules('color-contrast') : builder).analyze();
    const told = violations.map((each) => [
      each.id,
      each.nodes.map((node) => [node.target, node.failureSummary]),
    ]);
    expect.soft(told, `${step}: axe`).toEqual([]);
  }
}

/** The same with a shape half drawn, with corners in hand, and with a zone about to be split. */
async function checkTools(page: Page, isPhone: boolean): Promise<void> {
  test.setTimeout(120_000);
  await openApp(page);
  const check = async (what: string) => {
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect.soft(over, `${what}: no scrolling sideways`).toBeLessThanOrEqual(0);
    if (isPhone) expect.soft(await findSmallTargets(page), `${what}: small targets`).toEqual([]);
    expect.soft(await axeFindings(page), what).toEqual([]);
  };
  await startShape(page, 'Corners');
  await clickMap(page, [
    [150, 200],
    [250, 210],
    [240, 300],
  ]);
  await check('drawing');
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  for (const button of ['Reshape corners', 'Split by a line']) {
    await (await openZone(page, 'Front lawn')).getByRole('button', { name: button }).click();
    await expect(page.getByRole('region', { name: 'Tool at work' })).toBeVisible();
    await check(button);
    await page.getByRole('button', { name: /^(Done|Cancel)$/ }).click();
  }
}

test('axe finds nothing while tools are at work', async ({ page }) => checkTools(page, false));
test.describe('phone', () => {
  test.use(PHONE);
  test('axe and touch targets while tools are at work', async ({ page }) => checkTools(page, true));
});

for (const colorScheme of ['light', 'dark'] as const) {
  const isDark = colorScheme === 'dark';
  test.describe(`${colorScheme}, wide`, () => {
    test.use({ colorScheme, viewport: WIDE });
    test('axe finds nothing on any screen or form', async ({ page }) => checkScreens(page, false, isDark));
  });
  test.describe(`${colorScheme}, phone`, () => {
    test.use({ colorScheme, ...PHONE });
    test('axe finds nothing, nothing scrolls sideways, every target is 44 px', async ({ page }) =>
      checkScreens(page, true, isDark));
  });
}
