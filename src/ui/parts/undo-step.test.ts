import { expect, it } from 'vitest';
import { openSession } from '../../session/store';
import type { YardStorage } from '../../session/types';
import { emptyYard } from '../../yard/defaults';
import { undoStep } from './undo-step';

it('takes back its own step alone', () => {
  const storage = {
    save: async () => undefined,
    watch: () => () => undefined,
    setLastOpenId: async () => undefined,
  } as unknown as YardStorage;
  const session = openSession(emptyYard('y', 'Yard'), storage, { now: () => 0 });
  const said: string[] = [];
  const app = { session, note: (code: string) => said.push(code) };
  const rename = (name: string) => session.dispatch(`Rename ${name}`, (yard) => ({ ...yard, name }));
  rename('one');
  const first = undoStep(app);
  rename('two');
  first.run();
  expect([session.yard.name, said]).toEqual(['two', ['undo-passed']]);
  const second = undoStep(app);
  second.run();
  second.run();
  expect(session.yard.name).toBe('one');
  first.run();
  expect(session.yard.name).toBe('Yard');
});
