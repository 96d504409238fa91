import { mkdirSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { build, preview } from 'vite';
import { CHROMIUM_ARGS, ensureTools, findBrowser } from './tools';

/** Draws the README's picture: the sample yard with a visit on the drawing. Run by `npm run screenshot`. */
ensureTools();
await build({ logLevel: 'error' });
const server = await preview({ logLevel: 'error', preview: { host: '127.0.0.1', port: 0, open: false } });
const browser = await chromium.launch({ executablePath: findBrowser() ?? undefined, args: CHROMIUM_ARGS });
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(server.resolvedUrls?.local[0] ?? '');
  await page.getByText('Front lawn').first().waitFor();
  await page.locator('step-tabs').getByText('Visit', { exact: true }).click();
  await page.getByText('Edges to rinse or sweep').waitFor();
  mkdirSync('.docs', { recursive: true });
  await page.screenshot({ path: '.docs/screenshot.png' });
} finally {
  await browser.close();
  await server.close();
}
