import type { Issue } from '../yard/types';

/**
 * Parses JSON text. A leading byte-order mark is passed over (RFC 8259, section 8.1, lets a reader do so).
 * @returns the value, or an issue that gives the line and column (from 1) of the fault
 */
export function parseJson(
  text: string,
): { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly issue: Issue } {
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  try {
    return { ok: true, value: JSON.parse(plain) };
  } catch {
    const { line, column } = lineOf(plain, findFault(plain));
    const empty = plain.trim() === '';
    const message = empty
      ? 'The file is empty.'
      : `The file is not valid JSON: line ${line}, column ${column} cannot be read.`;
    return {
      ok: false,
      issue: { code: 'bad-json', severity: 'error', message, place: { line, path: `${line}:${column}` } },
    };
  }
}

function lineOf(text: string, offset: number): { line: number; column: number } {
  const lines = text.slice(0, offset).split(/\r\n|\r|\n/);
  return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
}

const SPACE = /[\t\n\r ]*/y;
const TOKEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: JSON strings may not hold them, so they must be named
  /[{}[\],:]|"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/**
 * Offset of the first place where text stops being JSON (RFC 8259); the length when it ends too soon.
 * Engines word their own errors differently and some leave the place out, so it is found here.
 */
function findFault(text: string): number {
  const open: string[] = [];
  // What may come next: a value, a key, or what follows a value.
  let expects: 'value' | 'value-or-end' | 'key' | 'key-or-end' | 'colon' | 'after' = 'value';
  let at = 0;
  for (;;) {
    SPACE.lastIndex = at;
    SPACE.test(text);
    at = SPACE.lastIndex;
    TOKEN.lastIndex = at;
    const token = TOKEN.exec(text)?.[0];
    if (token === undefined) return at;
    const holder = open.at(-1);
    const closes = token === '}' || token === ']';
    if (closes) {
      const fits = token === '}' ? holder === '{' : holder === '[';
      const allowed = expects === 'after' || expects === (token === '}' ? 'key-or-end' : 'value-or-end');
      if (!fits || !allowed) return at;
      open.pop();
      expects = 'after';
    } else if (expects === 'after') {
      if (token !== ',' || holder === undefined) return at;
      expects = holder === '{' ? 'key' : 'value';
    } else if (expects === 'colon') {
      if (token !== ':') return at;
      expects = 'value';
    } else if (expects === 'key' || expects === 'key-or-end') {
      if (!token.startsWith('"')) return at;
      expects = 'colon';
    } else if (token === '{' || token === '[') {
      open.push(token);
      expects = token === '{' ? 'key-or-end' : 'value-or-end';
    } else if (token === ',' || token === ':') return at;
    else expects = 'after';
    at += token.length;
  }
}
