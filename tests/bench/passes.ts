import { planPasses } from '../../src/cover/passes/planPasses';
import type { PassOptions } from '../../src/cover/passTypes';
import type { PlaneRings, XY } from '../../src/measure/types';
import { seededRandom } from './benchYard';

/**
 * Passes over one acre with 20 round beds, at 3 m and at 1.2 m, beside a plain sweep of one heading with no laps
 * (each slab's pass from end to end, walked in the order of the slabs).
 */
export function benchPasses(
  report: (label: string, times: readonly number[]) => void,
  say: (line: string) => void,
): void {
  const parts = acreWithBeds();
  say('passes over one acre (4,047 m²) with 20 beds of 24 corners');
  for (const spacingM of [3, 1.2]) {
    const searched: PassOptions = {
      spacingM,
      swathM: spacingM,
      headerLaps: null,
      headingDeg: null,
      lapsFirst: true,
    };
    const times: number[] = [];
    let last = planPasses({ parts, keepOff: [] }, searched, [0, 0], null);
    for (let i = 0; i < 14; i++) {
      const start = performance.now();
      last = planPasses({ parts, keepOff: [] }, searched, [0, 0], null);
      if (i >= 4) times.push(performance.now() - start);
    }
    report(`planPasses, ${spacingM} m: heading, laps and order searched`, times);
    const share = (part: number) => `${((100 * part) / last.areaM2).toFixed(2)} %`;
    say(
      `  ${last.lengthM.toFixed(0)} m, ${(last.lengthM / last.leastM).toFixed(3)} of the least (${last.leastM.toFixed(0)} m); ${last.passes} passes, ${last.turns} turns, missed ${share(last.missedM2)}, twice ${share(last.doubleM2)}`,
    );
    const sweep = plainSweepM(parts[0] as PlaneRings, spacingM);
    say(
      `  a plain sweep northwards: ${sweep.toFixed(0)} m, ${(sweep / last.leastM).toFixed(3)} of the least`,
    );
  }
}

/** One pass in each slab from the first to the last ground, turning round beds by half their outline; m. */
function plainSweepM(rings: PlaneRings, spacingM: number): number {
  const outer = rings[0] as readonly XY[];
  const [low, high] = [Math.min(...outer.map((p) => p[0])), Math.max(...outer.map((p) => p[0]))];
  const count = Math.ceil((high - low) / spacingM);
  let lengthM = 0;
  for (let i = 0; i < count; i++) {
    const x = Math.min(low + (i + 0.5) * spacingM, high - spacingM / 2);
    const ys = rings.flatMap((ring) =>
      ring.slice(1).flatMap((q, k) => {
        const p = ring[k] as XY;
        return p[0] > x === q[0] > x ? [] : [p[1] + ((x - p[0]) / (q[0] - p[0])) * (q[1] - p[1])];
      }),
    );
    ys.sort((a, b) => a - b);
    lengthM += (ys.at(-1) ?? 0) - (ys[0] ?? 0) + (i > 0 ? spacingM : 0);
    // round a bed: half a circle on its chord in place of the chord
    for (let k = 1; k + 1 < ys.length - 1; k += 2)
      lengthM += (Math.PI / 2 - 1) * ((ys[k + 1] as number) - (ys[k] as number));
  }
  return lengthM;
}

function acreWithBeds(): PlaneRings[] {
  const random = seededRandom(7);
  const side = Math.sqrt(4046.8564224);
  const rings: XY[][] = [
    [
      [0, 0],
      [side, 0],
      [side, side],
      [0, side],
      [0, 0],
    ],
  ];
  const beds: [number, number, number][] = [];
  for (let tries = 0; beds.length < 20 && tries < 5000; tries++) {
    const bed: [number, number, number] = [
      4 + (side - 8) * random(),
      4 + (side - 8) * random(),
      0.6 + 1.6 * random(),
    ];
    if (beds.some(([x, y, r]) => Math.hypot(x - bed[0], y - bed[1]) < r + bed[2] + 1.5)) continue;
    beds.push(bed);
    const corner = (i: number): XY => [
      bed[0] + bed[2] * Math.cos((Math.PI * (i % 24)) / 12),
      bed[1] - bed[2] * Math.sin((Math.PI * (i % 24)) / 12),
    ];
    rings.push(Array.from({ length: 25 }, (_, i) => corner(i)));
  }
  return [rings];
}
