import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** The development server puts styles into the page and speaks by web socket: only there the page allows it. */
const allowDevelopment: Plugin = {
  name: 'allow-development',
  apply: 'serve',
  transformIndexHtml: (html) =>
    html
      .replace("style-src 'self'", "style-src 'self' 'unsafe-inline'")
      .replace("connect-src 'self'", "connect-src 'self' ws:"),
};

export default defineConfig(({ isPreview }) => ({
  base: './',
  publicDir: false,
  plugins: isPreview ? [] : [allowDevelopment],
  build: {
    target: 'es2022',
    sourcemap: false,
    modulePreload: { polyfill: false },
    // What the page begins with is one part: cut by who else uses what, it is fifty, and 15 kB of gzip more.
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
  },
  worker: { format: 'es' },
  assetsInclude: ['**/*.geojson'],
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
    environment: 'node',
    reporters: ['default'],
  },
}));
