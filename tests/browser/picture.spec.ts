import type { Page } from '@playwright/test';
import geographicLib from 'geographiclib-geodesic';
import { writeArrayBuffer } from 'geotiff';
import { PNG } from 'pngjs';
import { placeOfPixel } from '../../src/survey/picture/ownPicture';
import type { Position } from '../../src/yard/types';
import { at, CORNER, M_PER_PX, MARKS, scan, truth } from './backyardScan';
import {
  axeFindings,
  dragBy,
  expect,
  exportYard,
  message,
  openEmptyYard,
  PHONE,
  test,
  unfold,
  zoneRows,
} from './journey';
import {
  addLength,
  addPoint,
  drawPicture,
  farM,
  goToMeasure,
  openPictures,
  pictureOf,
  pngFile,
  traceColours,
  waitForColour,
} from './testPictures';

const RECTANGLE_M2 = 600 * 400 * M_PER_PX ** 2;

async function checkAxe(page: Page, what: string): Promise<void> {
  expect.soft(await axeFindings(page), what).toEqual([]);
}

for (const [size, options] of [
  ['wide', {}],
  ['phone', PHONE],
] as const) {
  test.describe(size, () => {
    test.use(options);

    test('a scan is set by two points, and a third place is where it should be', async ({ page }) => {
      await openEmptyYard(page);
      const form = await openPictures(page, [scan()]);
      await expect(form.getByText('Not set yet')).toBeVisible();
      await addPoint(page, 'red', at('red'));
      await addPoint(page, 'magenta', at('magenta'));
      await expect(form.getByText('Not set yet')).toHaveCount(0);
      await checkAxe(page, 'points');
      const { yard } = await exportYard(page);
      const picture = pictureOf(yard);
      // a click errs by half a pixel of the screen, here some two of the picture's: 0.1 m
      expect(farM(placeOfPixel(picture, MARKS.cyan), at('cyan'))).toBeLessThan(0.15);
      expect(farM(placeOfPixel(picture, MARKS.green), at('green'))).toBeLessThan(0.15);
    });

    test('of four points one is three metres off: it is told, and left out the others fit', async ({
      page,
    }) => {
      await openEmptyYard(page);
      const form = await openPictures(page, [scan()]);
      const wrong = truth(MARKS.magenta[0], MARKS.magenta[1] - 3 / M_PER_PX);
      await addPoint(page, 'red', at('red'));
      await addPoint(page, 'blue', at('blue'));
      await addPoint(page, 'magenta', wrong);
      await addPoint(page, 'cyan', at('cyan'));
      const rows = form.getByRole('list', { name: 'Points' }).getByRole('listitem');
      await expect(rows).toHaveCount(4);
      await expect(rows.nth(2)).toContainText('the largest');
      await expect(form.getByText('the largest')).toHaveCount(1);
      await form.getByRole('button', { name: 'Leave point 3 out' }).click();
      await expect(rows.nth(2)).toContainText('left out');
      // 3 m are 9.84 ft; a pixel of the smaller screen is half a foot
      const offFt = Number(/off by ([\d.]+)\sft/.exec((await rows.nth(2).textContent()) ?? '')?.[1]);
      expect(offFt).toBeGreaterThan(9.2);
      expect(offFt).toBeLessThan(10.5);
      const { yard } = await exportYard(page);
      const picture = pictureOf(yard);
      expect(farM(placeOfPixel(picture, MARKS.magenta), at('magenta'))).toBeLessThan(0.15);
      // taken in again, deleted, and undone
      await goToMeasure(page);
      await form.getByRole('button', { name: 'Take point 3 in' }).click();
      await form.getByRole('button', { name: 'Delete point 3' }).click();
      await expect(rows).toHaveCount(3);
      await page.getByRole('button', { name: /^Undo/ }).click();
      await expect(rows).toHaveCount(4);
      await expect(rows.nth(2)).toContainText('the largest');
    });

    test('lengths and north set it; a rectangle traced on it has its true area within its ±', async ({
      page,
    }) => {
      await openEmptyYard(page);
      const form = await openPictures(page, [scan()]);
      await form.getByRole('button', { name: 'Lengths', exact: true }).click();
      await addLength(page, 'red', 'blue', '30 m');
      await addLength(page, 'blue', 'magenta', '20 m');
      await form.getByLabel('Degrees from its top').fill('-12');
      await form.getByLabel('Degrees from its top').press('Enter');
      await expect(form.getByText('Lengths off by, at most')).toBeVisible();
      await checkAxe(page, 'lengths');
      await traceColours(page, ['red', 'blue', 'magenta', 'cyan']);
      await expect(zoneRows(page)).toHaveCount(1);
      const { yard, measured } = await exportYard(page);
      const [zone] = yard.zones;
      const figures = measured.zones.get(zone?.id ?? '');
      expect(zone?.survey.method).toBe('traced');
      expect(zone?.survey.source).toBe('Backyard scan.png');
      expect(zone?.survey.scaleSigma).toBeGreaterThan(0);
      expect(figures?.netSigmaM2).toBeGreaterThan(0);
      expect(Math.abs((figures?.netM2 ?? 0) - RECTANGLE_M2)).toBeLessThan(2 * (figures?.netSigmaM2 ?? 0));
      // the picture's up lies 12° east of north
      const picture = pictureOf(yard);
      const [, b, , , e] = picture.toGround;
      expect((Math.atan2(-b, -e) * 180) / Math.PI).toBeCloseTo(12, 6);
    });

    test('a drawing without a place measures right, and moves whole to the place it is given', async ({
      page,
    }) => {
      await openEmptyYard(page);
      const form = await openPictures(page, [scan()]);
      const fold = await unfold(page, 'Just a drawing, without a place');
      await fold.getByRole('button', { name: 'Make this yard a local drawing' }).click();
      await addLength(page, 'red', 'blue', '30 m');
      await form.getByRole('heading', { name: 'Set it by' }).scrollIntoViewIfNeeded();
      await traceColours(page, ['red', 'blue', 'magenta', 'cyan']);
      await expect(zoneRows(page)).toHaveCount(1);
      await expect(page.getByText('Local drawing, no place on the Earth').first()).toBeAttached();
      const ground = await unfold(page, 'Ground under the drawing');
      await expect(ground.getByRole('radio')).toHaveCount(2);
      const local = await exportYard(page);
      expect(local.yard.settings.isLocal).toBe(true);
      const [zone] = local.yard.zones;
      const before = local.measured.zones.get(zone?.id ?? '');
      expect(Math.abs((before?.netM2 ?? 0) - RECTANGLE_M2)).toBeLessThan(2 * (before?.netSigmaM2 ?? 0));
      await goToMeasure(page);
      const finder = await unfold(page, 'Find a place');
      await expect(finder.getByRole('button', { name: 'Go there' })).toHaveCount(0);
      await finder.getByLabel(/latitude, longitude/).fill('41.2345, -96.5432');
      await finder.getByLabel(/Direction that/).fill('30');
      await finder.getByRole('button', { name: 'Put it there' }).click();
      await expect(finder.getByRole('button', { name: 'Go there' })).toBeVisible();
      const placed = await exportYard(page);
      expect(placed.yard.settings.isLocal).toBe(false);
      const after = placed.measured.zones.get(zone?.id ?? '');
      expect(Math.abs((after?.netM2 ?? 0) - (before?.netM2 ?? 0))).toBeLessThan(0.02);
      expect(farM(placed.yard.zones[0]?.parts[0]?.[0]?.[0] ?? [0, 0], CORNER)).toBeLessThan(100);
      await goToMeasure(page);
      await waitForColour(page, 'green');
    });

    test('by hand: dragged, shifted, turned, scaled, each undone by one step', async ({ page }) => {
      await openEmptyYard(page);
      const form = await openPictures(page, [scan()]);
      await form.getByRole('button', { name: 'By hand' }).click();
      await checkAxe(page, 'by hand');
      await form.getByRole('button', { name: 'Drag the picture on the map' }).click();
      await expect(page.getByRole('region', { name: 'Tool at work' })).toBeVisible();
      const start = await waitForColour(page, 'green');
      await dragBy(page, page.locator('.yard-map'), 40, 30);
      const end = await waitForColour(page, 'green');
      expect(end[0] - start[0]).toBeCloseTo(40, 0);
      expect(end[1] - start[1]).toBeCloseTo(30, 0);
      await page.getByRole('button', { name: 'Done', exact: true }).click();
      await form.getByRole('button', { name: 'Shift north' }).click();
      await form.getByRole('button', { name: 'Turn right' }).click();
      await form.getByRole('button', { name: 'Larger' }).click();
      await expect(form.getByText('Not set yet')).toHaveCount(0);
      for (const what of ['Scale picture', 'Turn picture', 'Shift picture', 'Shift picture'])
        await page.getByRole('button', { name: `Undo: ${what}` }).click();
      await expect(page.getByRole('button', { name: 'Undo: Add picture' })).toBeVisible();
      const back = await waitForColour(page, 'green');
      expect(Math.hypot(back[0] - start[0], back[1] - start[1])).toBeLessThan(1.5);
    });
  });
}

