import { describe, expect, it, vi } from 'vitest';
import type { CoverInput, VisitCoverage } from '../cover/passTypes';
import { testDose, testZone } from '../cover/route/testDoses';
import { type CoverPort, createCoverClient } from './coverClient';
import type { CoverAnswer, CoverRequest } from './coverWorker';

const inputOf = (visitId: string): CoverInput => ({
  visitId,
  doses: [],
  obstacles: [],
  start: null,
  end: null,
  hose: null,
});
const coverageOf = (visitId: string): VisitCoverage => ({ visitId, doses: [] });

/** A worker that answers when told to. */
class FakePort implements CoverPort {
  readonly heard: CoverRequest[] = [];
  isEnded = false;
  private readonly listeners = new Map<string, ((event: never) => void)[]>();
  postMessage(request: CoverRequest): void {
    this.heard.push(structuredClone(request));
  }
  addEventListener(type: string, listener: (event: never) => void): void {
    this.listeners.set(type, [...(this.listeners.get(type) ?? []), listener]);
  }
  terminate(): void {
    this.isEnded = true;
  }
  tell(data: CoverAnswer): void {
    for (const listener of this.listeners.get('message') ?? []) listener({ data } as never);
  }
  fail(message: string): void {
    for (const listener of this.listeners.get('error') ?? [])
      listener({ message, preventDefault: () => undefined } as never);
  }
}

function open() {
  const ports: FakePort[] = [];
  const client = createCoverClient(
    () => {
      const port = new FakePort();
      ports.push(port);
      return port;
    },
    () => Date.now(),
  );
  return { ports, client };
}

describe('createCoverClient', () => {
  it('gives the answer of the worker, and keeps the worker for the next', async () => {
    const { ports, client } = open();
    const first = client.lay(inputOf('a'));
    await Promise.resolve();
    ports[0]?.tell({ id: 1, ok: true, coverage: coverageOf('a') });
    expect((await first).visitId).toBe('a');
    const second = client.lay(inputOf('b'));
    await Promise.resolve();
    ports[0]?.tell({ id: 2, ok: true, coverage: coverageOf('b') });
    expect((await second).visitId).toBe('b');
    expect(ports).toHaveLength(1);
  });

  it('drops an answer that a newer call overtook', async () => {
    const { ports, client } = open();
    const settled: string[] = [];
    void client.lay(inputOf('old')).then(({ visitId }) => settled.push(visitId));
    const newer = client.lay(inputOf('new'));
    await Promise.resolve();
    ports[0]?.tell({ id: 1, ok: true, coverage: coverageOf('old') });
    ports[0]?.tell({ id: 2, began: true });
    ports[0]?.tell({ id: 2, ok: true, coverage: coverageOf('new') });
    expect((await newer).visitId).toBe('new');
    expect(settled).toEqual([]);
  });

  it('ends a worker that stays with a stale request, and asks a new one; not one that came to the newest', async () => {
    vi.useFakeTimers();
    try {
      const { ports, client } = open();
      void client.lay(inputOf('old'));
      const newer = client.lay(inputOf('new'));
      await vi.advanceTimersByTimeAsync(1000);
      expect(ports.map(({ isEnded }) => isEnded)).toEqual([true, false]);
      expect(ports[1]?.heard.map(({ input }) => input.visitId)).toEqual(['new']);
      ports[0]?.tell({ id: 2, ok: false, message: 'from the dead' });
      ports[1]?.tell({ id: 2, ok: true, coverage: coverageOf('new') });
      expect((await newer).visitId).toBe('new');

      void client.lay(inputOf('old'));
      const last = client.lay(inputOf('last'));
      await vi.advanceTimersByTimeAsync(100);
      ports[1]?.tell({ id: 4, began: true });
      await vi.advanceTimersByTimeAsync(5000);
      expect(ports).toHaveLength(2);
      ports[1]?.tell({ id: 4, ok: true, coverage: coverageOf('last') });
      expect((await last).visitId).toBe('last');
    } finally {
      vi.useRealTimers();
    }
  });

  it('rejects with the worker’s message, and starts a new worker after one that broke', async () => {
    const { ports, client } = open();
    const first = client.lay(inputOf('a'));
    await Promise.resolve();
    ports[0]?.tell({ id: 1, ok: false, message: 'no ground' });
    await expect(first).rejects.toThrow('no ground');
    const second = client.lay(inputOf('b'));
    await Promise.resolve();
    ports[0]?.fail('');
    await expect(second).rejects.toThrow(/^working out the walk broke down/);
    const third = client.lay(inputOf('c'));
    await Promise.resolve();
    expect(ports).toHaveLength(2);
    ports[1]?.fail('Failed to fetch dynamically imported module');
    await expect(third).rejects.toThrow(/^what works them out did not start\./);
  });

  it('rejects where a worker cannot be made', async () => {
    const client = createCoverClient(() => {
      throw new Error('not allowed here');
    });
    await expect(client.lay(inputOf('a'))).rejects.toThrow(/^what works them out did not start\./);
  });

  it('says in plain words which walk broke down, and nothing of the program', async () => {
    const client = createCoverClient(null);
    // ground that no reading of a yard lets through
    const broken = { ...testZone('Front lawn', [[0, 0, 8, 12]]), parts: null as never };
    const input = {
      ...inputOf('a'),
      doses: [testDose([testZone('Green', [[0, 0, 4, 4]])]), testDose([broken])],
    };
    const error = await client.lay(input).then(
      () => null,
      (reason: unknown) => reason as Error,
    );
    expect(error?.message).toMatch(
      /^working out the walk of “Front lawn” broke down\. Nothing of the yard is lost/,
    );
    expect(error?.message).not.toMatch(/undefined|null|TypeError|Cannot|function/);
    expect(error?.cause).toBeInstanceOf(TypeError);
  });

  it('says no more of a worker that breaks at its work than what to do', async () => {
    const { ports, client } = open();
    const asked = client.lay({ ...inputOf('a'), doses: [testDose([])] });
    await Promise.resolve();
    ports[0]?.tell({ id: 1, began: true });
    ports[0]?.fail('Uncaught RangeError: Maximum call stack size exceeded');
    await expect(asked).rejects.toThrow(/^working out the walk broke down\. Nothing of the yard is lost/);
  });

  it('lays out in place where there are no workers, with what is kept', async () => {
    const client = createCoverClient(null);
    const input = { ...inputOf('a'), doses: [testDose([testZone('lawn', [[0, 0, 8, 12]])])] };
    const first = await client.lay(input);
    expect(first.doses[0]?.walks.map(({ zoneId }) => zoneId)).toEqual(['lawn']);
    const second = await client.lay(structuredClone(input));
    expect(second.doses[0]).toBe(first.doses[0]);
  });
});
