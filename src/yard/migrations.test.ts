import { expect, it } from 'vitest';
import { SCHEMA_VERSION } from './defaults';
import { MIGRATIONS, migrate } from './migrations';

it('has a step from every older version', () => {
  for (let version = 0; version < SCHEMA_VERSION; version++)
    expect(MIGRATIONS[version]).toBeTypeOf('function');
});

it('runs the steps in order and leaves its input alone', () => {
  const file = Object.freeze({ trail: '' });
  const table = {
    1: (old: Readonly<Record<string, unknown>>) => ({ trail: `${old.trail}1` }),
    2: (old: Readonly<Record<string, unknown>>) => ({ trail: `${old.trail}2` }),
  };
  expect(migrate(file, 1, 3, table)).toEqual({ trail: '12' });
  expect(migrate(file, 3, 3, table)).toBe(file);
  expect(() => migrate(file, 0, 3, table)).toThrow('version 0');
});
