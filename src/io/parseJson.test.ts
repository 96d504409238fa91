import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseJson } from './parseJson';

describe('parseJson', () => {
  it.each([
    ['{"a": 1,}', 1, 9],
    ['{"a": 1\n "b": 2}', 2, 2],
    ['[1, 2', 1, 6],
    ['{\r\n  "a": tru\r\n}', 2, 8],
    ['[1, 2]]', 1, 7],
    ['[01]', 1, 3],
    ['{"a" 1}', 1, 6],
    ['["a\nb"]', 1, 2],
    ['{]', 1, 2],
    ['[,]', 1, 2],
    ['nul', 1, 1],
  ])('tells where %j goes wrong', (text, line, column) => {
    const result = parseJson(text);
    expect(result).toMatchObject({ ok: false, issue: { code: 'bad-json', place: { line } } });
    if (!result.ok) expect(result.issue.message).toContain(`line ${line}, column ${column} `);
  });

  it('passes over a byte-order mark and says when a file is empty', () => {
    expect(parseJson('\uFEFF[1]')).toEqual({ ok: true, value: [1] });
    expect(parseJson(' \n')).toMatchObject({ ok: false, issue: { message: 'The file is empty.' } });
  });

  it('agrees with the engine on what JSON is, cut anywhere', () => {
    fc.assert(
      fc.property(fc.json(), fc.nat(), (text, n) => {
        expect(parseJson(text).ok).toBe(true);
        const cut = text.slice(0, n % (text.length + 1));
        let good = true;
        try {
          JSON.parse(cut);
        } catch {
          good = false;
        }
        const result = parseJson(cut);
        expect(result.ok).toBe(good);
        if (!result.ok) expect(result.issue.place.line).toBe(1);
      }),
    );
  });
});
