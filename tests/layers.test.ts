import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/*
 * Holds the one-way rule of DEVELOPERS.md: what each folder of src/ may import. Test files and what they
 * share (test*.ts, fake*.ts) may import anything; they are no part of the program.
 */
const SRC = fileURLToPath(new URL('../src/', import.meta.url));

/** Folders that each folder may import, beside itself. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  units: [],
  yard: ['units'],
  measure: ['yard', 'units'],
  survey: ['measure', 'yard', 'units'],
  soil: ['yard', 'units'],
  need: ['yard', 'units'],
  plan: ['soil', 'measure', 'yard', 'units'],
  season: ['plan', 'need', 'soil', 'yard', 'units'],
  buy: ['plan', 'yard', 'units'],
  pace: ['plan', 'yard', 'units'],
  cover: ['pace', 'plan', 'measure', 'yard', 'units'],
  session: ['season', 'cover', 'pace', 'plan', 'survey', 'measure', 'yard', 'units'],
  io: ['season', 'buy', 'cover', 'pace', 'plan', 'picture', 'survey', 'measure', 'yard', 'units'],
  picture: ['survey', 'measure', 'yard', 'units'],
  draft: ['yard'],
  words: [
    'session',
    'season',
    'buy',
    'need',
    'soil',
    'cover',
    'pace',
    'plan',
    'survey',
    'measure',
    'yard',
    'units',
  ],
  map: [
    'session',
    'picture',
    'cover',
    'pace',
    'plan',
    'survey',
    'measure',
    'yard',
    'units',
    'draft',
    'words',
  ],
  print: [
    'session',
    'season',
    'buy',
    'need',
    'soil',
    'cover',
    'pace',
    'plan',
    'measure',
    'yard',
    'units',
    'draft',
    'words',
  ],
  // the screens start reading, writing and printing, and speak to the map through its port
  ui: [
    'print',
    'io',
    'map',
    'session',
    'picture',
    'season',
    'buy',
    'need',
    'soil',
    'cover',
    'pace',
    'plan',
    'survey',
    'measure',
    'yard',
    'units',
    'draft',
    'words',
  ],
};
/** Single files open to folders below them: the words of the document are types only. */
const ALLOWED_FILES: Readonly<Record<string, readonly string[]>> = { units: ['yard/types'] };
/** Of these folders `words` knows the types alone. */
const WORDS_TYPES = ['session/types', 'cover/types', 'cover/passTypes'];
/** The map's port: all that a screen may know of the map. */
const MAP_PORT = ['map/types', 'map/sources', 'map/fakeMap'];
const CORE = ['units', 'yard', 'measure', 'survey', 'soil', 'need', 'plan', 'season', 'buy', 'pace', 'cover'];
const OUTSIDE_CORE = /^(leaflet|lit|idb-keyval|terra-draw|node:)/;
/** Packages held to the folders that may use them. */
const PACKAGE_HOMES: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^(leaflet|terra-draw)/, ['map']],
  [/^lit(\/|$)/, ['ui', 'print']],
  [/^idb-keyval/, ['session']],
];
const WORLD =
  /\b(document|window|globalThis|navigator|localStorage)\s*[.[]|\bDate\.now\b|\bMath\.random\b|\bnew Date\(\)|\bconsole\./;

interface Source {
  readonly path: string;
  readonly folder: string;
  readonly code: string;
  readonly imports: readonly { readonly name: string; readonly isType: boolean }[];
}

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');
}

