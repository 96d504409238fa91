import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const BROWSERS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

const PORT = Number(process.env.PORT ?? 4317);
/** Where the app is served while it is tested. */
export const APP = { host: '127.0.0.1', port: PORT, url: `http://127.0.0.1:${PORT}/` } as const;
/** Where the pages that hold one part by itself are served (see `harness.config.ts`). */
export const HARNESS = {
  host: '127.0.0.1',
  port: PORT + 1000,
  url: `http://127.0.0.1:${PORT + 1000}/`,
} as const;

/** Switches that keep Chromium quiet and off the network. */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** @returns path of an installed Chromium, or null. `CHROMIUM` in the environment wins. */
export function findBrowser(): string | null {
  const named = process.env.CHROMIUM;
  if (named) return existsSync(named) ? named : null;
  return BROWSERS.find((path) => existsSync(path)) ?? null;
}

/** @returns true when the PDF to picture converter of the print tests is there. */
export function hasPdfConverter(): boolean {
  return spawnSync('pdftoppm', ['-v']).error === undefined;
}

/**
 * Installs what the browser tests need where that is possible (Debian, as root).
 * @throws Error with one line on what to install when it is not.
 */
export function ensureTools(): void {
  const missing = [...(findBrowser() ? [] : ['chromium']), ...(hasPdfConverter() ? [] : ['poppler-utils'])];
  if (missing.length === 0) return;
  const isDebianRoot = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (isDebianRoot) {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    execFileSync('apt-get', ['update', '-q'], { stdio: 'inherit', env });
    execFileSync(
      'apt-get',
      ['install', '-y', '-q', '--no-install-recommends', 'fonts-liberation', ...missing],
      {
        stdio: 'inherit',
        env,
      },
    );
  }
  if (!findBrowser() || !hasPdfConverter()) {
    throw new Error(
      `The browser tests need ${missing.join(' and ')}: install ${missing.length > 1 ? 'them' : 'it'} (Debian: apt-get install ${missing.join(' ')}), or name a Chromium in the variable CHROMIUM.`,
    );
  }
}
