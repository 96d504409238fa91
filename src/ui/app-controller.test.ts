import { describe, expect, it } from 'vitest';
import { createFakeMap, type FakeMap } from '../map/fakeMap';
import { createMemoryPictureStorage } from '../session/memoryPictureStorage';
import { createMemoryStorage } from '../session/memoryStorage';
import { openSession } from '../session/store';
import type { YardStorage } from '../session/types';
import { emptyYard } from '../yard/defaults';
import type { Position } from '../yard/types';
import { AppController } from './app-controller';

const A: Position = [-97.4312, 39.8212];
const B: Position = [-97.431, 39.8212];
const C: Position = [-97.431, 39.8214];
const D: Position = [-97.4312, 39.8214];
const E: Position = [-97.4308, 39.8212];
const F: Position = [-97.4308, 39.8214];

async function openApp(): Promise<{ app: AppController; map: FakeMap; storage: YardStorage }> {
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
  await app.adopt(emptyYard('yard-1', 'Test yard'), true);
  await app.attachMap({} as HTMLElement);
  const [map] = made;
  if (!map) throw new Error('no map was made');
  return { app, map, storage };
}

function draw(app: AppController, map: FakeMap, ring: readonly Position[]): string {
  app.setView({
    tool: { type: 'draw', shape: 'polygon', purpose: 'zone', kind: app.options.kind, zoneId: null },
  });
  map.drawRing(ring);
  return app.yard.zones.at(-1)?.id ?? '';
}

describe('the way from the map to the document', () => {
  it('adds a drawn zone with the chosen kind, names it, selects it and ends the tool', async () => {
    const { app, map } = await openApp();
    app.setOptions({ kind: 'turf', mowing: 'low-cut' });
    const id = draw(app, map, [A, B, C, D]);
    draw(app, map, [B, E, F, C]);
    expect(app.yard.zones.map((zone) => [zone.name, zone.mowing])).toEqual([
      ['Turf 1', 'low-cut'],
      ['Turf 2', 'low-cut'],
    ]);
    expect(app.view.tool.type).toBe('select');
    app.session.undo();
    expect(app.yard.zones.map((zone) => zone.id)).toEqual([id]);
    expect(app.view.selectedZoneIds).toEqual([]);
  });

  it('takes the outlines of a zone and of the neighbour that goes along as one step', async () => {
    const { app, map } = await openApp();
    const left = draw(app, map, [A, B, C, D]);
    const right = draw(app, map, [B, E, F, C]);
    const moved: Position = [-97.43095, 39.82118];
    const outlines = [
      { zoneId: left, parts: [[[A, moved, C, D, A]]], curves: [] },
      { zoneId: right, parts: [[[moved, E, F, C, moved]]], curves: [] },
    ];
    map.events.reshaping(outlines);
    expect(app.yard.zones[1]?.parts[0]?.[0]).toContainEqual(moved);
    map.events.reshaped(outlines, 'Move corner');
    expect(app.yard.zones[1]?.parts[0]?.[0]).toContainEqual(moved);
    expect(app.session.undoLabel).toBe('Move corner');
    app.session.undo();
    expect(app.yard.zones[1]?.parts[0]?.[0]).toContainEqual(B);
    map.events.reshaped(outlines.slice(0, 1), 'Move corner');
    expect(app.yard.zones[0]?.parts[0]?.[0]).toContainEqual(moved);
    expect(app.yard.zones[1]?.parts[0]?.[0]).toContainEqual(B);
  });

  it('ends a tool whose zone is gone and tells a refusal without a step', async () => {
    const { app, map } = await openApp();
    const id = draw(app, map, [A, B, C, D]);
    const label = app.session.undoLabel;
    map.events.splitLine(
      [
        [-97.4, 39.8],
        [-97.39, 39.8],
      ],
      id,
    );
    expect(app.message?.issue.severity).toBe('error');
    expect(app.session.undoLabel).toBe(label);
    app.setView({ tool: { type: 'reshape', zoneId: id } });
    app.session.undo();
    expect(app.view.tool.type).toBe('select');
    expect(map.tool.type).toBe('select');
  });

  it('a message goes with the next command, tool or step, not with what it is told of', async () => {
    const { app, map } = await openApp();
    const later = () => new Promise((resolve) => setTimeout(resolve));
    const refuse = async () => {
      app.attempt('Split zone', () => ({
        ok: false,
        issue: { code: 'refused', severity: 'error', message: 'No.', place: {} },
      }));
      // the tool ends in the same turn: the refusal is about that and stays
      app.setView({ tool: { type: 'split', zoneId: app.yard.zones[0]?.id ?? '' } });
      app.setView({ tool: { type: 'select' } });
      expect(app.message?.issue.code).toBe('refused');
      await later();
    };
    draw(app, map, [A, B, C, D]);
    await refuse();
    draw(app, map, [B, E, F, C]);
    expect(app.message).toBeNull();
    await refuse();
    app.setView({ selectedZoneIds: [] });
    expect(app.message).not.toBeNull();
    app.setView({ step: 'shelf' });
    expect(app.message).toBeNull();
    await refuse();
    app.session.undo();
    expect(app.message).toBeNull();
  });

  it('a failure to save is told until the yard is saved, and the list knows when that was', async () => {
    const { app, storage } = await openApp();
    app.entries = await storage.list();
    const save = storage.save.bind(storage);
    storage.save = () => Promise.reject(new Error('full'));
    app.dispatch('Rename yard', (yard) => ({ ...yard, name: 'Other name' }));
    await app.session.flush();
    expect(app.message?.issue.code).toBe('not-saved');
    await new Promise((resolve) => setTimeout(resolve));
    app.setView({ step: 'yards' });
    expect(app.message?.issue.code).toBe('not-saved');
    storage.save = save;
    await app.session.flush();
    expect(app.message).toBeNull();
    expect(app.entries).toMatchObject([{ name: 'Other name', savedAt: new Date(2026, 3, 5).getTime() }]);
  });

  it('gives the day of the device', async () => {
    const { app } = await openApp();
    expect(app.today()).toBe('2026-04-05');
  });
});
