import { Buffer } from 'node:buffer';
import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import ICAL from 'ical.js';
import { yardToGeoJson } from '../../src/yard/codec';
import { testYard } from '../fixtures/testYard';
import {
  axeFindings,
  dragBy,
  expect,
  goToStep,
  message,
  middleOf,
  openApp,
  PHONE,
  test,
  unfold,
} from './journey';

/** Two lawns and two products whose labels ask for 28 days between applications; no visit yet. */
const BARE = { ...testYard(), name: 'Two lawns', visits: [], extra: {} };

async function openBareYard(page: Page): Promise<void> {
  await openApp(page);
  await goToStep(page, 'Yards');
  await page.getByLabel('Files', { exact: true }).setInputFiles({
    name: 'two-lawns.geojson',
    mimeType: 'application/geo+json',
    buffer: Buffer.from(JSON.stringify(yardToGeoJson(BARE))),
  });
  await page
    .getByRole('dialog', { name: /^What is in/ })
    .getByRole('button', { name: 'Bring in' })
    .click();
  await expect(message(page)).toContainText('Brought in');
}

async function openView(page: Page, name: 'Calendar' | 'Programs'): Promise<void> {
  await page.getByRole('navigation', { name: 'Views of the season' }).getByRole('button', { name }).click();
  await expect(page.getByText('Loading…')).toHaveCount(0);
}

async function fill(place: Locator, label: string, text: string): Promise<void> {
  const field = place.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Tab');
}

async function addProgram(page: Page, name: string, product: string): Promise<Locator> {
  await page.getByRole('button', { name: 'Add a program' }).click();
  const form = page.locator('program-form');
  await fill(form, 'Name', name);
  await fill(form, 'First day', '2031-04-07');
  await fill(form, 'Last possible day', '2031-07-15');
  await form.getByLabel('Add a product').selectOption({ label: product });
  await form.getByRole('button', { name: 'Add to program' }).click();
  await expect(form.getByRole('heading', { name: product })).toBeVisible();
  return form;
}

const chip = (page: Page, name: RegExp): Locator =>
  page.locator('season-calendar').getByRole('button', { name });
const bar = (page: Page): Locator => page.locator('season-calendar .bar');
const spoken = (page: Page): Locator => page.locator('season-calendar').getByRole('status');

/** Two programs: liquid every four weeks, granules with every second of its visits. By hand: 7 Apr, 5 May, 2 and 30 Jun. */
async function makeSeason(page: Page): Promise<void> {
  await openBareYard(page);
  await goToStep(page, 'Season');
  await expect(page.getByText('No visits are planned yet.')).toBeVisible();
  await page.getByRole('button', { name: 'To the programs' }).click();
  await expect(page.getByRole('button', { name: /^Light liquid alone/ })).toBeVisible();
  const liquid = await addProgram(page, 'Liquid', 'Liquid 12-0-6');
  // every two weeks is sooner than the label allows: the programs say so before any visit is made
  await expect(page.locator('program-list .make .note.error')).toContainText('14 days from');
  await fill(liquid, 'A visit every', '4');
  await expect(page.locator('program-list .make .note.error')).toHaveCount(0);
  await expect(liquid.locator('.dates li')).toHaveText([
    'Mon, Apr 7',
    'Mon, May 5',
    'Mon, Jun 2',
    'Mon, Jun 30',
  ]);
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  const granules = await addProgram(page, 'Granules', 'Granular 20-0-10');
  await granules.getByLabel(/^Pace/).selectOption({ label: 'paired with “Liquid”' });
  await fill(granules, 'With every … visit of it', '2');
  await expect(granules.locator('.dates li')).toHaveText(['Mon, Apr 7', 'Mon, Jun 2']);
  await expect(page.locator('program-list .make')).toContainText('4 to add');
  await page.getByRole('button', { name: 'Make the visits' }).click();
  await expect(message(page)).toContainText('4 added');
  await expect(page.locator('program-list .make')).toContainText('The visits are as the programs have them.');
  expect(await axeFindings(page)).toEqual([]);
  await openView(page, 'Calendar');
  await expect(page.locator('season-calendar .chip')).toHaveCount(4);
  await expect(chip(page, /^Liquid 1 \+ Granules; Mon, Apr 7, 2031; planned;/)).toBeVisible();
}

/** The year's visits as another reader finds them in the exported file. */
async function exportEvents(page: Page): Promise<[string, string][]> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Export for a calendar (.ics)' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('two-lawns-2031.ics');
  const root = new ICAL.Component(ICAL.parse(await readFile(await download.path(), 'utf8')));
  return root
    .getAllSubcomponents('vevent')
    .map((component) => new ICAL.Event(component))
    .map((event) => [event.startDate.toString(), event.summary]);
}

/** The visit stands on its first day again after one step back. */
async function expectOneUndo(page: Page): Promise<void> {
  await page.keyboard.press('Control+z');
  await expect(chip(page, /^Liquid 2; Mon, May 5, 2031/)).toBeVisible();
  await expect(chip(page, /not right/)).toHaveCount(0);
}

const TOO_SOON =
  /2[0-9] days from “Liquid 1 \+ Granules” \(Mon, Apr\s7, 2031\).*the label asks for at least 28/;

