import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const root = fileURLToPath(new URL('.', import.meta.url));

/** Pages that hold one part by itself, the map or the sheet, built once for all tests of it. */
export default defineConfig({
  root,
  base: './',
  publicDir: false,
  logLevel: 'error',
  build: {
    target: 'es2022',
    outDir: fileURLToPath(new URL('../../node_modules/.harness', import.meta.url)),
    emptyOutDir: true,
    modulePreload: { polyfill: false },
    rolldownOptions: { input: { map: `${root}map/index.html`, print: `${root}print/index.html` } },
  },
});
