import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import {
  addTypedRectangle,
  axeFindings,
  expect,
  exportYard,
  goToStep,
  message,
  openEmptyYard,
  PHONE,
  test,
  unfold,
} from './journey';

const form = (page: Page): Locator => page.locator('product-form');
const rows = (page: Page): Locator => page.locator('shelf-panel button.open');

async function fill(place: Locator, label: string, text: string): Promise<void> {
  const field = place.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Tab');
}

/** An invented bottle: 6 % N and 6 % iron, 32 fl oz for 3,200 sq ft on the hose, 6 fl oz per 1,000 sq ft in a tank. */
async function addBottle(page: Page): Promise<void> {
  await goToStep(page, 'Shelf');
  await page.getByRole('button', { name: 'Add a product' }).click();
  const product = form(page);
  await fill(product, 'Name', 'Iron bottle');
  await product.getByLabel(/^Form/).selectOption({ label: 'Ready to use (hose-end or as it is)' });
  await fill(product, 'N', '6');
  await fill(product, 'Density', '10');
  await fill(product, 'One full pack holds', '32');
  // a comma of the decimal kind is refused, not read as ten or a hundred times as much
  await fill(product, 'One full pack holds', '12,5');
  await expect(product.getByRole('alert')).toHaveText('12,5: write 12.5; a comma parts thousands here.');
  await fill(product, 'One full pack holds', '32');
  await fill(product, 'Price, $', '1,5');
  await expect(product.getByRole('alert')).toHaveText('1,5: write 1.5; a comma parts thousands here.');
  await fill(product, 'Price, $', '$18.50');
  await expect(product.getByLabel('Price, $', { exact: true })).toHaveValue('18.5');
  await product.getByLabel('Put out with').selectOption({ label: 'Hose-end bottle' });
  // labels of such bottles say what one covers
  await expect(product.getByLabel('The label gives')).toHaveValue('area-per-container');
  await fill(product, 'covers', '3200');

  await product.getByRole('button', { name: 'Add another use' }).click();
  const tank = product.locator('use-fields');
  await expect(tank.getByLabel('Put out with')).toHaveValue('hose-end');
  await tank.getByLabel('Put out with').selectOption({ label: 'Backpack or tank sprayer' });
  // the copied rate said by volume: 32 fl oz on 3,200 sq ft
  await expect(tank.getByLabel('Product', { exact: true })).toHaveValue('10');
  await fill(tank, 'Product', '6');
  await fill(tank, 'Carrier water (leave empty when none is mixed in)', '1');

  const more = await unfold(page, 'More on the label');
  await more.getByLabel(/^Element/).selectOption({ label: 'Fe, iron' });
  await more.getByRole('button', { name: 'Add element' }).click();
  await fill(more, 'Fe, iron', '6');
  await fill(more, 'Rainfast after', '4');
  await expect(product.locator('.note.error')).toHaveCount(0);
  await expect(rows(page).first()).toContainText(/Hose-end bottle: one 32\sfl\soz pack covers 3,200\ssq\sft/);
  await expect(rows(page).first()).toContainText(/Backpack or tank sprayer: 6\sfl\soz per 1,000\ssq\sft/);
}

async function addDose(page: Page, product: string, count: number): Promise<Locator> {
  await page.getByLabel('Add a product').selectOption({ label: product });
  await page.getByRole('button', { name: 'Add to visit' }).click();
  await expect(page.locator('dose-card')).toHaveCount(count);
  return page.locator('dose-card').nth(count - 1);
}

async function saveFrom(page: Page, button: string | RegExp): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
}

async function openLabels(page: Page, name: string, text: string): Promise<Locator> {
  const part = await unfold(page, 'Open labels from a file');
  await part
    .getByLabel('File of labels')
    .setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
  const preview = page.getByRole('region', { name: 'Labels in the file' });
  await expect(preview).toBeVisible();
  return preview;
}