test('a season of two paired programs: visits moved by drag and keys hear what the label says, removed ones stay away', async ({
  page,
}) => {
  await makeSeason(page);
  expect(await axeFindings(page)).toEqual([]);

  // would stand on Wed, Apr 30, 23 days after the first: told before it is let go
  const second = chip(page, /^Liquid 2;/);
  await second.scrollIntoViewIfNeeded();
  const [x, y] = await middleOf(second);
  const [toX, toY] = await middleOf(page.locator('season-calendar td[data-date="2031-04-30"]'));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 20, y - 10, { steps: 3 });
  await page.mouse.move(toX, toY, { steps: 4 });
  await expect(bar(page)).toContainText('would stand on Wed, Apr 30, 2031, 5 days earlier');
  await expect(bar(page).locator('.note.error')).toContainText(TOO_SOON);
  await expect(spoken(page)).toHaveText(TOO_SOON);
  // Escape lets go of it where it was
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(chip(page, /^Liquid 2; Mon, May 5/)).toBeVisible();
  await dragBy(page, chip(page, /^Liquid 2;/), toX - x, toY - y);
  await expect(chip(page, /^Liquid 2; Wed, Apr 30, 2031; planned;.*not right:.*23 days/)).toBeFocused();
  await expectOneUndo(page);

  // the last one may go out later: nothing is said against it
  await chip(page, /^Liquid 4;/).focus();
  await page.keyboard.press('ArrowRight');
  await expect(spoken(page)).toContainText('Nothing speaks against this day');
  await page.keyboard.press('Escape');
  await chip(page, /^Liquid 2;/).focus();
  await page.keyboard.press('Shift+ArrowLeft');
  await expect(spoken(page)).toContainText('would stand on Mon, Apr 28, 2031');
  await expect(spoken(page)).toHaveText(TOO_SOON);
  expect(await axeFindings(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await expect(chip(page, /^Liquid 2; Mon, Apr 28, 2031.*21 days/)).toBeFocused();
  await expectOneUndo(page);

  expect(await exportEvents(page)).toEqual([
    ['2031-04-07', 'Liquid 1 + Granules'],
    ['2031-05-05', 'Liquid 2'],
    ['2031-06-02', 'Liquid 3 + Granules'],
    ['2031-06-30', 'Liquid 4'],
  ]);

  // removed by hand: asked first, and made again only when that is wanted
  await chip(page, /^Liquid 4;/).focus();
  await page.keyboard.press('Delete');
  await expect(page.getByRole('button', { name: 'Remove it' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(chip(page, /^Liquid 4;/)).toBeFocused();
  await page.keyboard.press('Delete');
  await page.getByRole('button', { name: 'Remove it' }).click();
  await expect(page.locator('season-calendar .chip')).toHaveCount(3);
  await openView(page, 'Programs');
  await expect(page.locator('program-list .make')).toContainText('The visits are as the programs have them.');
  await page
    .locator('program-list')
    .getByRole('button', { name: /^Liquid / })
    .click();
  await page.getByRole('button', { name: 'Make again' }).click();
  await page.getByRole('button', { name: 'Make them again' }).click();
  await expect(message(page)).toContainText('1 added');

  // the whole year to the next: 52 weeks keep the Mondays
  const copy = await unfold(page, 'Copy a year');
  await copy.getByLabel('To the year').fill('2032');
  await expect(copy).toContainText('Mon, Apr 7, 2031 becomes Mon, Apr 5, 2032');
  await copy.getByRole('button', { name: 'Copy 2031 to 2032' }).click();
  await openView(page, 'Calendar');
  await expect(chip(page, /^Liquid 1 \+ Granules; Mon, Apr 5, 2032/)).toBeVisible();
  await expect(page.locator('season-calendar .chip')).toHaveCount(4);
  // undone, the calendar is back at the year that has visits
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(chip(page, /^Liquid 1 \+ Granules; Mon, Apr 7, 2031/)).toBeVisible();
});

test.describe('on a phone', () => {
  test.use(PHONE);

  test('visits are a list: a finger moves them, and buttons do; the reason stands there first', async ({
    page,
  }) => {
    await makeSeason(page);
    const second = chip(page, /^Liquid 2;/);
    await second.scrollIntoViewIfNeeded();
    const [x, y] = await middleOf(second);
    // a finger rests, then goes 3 days up (28 px each)
    const touch = await page.context().newCDPSession(page);
    const at = (dy: number) => ({ touchPoints: [{ x, y: y + dy }] });
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', ...at(0) });
    await expect(bar(page)).toContainText('would stand on Mon, May 5, 2031');
    for (const dy of [-30, -60, -84])
      await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', ...at(dy) });
    await expect(bar(page)).toContainText('would stand on Fri, May 2, 2031, 3 days earlier');
    await expect(bar(page).locator('.note.error')).toContainText(TOO_SOON);
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await expect(chip(page, /^Liquid 2; Fri, May 2, 2031/)).toBeVisible();
    await expectOneUndo(page);

    await page.getByRole('button', { name: 'Move Liquid 2' }).click();
    await page.getByRole('button', { name: 'A week earlier' }).click();
    await expect(bar(page).locator('.note.error')).toContainText(TOO_SOON);
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Put it here' }).click();
    const row = page
      .locator('season-calendar li')
      .filter({ has: page.getByRole('button', { name: /^Liquid 2;/ }) });
    await expect(row.locator('.note.error')).toContainText('21 days from');
    await expectOneUndo(page);
    expect((await exportEvents(page)).map(([date]) => date)).toContain('2031-05-05');
    // a move that is left before it is put down is told
    await page.getByRole('button', { name: 'Move Liquid 2' }).click();
    await page.getByRole('button', { name: 'A day later' }).click();
    await expect(bar(page)).toContainText('Liquid 12-0-6 goes on the same ground 29 days before (Liquid 1');
    await openView(page, 'Programs');
    await expect(message(page)).toContainText('“Liquid 2” stays on Mon, May 5, 2031: the move to Tue, May 6');
    await openView(page, 'Calendar');
    await chip(page, /^Liquid 2;/).click();
    await expect(page.locator('visit-panel').getByLabel('Name', { exact: true })).toHaveValue('Liquid 2');
  });
});
