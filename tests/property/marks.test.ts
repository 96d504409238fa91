import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levelOf, momentAt, secondAtWalked } from '../../src/cover/marks/momentAt';
import { MOST_VESSELS } from '../../src/cover/marks/mostVessels';
import { runOutMarks } from '../../src/cover/marks/runOutMarks';
import { stretchesByVessel } from '../../src/cover/marks/stretchesByVessel';
import { joinWalks, testCoverage, testLeg } from '../../src/cover/marks/testWalk';
import { drawnFrom } from '../../src/cover/marks/vesselsOf';
import { walkNotes } from '../../src/cover/marks/walkNotes';
import { doneAt, placeWhereDone, walkProgress } from '../../src/cover/marks/walkProgress';
import { walkTimeline } from '../../src/cover/marks/walkTimeline';
import type { Leg, Vessel } from '../../src/cover/passTypes';
import type { XY } from '../../src/measure/types';
import { planOne, testPack, testProduct } from '../../src/plan/testDose';
import { newEquipment } from '../../src/yard/defaults';

/*
 * Walks of any shape, whose knots are any that grow; what is drawn from is any row of vessels.
 */

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const RUNS = { numRuns: 60 };

/** A bent lap or pass; `gains`: plane m² between knots, some of them nothing. */
const leg = (zoneId: string, coat: 1 | 2) =>
  fc
    .record({
      kind: fc.constantFrom('lap' as const, 'pass' as const),
      steps: fc.array(fc.tuple(real(-30, 30), real(-30, 30)), { minLength: 1, maxLength: 5 }),
      gains: fc.array(fc.oneof(fc.constant(0), real(0.01, 40)), { minLength: 1, maxLength: 6 }),
    })
    .map(({ kind, steps, gains }): Leg => {
      const line: XY[] = [[0, 0]];
      for (const [dx, dy] of steps) {
        const [x, y] = line.at(-1) as XY;
        line.push([x + dx, y + dy + (Math.abs(dx) + Math.abs(dy) < 1e-3 ? 1 : 0)]);
      }
      const { lengthM } = testLeg(kind, zoneId, line);
      let areaM2 = 0;
      const knots = [0, ...gains].map((gain, i) => {
        areaM2 += gain;
        return { atM: (lengthM * i) / gains.length, areaM2 };
      });
      return testLeg(kind, zoneId, line, knots, coat);
    });

/** Zones with their ground, walked in one coat or two, joined by ways. */
const walk = fc
  .record({
    coats: fc.constantFrom(1 as const, 2 as const),
    areas: fc.array(real(1, 2000), { minLength: 1, maxLength: 4 }),
  })
  .chain(({ coats, areas }) => {
    const zones = areas.map((areaM2, i) => ({ zoneId: `z-${i}`, areaM2 }));
    const rounds = coats === 2 ? ([1, 2] as const) : ([1] as const);
    const walks = rounds.flatMap((coat) =>
      zones.map(({ zoneId }) => fc.array(leg(zoneId, coat), { minLength: 1, maxLength: 6 })),
    );
    return fc
      .tuple(...walks)
      .filter((made) => made.every((legs) => legs.some(({ knots }) => (knots.at(-1)?.areaM2 ?? 0) > 0)))
      .map((made) => ({ coats, zones, legs: joinWalks(made) }));
  });
const sumOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
const areaOf = (zones: readonly { readonly areaM2: number }[]) => sumOf(zones.map(({ areaM2 }) => areaM2));

/** Vessels of shares of the ground: the first opened, the last not emptied. */
const shares = fc.record({
  parts: fc.array(real(0.05, 1), { minLength: 1, maxLength: 7 }),
  opened: real(0.1, 1),
  emptied: real(0.05, 1),
});
function vesselsFor(
  areaM2: number,
  { parts, opened, emptied }: { parts: number[]; opened: number; emptied: number },
) {
  const total = sumOf(parts);
  return parts.map((part, i): Vessel => {
    const start = i === 0 ? opened : 1;
    const taken = i === parts.length - 1 ? start * emptied : start;
    const litres = (value: number) => ({ unit: 'L', value }) as const;
    return {
      kind: 'container',
      number: i + 1,
      full: litres(1),
      start: litres(start),
      taken: litres(taken),
      areaM2: (areaM2 * part) / total,
      packId: null,
    };
  });
}
const near = (ours: number, other: number, scale: number) =>
  expect(Math.abs(ours - other)).toBeLessThanOrEqual(1e-7 * scale);

/** Distance of a point from a line, m. */
function offLine([x, y]: XY, line: readonly XY[]): number {
  return Math.min(
    ...line.slice(1).map(([bx, by], i) => {
      const [ax, ay] = line[i] as XY;
      const [dx, dy] = [bx - ax, by - ay];
      const share = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      return Math.hypot(x - ax - share * dx, y - ay - share * dy);
    }),
  );
}

