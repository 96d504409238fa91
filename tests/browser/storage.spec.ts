import { Buffer } from 'node:buffer';
import type { Page } from '@playwright/test';
import {
  addTypedRectangle,
  expect,
  exportYard,
  goToStep,
  message,
  nameZone,
  openApp,
  openEmptyYard,
  shownArea,
  test,
  unfold,
  watch,
  zoneButton,
  zoneRows,
} from './journey';

const saved = (page: Page) => page.getByText('Saved on this device').first();

async function importText(page: Page, text: string, name = 'yard.geojson'): Promise<void> {
  await goToStep(page, 'Yards');
  await page.getByLabel('Files', { exact: true }).setInputFiles({
    name,
    mimeType: 'application/geo+json',
    buffer: Buffer.from(text),
  });
  await expect(preview(page).getByRole('status').first()).toBeVisible();
}

const preview = (page: Page) => page.getByRole('dialog', { name: /^What is in/ });
const bringIn = (page: Page) => preview(page).getByRole('button', { name: 'Bring in' });

test('an edit is there after the page is loaded again', async ({ page }) => {
  await openEmptyYard(page, 'Kept yard');
  await addTypedRectangle(page, { kind: 'Turf, regular', side: '40', other: '25' });
  const area = await shownArea(page, 'Turf 1');
  await expect(saved(page)).toBeVisible();
  await page.reload();
  await expect(zoneButton(page, 'Turf 1')).toBeVisible();
  expect(await shownArea(page, 'Turf 1')).toBe(area);
});

test('several yards are kept, opened, renamed and removed', async ({ page }) => {
  await openEmptyYard(page, 'North yard');
  await addTypedRectangle(page, { kind: 'Bed', side: '10', other: '10' });
  await goToStep(page, 'Yards');
  await page.getByLabel('Name of a new yard').fill('South yard');
  await page.getByRole('button', { name: 'New yard' }).click();
  await expect(page.getByText('Nothing is drawn yet.')).toBeVisible();
  await goToStep(page, 'Yards');
  await page.getByRole('button', { name: 'New yard' }).click();
  await expect(page.getByText('Type a name for the new yard first.')).toBeVisible();
  const list = page.getByRole('list', { name: 'Yards in this browser' });
  await expect(list.getByRole('listitem')).toHaveCount(3);
  await page.getByRole('button', { name: 'Rename South yard' }).click();
  await list.getByLabel('Name', { exact: true }).fill('West yard');
  await list.getByRole('button', { name: 'Rename', exact: true }).click();
  await expect(list).toContainText('West yard');
  await page.getByRole('button', { name: 'Open North yard' }).click();
  await expect(page.getByRole('button', { name: 'Open West yard' })).toBeVisible();
  await goToStep(page, 'Measure');
  await expect(zoneButton(page, 'Bed 1')).toBeVisible();
  await goToStep(page, 'Yards');
  const remove = page.getByRole('button', { name: 'Remove West yard' });
  await remove.click();
  await expect(list.getByRole('alert')).toContainText('cannot be got back');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await expect(list.getByRole('listitem')).toHaveCount(3);
  await remove.click();
  await page.getByRole('button', { name: 'Remove it' }).click();
  await expect(list.getByRole('listitem')).toHaveCount(2);
  // the message goes with the next step; the way back stays
  await expect(message(page)).toContainText('was removed');
  await goToStep(page, 'Measure');
  await expect(message(page)).toBeEmpty();
  await goToStep(page, 'Yards');
  await page.getByRole('button', { name: 'Put West yard back' }).click();
  await expect(list.getByRole('listitem')).toHaveCount(3);
});

test('export and import give the same zones and areas', async ({ page }) => {
  await openApp(page);
  const areas = await page.locator('zone-list td.num').allTextContents();
  const first = await exportYard(page);
  await importText(page, first.text);
  await bringIn(page).click();
  await expect(message(page)).toContainText('Brought in');
  expect(await page.locator('zone-list td.num').allTextContents()).toEqual(areas);
  const again = await exportYard(page);
  const { id: _first, name, ...before } = first.yard;
  const { id: _again, name: nameAgain, ...after } = again.yard;
  expect(after).toEqual(before);
  expect(nameAgain).toBe(`${name} (2)`);
});

