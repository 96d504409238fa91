import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CoverDose, CoverInput, DoseCoverage, VisitCoverage } from '../../cover/passTypes';
import { coverInput } from '../../session/coverInput';
import { deriveYard } from '../../session/derive';
import '../../session/deriveVisit';
import type { YardSession } from '../../session/types';
import { yardFromGeoJson } from '../../yard/codec';
import { emptyYard, newDose, newVisit } from '../../yard/defaults';
import type { Yard } from '../../yard/types';
import { CoverageDesk } from './coverage-desk';

interface Asked {
  readonly input: CoverInput;
  answer(): void;
  fail(message: string): void;
}

function coverageOf(input: CoverInput): VisitCoverage {
  const doses = input.doses.map(({ doseId }) => ({ doseId, hose: null }) as unknown as DoseCoverage);
  return { visitId: input.visitId, doses };
}

/** A desk over a yard whose input to the work hangs on its tank alone. */
function openDesk() {
  const asked: Asked[] = [];
  const calls = { notify: 0, redrawMap: 0 };
  let yard: Yard = {
    ...emptyYard('yard-1', 'Test yard'),
    visits: [
      newVisit('visit-1', { tankL: 10, doses: [newDose('dose-1', 'product-1')] }),
      newVisit('visit-2', { tankL: 10 }),
    ],
  };
  const derivedVisit = {};
  const plane = { toLonLat: (p: unknown) => p };
  const host = {
    get session() {
      const derived = { visit: () => derivedVisit, measured: { plane } };
      return { yard, derived } as unknown as YardSession;
    },
    view: { visitId: 'visit-1' as string | null, doseId: null } as { visitId: string | null },
    notify() {
      calls.notify += 1;
    },
    redrawMap() {
      calls.redrawMap += 1;
    },
    walks: { hides: new Set<string>() },
  };
  const desk = new CoverageDesk(host as never, {
    inputOf(now, _derived, visitId) {
      const { tankL } = now.visits.find((each) => each.id === visitId) ?? { tankL: 0 };
      const dose = { doseId: 'dose-1', swathM: tankL } as unknown as CoverDose;
      return tankL === null ? null : ({ visitId, doses: [dose], hose: null } as unknown as CoverInput);
    },
    lay: (input) =>
      new Promise((resolve, reject) => {
        const answer = () => resolve(coverageOf(input));
        asked.push({ input, answer, fail: (message) => reject(new Error(message)) });
      }),
  });
  const setVisit = (change: Partial<Yard['visits'][number]>) => {
    yard = {
      ...yard,
      visits: yard.visits.map((each) => (each.id === 'visit-1' ? { ...each, ...change } : each)),
    };
  };
  const setYard = (change: Partial<Yard>) => {
    yard = { ...yard, ...change };
  };
  return { desk, asked, calls, host, setVisit, setYard };
}

const later = () => new Promise((resolve) => setTimeout(resolve));