function importsOf(code: string): Source['imports'] {
  const found = [
    ...code.matchAll(/\b(?:import|export)\s+(type\s)?[^'"`;()]*?\bfrom\s*['"]([^'"]+)['"]/g),
    ...code.matchAll(/\bimport\s+(type\s)?['"]([^'"]+)['"]/g),
    ...code.matchAll(/\bimport\(\s*(type\s)?['"`]([^'"`]+)['"`]/g),
  ];
  return found.map((match) => ({ name: match[2] ?? '', isType: match[1] !== undefined }));
}

const SOURCES: readonly Source[] = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => path.endsWith('.ts') && !/(\.test\.ts|\/(test|fake)[A-Z]\w*\.ts)$/.test(path))
  .map((path) => {
    const code = withoutComments(readFileSync(SRC + path, 'utf8'));
    return {
      path,
      folder: path.includes('/') ? (path.split('/')[0] ?? '') : '',
      code,
      imports: importsOf(code),
    };
  });

/** The place in src/ that a relative import names, without its ending; null for a package. */
function placeOf(source: Source, name: string): string | null {
  if (!name.startsWith('.')) return null;
  return posix.normalize(posix.join(posix.dirname(source.path), name)).replace(/\.(ts|js)$/, '');
}

/** Every import of a source that breaks the rule, in words. */
function breaches(source: Source): string[] {
  if (source.folder === '') return [];
  const allowed = ALLOWED[source.folder];
  if (allowed === undefined) return [`${source.path}: the folder has no rule`];
  return source.imports.flatMap(({ name, isType }) => {
    const told = `${source.path} imports ${name}`;
    const place = placeOf(source, name);
    if (place === null) {
      const stray = PACKAGE_HOMES.some(
        ([home, folders]) => home.test(name) && !folders.includes(source.folder),
      );
      return stray || (CORE.includes(source.folder) && OUTSIDE_CORE.test(name)) ? [told] : [];
    }
    const folder = place.split('/')[0] ?? '';
    if (folder === source.folder) return [];
    if (isType && ALLOWED_FILES[source.folder]?.includes(place)) return [];
    if (source.folder === 'words' && ['session', 'cover'].includes(folder) && !WORDS_TYPES.includes(place))
      return [told];
    if (source.folder === 'ui' && folder === 'map' && !MAP_PORT.includes(place)) return [told];
    return allowed.includes(folder) ? [] : [told];
  });
}

describe('the one-way rule', () => {
  it('finds the sources and their imports', () => {
    expect(new Set(SOURCES.map((one) => one.folder))).toEqual(new Set(['', ...Object.keys(ALLOWED)]));
    const main = SOURCES.find((one) => one.path === 'main.ts');
    expect(main?.imports.map((one) => one.name)).toContain('./map/leafletMap');
    const leaflet = SOURCES.find((one) => one.path === 'map/leafletMap.ts');
    expect(leaflet?.imports.map((one) => one.name)).toContain('leaflet');
  });

  it('the table itself has no way back', () => {
    for (const [folder, below] of Object.entries(ALLOWED))
      for (const other of below) expect(ALLOWED[other], `${folder} and ${other}`).not.toContain(folder);
  });

  it('no import goes against it', () => {
    expect(SOURCES.flatMap(breaches)).toEqual([]);
  });

  it('the core knows no page, clock, chance or console', () => {
    const strays = SOURCES.filter((one) => [...CORE, 'draft', 'words'].includes(one.folder)).flatMap(
      (one) => {
        const match = WORLD.exec(one.code);
        return match === null ? [] : [`${one.path}: ${match[0]}`];
      },
    );
    expect(strays).toEqual([]);
  });

  it.each([
    ['plan/x.ts', "import { a } from '../cover/strips';"],
    ['plan/x.ts', "export * from '../session/store';"],
    ['cover/x.ts', "import 'leaflet';"],
    ['units/x.ts', "import { NUTRIENTS } from '../yard/types';"],
    ['ui/x.ts', "const a = await import('../map/leafletMap');"],
    ['print/x.ts', "import L, {\n  type Map,\n} from 'leaflet';"],
    ['draft/x.ts', "import type { Z } from '../measure/types';"],
    ['words/x.ts', "import { deriveYard } from '../session/derive';"],
    ['new/x.ts', ''],
  ])('would catch %s: %s', (path, code) => {
    const folder = path.split('/')[0] ?? '';
    expect(breaches({ path, folder, code, imports: importsOf(code) }).length).toBe(1);
  });
});
