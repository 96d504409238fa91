import { expect, it } from 'vitest';
import { testYard } from '../../tests/fixtures/testYard';
import { rename } from '../yard/edits';
import { deriveYard } from './derive';
import { currentPlanner, loadPlanner } from './planner';

it('measures without the planner; visits and season are there once it is loaded, also of what was derived before', async () => {
  expect(currentPlanner()).toBeNull();
  const derived = deriveYard(testYard());
  const [zone] = derived.measured.zones.values();
  expect(zone?.netM2).toBeGreaterThan(0);
  expect(derived.visit('v-1')).toBeNull();
  expect(derived.season()).toEqual({ entries: [], issues: [] });

  await loadPlanner();
  const visit = derived.visit('v-1');
  expect(visit?.figures.doses.length).toBeGreaterThan(0);
  expect(derived.visit('gone')).toBeNull();
  expect(derived.season().entries.length).toBeGreaterThan(0);

  // two documents later, one of them never asked for its visits
  const between = deriveYard(rename(derived.yard, 'One'), derived);
  const later = deriveYard(rename(between.yard, 'Two'), between);
  expect(later.visit('v-1')).toBe(visit);
});