describe('run-out marks on any walk', () => {
  it('the ground of each zone is done by its legs, half of it in each of two coats', () => {
    fc.assert(
      fc.property(walk, ({ zones, legs, coats }) => {
        const { startM2 } = walkProgress(legs, zones, coats);
        for (const { zoneId, areaM2 } of zones) {
          for (const coat of coats === 2 ? [1, 2] : [1]) {
            const own = legs.map((each, i) =>
              each.zoneId === zoneId && each.coat === coat ? (startM2[i + 1] ?? 0) - (startM2[i] ?? 0) : 0,
            );
            near(sumOf(own), areaM2 / coats, areaM2);
          }
        }
        near(startM2.at(-1) ?? 0, areaOf(zones), areaOf(zones));
      }),
      RUNS,
    );
  });

  it('ascend, lie on their legs, and part the ground as the vessels do', () => {
    fc.assert(
      fc.property(walk, shares, ({ zones, legs, coats }, parts) => {
        const total = areaOf(zones);
        const vessels = vesselsFor(total, parts);
        const marks = runOutMarks(legs, zones, coats, vessels);
        const progress = walkProgress(legs, zones, coats);
        marks.forEach((mark, i) => {
          const before = marks[i - 1];
          if (before) {
            expect(mark.doneM2).toBeGreaterThanOrEqual(before.doneM2);
            const isLater = mark.legIndex > before.legIndex || mark.alongM >= before.alongM - 1e-9;
            expect(mark.legIndex).toBeGreaterThanOrEqual(before.legIndex);
            expect(isLater).toBe(true);
          }
          const own = legs[mark.legIndex] as Leg;
          expect(own.zoneId).toBe(mark.zoneId);
          expect(mark.alongM).toBeGreaterThanOrEqual(0);
          expect(mark.alongM).toBeLessThanOrEqual(own.lengthM);
          expect(offLine(mark.at, own.line)).toBeLessThan(1e-6);
          near(doneAt(progress, mark), mark.doneM2, total);
          // what a dose leaves of a vessel counts as nothing below 3e-7 of it
          near(levelOf(vessels, mark.vessel, mark.doneM2), mark.left, 10);
        });
        const ends = marks.filter(({ left }) => left === 0);
        // all but the last are emptied, the last where nothing is kept back
        expect(ends.length).toBeGreaterThanOrEqual(vessels.length - 1);
        ends.forEach(({ doneM2, vessel }, i) => {
          expect(vessel).toBe(i);
          near(doneM2 - (ends[i - 1]?.doneM2 ?? 0), vessels[i]?.areaM2 ?? 0, total);
        });
      }),
      RUNS,
    );
  });

  it('a place found by its ground has that ground', () => {
    fc.assert(
      fc.property(walk, real(0, 1), ({ zones, legs, coats }, share) => {
        const progress = walkProgress(legs, zones, coats);
        const wanted = share * areaOf(zones);
        const place = placeWhereDone(progress, wanted);
        expect(place).not.toBeNull();
        if (place) near(doneAt(progress, place), wanted, areaOf(zones));
        expect(placeWhereDone(progress, areaOf(zones) * 1.001)).toBeNull();
      }),
      RUNS,
    );
  });

  it('stretches by vessel are all laps and passes, each once, in order', () => {
    fc.assert(
      fc.property(walk, shares, ({ zones, legs, coats }, parts) => {
        const vessels = vesselsFor(areaOf(zones), parts);
        const stretches = stretchesByVessel(legs, runOutMarks(legs, zones, coats, vessels), vessels.length);
        const working = sumOf(legs.map((each) => (each.knots.length > 0 ? each.lengthM : 0)));
        const drawn = sumOf(
          stretches.flatMap(({ lines }) => lines.map((line) => testLeg('pass', null, line).lengthM)),
        );
        near(drawn, working, working);
        const order = stretches.map(({ vessel }) => vessel);
        expect(order).toEqual([...new Set(order)].toSorted((a, b) => a - b));
      }),
      RUNS,
    );
  });

  it('the clock goes through the whole walk, levels between empty and full', () => {
    fc.assert(
      fc.property(walk, shares, real(0, 1), ({ zones, legs, coats }, parts, share) => {
        const total = areaOf(zones);
        const vessels = vesselsFor(total, parts);
        const marks = runOutMarks(legs, zones, coats, vessels);
        const dose = testCoverage(legs, vessels, marks);
        const timeline = walkTimeline(dose, zones, { speedMPerS: 1.3, shutSpeedMPerS: 1.6, turnS: 2 }, 1.5);
        // whatever the passes overlap, work takes as long as the amount needs to go out
        near(timeline.workingS, (total * coats) / (1.3 * 1.5), total);
        near(timeline.totalM, dose.lengthM, dose.lengthM);
        const { workingS, turnS, carryS, refillS } = timeline;
        near(workingS + turnS + carryS + refillS, timeline.totalS, timeline.totalS);
        let before = momentAt(timeline, 0);
        for (let i = 0; i <= 40; i += 1) {
          const now = momentAt(timeline, (timeline.totalS * i) / 40);
          expect(now?.level).toBeGreaterThanOrEqual(0);
          expect(now?.level).toBeLessThanOrEqual(1);
          expect(now?.walkedM).toBeGreaterThanOrEqual((before?.walkedM ?? 0) - 1e-9);
          expect(now?.doneM2).toBeGreaterThanOrEqual((before?.doneM2 ?? 0) - 1e-9 * total);
          expect(now?.vessel).toBeGreaterThanOrEqual(before?.vessel ?? 0);
          before = now;
        }
        near(before?.doneM2 ?? 0, total, total);
        const walked = share * timeline.totalM;
        near(momentAt(timeline, secondAtWalked(timeline, walked))?.walkedM ?? -1, walked, timeline.totalM);
      }),
      RUNS,
    );
  });

  it('the list tells each mark once and the end of each zone of each coat, in order', () => {
    fc.assert(
      fc.property(walk, shares, ({ zones, legs, coats }, parts) => {
        const vessels = vesselsFor(areaOf(zones), parts);
        const marks = runOutMarks(legs, zones, coats, vessels);
        const notes = walkNotes(testCoverage(legs, vessels, marks), zones);
        expect(notes.flatMap(({ mark }) => mark ?? []).length).toBe(marks.length);
        expect(notes.filter(({ isZoneEnd }) => isZoneEnd).length).toBe(zones.length * coats);
        notes.forEach(({ walkedM, left, vessel }, i) => {
          expect(walkedM).toBeGreaterThanOrEqual((notes[i - 1]?.walkedM ?? 0) - 1e-6);
          expect(vessel).not.toBeNull();
          expect(left).toBeGreaterThanOrEqual(0);
          expect(left).toBeLessThanOrEqual(1);
        });
      }),
      RUNS,
    );
  });
});

