import fc from 'fast-check';
import { expect, it } from 'vitest';
import { applyPrograms } from '../../src/season/applyPrograms';
import { programDates } from '../../src/season/programDates';
import { addDays, daysBetween } from '../../src/yard/calendar';
import { removeVisit, replaceEntry, replaceVisit } from '../../src/yard/edits';
import type { NutrientNeed, Program, ProgramPace, Yard } from '../../src/yard/types';
import { testYard } from '../fixtures/testYard';

const day = fc.integer({ min: 0, max: 1200 }).map((n) => addDays('2027-01-01', n) as string);
const IDS = ['pg-0', 'pg-1', 'pg-2', 'pg-3'] as const;
const pace: fc.Arbitrary<ProgramPace> = fc.oneof(
  fc.record({ kind: fc.constant('every' as const), days: fc.integer({ min: 1, max: 60 }) }),
  fc.record({
    kind: fc.constant('with' as const),
    programId: fc.constantFrom(...IDS),
    nth: fc.integer({ min: 1, max: 5 }),
    offsetDays: fc.constantFrom(0, 0, 1, 3, 10),
  }),
);
const factor = fc.constantFrom(0.25, 0.5, 1);
const program = (id: string) =>
  fc
    .record({
      pace,
      from: day,
      span: fc.integer({ min: -5, max: 300 }),
      factor,
      product: fc.constantFrom('p-liquid', 'p-granules'),
    })
    .map(
      (made): Program => ({
        id,
        name: id,
        from: made.from,
        to: addDays(made.from, made.span) as string,
        pace: made.pace,
        zones: { classes: ['turf-regular', 'turf-low-cut'], include: [], exclude: [] },
        doses: [
          {
            id: `${id}-d`,
            productId: made.product,
            useId: null,
            amount: { kind: 'label', rateFactor: made.factor },
            zones: null,
          },
        ],
        tankL: null,
      }),
    );
const programs = fc.tuple(program('pg-0'), program('pg-1'), program('pg-2'), program('pg-3'));
const yardOf = (list: readonly Program[]): Yard => ({ ...testYard(), visits: [], programs: list });
const ids = (start = 0) => {
  let count = start;
  return (prefix: string) => `${prefix}-${++count}`;
};

it('days lie from first to last, rising; every n days exactly; pairs so many days after a day of the partner', () => {
  fc.assert(
    fc.property(programs, (list) => {
      for (const one of list) {
        const { dates, issues, hostId } = programDates(one, list);
        if (issues.length > 0) {
          expect(dates).toEqual([]);
          continue;
        }
        for (const date of dates) expect(date >= one.from && date <= one.to).toBe(true);
        const gaps = dates.slice(1).map((date, i) => daysBetween(dates[i] as string, date));
        for (const gap of gaps) expect(gap).toBeGreaterThan(0);
        if (one.pace.kind === 'every') {
          const { days } = one.pace;
          expect(dates[0]).toBe(one.from);
          for (const gap of gaps) expect(gap).toBe(days);
          const past = addDays(dates.at(-1) as string, days) as string;
          expect(past > one.to).toBe(true);
          expect(hostId).toBe(one.id);
        } else {
          const { programId, nth, offsetDays } = one.pace;
          const partner = list.find((other) => other.id === programId) as Program;
          const days = programDates(partner, list).dates.map((date) => addDays(date, offsetDays));
          const places = dates.map((date) => days.indexOf(date));
          expect(places).not.toContain(-1);
          for (const [i, place] of places.slice(1).entries()) expect(place - (places[i] as number)).toBe(nth);
        }
      }
    }),
    { numRuns: 300 },
  );
});

const touch = fc.record({ pick: fc.nat(), verb: fc.constantFrom('done', 'move', 'note', 'remove', 'dose') });