test('a picture stays over a reload, goes with its layer, and comes back by undo', async ({ page }) => {
  await openEmptyYard(page);
  await openPictures(page, [scan()]);
  await waitForColour(page, 'green');
  await expect(page.getByText('Saved on this device').first()).toBeVisible();
  await page.reload();
  await waitForColour(page, 'green');
  const ground = await unfold(page, 'Ground under the drawing');
  await ground.getByRole('button', { name: 'Remove Backyard scan.png' }).click();
  await expect(page.locator('.yard-own-picture')).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo: Remove source' }).click();
  await waitForColour(page, 'green');
});

test('a picture that is gone from the browser is told, and its file goes back to its place', async ({
  page,
}) => {
  await openEmptyYard(page);
  await openPictures(page, [scan()]);
  await addPoint(page, 'red', at('red'));
  await addPoint(page, 'magenta', at('magenta'));
  await expect(page.getByText('Saved on this device').first()).toBeVisible();
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('measured-yard-pictures');
        opening.onsuccess = () => {
          const clearing = opening.result
            .transaction('pictures', 'readwrite')
            .objectStore('pictures')
            .clear();
          clearing.onsuccess = () => resolve();
          clearing.onerror = () => reject(clearing.error);
        };
        opening.onerror = () => reject(opening.error);
      }),
  );
  await page.reload();
  await expect(message(page)).toContainText('The picture “Backyard scan.png” is not in this browser');
  const ways = await unfold(page, 'Other ways to measure');
  await ways.getByRole('button', { name: /^A picture of your own/ }).click();
  const form = page.locator('picture-form');
  await expect(form.getByText('The file of this picture is not in this browser')).toBeVisible();
  const file = form.getByLabel('Its file, with the files beside it');
  await file.setInputFiles([pngFile('other.png', drawPicture(300, 200, {}))]);
  await expect(form.getByText('This picture is 300 by 200 pixels')).toBeVisible();
  await file.setInputFiles([scan()]);
  await waitForColour(page, 'green');
  const { yard } = await exportYard(page);
  expect(farM(placeOfPixel(pictureOf(yard), MARKS.cyan), at('cyan'))).toBeLessThan(0.15);
});

