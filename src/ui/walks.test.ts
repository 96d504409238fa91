import { describe, expect, it } from 'vitest';
import { createFakeMap, type FakeMap } from '../map/fakeMap';
import '../session/deriveVisit';
import { createMemoryPictureStorage } from '../session/memoryPictureStorage';
import { createMemoryStorage } from '../session/memoryStorage';
import { openSession } from '../session/store';
import { emptyYard, newDose, newProduct, newVisit, newZone } from '../yard/defaults';
import type { Yard } from '../yard/types';
import { AppController } from './app-controller';

/** 20 m by 15 m of turf, and a visit with granules on it. */
const YARD: Yard = {
  ...emptyYard('yard-1', 'Test yard'),
  zones: [
    newZone('zone-1', 'turf', [
      [
        [
          [-97.4312, 39.8212],
          [-97.43097, 39.8212],
          [-97.43097, 39.82134],
          [-97.4312, 39.82134],
          [-97.4312, 39.8212],
        ],
      ],
    ]),
  ],
  products: [
    newProduct('product-1', {
      rate: { basis: 'mass-per-area', rateKgPerM2: 0.015 },
      packs: [{ id: 'pack-1', content: { unit: 'kg', value: 10 }, price: null }],
    }),
  ],
  visits: [
    newVisit('visit-1', {
      zones: { classes: ['turf-regular'], include: [], exclude: [] },
      doses: [newDose('dose-1', 'product-1')],
    }),
  ],
};

async function openApp(): Promise<{ app: AppController; map: FakeMap }> {
  const storage = createMemoryStorage();
  const made: FakeMap[] = [];
  const app = new AppController({
    storage,
    openSession: (yard, isNew) => openSession(yard, storage, { now: () => 0, isNew }),
    async createMap(_element, events) {
      const map = createFakeMap(events);
      made.push(map);
      return map;
    },
    pictures: async () => createMemoryPictureStorage(),
    samples: [],
    resolveUrl: (url) => url,
    now: () => new Date(2026, 3, 5),
  });
  await app.adopt(YARD, true);
  await app.attachMap({} as HTMLElement);
  const [map] = made;
  if (!map) throw new Error('no map was made');
  return { app, map };
}

const isReady = (app: AppController) => expect.poll(() => app.coverage.state, { timeout: 10_000 });

describe('walks of the visit in hand', () => {
  it('are laid out on the step that shows them, drawn there, and on no other', async () => {
    const { app, map } = await openApp();
    expect(app.walks.desk).toBeNull();
    app.setView({ step: 'passes' });
    await isReady(app).toBe('ready');
    await expect.poll(() => map.pictures.at(-1)?.coverage?.dose.doseId).toBe('dose-1');
    expect(map.pictures.at(-1)?.coverage?.dose.legs.length).toBeGreaterThan(2);
    expect(map.pictures.at(-1)?.visit?.zoneIds).toEqual(['zone-1']);
    app.setView({ step: 'sheet' });
    await isReady(app).toBe('ready');
    expect(map.pictures.at(-1)?.coverage).toBeNull();
    app.setView({ step: 'measure' });
    await isReady(app).toBe('none');
  });

  it('a walker on the way draws the map and leaves the panels alone', async () => {
    const { app, map } = await openApp();
    app.setView({ step: 'passes' });
    await isReady(app).toBe('ready');
    await expect.poll(() => map.pictures.at(-1)?.coverage).toBeTruthy();
    let told = 0;
    app.subscribe(() => {
      told += 1;
    });
    const before = map.pictures.at(-1);
    app.walks.desk?.setWalked('dose-1', 3);
    const after = map.pictures.at(-1);
    await Promise.resolve();
    expect(told).toBe(0);
    expect(after?.coverage?.walkedM).toBe(3);
    expect(after?.visit).toBe(before?.visit);
  });

  it('leaves off the drawing what is switched off', async () => {
    const { app, map } = await openApp();
    app.setView({ step: 'passes' });
    await isReady(app).toBe('ready');
    app.walks.setHidden('tints', true);
    await expect.poll(() => map.pictures.at(-1)?.coverage?.hides).toEqual(['tints']);
    app.walks.setHidden('tints', false);
    await expect.poll(() => map.pictures.at(-1)?.coverage?.hides).toEqual([]);
  });
});
