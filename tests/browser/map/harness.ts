import '../../../src/ui/theme.css';
import { createLeafletMap } from '../../../src/map/leafletMap';
import type { MapEvents, MapPort } from '../../../src/map/types';
import { measureYard } from '../../../src/measure/measureYard';
import type { MeasuredYard } from '../../../src/measure/types';
import { emptyYard, newZone } from '../../../src/yard/defaults';
import type { BaseLayer, Position, Rings, Yard, Zone } from '../../../src/yard/types';

/** The map alone on a page, with the least of an app round it: what the map reports becomes the next picture. */
export interface Harness {
  readonly log: unknown[][];
  readonly map: MapPort;
  yard(): Yard;
  measured(): MeasuredYard;
  setBase(layer: BaseLayer): void;
}

const LON = -83.1;
const LAT = 40.1;
const box = (west: number, south: number, east: number, north: number): Rings => {
  const at = (x: number, y: number): Position => [LON + x * 1e-5, LAT + y * 1e-5];
  return [[at(west, south), at(east, south), at(east, north), at(west, north), at(west, south)]];
};

let yard: Yard = {
  ...emptyYard('yard', 'Two lawns and a walk'),
  zones: [
    newZone('west', 'turf', [box(0, 0, 20, 20)], { name: '<img src=x onerror=alert(1)>' }),
    newZone('east', 'turf', [box(24, 0, 44, 20)], { name: 'East lawn', mowing: 'low-cut' }),
    newZone('walk', 'hardscape', [box(20, 0, 24, 20)], { name: 'Walk' }),
  ],
  marks: [{ id: 'drain', name: '', kind: 'storm-drain', position: [LON + 30e-5, LAT - 8e-5], extra: {} }],
};
let measured = measureYard(yard);
let selected: readonly string[] = [];
let base: BaseLayer = { kind: 'grid' };
const log: unknown[][] = [];

function put(next: Yard): void {
  yard = next;
  measured = measureYard(yard);
  show();
}

const events: MapEvents = {
  select(ids) {
    log.push(['select', ids]);
    selected = ids;
    show();
  },
  drawn(ring, tool) {
    log.push(['drawn', ring, tool]);
    put({
      ...yard,
      zones: [...yard.zones, newZone(`new-${yard.zones.length}`, tool.kind, [[ring]], { name: 'New' })],
    });
    return true;
  },
  reshaped(outlines, label) {
    log.push(['reshaped', outlines[0]?.zoneId ?? '', label]);
    const made = (zone: Zone) => outlines.find((one) => one.zoneId === zone.id);
    const zones = yard.zones.map((zone) => {
      const { parts, curves } = made(zone) ?? zone;
      return { ...zone, parts, curves };
    });
    put({ ...yard, zones });
  },
  splitLine: (line, id) => log.push(['splitLine', line, id]) > 0,
  reshaping: () => {},
  bandLine: (line) => log.push(['bandLine', line]) > 0,
  picked: (position) => void log.push(['picked', position]),
  pictureShifted: (eastM, northM) => void log.push(['pictureShifted', eastM, northM]),
  markPlaced: (kind, position) => void log.push(['markPlaced', kind, position]),
  markMoved: (id, position) => void log.push(['markMoved', id, position]),
  live: () => {},
  message: (issue) => void log.push(['message', issue.code]),
  toolEnded: () => void log.push(['toolEnded']),
};

const element = document.getElementById('map');
if (!element) throw new Error('the page has no map');
Object.assign(element.style, { position: 'absolute', inset: '0' });
const map = createLeafletMap(element, events, async () => ({
  readMeta: async () => null,
  readTile: async () => null,
}));

function show(): void {
  map.show({
    yard,
    measured,
    selectedZoneIds: selected,
    slips: [],
    visit: null,
    units: 'metric',
    baseLayer: base,
    trial: null,
    dark: false,
  });
}
show();

const harness: Harness = {
  log,
  map,
  yard: () => yard,
  measured: () => measured,
  setBase(layer) {
    base = layer;
    show();
  },
};
Object.assign(window, { harness });
