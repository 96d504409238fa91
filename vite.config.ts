import { defineConfig } from 'vitest/config';

export default defineConfig({
  base: './',
  publicDir: false,
  build: { target: 'es2022', sourcemap: false, modulePreload: { polyfill: false } },
  assetsInclude: ['**/*.geojson'],
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
    environment: 'node',
    reporters: ['default'],
  },
});
