import { defineConfig } from '@playwright/test';
import { APP, CHROMIUM_ARGS, findBrowser, HARNESS } from './tools';

const ONE_PART = '--config tests/browser/harness.config.ts';
const at = ({ host, port }: typeof APP | typeof HARNESS) => `--host ${host} --port ${port} --strictPort`;

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  timeout: 120_000,
  expect: { timeout: 20_000 },
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  reporter: [['list']],
  use: {
    baseURL: APP.url,
    viewport: { width: 1440, height: 900 },
    launchOptions: { executablePath: findBrowser() ?? undefined, args: CHROMIUM_ARGS },
    screenshot: 'only-on-failure',
    // a record of every step costs a fifth of the time: TRACE=1 keeps it of what fails
    trace: process.env.TRACE ? 'retain-on-failure' : 'off',
  },
  webServer: [
    {
      command: `npx vite build && npx vite preview ${at(APP)}`,
      cwd: '../..',
      url: APP.url,
      reuseExistingServer: false,
      timeout: 120_000,
    },
    {
      command: `npx vite build ${ONE_PART} && npx vite preview ${ONE_PART} ${at(HARNESS)}`,
      cwd: '../..',
      url: `${HARNESS.url}print/index.html`,
      reuseExistingServer: false,
      timeout: 120_000,
    },
  ],
});
