import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { CoverInput } from '../cover/passTypes';
import { testDose, testZone } from '../cover/route/testDoses';
import type { CoverAnswer, CoverRequest } from './coverWorker';

/** The worker's own module in this thread, with its port in our hands. */
async function startWorker() {
  const answers: CoverAnswer[] = [];
  let hear: (event: { data: CoverRequest }) => void = () => undefined;
  vi.stubGlobal('postMessage', (answer: CoverAnswer) => answers.push(structuredClone(answer)));
  vi.stubGlobal('addEventListener', (_: string, listener: typeof hear) => {
    hear = listener;
  });
  await import('./coverWorker');
  return { answers, ask: (request: CoverRequest) => hear({ data: request }) };
}

const inputOf = (doses: CoverInput['doses']): CoverInput => ({
  visitId: 'visit',
  doses,
  obstacles: [],
  start: null,
  end: null,
  hose: null,
});

describe('the worker that lays out walks', () => {
  beforeEach(() => vi.resetModules());
  afterEach(() => vi.unstubAllGlobals());

  it('answers in plain data', async () => {
    const { answers, ask } = await startWorker();
    ask({ id: 1, input: inputOf([testDose([testZone('a', [[0, 0, 4, 4]])])]) });
    await vi.waitFor(() => expect(answers).toHaveLength(2));
    expect(answers[0]).toEqual({ id: 1, began: true });
    expect(answers[1]).toMatchObject({ id: 1, ok: true, coverage: { visitId: 'visit' } });
  });

  it('answers an error of the program with a sentence for the person', async () => {
    const { answers, ask } = await startWorker();
    const broken = { ...testZone('Side strip', [[0, 0, 8, 12]]), parts: null as never };
    ask({ id: 7, input: inputOf([testDose([broken])]) });
    await vi.waitFor(() => expect(answers).toHaveLength(2));
    const answer = answers[1];
    if (!answer || !('ok' in answer) || answer.ok) throw new Error('no failure was told');
    expect(answer.message).toMatch(/^working out the walk of “Side strip” broke down\. Nothing of the yard/);
    expect(answer.message).not.toMatch(/undefined|null|TypeError|Cannot|read|function/);
  });
});
