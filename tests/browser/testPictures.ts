import { expect, type Locator, type Page } from '@playwright/test';
import { PNG } from 'pngjs';
import { createPlane } from '../../src/measure/plane';
import type { Affine, Pixel } from '../../src/survey/picture/types';
import type { Position, Yard } from '../../src/yard/types';
import { openWay } from './journey';

type Colour = readonly [number, number, number];

/** Squares of colours that nothing else on the screen has; each is told by its hue. */
export const COLOURS = {
  red: [255, 0, 0],
  blue: [0, 0, 255],
  green: [0, 220, 0],
  magenta: [255, 0, 255],
  cyan: [0, 255, 255],
  yellow: [255, 255, 0],
} as const satisfies Record<string, Colour>;
export type ColourName = keyof typeof COLOURS;
export type Marks = Readonly<Partial<Record<ColourName, Pixel>>>;

const MARK_HALF_PX = 12;

/** A plain scan with a square of colour about each place; the places are pixel corners. */
export function drawPicture(widthPx: number, heightPx: number, marks: Marks): PNG {
  const png = new PNG({ width: widthPx, height: heightPx });
  const put = (col: number, row: number, [r, g, b]: Colour) =>
    png.data.set([r, g, b, 255], 4 * (row * widthPx + col));
  for (let row = 0; row < heightPx; row++)
    for (let col = 0; col < widthPx; col++)
      put(col, row, (col >> 6) % 2 === (row >> 6) % 2 ? [226, 222, 210] : [214, 210, 196]);
  for (const [name, [atCol, atRow]] of Object.entries(marks)) {
    for (let row = atRow - MARK_HALF_PX; row < atRow + MARK_HALF_PX; row++)
      for (let col = atCol - MARK_HALF_PX; col < atCol + MARK_HALF_PX; col++)
        put(col, row, COLOURS[name as ColourName]);
  }
  return png;
}

export function pngFile(name: string, png: PNG): { name: string; mimeType: string; buffer: Buffer } {
  return { name, mimeType: 'image/png', buffer: PNG.sync.write(png) };
}

/** Where a place of a picture truly lies: `mPerPx` metres a pixel, its up turned `upDeg` from north, its upper left at `corner`. */
export function createTruth(corner: Position, mPerPx: number, upDeg: number) {
  const turn = (upDeg * Math.PI) / 180;
  const [sin, cos] = [mPerPx * Math.sin(turn), mPerPx * Math.cos(turn)];
  const toGround: Affine = [cos, -sin, 0, -sin, -cos, 0];
  const plane = createPlane(corner);
  return (col: number, row: number): Position =>
    plane.toLonLat([toGround[0] * col + toGround[1] * row, toGround[3] * col + toGround[4] * row]);
}

/** Middle of a colour on the map as it is seen, page px; null when it is not seen. */
export async function findColour(page: Page, name: ColourName): Promise<[number, number] | null> {
  const box = await page.locator('.yard-map').boundingBox();
  if (!box) return null;
  const shot = PNG.sync.read(await page.screenshot({ clip: box, scale: 'css' }));
  const [r, g, b] = COLOURS[name];
  let [count, x, y] = [0, 0, 0];
  for (let i = 0; i < shot.width * shot.height; i++) {
    const [pr = 0, pg = 0, pb = 0] = shot.data.subarray(4 * i, 4 * i + 3);
    if (Math.abs(pr - r) + Math.abs(pg - g) + Math.abs(pb - b) > 60) continue;
    count += 1;
    x += (i % shot.width) + 0.5;
    y += Math.floor(i / shot.width) + 0.5;
  }
  return count < 6 ? null : [box.x + x / count, box.y + y / count];
}