test('the sample picture set by two of its corners: a lawn of known size traced on it', async ({ page }) => {
  await openEmptyYard(page);
  const file = new URL('../../sample-geojson/corner-lot-picture.png', import.meta.url).pathname;
  const form = await openPictures(page, [file]);
  const edges = {
    west: -97.43153872206,
    south: 39.82113881216,
    east: -97.43086127794,
    north: 39.82166118784,
  };
  for (const [corner, lat, lon] of [
    ['Upper left corner of the picture', edges.north, edges.west],
    ['Lower right corner', edges.south, edges.east],
  ] as const) {
    await form.getByLabel(/Where in the picture is point/).selectOption({ label: corner });
    await form.getByRole('button', { name: 'Take this corner' }).click();
    await form.getByLabel('or its latitude, longitude').fill(`${lat}, ${lon}`);
    await form.getByRole('button', { name: 'Set these coordinates' }).click();
  }
  // 0.08 m is 3.15 in (sample-geojson/corner-lot-picture.json)
  await expect(form.getByLabel('How well it lies')).toContainText('3.1 in');
  const { yard } = await exportYard(page);
  const [a, , , , e] = pictureOf(yard).toGround;
  // The frame of the picture is linear in degrees, as the plane here is
  expect(a).toBeCloseTo(0.08, 5);
  expect(e).toBeCloseTo(-0.08, 5);
});

/*
 * Independent of any projection library: on the central meridian of a UTM zone the easting is 500,000 m and
 * the northing 0.9996 of the way from the equator along the meridian; across it the scale is 0.9996
 * (Snyder, USGS Professional Paper 1395 (1987), chapter 8). The ways are geodesics of GeographicLib.
 */
const UTM_SCALE = 0.9996;
const onMeridian = (lat: number, lon: number) =>
  UTM_SCALE * (geographicLib.Geodesic.WGS84.Inverse(0, lon, lat, lon).s12 ?? Number.NaN);
/** The place so many metres of the grid east and south of a place on the central meridian. */
function fromMeridian(lat: number, lon: number, eastM: number, southM: number): Position {
  const down = geographicLib.Geodesic.WGS84.Direct(lat, lon, 180, southM / UTM_SCALE);
  const across = geographicLib.Geodesic.WGS84.Direct(down.lat2 ?? 0, lon, 90, eastM / UTM_SCALE);
  return [across.lon2 ?? 0, across.lat2 ?? 0];
}
const NEAR_M = 0.05;

