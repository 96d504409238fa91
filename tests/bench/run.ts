import { cpus, loadavg, totalmem } from 'node:os';
import * as turf from '@turf/turf';
import type { Feature, MultiPolygon, Polygon } from 'geojson';
import { areaOfRingM2, destination } from '../../src/measure/geodesic';
import { measureYard } from '../../src/measure/measureYard';
import { findSlips } from '../../src/measure/slips';
import { deriveYard } from '../../src/session/derive';
import '../../src/session/deriveVisit';
import { type Ring, type Yard, ZONE_KINDS } from '../../src/yard/types';
import { makeBenchYard, moveOneCorner, seededRandom } from './benchYard';
import { measureBundle } from './bundle';
import { benchBuy } from './buy';
import { benchDrag } from './drag';
import { benchPasses } from './passes';
import { benchVisit } from './visit';

/** Everything measured adds to it and it is printed, so that no work can be left out by the compiler. */
let sink = 0;

const say = (line: string) => process.stdout.write(`${line}\n`);

/** Times of `runs` calls in ms after `warmUp` calls that do not count. */
function time(runs: number, warmUp: number, work: (run: number) => number): number[] {
  for (let i = 0; i < warmUp; i++) sink += work(i);
  return Array.from({ length: runs }, (_, i) => {
    const start = performance.now();
    sink += work(warmUp + i);
    return performance.now() - start;
  });
}

function report(label: string, times: readonly number[], unit: 'ms' | 'µs' = 'ms'): void {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) => {
    const value = sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
    return (unit === 'µs' ? value * 1000 : value).toFixed(2).padStart(10);
  };
  say(`${label.padEnd(58)}${at(0)}${at(0.5)}${at(0.95)}  ${unit}`);
}

function ringOf(count: number): Ring {
  const random = seededRandom(count);
  const corners = Array.from({ length: count }, (_, k) =>
    destination([-83, 40], (360 * k) / count, 15 + 5 * random()),
  );
  return [...corners, corners[0] as Ring[number]];
}

/** The same net areas with turf alone: each zone less the zones of earlier kinds whose boxes meet it. */
function turfNetAreas(yard: Yard): number {
  const features = yard.zones.map((zone) => {
    const feature = turf.multiPolygon(
      zone.parts.map((rings) => rings.map((ring) => ring.map((p) => [...p]))),
    ) as Feature<Polygon | MultiPolygon>;
    return { order: ZONE_KINDS.indexOf(zone.kind), feature, box: turf.bbox(feature) };
  });
  let sum = 0;
  for (const subject of features) {
    let net: Feature<Polygon | MultiPolygon> | null = subject.feature;
    for (const cutter of features) {
      const [a, b] = [subject.box, cutter.box];
      if (!net || cutter.order >= subject.order) continue;
      if (a[0] >= b[2] || b[0] >= a[2] || a[1] >= b[3] || b[1] >= a[3]) continue;
      net = turf.difference(turf.featureCollection([net, cutter.feature]));
    }
    if (net) sum += turf.area(net);
  }
  return sum;
}

/** Sum of the figures, so that each is used. */
const totalOf = (yard: ReturnType<typeof measureYard>) =>
  yard.totals.reduce((sum, total) => sum + total.netM2 + total.netSigmaM2, 0);

say(
  `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}, ${Math.round(totalmem() / 2 ** 30)} GiB, ${process.platform}, load ${loadavg()[0]?.toFixed(1)} at the start`,
);
say(`${''.padEnd(58)}${'min'.padStart(10)}${'median'.padStart(10)}${'p95'.padStart(10)}`);

for (const count of [5, 50, 1000]) {
  const ring = ringOf(count);
  const polygon = turf.polygon([ring.map((p) => [...p])]);
  report(
    `area of ${count} corners, ellipsoid (ours)`,
    time(200, 100, () => areaOfRingM2(ring)),
    'µs',
  );
  report(
    `area of ${count} corners, sphere (turf)`,
    time(200, 100, () => turf.area(polygon)),
    'µs',
  );
}

const base = makeBenchYard();
const corners = base.zones.reduce(
  (sum, zone) => sum + zone.parts.flat().reduce((s, r) => s + r.length - 1, 0),
  0,
);
say(
  `\nyard of ${base.zones.length} zones and ${corners} corners, one corner moved in a zone taken at random`,
);
{
  // Zones never seen before: nothing kept from an earlier run can serve.
  const fresh = (): Yard => ({ ...base, zones: base.zones.map((zone) => ({ ...zone })) });
  const start = performance.now();
  const measured = measureYard(base);
  say(`first measureYard, cold: ${(performance.now() - start).toFixed(0)} ms`);
  const second = performance.now();
  const slips = findSlips(base, measured);
  say(`first findSlips, cold: ${(performance.now() - second).toFixed(0)} ms, ${slips.length} slips`);
  const runs = 200;
  {
    let [yard, last] = [base, measured];
    const edits = time(runs, 50, (i) => {
      yard = moveOneCorner(yard, i);
      last = measureYard(yard, last);
      return totalOf(last);
    });
    report('measureYard, what changed', edits);
  }
  {
    let [yard, last] = [base, deriveYard(base)];
    const edits = time(runs, 50, (i) => {
      yard = moveOneCorner(yard, i);
      last = deriveYard(yard, last);
      const visit = last.visit('visit');
      return totalOf(last.measured) + (visit?.rinseEdges.length ?? 0);
    });
    report('deriveYard with one visit and its rinse edges, what changed', edits);
  }
  {
    let [yard, last] = [base, measured];
    const edits: number[] = [];
    for (let i = 0; i < runs / 2; i++) {
      yard = moveOneCorner(yard, i);
      last = measureYard(yard, last);
      const begun = performance.now();
      sink += findSlips(yard, last).length;
      edits.push(performance.now() - begun);
    }
    report('findSlips, what changed', edits.slice(10));
  }
  const allNew = Array.from({ length: 15 }, fresh);
  report(
    'measureYard, everything',
    time(12, 3, (i) => totalOf(measureYard(allNew[i] as Yard))),
  );
  const slipsNew = Array.from({ length: 15 }, fresh).map((yard) => ({ yard, measured: measureYard(yard) }));
  report(
    'findSlips, everything',
    time(12, 3, (i) => {
      const one = slipsNew[i];
      return one ? findSlips(one.yard, one.measured).length : 0;
    }),
  );
  report(
    'deriveYard with one visit, everything',
    time(6, 1, () => deriveYard(fresh()).visit('visit')?.rinseEdges.length ?? 0),
  );
  report(
    'net areas with turf on a sphere, everything',
    time(6, 1, () => turfNetAreas(base)),
  );
}

say('');
await benchBuy(report, say);
say('');
benchPasses(report, say);
say('');
benchVisit(report, say);
say('');
await benchDrag(report);
say('');
await measureBundle(say);
say(`\nsum of all results, so that nothing was left out: ${sink.toFixed(3)}`);