/** The middle of a colour once the map is at rest. */
export async function waitForColour(page: Page, name: ColourName): Promise<[number, number]> {
  let before: [number, number] | null = null;
  await expect
    .poll(
      async () => {
        const now = await findColour(page, name);
        const isStill =
          now !== null && before !== null && Math.hypot(now[0] - before[0], now[1] - before[1]) < 0.2;
        before = now;
        return isStill;
      },
      { intervals: [250], message: `${name} is seen on the map` },
    )
    .toBe(true);
  if (!before) throw new Error(`${name} is not on the map`);
  return before;
}

export async function clickColour(page: Page, name: ColourName): Promise<void> {
  await expect(page.getByRole('region', { name: 'Tool at work' })).toBeVisible();
  await page.mouse.click(...(await waitForColour(page, name)));
}

export type PictureFile = string | { name: string; mimeType: string; buffer: Buffer };

/** Opens the form of pictures and gives it files. @returns the form once it has read them */
export async function openPictures(page: Page, files: readonly PictureFile[]): Promise<Locator> {
  if ((await page.locator('picture-form').count()) === 0) await openWay(page, 'A picture of your own');
  const form = page.locator('picture-form');
  const input = form.getByLabel('Picture from this device').first();
  await input.setInputFiles(files as string[]);
  await expect(form.getByRole('heading', { name: 'Set it by' })).toBeVisible({ timeout: 20_000 });
  return form;
}

/** Marks a point in the picture by its colour and types where it is. */
export async function addPoint(page: Page, name: ColourName, [lon, lat]: Position): Promise<void> {
  const form = page.locator('picture-form');
  await form.getByRole('button', { name: /^Point at point/ }).click();
  await clickColour(page, name);
  await form.getByLabel('or its latitude, longitude').fill(`${lat}, ${lon}`);
  await form.getByRole('button', { name: 'Set these coordinates' }).click();
  await expect(form.getByLabel('or its latitude, longitude')).toHaveCount(0);
}

/** Marks the two ends of a length by their colours and types it. */
export async function addLength(page: Page, from: ColourName, to: ColourName, text: string): Promise<void> {
  const form = page.locator('picture-form');
  await form.getByRole('button', { name: 'Mark a length in the picture' }).click();
  await clickColour(page, from);
  await expect(page.getByText('Now point at its other end.')).toBeVisible();
  await clickColour(page, to);
  await form.getByLabel('Length', { exact: true }).fill(text);
  await form.getByRole('button', { name: 'Set this length' }).click();
  await expect(form.getByRole('button', { name: 'Mark a length in the picture' })).toBeVisible();
}

/** Leaves the form and traces a closed shape over colours. */
export async function traceColours(page: Page, names: readonly ColourName[]): Promise<void> {
  await page.locator('picture-form').getByRole('button', { name: 'Done: draw on it' }).click();
  await page.getByRole('group', { name: 'Shape to draw' }).getByRole('button', { name: 'Corners' }).click();
  await expect(page.getByRole('region', { name: 'Tool at work' })).toBeVisible();
  // found before the first point, which covers its colour
  const spots: [number, number][] = [];
  for (const name of names) spots.push(await waitForColour(page, name));
  for (const [x, y] of spots) {
    await page.mouse.move(x - 5, y - 4);
    await page.mouse.move(x, y);
    await page.mouse.click(x, y);
  }
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'Tool at work' })).toHaveCount(0);
}

export function pictureOf(yard: Yard) {
  const { baseLayer } = yard.settings;
  if (baseLayer.kind !== 'own-picture') throw new Error(`the ground is ${baseLayer.kind}`);
  return baseLayer;
}

/** Distance on the ground, m. */
export function farM(a: Position, b: Position): number {
  return Math.hypot(...createPlane(a).toPlane(b));
}

export async function goToMeasure(page: Page): Promise<void> {
  // whatever form is open there
  const steps = page.getByRole('navigation', { name: 'Steps of the job' });
  await steps.getByRole('button', { name: 'Measure' }).click();
  const isPhone = (page.viewportSize()?.width ?? 0) < 800;
  if (isPhone) await page.getByRole('button', { name: 'Show drawing and panel' }).click();
}