describe('vessels of any dose', () => {
  const dose = fc.record({
    areaM2: real(0.5, 20_000),
    perM2: real(1e-4, 0.1),
    sizes: fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 3 }),
    onHand: fc.array(real(0, 4), { minLength: 3, maxLength: 3 }),
    hopperKg: fc.option(real(2, 30)),
  });

  it('sum to its ground and amount; none holds more than it can, only the last is left with some', () => {
    fc.assert(
      fc.property(dose, ({ areaM2, perM2, sizes, onHand, hopperKg }) => {
        const packs = sizes.map((value, i) => testPack({ unit: 'kg', value }, `pack-${i}`));
        const product = testProduct({ packs, rate: { basis: 'mass-per-area', rateKgPerM2: perM2 } });
        const figures = planOne(product, areaM2);
        const holds = hopperKg === null ? null : ({ unit: 'kg', value: hopperKg } as const);
        const spreader = newEquipment('e-1', 'broadcast-spreader', { holds });
        const stock = Object.fromEntries(packs.map(({ id }, i) => [id, onHand[i] ?? 0]));
        const { vessels, count } = drawnFrom(figures, spreader, stock);
        expect(vessels.length).toBe(count > MOST_VESSELS ? 0 : count);
        if (count > MOST_VESSELS) return;
        near(areaOf(vessels), areaM2, areaM2);
        near(sumOf(vessels.map(({ taken }) => taken.value)), figures.amount.value, figures.amount.value);
        vessels.forEach((vessel, i) => {
          expect(vessel.number).toBe(i + 1);
          expect(vessel.kind).toBe(holds ? 'hopper-fill' : 'container');
          expect(vessel.start.value).toBeLessThanOrEqual(vessel.full.value + 1e-6 * figures.amount.value);
          expect(vessel.taken.value).toBeLessThanOrEqual(vessel.start.value + 1e-12);
          near(vessel.areaM2 / areaM2, vessel.taken.value / figures.amount.value, 1);
          if (i < vessels.length - 1) near(vessel.taken.value, vessel.start.value, vessel.full.value);
        });
        // opened ones go first
        if (!holds) {
          const opened = vessels.map(({ start, full }) => start.value < full.value * (1 - 1e-6));
          expect(opened).toEqual(opened.toSorted((a, b) => Number(b) - Number(a)));
        }
      }),
      RUNS,
    );
  });
});
