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
