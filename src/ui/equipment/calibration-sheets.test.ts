import { expect, it } from 'vitest';
import { newEquipment } from '../../yard/defaults';
import { sheetOf } from './calibration-sheets';

it('a course is laid out by the distance between passes, not by the swath', () => {
  const fan = newEquipment('e', 'hose-end', { swathM: 2, overlapShare: 0.25 });
  const words = sheetOf('course', fan, {}, 'metric')
    .steps.map((step) => step.words)
    .join(' ');
  expect(words).toContain('whole number of passes, 1.50\u00a0m from one to the next');
  expect(words).not.toContain('2.00\u00a0m');
});

it.each([
  // 3 m are two of 1.5 m; 3 m by 8 m
  [{ swathM: 2, overlapShare: 0.25 }, 'metric', '3.00\u00a0m wide (2 passes) by 8\u00a0m long, 24\u00a0m²'],
  [{ swathM: 4 }, 'metric', '4.00\u00a0m wide (one pass) by 6\u00a0m long, 24\u00a0m²'],
  // 6 ft: 12 ft by 22 ft
  [{ swathM: 6 * 0.3048 }, 'us', '12.0\u00a0ft wide (2 passes) by 22\u00a0ft long, 264\u00a0sq ft'],
] as const)('the example of a course with %o is whole passes wide', (swath, units, words) => {
  const [, mark] = sheetOf('course', newEquipment('e', 'hose-end', swath), {}, units).steps;
  expect(mark?.words).toContain(words);
});