test('one bottle on the hose and in a tank: planned in one visit, shared, opened elsewhere, as a table too', async ({
  page,
}) => {
  await openEmptyYard(page);
  await addTypedRectangle(page, {
    kind: 'Turf, regular',
    side: '40',
    other: '80',
    middle: '41.2345, -96.5432',
  });
  await addBottle(page);
  expect(await axeFindings(page)).toEqual([]);

  await goToStep(page, 'Visit');
  await page.getByRole('button', { name: 'Add a visit' }).click();
  const hose = await addDose(page, 'Iron bottle', 1);
  // 3,200 sq ft are one bottle on the hose; in a tank 6 fl oz on each 1,000: 19.2 fl oz
  await expect(hose.locator('.packs .figure')).toHaveText('1');
  const tank = await addDose(page, 'Iron bottle', 2);
  await tank.getByLabel('Use of the label').selectOption({ index: 1 });
  await expect(tank.locator('tr.sum')).toContainText(/19\.2\sfl\soz/);
  await expect(hose.locator('tr.sum')).toContainText(/32\sfl\soz/);

  await goToStep(page, 'Shelf');
  await unfold(page, 'Share labels as a file');
  const file = await saveFrom(page, 'Save the file');
  expect(file.name).toBe('label-iron-bottle.json');
  expect(JSON.parse(file.text)).toHaveProperty('measured-yard-labels.version');
  await page.locator('label-share').getByLabel(/^As/).selectOption('csv');
  await unfold(page, 'What stands in each column');
  await expect(page.locator('label-headings')).toContainText('Rate by volume (fl oz per 1,000 sq ft)');
  expect(await axeFindings(page)).toEqual([]);
  const table = await saveFrom(page, 'Save the file');
  // three rows: the headings and the two uses
  expect(table.text.trim().split('\r\n')).toHaveLength(3);
  const { yard: before } = await exportYard(page);

  await page.getByLabel('Name of a new yard').fill('Elsewhere');
  await page.getByRole('button', { name: 'New yard' }).click();
  await goToStep(page, 'Shelf');
  const preview = await openLabels(page, file.name, file.text);
  await expect(preview).toContainText('New.');
  await preview.getByRole('button', { name: 'Take 1 label' }).click();
  await expect(rows(page)).toHaveCount(1);
  await message(page).getByRole('button', { name: 'Undo' }).click();
  await expect(rows(page)).toHaveCount(0);

  const again = await openLabels(page, table.name, table.text);
  await again.getByRole('button', { name: 'Take 1 label' }).click();
  await expect(rows(page)).toHaveCount(1);
  // dropped on the page, whatever is shown
  await goToStep(page, 'Measure');
  await page.evaluate(({ name, text }) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], name, { type: 'application/json' }));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, file);
  await expect(page.getByRole('heading', { name: 'Shelf', exact: true, level: 2 })).toBeVisible();
  const same = page.getByRole('region', { name: 'Labels in the file' });
  await expect(same).toContainText('Already on the shelf, the same.');
  const { yard: after } = await exportYard(page);
  const [was, is] = [before.products[0], after.products[0]];
  expect(is?.rate.basis === 'area-per-container' && is.rate.areaM2).toBeCloseTo(3200 * 0.09290304, 9);
  expect(is?.analysis).toEqual(was?.analysis);
  expect(is?.rainfastS).toBe(4 * 3600);
  expect(is?.otherUses[0]?.applicator).toBe('tank-sprayer');
});

test.describe('on a phone', () => {
  test.use(PHONE);
  test('a table with faults: each is told with its line and column, the good labels come; a copy or in its place', async ({
    page,
  }) => {
    // a device that hands on plain text alone, as many do
    await page.addInitScript(() => {
      const handed: string[] = [];
      Object.assign(window, { handed });
      const canShare = ({ files }: { files: readonly File[] }) =>
        files.every((file) => file.type === 'text/plain');
      const share = async ({ files }: { files: readonly File[] }) => {
        for (const file of files) handed.push(file.name, await file.text());
      };
      Object.defineProperty(navigator, 'canShare', { value: canShare });
      Object.defineProperty(navigator, 'share', { value: share });
    });
    await openEmptyYard(page);
    await goToStep(page, 'Shelf');
    const head = 'Product,Form,N (%),Pack weight (lb),Rate basis,"Rate by weight (lb per 1,000 sq ft)"';
    const good = 'Summer granules,granular,20,50,mass-per-area,4';
    const preview = await openLabels(
      page,
      'labels.csv',
      `${head}\n${good}\nOdd granules,granular,lots,50,mass-per-area,4\n`,
    );
    await expect(preview).toContainText('Line 3, column “N (%)”: “lots” is not a number.');
    await expect(preview.getByRole('checkbox')).toHaveCount(1);
    expect(await axeFindings(page)).toEqual([]);
    await preview.getByRole('button', { name: 'Take 1 label' }).click();
    await expect(rows(page)).toHaveCount(1);
    await expect(rows(page).first()).toContainText('20-0-0');

    const next = await openLabels(page, 'labels.csv', `${head}\n${good.replace(',20,', ',21,')}\n`);
    await expect(next).toContainText('The shelf has one of that name; it differs in analysis.');
    await next.getByRole('checkbox', { name: /Summer granules/ }).check();
    await next.getByLabel('Take it').selectOption('replace');
    await next.getByRole('button', { name: 'Take 1 label' }).click();
    await expect(rows(page)).toHaveCount(1);
    await expect(rows(page).first()).toContainText('21-0-0');

    await unfold(page, 'Share labels as a file');
    await page.getByRole('button', { name: 'Hand it on' }).click();
    await expect(page.locator('label-share').getByRole('status')).toContainText('was handed on');
    const [name, text] = await page.evaluate(() => (window as unknown as { handed: string[] }).handed);
    expect(name).toBe('label-summer-granules.json.txt');
    expect(JSON.parse(text ?? '').products[0].analysis.nPct).toBe(21);
  });
});
