import type { Page } from '@playwright/test';
import type { MeasuredYard } from '../../src/measure/types';
import type { Yard } from '../../src/yard/types';
import {
  boxSpots,
  chooseKind,
  clickMap,
  drawCorners,
  expect,
  goToStep,
  openZone,
  type Spot,
  startShape,
  tool,
  unfold,
  zoneNamed,
} from './journey';

/** m² in one square foot. */
export const SQ_FT = 0.3048 ** 2;
/** Net area of a zone, m². */
export const netOf = (of: { yard: Yard; measured: MeasuredYard }, name: string) =>
  of.measured.zones.get(zoneNamed(of.yard, name).id)?.netM2 ?? Number.NaN;

/** A rectangle with its first corner at a spot, by typed sides in feet: east, north, west. */
export async function typeRectangle(
  page: Page,
  kind: string,
  from: Spot,
  eastFt: number,
  northFt: number,
): Promise<void> {
  await chooseKind(page, kind);
  await startShape(page, 'Corners');
  await clickMap(page, [from]);
  for (const [length, bearing] of [
    [eastFt, 90],
    [northFt, 0],
    [eastFt, 270],
  ]) {
    await tool(page).getByLabel('Next side', { exact: true }).fill(String(length));
    await tool(page).getByLabel('Bearing').fill(String(bearing));
    await tool(page).getByRole('button', { name: 'Add side' }).click();
    await expect(tool(page).getByLabel('Next side', { exact: true })).toHaveValue('');
  }
  await tool(page).getByRole('button', { name: 'Finish' }).click();
  await expect(tool(page)).toHaveCount(0);
}

/** Takes a tool for the outline of a zone from its details. */
export async function takeEdgeTool(page: Page, zone: string, name: string): Promise<void> {
  await goToStep(page, 'Measure');
  const details = await openZone(page, zone);
  await unfold(page, 'Curves, strips');
  await details.getByRole('button', { name }).click();
  await expect(tool(page)).toBeVisible();
  await expect(page.locator('.yard-map')).not.toHaveClass(/is-waiting/);
}

/** Takes the corners of a zone in hand. */
export async function reshape(page: Page, zone: string): Promise<void> {
  await goToStep(page, 'Measure');
  await (await openZone(page, zone)).getByRole('button', { name: 'Reshape corners' }).click();
  await expect(page.locator('.yard-map')).not.toHaveClass(/is-waiting/);
}

/** Ends the tool at work. */
export const done = (page: Page) => tool(page).getByRole('button', { name: 'Done' }).click();

/** Two boxes side by side that share the line x = 450. */
export async function drawPair(page: Page): Promise<void> {
  await drawCorners(page, 'Turf, regular', boxSpots(200, 250, 450, 500));
  await drawCorners(page, 'Bed', boxSpots(450, 250, 700, 500));
}
