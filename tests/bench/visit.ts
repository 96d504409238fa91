import { coverVisit, createCoverCache } from '../../src/cover/coverVisit';
import { createPassPlanner } from '../../src/cover/passes/passPlanner';
import type { CoverDose, CoverInput, CoverZone } from '../../src/cover/passTypes';
import { createCarryGround } from '../../src/cover/route/carryGround';
import { planeAreaOf } from '../../src/measure/clip';
import type { PlaneRings, XY } from '../../src/measure/types';
import { seededRandom } from './benchYard';

/** Zones stand in a grid of so many, each in a cell this wide, m. */
const [COLUMNS, ROWS, CELL_M] = [4, 3, 18];

/**
 * The whole walk of a visit over 12 zones round a house: passes of each, order, ways between and marks; and the same
 * after the heading of one zone was changed. Beside it the walk of one who goes to the nearest zone each time and
 * walks each as it is shortest by itself, from either end.
 */
export function benchVisit(
  report: (label: string, times: readonly number[]) => void,
  say: (line: string) => void,
): void {
  const input = visitOfTwelve();
  say('the walk of a visit: 12 zones, 1.5 m between passes, a house in the middle');
  const begun = performance.now();
  coverVisit(input);
  say(`first coverVisit, cold: ${(performance.now() - begun).toFixed(0)} ms`);
  const whole: number[] = [];
  const edited: number[] = [];
  let made = coverVisit(input);
  for (let run = 0; run < 6; run++) {
    const cache = createCoverCache();
    const start = performance.now();
    made = coverVisit(input, cache);
    whole.push(performance.now() - start);
    const turned = withHeading(input, run % 12, 10 + 25 * run);
    const second = performance.now();
    coverVisit(turned, cache);
    edited.push(performance.now() - second);
  }
  report('coverVisit, nothing kept', whole);
  report('coverVisit, the heading of one zone changed', edited);
  const [dose] = made.doses;
  const ours = dose?.lengthM ?? 0;
  const peer = nearestEachTimeM(input);
  const betweenM = (dose?.legs ?? [])
    .filter(({ zoneId }) => zoneId === null)
    .reduce((sum, { lengthM }) => sum + lengthM, 0);
  say(`  ${ours.toFixed(0)} m walked, ${betweenM.toFixed(0)} m of it between zones`);
  say(
    `  to the nearest zone each time: ${peer.lengthM.toFixed(0)} m, ${peer.betweenM.toFixed(0)} m of it between zones`,
  );
}

function visitOfTwelve(): CoverInput {
  const random = seededRandom(12);
  const zones: CoverZone[] = [];
  for (let i = 0; i < COLUMNS * ROWS; i++) {
    const [x, y] = [CELL_M * ((i % COLUMNS) + 0.5), CELL_M * (Math.floor(i / COLUMNS) + 0.5)];
    const corners = 5 + Math.floor(5 * random());
    const ring = Array.from({ length: corners }, (_, k): XY => {
      const [angle, reach] = [(2 * Math.PI * k) / corners, 5 + 3 * random()];
      return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)];
    });
    const parts: PlaneRings[] = [[[...ring, ring[0] as XY]]];
    const zoneId = `zone-${i + 1}`;
    zones.push({ zoneId, name: zoneId, areaM2: planeAreaOf(parts), parts, keepOff: [], headingDeg: null });
  }
  const middle: XY = [(CELL_M * COLUMNS) / 2, (CELL_M * ROWS) / 2];
  const dose: CoverDose = {
    doseId: 'dose',
    spacingM: 1.5,
    swathM: 1.5,
    headerLaps: null,
    lapsFirst: true,
    coats: 1,
    zones,
    vessels: [],
    staysWet: false,
  };
  return {
    visitId: 'visit',
    doses: [dose],
    obstacles: [boxAt(middle, 0.9)],
    start: [0, -2],
    end: null,
    hose: null,
  };
}

function boxAt([x, y]: XY, half: number): PlaneRings {
  const [x0, x1, y0, y1] = [x - half, x + half, y - 8, y + 8];
  return [
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
      [x0, y0],
    ],
  ];
}

function withHeading(input: CoverInput, zone: number, headingDeg: number): CoverInput {
  const doses = input.doses.map((dose) => ({
    ...dose,
    zones: dose.zones.map((each, i) => (i === zone ? { ...each, headingDeg } : each)),
  }));
  return { ...input, doses };
}

/** The walk of going to the nearest end of any zone that is left, m. */
function nearestEachTimeM({ doses, obstacles, start }: CoverInput): { lengthM: number; betweenM: number } {
  const ground = createCarryGround(obstacles, []);
  const plan = createPassPlanner();
  const left = doses.flatMap((dose) =>
    dose.zones.map(({ parts, keepOff, headingDeg }) => {
      const { legs, lengthM } = plan({ parts, keepOff }, { ...dose, headingDeg }, null, null);
      return { ends: [legs[0]?.line[0] as XY, legs.at(-1)?.line.at(-1) as XY] as const, lengthM };
    }),
  );
  let at = start as XY;
  let [lengthM, betweenM] = [0, 0];
  while (left.length > 0) {
    const ways = left.flatMap(({ ends }, index) =>
      [0, 1].map((end) => ({ index, end, wayM: ground.between(at, ends[end] as XY).lengthM })),
    );
    const next = ways.reduce((a, b) => (b.wayM < a.wayM ? b : a));
    const [zone] = left.splice(next.index, 1);
    betweenM += next.wayM;
    lengthM += next.wayM + (zone?.lengthM ?? 0);
    at = zone?.ends[1 - next.end] as XY;
  }
  return { lengthM, betweenM };
}
