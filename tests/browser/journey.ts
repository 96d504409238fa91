import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { test as base, expect, type Locator, type Page } from '@playwright/test';
import { measureYard } from '../../src/measure/measureYard';
import type { MeasuredYard } from '../../src/measure/types';
import { yardFromGeoJson } from '../../src/yard/codec';
import type { Yard, Zone } from '../../src/yard/types';

export { expect };
export type Spot = readonly [number, number];
export const WIDE = { width: 1440, height: 900 } as const;
export const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;

/** Listens to a page; @returns what went wrong: foreign requests, console errors and warnings, thrown errors, policy breaches. */
export async function watch(page: Page, home: string): Promise<string[]> {
  const wrongs: string[] = [];
  const { host } = new URL(home);
  await page.route(
    (url) => url.protocol.startsWith('http') && url.host !== host,
    (route) => {
      wrongs.push(`asked another host: ${route.request().url()}`);
      return route.abort();
    },
  );
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) wrongs.push(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => wrongs.push(`thrown: ${error.stack ?? error.message}`));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      throw new Error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  return wrongs;
}

/** Every test's page fails the test when anything goes wrong in it or another host is asked. */
export const test = base.extend({
  page: async ({ page, baseURL }, use) => {
    const wrongs = await watch(page, baseURL ?? '');
    await use(page);
    expect(wrongs).toEqual([]);
  },
});

export async function openApp(page: Page): Promise<void> {
  await page.goto('./');
  await expect(page.locator('.yard-map')).toBeVisible();
  await expect(page.getByText('Opening the yard…')).toHaveCount(0);
}

export const STEPS = [
  'Measure',
  'Need',
  'Shelf',
  'Season',
  'Visit',
  'Passes',
  'Buy',
  'Sheet',
  'Yards',
] as const;
export type StepName = (typeof STEPS)[number];

export async function goToStep(page: Page, name: StepName): Promise<void> {
  const tab = page.getByRole('navigation', { name: 'Steps of the job' }).getByRole('button', { name });
  await tab.click();
  await expect(tab).toHaveAttribute('aria-current', 'page');
  await expect(page.getByText('Loading…')).toHaveCount(0);
  await expect(page.getByRole('heading', { name, exact: true, level: 2 })).toBeAttached();
}

export const fold = (page: Page, name: string | RegExp): Locator =>
  page
    .locator('details')
    .filter({ has: page.locator('> summary', { hasText: name }) })
    .first();

/** Opens a folded section. @returns it. */
export async function unfold(page: Page, name: string | RegExp): Promise<Locator> {
  const details = fold(page, name);
  // what the fold before fetched may still move this one away from under the pointer
  await expect(async () => {
    if ((await details.getAttribute('open')) === null) await details.locator('> summary').click();
    await expect(details).toHaveAttribute('open', '', { timeout: 1000 });
  }).toPass();
  return details;
}

/** A yard with nothing in it, on open ground of middle latitude. */
export async function openEmptyYard(page: Page, name = 'Trial yard'): Promise<void> {
  await openApp(page);
  await goToStep(page, 'Yards');
  await page.getByLabel('Name of a new yard').fill(name);
  await page.getByRole('button', { name: 'New yard' }).click();
  // a new yard begins where it is measured
  await expect(page.getByText('Nothing is drawn yet.')).toBeVisible();
  await goToPlace(page, '41.2345, -96.5432');
}

export async function goToPlace(page: Page, coordinates: string): Promise<void> {
  const finder = await unfold(page, 'Find a place');
  await finder.getByLabel('Latitude and longitude').fill(coordinates);
  await finder.getByRole('button', { name: 'Go there' }).click();
}

export async function chooseKind(page: Page, words: string): Promise<void> {
  await page.getByLabel('Kind of ground to draw').selectOption({ label: words });
}

