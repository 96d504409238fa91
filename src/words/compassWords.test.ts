import { expect, it } from 'vitest';
import { COMPASS_POINTS, degreesOfPoint, fallWords, pointOf, windWords } from './compassWords';

it('points and degrees stand for each other', () => {
  expect(COMPASS_POINTS.map(({ id }) => degreesOfPoint(id))).toEqual([0, 45, 90, 135, 180, 225, 270, 315]);
  expect(COMPASS_POINTS.map(({ id }) => pointOf(degreesOfPoint(id) ?? null))).toEqual(
    COMPASS_POINTS.map(({ id }) => id),
  );
  expect([degreesOfPoint(''), degreesOfPoint('typed')]).toEqual([null, undefined]);
  expect([pointOf(null), pointOf(200), pointOf(359.9)]).toEqual([null, null, null]);
  expect([fallWords(225), fallWords(200.4)]).toEqual(['falls toward SW', 'falls toward 200°']);
  expect([0, 44, 200, -45, 359.9, 720].map(windWords)).toEqual([
    'north',
    'northeast',
    'south',
    'northwest',
    'north',
    'north',
  ]);
});
