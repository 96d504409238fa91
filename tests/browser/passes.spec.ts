import { Buffer } from 'node:buffer';
import { readFile } from 'node:fs/promises';
import type { Download, Locator, Page } from '@playwright/test';
import { gpx } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import type { FeatureCollection, LineString, Position } from 'geojson';
import { yardToGeoJson } from '../../src/yard/codec';
import { emptyYard, newEquipment, newZone } from '../../src/yard/defaults';
import type { Ring, Yard } from '../../src/yard/types';
import { granules, rectangle } from '../fixtures/testYard';
import {
  boxSpots,
  chooseKind,
  clickMap,
  drawCorners,
  expect,
  exportYard,
  goToPlace,
  goToStep,
  message,
  nameZone,
  openApp,
  PHONE,
  startShape,
  test,
  unfold,
  zoneNamed,
} from './journey';

const LON = -96.5432;
const LAT = 41.2345;
/** Metres in a degree there on WGS 84, by the radii of curvature (Snyder, USGS PP 1395, 4-18 and 4-20). */
const [A, E2] = [6378137, 6.69437999014e-3];
const w2 = 1 - E2 * Math.sin((LAT * Math.PI) / 180) ** 2;
const M_PER_DEG = [
  ((Math.PI / 180) * A * Math.cos((LAT * Math.PI) / 180)) / Math.sqrt(w2),
  ((Math.PI / 180) * (A * (1 - E2))) / w2 ** 1.5,
] as const;
const M_PER_FT = 0.3048;

const SWATH_M = 3;
const BAG_KG = 2;
/** 12 g of granules on a square metre: 2.4 g of N of 20 %. */
const KG_PER_M2 = 0.0024 / 0.2;

/** A shed, a gate, a spreader and granules in bags of 2 kg: the lawn is still to be drawn. */
function shelfAndShed(): Yard {
  const [w, s] = [LON - 3e-4, LAT - 3e-4];
  return {
    ...emptyYard('y-own', 'Shed end'),
    zones: [newZone('shed', 'structure', [[rectangle(w, s, w + 4e-5, s + 3e-5)]], { name: 'Shed' })],
    marks: [{ id: 'gate', kind: 'gate', name: 'Road gate', position: [LON, LAT - 2.2e-4], extra: {} }],
    products: [
      { ...granules, packs: [{ id: 'bag', content: { unit: 'kg', value: BAG_KG }, price: 9 }], onHand: {} },
    ],
    equipment: [
      newEquipment('e-spreader', 'broadcast-spreader', {
        name: 'Own spreader',
        swathM: SWATH_M,
        speedMPerS: 1.2,
      }),
    ],
  };
}

async function bringIn(page: Page, yard: Yard): Promise<void> {
  await openApp(page);
  await goToStep(page, 'Yards');
  await page.getByLabel('Files', { exact: true }).setInputFiles({
    name: 'own-yard.geojson',
    mimeType: 'application/geo+json',
    buffer: Buffer.from(JSON.stringify(yardToGeoJson(yard))),
  });
  await page
    .getByRole('dialog', { name: /^What is in/ })
    .getByRole('button', { name: 'Bring in' })
    .click();
  await expect(message(page)).toContainText('Brought in');
}

const metresOf = ([lon = 0, lat = 0]: Position | Ring[number]): [number, number] => [
  (lon - LON) * M_PER_DEG[0],
  (lat - LAT) * M_PER_DEG[1],
];
function areaOf(ring: Ring): number {
  const points = ring.map(metresOf);
  const twice = points.slice(1).reduce((sum, [x, y], i) => {
    const [x0, y0] = points[i] ?? [0, 0];
    return sum + x0 * y - x * y0;
  }, 0);
  return Math.abs(twice / 2);
}
function lengthOf(line: readonly Position[]): number {
  const points = line.map(metresOf);
  return points.slice(1).reduce((sum, [x, y], i) => {
    const [x0, y0] = points[i] ?? [0, 0];
    return sum + Math.hypot(x - x0, y - y0);
  }, 0);
}

