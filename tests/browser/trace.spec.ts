import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { CORNER_LOT_SIZE, cornerLotZones } from '../../sample-geojson/yards/cornerLot';
import type { Metres } from '../../sample-geojson/yards/frame';
import type { ZoneKind } from '../../src/yard/types';
import {
  chooseKind,
  expect,
  exportYard,
  openApp,
  openZone,
  test,
  unfold,
  zoneNamed,
  zoneRows,
} from './journey';

/**
 * The traced truth. The picture of the sample lot is painted from written dimensions; a hand that errs
 * by the deviation the program states for tracing draws its zones over the picture by mouse, and each
 * net area is held against the plain arithmetic of those dimensions.
 */
const HAND_SIGMA_M = 0.2;
/** Corners a person would put round an oval. */
const OVAL_POINTS = 16;
const SEED = 20260411;

test.use({ viewport: { width: 1900, height: 1350 } });

/** Park & Miller's minimal standard generator (CACM 31, 1988), then Box and Muller's normal. */
function createNormal(seed: number): () => number {
  let state = seed % 2147483647;
  const next = () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

const oval = (a: number, b: number, n: number) => (n / 2) * a * b * Math.sin((2 * Math.PI) / n);

/** Net areas, m², by hand from the dimensions in sample-geojson/yards/cornerLot.ts. */
function truths(): Record<string, number> {
  const island = oval(3.2, 2.1, 64);
  const pond = oval(2.6, 1.8, 48);
  const walk = 1.4 * 17.5;
  const frontBed = 12 * 1.8 - 1.4 * 1.8;
  const cornerBed = (5 * 5) / 2;
  return {
    House: 12 * 9,
    Driveway: 16.5 * 5.5,
    'Front walk': walk,
    Patio: 8 * 5,
    'Street sidewalks': 36 * 1.5 + 1.5 * 40.5,
    Pond: pond,
    'Island bed': island,
    'Front bed': frontBed,
    'Corner bed': cornerBed,
    'Low-cut square': 7 * 7,
    'West side strip': 6 * 9,
    'Front lawn': 34.5 * 17.5 + 16.5 * 1 - walk - frontBed - cornerBed - 7 * 7,
    'Back lawn': 34.5 * 14 + 16.5 * 2.5 - 8 * 5 - island - pond,
  };
}

/** The corners to click: all of a plain shape; some of an oval, a little outside so that bites and bulges even out. */
function cornersToClick(outline: readonly Metres[]): readonly Metres[] {
  if (outline.length <= OVAL_POINTS) return outline;
  const step = outline.length / OVAL_POINTS;
  const middle = [0, 1].map((axis) => outline.reduce((sum, p) => sum + (p[axis] ?? 0), 0) / outline.length);
  const angle = (2 * Math.PI) / OVAL_POINTS;
  const grow = Math.sqrt(angle / Math.sin(angle));
  const at = (value: number, axis: number) => (middle[axis] ?? 0) + grow * (value - (middle[axis] ?? 0));
  return Array.from({ length: OVAL_POINTS }, (_, i): Metres => {
    const [x, y] = outline[Math.round(i * step)] ?? [0, 0];
    return [at(x, 0), at(y, 1)];
  });
}

const KIND_CHOICES: Readonly<Record<ZoneKind, string>> = {
  turf: 'Turf, regular',
  bed: 'Bed',
  hardscape: 'Hardscape',
  structure: 'Structure',
  water: 'Water',
  other: 'Other ground',
};

/** @returns where a place of the lot, m from its south-west corner, lies on the screen: by the picture's own edges. */
async function findPlaces(page: Page): Promise<(p: Metres) => [number, number]> {
  const picture = page.locator('img.leaflet-image-layer');
  await expect(picture).toBeVisible();
  await expect
    .poll(() => picture.evaluate((it: HTMLImageElement) => it.complete && it.naturalWidth))
    .toBeGreaterThan(0);
  let box = await picture.boundingBox();
  // until the map has come to rest
  await expect
    .poll(
      async () => {
        const before = JSON.stringify(box);
        box = await picture.boundingBox();
        return JSON.stringify(box) === before;
      },
      { intervals: [400] },
    )
    .toBe(true);
  if (!box) throw new Error('no picture');
  const { x: boxX, y: boxY, width, height } = box;
  const file = new URL('../../sample-geojson/corner-lot-picture.json', import.meta.url);
  const edges = JSON.parse(readFileSync(file, 'utf8'));
  // Metres to a degree at the lot's middle, as the frame of the picture has them: its own pixels say so.
  const png = readFileSync(new URL('../../sample-geojson/corner-lot-picture.png', import.meta.url));
  const widthM = png.readUInt32BE(16) * edges.mPerPx;
  const heightM = png.readUInt32BE(20) * edges.mPerPx;
  const left = (widthM - CORNER_LOT_SIZE[0]) / 2;
  const top = (heightM - CORNER_LOT_SIZE[1]) / 2;
  return ([x, y]) => [
    boxX + ((left + x) / widthM) * width,
    boxY + ((top + CORNER_LOT_SIZE[1] - y) / heightM) * height,
  ];
}

test('zones drawn by mouse over the picture have the true net areas within their own ±', async ({ page }) => {
  test.setTimeout(150_000);
  await openApp(page);
  const ticks = zoneRows(page);
  const count = await ticks.count();
  for (let i = 0; i < count; i++) await ticks.nth(i).check();
  await page.getByRole('button', { name: `Delete ${count}` }).click();
  await expect(ticks).toHaveCount(0);
  const grounds = await unfold(page, 'Ground under the drawing');
  await grounds.getByRole('radio').last().check();
  const finder = await unfold(page, 'Find a place');
  await finder.getByRole('button', { name: 'The whole yard' }).click();
  await finder.getByLabel('Latitude and longitude').fill('39.82138, -97.4312');
  await finder.getByRole('button', { name: 'Go there' }).click();

  const normal = createNormal(SEED);
  // a press that comes while the map is still on its way is lost: it is pressed until the ground is large enough
  await expect
    .poll(
      async () => {
        const at = await findPlaces(page);
        const pxPerM = (at([10, 0])[0] - at([0, 0])[0]) / 10;
        if (pxPerM <= 2 / HAND_SIGMA_M) await page.getByRole('button', { name: 'Zoom in' }).click();
        return pxPerM;
      },
      { message: 'a pixel is finer than the hand' },
    )
    .toBeGreaterThan(2 / HAND_SIGMA_M);
  const place = await findPlaces(page);

  for (const [index, zone] of cornerLotZones.entries()) {
    await chooseKind(page, zone.fields?.mowing === 'low-cut' ? 'Turf, low-cut' : KIND_CHOICES[zone.kind]);
    await page.getByRole('group', { name: 'Shape to draw' }).getByRole('button', { name: 'Corners' }).click();
    const tool = page.getByRole('region', { name: 'Tool at work' });
    await tool.getByLabel('Snap to neighbours').uncheck();
    for (const corner of cornersToClick(zone.parts[0]?.[0] ?? [])) {
      const [x, y] = place([corner[0] + HAND_SIGMA_M * normal(), corner[1] + HAND_SIGMA_M * normal()]);
      await page.mouse.click(x, y);
    }
    await page.keyboard.press('Enter');
    await expect(zoneRows(page)).toHaveCount(index + 1);
    const details = page.getByRole('region', { name: 'Chosen zone' });
    await details.getByLabel('Name', { exact: true }).fill(zone.name);
    await details.getByLabel('Name', { exact: true }).press('Enter');
    if (zone.fields?.cutsSameKind) {
      await openZone(page, zone.name);
      await unfold(page, 'How measured, note');
      await details.getByLabel('Cuts earlier zones of its own kind').check();
    }
  }

  const { yard, measured } = await exportYard(page);
  const scores = Object.entries(truths()).map(([name, truthM2]) => {
    const zone = measured.zones.get(zoneNamed(yard, name).id);
    const netM2 = zone?.netM2 ?? Number.NaN;
    const sigmaM2 = zone?.netSigmaM2 ?? Number.NaN;
    return { name, truthM2, netM2, sigmaM2, score: (netM2 - truthM2) / sigmaM2 };
  });
  const told = scores
    .map(
      (s) =>
        `${s.name}: ${s.netM2.toFixed(2)} ± ${(2 * s.sigmaM2).toFixed(2)}, true ${s.truthM2.toFixed(2)} (${s.score.toFixed(2)} sigma)`,
    )
    .join('\n');
  test.info().annotations.push({ type: 'net areas, m²', description: told });
  expect(scores).toHaveLength(cornerLotZones.length);
  expect(
    scores.filter((s) => !(Math.abs(s.score) <= 3)),
    told,
  ).toEqual([]);
  expect(scores.filter((s) => Math.abs(s.score) <= 2).length / scores.length, told).toBeGreaterThanOrEqual(
    0.9,
  );
  // The ± must not be idle either: chi-square of 13 degrees of freedom, 0.1 % to 99.9 %: 2.6 to 34.5 (tables).
  const sum = scores.reduce((total, s) => total + s.score ** 2, 0);
  expect(sum, told).toBeGreaterThan(2.6);
  expect(sum, told).toBeLessThan(34.5);
});