export async function startShape(page: Page, name: 'Corners' | 'Rectangle' | 'Circle' | 'Freehand') {
  await page.getByRole('group', { name: 'Shape to draw' }).getByRole('button', { name }).click();
  await expect(page.getByRole('region', { name: 'Tool at work' })).toBeVisible();
  await expect(page.locator('.yard-map')).not.toHaveClass(/is-waiting/);
}

/** @returns page px of a place given in px from the map's upper left. */
export async function onMap(page: Page, [x, y]: Spot): Promise<[number, number]> {
  const box = await page.locator('.yard-map').boundingBox();
  if (!box) throw new Error('the map has no box');
  return [box.x + x, box.y + y];
}

export async function clickMap(page: Page, spots: readonly Spot[]): Promise<void> {
  for (const spot of spots) {
    const [x, y] = await onMap(page, spot);
    await page.mouse.move(x - 7, y - 5);
    await page.mouse.move(x, y);
    await page.mouse.click(x, y);
  }
}

/** Draws corner by corner and finishes with Enter. */
export async function drawCorners(page: Page, kind: string | null, spots: readonly Spot[]): Promise<void> {
  if (kind) await chooseKind(page, kind);
  await startShape(page, 'Corners');
  await clickMap(page, spots);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'Tool at work' })).toHaveCount(0);
}

/** Corners of an upright box on the screen. */
export const boxSpots = (x0: number, y0: number, x1: number, y1: number): Spot[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

export const zoneButton = (page: Page, name: string): Locator =>
  page.locator('zone-list').getByRole('button', { name: new RegExp(`^${name}`) });

export const zoneRows = (page: Page): Locator =>
  page.locator('zone-list input[type="checkbox"][aria-label^="Choose"]');

/** Opens a zone's details. @returns them. */
export async function openZone(page: Page, name: string): Promise<Locator> {
  const button = zoneButton(page, name);
  if ((await button.getAttribute('aria-expanded')) !== 'true') await button.click();
  await expect(button).toHaveAttribute('aria-expanded', 'true');
  return page.getByRole('region', { name: 'Chosen zone' });
}

/** What the list says of a zone's net area, e.g. "1,000 sq ft ± 6 sq ft". */
export async function shownArea(page: Page, name: string): Promise<string> {
  const row = page
    .locator('zone-list tr')
    .filter({ has: page.getByLabel(`Choose ${name}`, { exact: true }) });
  const text = (await row.locator('td.num').textContent()) ?? '';
  return (text.split('(')[0] ?? '').trim();
}

/** Figures of a shown area: value and the two sigma behind its ±. */
export function readPm(text: string): { value: number; pm: number; unit: string } {
  const found = text.match(/^([\d,.]+)\s*(\S.*?)?\s*±\s*([\d,.]+)\s*(.*)$/);
  if (!found) throw new Error(`no area with ± in “${text}”`);
  const number = (part: string | undefined) => Number((part ?? '').replaceAll(',', ''));
  return { value: number(found[1]), pm: number(found[3]), unit: (found[2] || found[4] || '').trim() };
}

export type WayName =
  | 'A picture of your own'
  | 'Tape'
  | 'Plat or deed'
  | 'Walk'
  | 'Corners by coordinates'
  | 'A file'
  | 'Outline of the property';

/** Opens the form of one of the other ways to measure. @returns it. */
export async function openWay(page: Page, name: WayName): Promise<Locator> {
  const ways = await unfold(page, 'Other ways to measure');
  await ways.getByRole('button', { name: new RegExp(`^${name}`) }).click();
  await expect(page.getByRole('heading', { name, exact: true, level: 2 })).toBeVisible();
  await expect(page.getByText('Loading…')).toHaveCount(0);
  return page.locator('way-form');
}

export interface TypedRectangle {
  readonly kind: string;
  readonly side: string;
  readonly other: string;
  readonly heading?: string;
  /** "latitude, longitude" of the middle; without it the middle of the map. */
  readonly middle?: string;
}

/** A rectangle by its taped sides, put down where it is to lie. */
export async function addTypedRectangle(page: Page, typed: TypedRectangle): Promise<void> {
  await chooseKind(page, typed.kind);
  const form = await openWay(page, 'Tape');
  await form.getByRole('button', { name: 'Rectangle', exact: true }).click();
  await form.getByLabel('a: Length', { exact: true }).fill(typed.side);
  await form.getByLabel('b: Width', { exact: true }).fill(typed.other);
  await form.getByLabel('Direction of side a').fill(typed.heading ?? '0');
  if (typed.middle) {
    const place = await unfold(page, 'Put it by coordinates');
    await place.getByLabel('Its middle: latitude').fill(typed.middle);
  }
  await form.getByRole('button', { name: 'Put on the map' }).click();
  await expect(page.locator('way-form')).toHaveCount(0);
  if (!typed.middle) await page.getByRole('button', { name: 'Done' }).click();
  await expect(page.getByRole('region', { name: 'Tool at work' })).toHaveCount(0);
}

export async function nameZone(page: Page, from: string, to: string): Promise<void> {
  const details = await openZone(page, from);
  await details.getByLabel('Name', { exact: true }).fill(to);
  await details.getByLabel('Name', { exact: true }).press('Enter');
  await expect(
    zoneButton(
      page,
      to.replace(/[<>()=]/g, (c) => `\\${c}`),
    ),
  ).toBeVisible();
}

/** The open yard by way of its export: the file's text, the document in it, its figures. */
export async function exportYard(page: Page): Promise<{ text: string; yard: Yard; measured: MeasuredYard }> {
  await goToStep(page, 'Yards');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Export/ }).click(),
  ]);
  const text = await readFile(await download.path(), 'utf8');
  const { yard, issues } = yardFromGeoJson(JSON.parse(text));
  if (!yard) throw new Error(`the export does not read back: ${JSON.stringify(issues)}`);
  return { text, yard, measured: measureYard(yard) };
}