const result = (page: Page): Locator => page.locator('pass-result');
const player = (page: Page): Locator => page.getByRole('region', { name: 'The walk, played' });
const signs = (page: Page): Locator => page.locator('pass-marks ol .sign:not(.end)');
/** The figure under a word, in metres of what is shown in feet. */
async function feetShown(page: Page, word: string): Promise<number> {
  const figure = result(page).locator('.big div').filter({ hasText: word }).locator('dd');
  const text = (await figure.first().textContent()) ?? '';
  const found = /^([\d,]+)\sft(?:\s([\d.]+)\sin)?/.exec(text);
  if (!found) throw new Error(`no feet in “${text}”`);
  return (Number(found[1]?.replace(',', '')) + Number(found[2] ?? 0) / 12) * M_PER_FT;
}
/** The passes are laid, and nothing is under way. */
async function laid(page: Page): Promise<void> {
  await expect(result(page)).toBeVisible();
  await expect(page.getByText('Laying the passes…')).toHaveCount(0);
}
async function textOf(download: Download): Promise<string> {
  return readFile(await download.path(), 'utf8');
}
const saved = async (page: Page, name: string): Promise<string> => {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name }).click(),
  ]);
  return textOf(file);
};

test('an L-shaped lawn round a bed is walked, marked, played, carried off as files and printed', async ({
  page,
}) => {
  await bringIn(page, shelfAndShed());
  await goToStep(page, 'Measure');
  await goToPlace(page, `${LAT}, ${LON}`);
  await chooseKind(page, 'Turf, regular');
  await startShape(page, 'Corners');
  await clickMap(page, [
    [300, 200],
    [660, 200],
    [660, 330],
    [480, 330],
    [480, 520],
    [300, 520],
  ]);
  await page.keyboard.press('Enter');
  await nameZone(page, 'Turf', 'Own lawn');
  await drawCorners(page, 'Bed', boxSpots(340, 240, 400, 300));

  await goToStep(page, 'Visit');
  await page.getByRole('button', { name: 'Add a visit' }).click();
  await page.getByLabel('Add a product').selectOption({ label: granules.name });
  await page.getByRole('button', { name: 'Add to visit' }).click();
  await expect(page.locator('dose-card')).toHaveCount(1);
  const { yard } = await exportYard(page);
  const areaM2 =
    areaOf(zoneNamed(yard, 'Own lawn').parts[0]?.[0] ?? []) -
    areaOf(yard.zones.find((zone) => zone.kind === 'bed')?.parts[0]?.[0] ?? []);

  await test.step('length, least length and marks are those of the area', async () => {
    await goToStep(page, 'Passes');
    await laid(page);
    const leastM = areaM2 / SWATH_M;
    const walkM = await feetShown(page, 'Walk');
    expect(walkM).toBeGreaterThan(leastM);
    expect(walkM).toBeLessThan(1.3 * leastM);
    const words = (await result(page).locator('p').first().textContent()) ?? '';
    const least = /least there could be \(([\d,]+)\sft/.exec(words)?.[1];
    expect((Number(least?.replace(',', '')) * M_PER_FT) / leastM).toBeCloseTo(1, 2);
    // a mark at each quarter of a bag: 0.5 kg
    expect(await signs(page).count()).toBe(Math.floor((areaM2 * KG_PER_M2) / (BAG_KG / 4)));
    await expect(page.locator('.yard-map').getByText(/^1$/).first()).toBeAttached();
  });

  await test.step('a heading along an edge, two coats, by the keyboard; each is undone by one step', async () => {
    const headings = await unfold(page, 'Heading of the passes');
    const group = headings.getByRole('group', { name: 'Own lawn' });
    const edges = group.getByLabel('Along an edge');
    const north = edges.locator('option', { hasText: /^\d+\. north side/i });
    await edges.selectOption({ label: (await north.first().textContent()) ?? '' });
    await expect(group.locator('p')).toContainText(/: (90|0)°/);
    await laid(page);
    const oneCoatM = await feetShown(page, 'Walk');
    await page.getByRole('radio', { name: /^Two at half the rate/ }).focus();
    await page.keyboard.press('Space');
    await expect(page.locator('pass-zones tbody tr')).toHaveCount(2);
    await laid(page);
    const twoCoatsM = await feetShown(page, 'Walk');
    expect(twoCoatsM / oneCoatM).toBeGreaterThan(1.7);
    expect(twoCoatsM / oneCoatM).toBeLessThan(2.3);
    // the second coat lies across the first
    const [first = 0, second = 0] = (
      await page.locator('pass-zones tbody td:nth-child(3)').allInnerTexts()
    ).map((text) => Number.parseFloat(text));
    expect(Math.abs(second - first)).toBe(90);
    await page.locator('.yard-map').focus();
    await page.keyboard.press('Control+z');
    await expect(page.locator('pass-zones tbody tr')).toHaveCount(1);
    await page.keyboard.press('Control+Shift+Z');
    await expect(page.locator('pass-zones tbody tr')).toHaveCount(2);
    await laid(page);
  });

  await test.step('the walk is played and moved along by keys; with little motion from mark to mark', async () => {
    const bar = player(page).getByRole('slider', { name: 'Moment of the walk' });
    await player(page).getByRole('button', { name: 'Play the walk' }).click();
    await expect.poll(async () => Number(await bar.inputValue())).toBeGreaterThan(0);
    await player(page).getByRole('button', { name: 'Pause' }).click();
    const before = Number(await bar.inputValue());
    await bar.focus();
    await page.keyboard.press('ArrowRight');
    expect(Number(await bar.inputValue())).toBeGreaterThan(before);
    await page.keyboard.press('End');
    expect(Number(await bar.inputValue())).toBeCloseTo(Number(await bar.getAttribute('max')), 6);
    await expect(player(page).getByRole('button', { name: 'On to the next mark' })).toBeDisabled();
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await expect(player(page).getByRole('button', { name: 'Play the walk' })).toHaveCount(0);
    await player(page).getByRole('button', { name: 'Back to the mark before' }).click();
    await expect(bar).toHaveAttribute('aria-valuetext', /\d/);
    expect(Number(await bar.inputValue())).toBeLessThan(Number(await bar.getAttribute('max')));
    await player(page).getByRole('button', { name: 'Show all' }).click();
  });

  await test.step('files hold the walk that is shown', async () => {
    const walkM = await feetShown(page, 'Walk');
    const geo = JSON.parse(await saved(page, 'Passes as GeoJSON')) as FeatureCollection;
    const lines = geo.features.filter(({ geometry }) => geometry.type === 'LineString');
    const sum = lines.reduce((all, { geometry }) => all + lengthOf((geometry as LineString).coordinates), 0);
    expect(sum / walkM).toBeCloseTo(1, 2);
    const points = geo.features.filter(({ geometry }) => geometry.type === 'Point');
    expect(points.length).toBe(await signs(page).count());
    const tracks = gpx(new DOMParser().parseFromString(await saved(page, 'Passes as GPX'), 'text/xml'));
    const waypoints = tracks.features.filter(({ geometry }) => geometry?.type === 'Point');
    expect(waypoints.length).toBe(points.length);
    // tracks hold laps and passes; the ways and turns between them are left to the walker
    const trackM = tracks.features
      .filter(({ geometry }) => geometry?.type === 'LineString')
      .reduce((all, { geometry }) => all + lengthOf((geometry as LineString).coordinates), 0);
    expect(trackM).toBeGreaterThan(0.5 * sum);
    expect(trackM).toBeLessThan(1.01 * sum);
  });

  await test.step('it outlives a reload, and is printed', async () => {
    const walkM = await feetShown(page, 'Walk');
    await expect(page.getByText('Saved on this device')).toBeAttached();
    await page.reload();
    await laid(page);
    expect(await feetShown(page, 'Walk')).toBeCloseTo(walkM, 1);
    const what = (await signs(page).first().textContent()) ?? '';
    await goToStep(page, 'Sheet');
    await expect(page.locator('sheet-panel')).toContainText(/pages? of/);
    await expect(page.getByText(what, { exact: true }).first()).toBeAttached();
  });
});

test.describe('phone', () => {
  test.use(PHONE);
  test('granules of the sample in two coats: a mark is tapped and shown, the play goes on from there', async ({
    page,
  }) => {
    await openApp(page);
    await goToStep(page, 'Passes');
    const visits = page.getByRole('combobox', { name: 'Visit', exact: true });
    const may = visits.locator('option', { hasText: 'Slow-release granules' });
    await visits.selectOption({ label: (await may.textContent()) ?? '' });
    await laid(page);
    // front lawn, side strip and back lawn, twice each
    await expect(page.locator('pass-zones tbody tr')).toHaveCount(6);
    await expect(page.getByRole('combobox', { name: 'Begin at' }).locator('option:checked')).toHaveText(
      'Side gate',
    );
    const line = page
      .locator('pass-marks ol button')
      .filter({ has: page.locator('.sign:not(.end)') })
      .first();
    await line.tap();
    const walker = page.locator('.yard-map .yard-walker');
    await expect(walker).toBeInViewport();
    const bar = player(page).getByRole('slider', { name: 'Moment of the walk' });
    const at = Number(await bar.inputValue());
    expect(at).toBeGreaterThan(0);
    await player(page).getByRole('button', { name: 'Play the walk' }).tap();
    await expect.poll(async () => Number(await bar.inputValue())).toBeGreaterThan(at);
    await player(page).getByRole('button', { name: 'Pause' }).tap();
    await player(page).getByRole('button', { name: 'Show all' }).tap();
    await expect(walker).toHaveCount(0);
  });
});