it('making visits twice is making them once; what was done, moved or edited is never lost, what was removed stays away', () => {
  fc.assert(
    fc.property(programs, programs, fc.array(touch, { maxLength: 8 }), (list, later, touches) => {
      let yard = applyPrograms(yardOf(list), ids()).yard;
      expect(applyPrograms(yard, ids(100_000)).yard).toBe(yard);
      const hands = new Map<string, (typeof yard.visits)[number]>();
      const isEdited = new Set<string>();
      const gone: string[] = [];
      for (const { pick, verb } of touches) {
        const visit = yard.visits[pick % Math.max(1, yard.visits.length)];
        if (!visit || hands.has(visit.id)) continue;
        if (verb === 'remove') {
          yard = removeVisit(yard, visit.id);
          gone.push(`${visit.program?.id} ${visit.program?.date}`);
          continue;
        }
        const next = {
          done: { ...visit, doneOn: visit.date },
          move: { ...visit, date: addDays(visit.date as string, 2) },
          note: { ...visit, note: 'mind the hose' },
          dose: {
            ...visit,
            doses: visit.doses.map((dose) => ({ ...dose, rateFactor: dose.rateFactor * 1.1 })),
          },
        }[verb];
        yard = replaceVisit(yard, next);
        hands.set(visit.id, next);
        if (verb !== 'move') isEdited.add(visit.id);
      }
      // all rules change at once, then the visits are made again
      for (const one of later) {
        const { skips } = yard.programs.find((each) => each.id === one.id) as Program;
        yard = replaceEntry(yard, 'programs', { ...one, skips });
      }
      const result = applyPrograms(yard, ids(200_000));
      for (const [id, hand] of hands) {
        const now = result.yard.visits.find((visit) => visit.id === id);
        expect(now?.date, 'the day stays').toBe(hand.date);
        if (isEdited.has(id)) expect(now).toBe(hand);
      }
      const keys = result.yard.visits.map((visit) => `${visit.program?.id} ${visit.program?.date}`);
      for (const key of gone) expect(keys).not.toContain(key);
      expect(new Set(keys).size).toBe(keys.length);
      expect(new Set(result.yard.visits.map((visit) => visit.id)).size).toBe(keys.length);
      const again = applyPrograms(result.yard, ids(300_000));
      expect(again.yard).toBe(result.yard);
      expect([again.added, again.renewed, again.removed]).toEqual([0, 0, 0]);
    }),
    { numRuns: 200 },
  );
});

const needProgram = (id: string) =>
  fc
    .record({
      made: program(id),
      isByNeed: fc.boolean(),
      share: fc.constantFrom(0.5, 1),
      maxFactor: fc.constantFrom(1, 3),
    })
    .map(({ made, isByNeed, share, maxFactor }): Program => {
      // granules by need, liquid by the label
      const productId = isByNeed ? 'p-granules' : 'p-liquid';
      const doses = made.doses.map((dose) => ({
        ...dose,
        productId,
        amount: isByNeed ? { kind: 'need' as const, share, maxFactor } : dose.amount,
      }));
      return { ...made, doses };
    });

it('doses by need never bring a month over its need, nor a day over the caps, and stay when made again', () => {
  const list = fc.tuple(needProgram('pg-0'), needProgram('pg-1'), needProgram('pg-2'), needProgram('pg-3'));
  const perMonth = fc.constantFrom(0.0005, 0.002, 0.006);
  fc.assert(
    fc.property(list, perMonth, fc.array(touch, { maxLength: 4 }), (programsOf, monthKg, touches) => {
      const need: NutrientNeed = {
        id: 'n',
        name: '',
        zones: { classes: ['turf-regular', 'turf-low-cut'], include: [], exclude: [] },
        speciesId: '',
        season: 'cool-season',
        guideId: '',
        nKgPerM2: 12 * monthKg,
        split: { kind: 'even', fromMonth: 1, toMonth: 12 },
        hold: null,
      };
      const base = yardOf(programsOf);
      const caps = { ...base.caps, totalNPerDose: 0.003, solubleNPerDose: null, p2o5PerDose: null };
      let yard = applyPrograms({ ...base, needs: [need], caps }, ids()).yard;
      for (const { pick, verb } of touches) {
        const visit = yard.visits[pick % Math.max(1, yard.visits.length)];
        if (!visit) continue;
        if (verb === 'remove') yard = removeVisit(yard, visit.id);
        if (verb === 'done') yard = replaceVisit(yard, { ...visit, doneOn: visit.date });
        if (verb === 'note') yard = replaceVisit(yard, { ...visit, note: 'mind the hose' });
      }
      const result = applyPrograms(yard, ids(100_000)).yard;
      expect(applyPrograms(result, ids(200_000)).yard).toBe(result);
      // of the fixture: granules lay down 0.0024 kg N/m² by the label, the liquid 1.6 mL of 1.2 kg/L at 12 %
      const laid = { 'p-granules': 0.0024, 'p-liquid': 0.0016 * 1.2 * 0.12 };
      const sums = new Map<string, { all: number; fixed: number }>();
      for (const visit of result.visits) {
        const isKept = visit.doneOn !== null || visit.note !== '';
        for (const dose of visit.doses) {
          const amount = dose.rateFactor * (laid[dose.productId as keyof typeof laid] ?? 0);
          expect(dose.rateFactor).toBeGreaterThan(0);
          for (const key of [`${visit.date}`, `${visit.date}`.slice(0, 7)]) {
            const sum = sums.get(key) ?? { all: 0, fixed: 0 };
            const isFixed = isKept || dose.productId === 'p-liquid';
            sums.set(key, { all: sum.all + amount, fixed: sum.fixed + (isFixed ? amount : 0) });
          }
        }
      }
      for (const [key, { all, fixed }] of sums) {
        const most = key.length === 7 ? monthKg : 0.003;
        expect(all, key).toBeLessThanOrEqual(Math.max(most, fixed) + 1e-9);
      }
    }),
    { numRuns: 60 },
  );
});