test('a damaged file is told of in words and its good zones come in', async ({ page }) => {
  await openApp(page);
  const { text, yard } = await exportYard(page);
  const file = JSON.parse(text);
  const broken = file.features.find(
    (each: { id?: string; geometry: unknown }) => each.id === yard.zones[2]?.id,
  );
  broken.geometry = { type: 'Polygon', coordinates: [[[-97.43, 'north'], [-97.43]]] };
  await importText(page, JSON.stringify(file), 'broken.geojson');
  const name = yard.zones[2]?.name ?? 'no name';
  await expect(preview(page)).toContainText('1 that cannot');
  await expect(preview(page).getByRole('listitem').filter({ hasText: name }).first()).toBeVisible();
  await bringIn(page).click();
  await expect(zoneRows(page)).toHaveCount(yard.zones.length - 1);

  await importText(page, text.slice(0, 900), 'cut.geojson');
  await expect(preview(page)).toContainText('Nothing in it can come in.');
  await expect(preview(page)).toContainText(/line \d+/);
  await page.keyboard.press('Escape');
  await importText(page, 'these are not coordinates', 'words.geojson');
  await expect(preview(page)).toContainText('none of the files that can be read');
  await expect(bringIn(page)).toBeDisabled();
  await preview(page).getByRole('button', { name: 'Cancel' }).first().click();
  await goToStep(page, 'Measure');
  await expect(zoneRows(page)).toHaveCount(yard.zones.length - 1);
});

test('damaged storage is told of and the last good state opens', async ({ page }) => {
  await openEmptyYard(page, 'Fragile yard');
  await addTypedRectangle(page, { kind: 'Turf, regular', side: '40', other: '25' });
  await expect(saved(page)).toBeVisible();
  await addTypedRectangle(page, { kind: 'Bed', side: '5', other: '5' });
  await expect(saved(page)).toBeVisible();
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('measured-yard');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const change = opening.result.transaction('yards', 'readwrite');
          const store = change.objectStore('yards');
          change.oncomplete = () => {
            opening.result.close();
            resolve();
          };
          store.get('last-open').onsuccess = ({ target }) => {
            const id = (target as IDBRequest<string>).result;
            store.get(`head:${id}`).onsuccess = (event) => {
              const { revision } = (event.target as IDBRequest<{ revision: number }>).result;
              store.put(
                { savedAt: 1, file: { type: 'FeatureCollection', features: 'gone' } },
                `state:${id}:${revision}`,
              );
            };
          };
        };
      }),
  );
  await page.reload();
  await expect(page.getByRole('heading', { name: '“Fragile yard” is damaged in storage' })).toBeVisible();
  await page
    .getByRole('listitem')
    .filter({ hasText: /State of .*1 zone/s })
    .first()
    .getByRole('button', { name: 'Open this' })
    .click();
  await expect(zoneButton(page, 'Turf 1')).toBeVisible();
  await expect(saved(page)).toBeVisible();
  await page.reload();
  await expect(zoneButton(page, 'Turf 1')).toBeVisible();
});

test('a second tab’s change stops the first from saving over it, in words', async ({
  page,
  context,
  baseURL,
}) => {
  await openEmptyYard(page, 'Shared yard');
  await expect(saved(page)).toBeVisible();
  const other = await context.newPage();
  const wrongs = await watch(other, baseURL ?? '');
  await openApp(other);
  await addTypedRectangle(other, { kind: 'Bed', side: '10', other: '10' });
  await expect(saved(other)).toBeVisible();
  await addTypedRectangle(page, { kind: 'Turf, regular', side: '20', other: '20' });
  await goToStep(page, 'Yards');
  await expect(page.getByText(/Another tab changed this yard/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Keep this one as a copy' }).click();
  await expect(page.getByText('Shared yard (copy)').first()).toBeVisible();
  await expect(saved(page)).toBeVisible();
  await page.getByRole('button', { name: 'Open Shared yard', exact: true }).click();
  await goToStep(page, 'Measure');
  await expect(zoneButton(page, 'Bed 1')).toBeVisible();
  await expect(zoneRows(page)).toHaveCount(1);
  expect(wrongs).toEqual([]);
});

test('a name that looks like markup is text in list, map and sheet', async ({ page }) => {
  const name = '<img src=x onerror=alert(1)>';
  const dialogs: string[] = [];
  page.on('dialog', (dialog) => {
    dialogs.push(dialog.message());
    return dialog.dismiss();
  });
  await openEmptyYard(page, name);
  await addTypedRectangle(page, { kind: 'Turf, regular', side: '60', other: '60' });
  await nameZone(page, 'Turf 1', name);
  await expect(page.locator('.yard-label', { hasText: name })).toBeVisible();
  const finder = await unfold(page, 'Drains, wells');
  await finder.getByRole('button', { name: 'Add gate' }).click();
  await page.getByRole('button', { name: 'Put at the middle' }).click();
  await finder.getByRole('textbox', { name: 'Gate' }).fill(name);
  await finder.getByRole('textbox', { name: 'Gate' }).press('Tab');
  await goToStep(page, 'Sheet');
  await expect(page.locator('work-sheet').getByText(name).first()).toBeVisible();
  await goToStep(page, 'Yards');
  await expect(page.getByText(name).first()).toBeVisible();
  expect(await page.locator('img[src="x"]').count()).toBe(0);
  expect(dialogs).toEqual([]);
});