export function zoneNamed(yard: Yard, name: string): Zone {
  const zone = yard.zones.find((each) => each.name === name);
  if (!zone) throw new Error(`no zone ${name} among ${yard.zones.map((each) => each.name).join(', ')}`);
  return zone;
}

export const message = (page: Page): Locator => page.locator('message-area').getByRole('status');

export async function middleOf(locator: Locator): Promise<[number, number]> {
  const box = await locator.boundingBox();
  if (!box) throw new Error(`not on the screen: ${locator}`);
  return [box.x + box.width / 2, box.y + box.height / 2];
}

export async function dragBy(page: Page, locator: Locator, dx: number, dy: number): Promise<void> {
  const [x, y] = await middleOf(locator);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 4 });
  await page.mouse.move(x + dx, y + dy, { steps: 4 });
  await page.mouse.up();
}

/**
 * What axe finds on the page, a line each; empty when it finds nothing. Axe runs in the page itself: a frame, which
 * it would not look into that way, is a finding too.
 * @param rules these alone; without it all
 */
export async function axeFindings(page: Page, rules: readonly string[] = []): Promise<string[]> {
  const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
  const { violations } = await (rules.length > 0 ? axe.withRules([...rules]) : axe).analyze();
  expect(page.frames()).toHaveLength(1);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary ?? ''}`),
  );
}

/** The bar of the tool at work. */
export const tool = (page: Page): Locator => page.getByRole('region', { name: 'Tool at work' });

/** Areas as the list of zones has them. */
export const listNow = (page: Page): Promise<string[]> => page.locator('zone-list td.num').allInnerTexts();

/** Undo brings the list back to `before`, redo to what it is now. */
export async function expectUndoable(page: Page, before: readonly string[]): Promise<void> {
  const after = await listNow(page);
  expect(after).not.toEqual(before);
  await page.locator('.yard-map').focus();
  await page.keyboard.press('Control+z');
  await expect.poll(() => listNow(page)).toEqual(before);
  await page.keyboard.press('Control+Shift+Z');
  await expect.poll(() => listNow(page)).toEqual(after);
}
