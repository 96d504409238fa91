import { describe, expect, it } from 'vitest';
import type { Position } from '../yard/types';
import { createFakeMap } from './fakeMap';
import type { MapEvents } from './types';

function recordingEvents(): { events: MapEvents; log: unknown[][] } {
  const log: unknown[][] = [];
  const names = [
    'select',
    'drawn',
    'splitLine',
    'reshaped',
    'reshaping',
    'markPlaced',
    'markMoved',
    'live',
    'message',
    'toolEnded',
  ] as const;
  const note = (name: string) => [name, (...given: unknown[]) => void log.push([name, ...given])] as const;
  return { events: Object.fromEntries(names.map(note)) as unknown as MapEvents, log };
}

const corners: Position[] = [
  [0, 0],
  [1, 0],
  [1, 1],
];

describe('createFakeMap', () => {
  it('reports a drawn ring closed, with its tool, then ends the tool', () => {
    const { events, log } = recordingEvents();
    const map = createFakeMap(events);
    const tool = { type: 'draw', shape: 'polygon', purpose: 'zone', kind: 'bed', zoneId: null } as const;
    map.setTool(tool);
    map.drawRing(corners);
    expect(log).toEqual([['drawn', [...corners, corners[0]], tool], ['toolEnded']]);
    expect(map.tool).toEqual({ type: 'select' });
  });
  it('ends a tool on cancel and tells of it once', () => {
    const { events, log } = recordingEvents();
    const map = createFakeMap(events);
    map.setTool({ type: 'split', zoneId: 'a' });
    map.cancel();
    map.cancel();
    expect(log).toEqual([['toolEnded']]);
  });
  it('will not draw without a draw tool', () => {
    expect(() => createFakeMap(recordingEvents().events).drawRing(corners)).toThrow(/draw tool/);
  });
});
