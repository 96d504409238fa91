import { defineConfig } from '@playwright/test';
import { CHROMIUM_ARGS, findBrowser } from './tools';

const PORT = Number(process.env.PORT ?? 4317);

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
    baseURL: `http://127.0.0.1:${PORT}/`,
    viewport: { width: 1440, height: 900 },
    launchOptions: { executablePath: findBrowser() ?? undefined, args: CHROMIUM_ARGS },
    trace: 'retain-on-failure',
  },
  webServer: {
    command: `npx vite build && npx vite preview --host 127.0.0.1 --port ${PORT} --strictPort`,
    cwd: '../..',
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
    timeout: 120_000,
  },
});
