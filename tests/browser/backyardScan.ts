import type { Position } from '../../src/yard/types';
import { createTruth, drawPicture, type Marks, pngFile } from './testPictures';

/** An invented scan of a yard whose truth is known: 0.05 m a pixel, its up 12° east of north. */
export const M_PER_PX = 0.05;
/** Where its upper left corner lies, degrees. */
export const CORNER: Position = [-96.5432, 41.2345];
/** The place of a pixel, degrees. */
export const truth = createTruth(CORNER, M_PER_PX, 12);
/** Five marks; the first four are the corners of a rectangle of 600 by 400 pixels. */
export const MARKS = {
  red: [200, 200],
  blue: [800, 200],
  magenta: [800, 600],
  cyan: [200, 600],
  green: [500, 100],
} as const satisfies Marks;
/** The scan as a file to choose. */
export const scan = () => pngFile('Backyard scan.png', drawPicture(1000, 800, MARKS));
/** Where a mark lies, degrees. */
export const at = (name: keyof typeof MARKS): Position => truth(MARKS[name][0], MARKS[name][1]);