test('a GeoTIFF in UTM lies within 5 cm of its corners', async ({ page }) => {
  await openEmptyYard(page);
  const [lat, lon] = [41.2345, -99];
  const values = new Uint8Array(400 * 300).map((_, i) => (i * 7) % 251);
  const tiff = await writeArrayBuffer(values, {
    width: 400,
    height: 300,
    ModelPixelScale: [0.1, 0.1, 0],
    ModelTiepoint: [0, 0, 0, 500000, onMeridian(lat, lon), 0],
    GTModelTypeGeoKey: 1,
    GTRasterTypeGeoKey: 1,
    ProjectedCSTypeGeoKey: 32614,
  });
  const form = await openPictures(page, [
    { name: 'Drone.tif', mimeType: 'image/tiff', buffer: Buffer.from(tiff) },
  ]);
  await expect(form.getByText('Placed by its own file')).toContainText('UTM zone 14N');
  const { yard } = await exportYard(page);
  const picture = pictureOf(yard);
  expect(farM(placeOfPixel(picture, [0, 0]), [lon, lat])).toBeLessThan(NEAR_M);
  expect(farM(placeOfPixel(picture, [400, 300]), fromMeridian(lat, lon, 40, 30))).toBeLessThan(NEAR_M);
});

test('a world file places a picture: with its .prj at once, without it once the system is named', async ({
  page,
}) => {
  await openEmptyYard(page);
  const [lat, lon] = [41.2345, -99];
  const png = pngFile('Photo.png', drawPicture(400, 300, { red: [100, 100] }));
  // a world file names the middle of the upper left pixel
  const lines = [0.1, 0, 0, -0.1, 500000 + 0.05, onMeridian(lat, lon) - 0.05];
  const text = (name: string, content: string) => ({
    name,
    mimeType: 'text/plain',
    buffer: Buffer.from(content),
  });
  const world = text('Photo.pgw', lines.join('\n'));
  const prj = text(
    'Photo.prj',
    'PROJCS["WGS_1984_UTM_Zone_14N",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",0.0],PARAMETER["Central_Meridian",-99.0],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]',
  );
  const check = async () => {
    const { yard } = await exportYard(page);
    const picture = pictureOf(yard);
    expect(farM(placeOfPixel(picture, [0, 0]), [lon, lat])).toBeLessThan(NEAR_M);
    expect(farM(placeOfPixel(picture, [400, 300]), fromMeridian(lat, lon, 40, 30))).toBeLessThan(NEAR_M);
  };
  const form = await openPictures(page, [png, world, prj]);
  await expect(form.getByText('Placed by its own file')).toBeVisible();
  await check();
  await openEmptyYard(page, 'Second yard');
  await openPictures(page, [png, world]);
  const system = form.getByLabel(/^Coordinate system: EPSG/);
  await system.fill('32614');
  await form
    .getByRole('button', { name: /UTM zone 14N/ })
    .first()
    .click();
  await expect(form.getByText('Placed by its own file')).toBeVisible();
  await check();
});

test('a file that is no picture is refused in words; a picture dropped on the page opens the form', async ({
  page,
}) => {
  await openEmptyYard(page);
  const ways = await unfold(page, 'Other ways to measure');
  await ways.getByRole('button', { name: /^A picture of your own/ }).click();
  const form = page.locator('picture-form');
  await form
    .getByLabel('Picture from this device')
    .setInputFiles([{ name: 'notes.png', mimeType: 'image/png', buffer: Buffer.from('no picture at all') }]);
  await expect(form.getByRole('alert')).toBeVisible();
  await form.page().getByRole('button', { name: '‹ Zones' }).click();
  const bytes = PNG.sync.write(drawPicture(400, 300, { red: [200, 150] })).toString('base64');
  await page.evaluate((base64) => {
    const data = Uint8Array.from(atob(base64), (each) => each.charCodeAt(0));
    const transfer = new DataTransfer();
    transfer.items.add(new File([data], 'dropped.png', { type: 'image/png' }));
    document.body.dispatchEvent(
      new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }),
    );
  }, bytes);
  await expect(page.locator('picture-form').getByRole('heading', { name: 'dropped.png' })).toBeVisible();
  await waitForColour(page, 'red');
});

test('a look at the pages in the dark', async ({ page }) => {
  await openEmptyYard(page);
  const form = await openPictures(page, [scan()]);
  await page.getByRole('button', { name: 'Dark' }).click();
  for (const way of ['Points', 'Lengths', 'By hand']) {
    await form.getByRole('button', { name: way, exact: true }).click();
    await checkAxe(page, `dark, ${way}`);
  }
});