describe('the desk of the walks', () => {
  it('asks once for what has not changed, and once more for what has', async () => {
    const { desk, asked, calls, setVisit } = openDesk();
    desk.look();
    expect(desk.state).toEqual({ state: 'working', before: null });
    desk.look();
    expect(asked).toHaveLength(1);
    asked[0]?.answer();
    await later();
    expect(desk.state.state).toBe('ready');
    expect(calls.notify).toBe(1);
    // another name: the walk does not hang on it
    setVisit({ name: 'Other name' });
    desk.look();
    expect(asked).toHaveLength(1);
    expect(desk.state.state).toBe('ready');
    setVisit({ tankL: 20 });
    desk.look();
    expect(asked).toHaveLength(2);
    expect(desk.state).toMatchObject({ state: 'working', before: { visitId: 'visit-1' } });
  });

  it('drops an answer that comes after another question, and what belongs to another visit', async () => {
    const { desk, asked, host, setVisit } = openDesk();
    desk.look();
    setVisit({ tankL: 20 });
    desk.look();
    asked[1]?.answer();
    await later();
    expect(desk.walkOf('dose-1')?.from.swathM).toBe(20);
    asked[0]?.answer();
    await later();
    expect(desk.walkOf('dose-1')?.from.swathM).toBe(20);
    host.view.visitId = 'visit-2';
    desk.look();
    expect(desk.state).toEqual({ state: 'working', before: null });
    expect(desk.walkOf('dose-1')).toBeNull();
  });

  it('tells a failure and asks again when told to', async () => {
    const { desk, asked } = openDesk();
    desk.look();
    asked[0]?.fail('no worker');
    await later();
    expect(desk.state).toEqual({ state: 'failed', message: 'no worker' });
    desk.look();
    expect(asked).toHaveLength(1);
    desk.retry();
    desk.look();
    expect(asked).toHaveLength(2);
  });

  it('keeps nothing of one yard for another, whose visits may have the same ids', async () => {
    const { desk, asked, setYard } = openDesk();
    desk.look();
    asked[0]?.answer();
    await later();
    setYard({ id: 'yard-2' });
    desk.look();
    expect(desk.state).toEqual({ state: 'working', before: null });
    expect(desk.walkOf('dose-1')).toBeNull();
    expect(asked).toHaveLength(2);
  });

  it('has nothing of a visit that has nothing to walk, and an answer on its way is dropped', async () => {
    const { desk, asked, setVisit } = openDesk();
    desk.look();
    setVisit({ tankL: null });
    desk.look();
    expect(desk.state).toEqual({ state: 'none' });
    asked[0]?.answer();
    await later();
    expect(desk.state).toEqual({ state: 'none' });
  });

  it('moves the walker with the map alone, and its picture is the same object until something changes', async () => {
    const { desk, asked, calls, setVisit } = openDesk();
    desk.look();
    asked[0]?.answer();
    await later();
    const still = desk.pictureOf(null);
    expect(still?.walkedM).toBeNull();
    expect(desk.pictureOf('dose-1')).toBe(still);
    const { notify } = calls;
    desk.setWalked('dose-1', 12);
    expect(calls).toEqual({ notify, redrawMap: 1 });
    expect(desk.pictureOf('dose-1')?.walkedM).toBe(12);
    expect(desk.pictureOf('dose-9')).toBe(desk.pictureOf('dose-1'));
    expect(desk.walkOf('dose-9')).toBeNull();
    // a walk laid out anew begins anew
    setVisit({ tankL: 20 });
    desk.look();
    expect(desk.pictureOf('dose-1')?.walkedM).toBeNull();
  });

  it('asks anew when the outline of the property changes alone: ways keep to it', () => {
    const file = readFileSync(new URL('../../../sample-geojson/corner-lot.geojson', import.meta.url), 'utf8');
    const { yard } = yardFromGeoJson(JSON.parse(file));
    if (!yard?.parcel) throw new Error('the sample has no property');
    const first = deriveYard(yard);
    let session = { yard, derived: first } as unknown as YardSession;
    const asked: CoverInput[] = [];
    const host = {
      get session() {
        return session;
      },
      view: { visitId: yard.visits[0]?.id ?? null },
    };
    const desk = new CoverageDesk(host as never, {
      inputOf: coverInput,
      lay: (input) => {
        asked.push(input);
        return new Promise(() => {});
      },
    });
    desk.look();
    const [parcel] = yard.parcel.parts;
    const corner = parcel?.[0]?.[1];
    if (!parcel || !corner) throw new Error('the property has no corners');
    const moved = parcel.map((ring) =>
      ring.map((at) => (at === corner ? ([at[0] + 1e-5, at[1]] as const) : at)),
    );
    const changed: Yard = { ...yard, parcel: { ...yard.parcel, parts: [moved] } };
    session = { yard: changed, derived: deriveYard(changed, first) } as unknown as YardSession;
    desk.look();
    expect(asked).toHaveLength(2);
    expect(asked[1]?.property?.[0]).not.toEqual(asked[0]?.property?.[0]);
  });
});
