import { expect, it } from 'vitest';
import { drawRead, withDraw } from './draw-readings';

const filled = { volumeL: 10, timeS1: 40 };

it('a full bottle holds what the equipment is told to hold, until another figure is typed', () => {
  expect(withDraw(filled, 'emptied', 0.9)).toEqual({ ...filled, emptiedL: 0.9 });
  expect(withDraw(filled, 'emptied', null)).toEqual(filled);
  expect(withDraw({ ...filled, emptiedL: 0.8 }, 'emptied', 0.9)).toEqual({ ...filled, emptiedL: 0.8 });
  expect(withDraw(filled, 'gone', 0.9)).toEqual(filled);
});

it('another way of the draw leaves nothing of the one before', () => {
  const ratio = { ...filled, waterParts: 32 };
  expect(drawRead(ratio)).toBe('ratio');
  expect(withDraw(ratio, 'none', 0.9)).toEqual(filled);
  expect(withDraw(ratio, 'ratio', 0.9)).toEqual(ratio);
  const neat = withDraw(ratio, 'neat', 0.9);
  expect(neat.waterParts).toBe(0);
  expect(drawRead(neat)).toBe('neat');
  expect(withDraw(neat, 'emptied', 0.9)).toEqual({ ...filled, emptiedL: 0.9 });
});
