import { describe, expect, it } from 'vitest';
import { belongsTo, isWorldFileName, readWorldFile } from './worldFile';

describe('the text of a world file', () => {
  it('lines A, D, B, E, C, F; the last two are moved from the first pixel’s centre to its corner', () => {
    const result = readWorldFile('2\n0.1\n0.2\n-3\n1000\n2000\n');
    expect(result).toEqual({ ok: true, toProjected: [2, 0.2, 1000 - 1 - 0.1, 0.1, -3, 2000 - 0.05 + 1.5] });
  });

  it('byte order mark, carriage returns, blanks, exponents and decimal commas are read', () => {
    const result = readWorldFile('\uFEFF 5.0E-1 \r\n0,0\r\n0\r\n-0,5\r\n+1000,25\r\n2000\r\n\r\n');
    expect(result).toEqual({ ok: true, toProjected: [0.5, 0, 1000, 0, -0.5, 2000.25] });
  });

  it.each([
    ['', 1, 'has 0'],
    ['1\n0\n0\n-1\n5\n', 6, 'has 5'],
    ['1\n0\nx\n-1\n5\n6\n', 3, '“x”'],
    ['1\n1\n1\n1\n5\n6\n', 1, 'no size'],
    ['<html>\n0\n0\n-1\n5\n6\n', 1, '“<html>”'],
  ])('%j is refused at line %i', (text, line, words) => {
    const result = readWorldFile(text);
    expect(result).toMatchObject({
      ok: false,
      issue: { place: { line }, message: expect.stringContaining(words) },
    });
  });
});

describe('names', () => {
  it.each(['a.tfw', 'a.TFW', 'a.pgw', 'a.jgw', 'a.wld', 'a.jpgw', 'a.pngw', 'a.tifw'])(
    '%s is a world file',
    (name) => {
      expect(isWorldFileName(name)).toBe(true);
    },
  );
  it.each(['a.tif', 'a.prj', 'tfw', 'a.txt'])('%s is none', (name) => {
    expect(isWorldFileName(name)).toBe(false);
  });

  it.each([
    ['yard.tfw', 'yard.tif', true],
    ['YARD.TFW', 'yard.tiff', true],
    ['yard.jgw', 'yard.jpeg', true],
    ['yard.jpgw', 'yard.jpg', true],
    ['yard.wld', 'yard.png', true],
    ['yard.jpg.wld', 'yard.jpg', true],
    ['yard.prj', 'yard.webp', true],
    ['yard.tfw', 'yard.png', false],
    ['back.pgw', 'yard.png', false],
    ['yard.2.pgw', 'yard.png', false],
  ])('%s beside %s: %s', (sidecar, picture, belongs) => {
    expect(belongsTo(sidecar, picture)).toBe(belongs);
  });
});
