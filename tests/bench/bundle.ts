import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';

/** Most that the first load may weigh, bytes gzipped. */
const FIRST_LOAD_LIMIT = 180_000;

interface Chunk {
  readonly name: string;
  readonly gzipBytes: number;
}

/**
 * Builds the program into a passing folder and says what a browser fetches before anything is asked of
 * it (page, entry, what they import without waiting, style sheets) and what comes later, gzipped.
 * @returns bytes of the first load
 */
export async function measureBundle(say: (line: string) => void): Promise<number> {
  const folder = await mkdtemp(join(tmpdir(), 'measured-yard-bundle-'));
  try {
    await build({ logLevel: 'silent', build: { outDir: folder, emptyOutDir: true } });
    const names = (await readdir(folder, { recursive: true, withFileTypes: true }))
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
    const files = new Map<string, Buffer>();
    for (const name of names) files.set(name, await readFile(join(folder, name)));
    const first = firstLoad(files);
    const sized = ([name, bytes]: [string, Buffer]): Chunk => ({ name, gzipBytes: gzipSync(bytes).length });
    const all = [...files].map(sized).sort((a, b) => b.gzipBytes - a.gzipBytes);
    const now = all.filter(({ name }) => first.has(name));
    const sum = now.reduce((total, { gzipBytes }) => total + gzipBytes, 0);
    say(
      `first load, gzip: ${kilobytes(sum)} (limit ${kilobytes(FIRST_LOAD_LIMIT)}: ${sum <= FIRST_LOAD_LIMIT ? 'kept' : 'EXCEEDED'})`,
    );
    for (const { name, gzipBytes } of now) say(`  ${kilobytes(gzipBytes)}  ${name}`);
    say('later, when first used:');
    for (const { name, gzipBytes } of all) {
      if (!first.has(name)) say(`  ${kilobytes(gzipBytes)}  ${name}`);
    }
    return sum;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`.padStart(9);
}

/** The page, what it names, and what those scripts import statically, over and over. */
function firstLoad(files: ReadonlyMap<string, Buffer>): Set<string> {
  const first = new Set<string>(['index.html']);
  const page = files.get('index.html')?.toString() ?? '';
  const queue = [...page.matchAll(/(?:src|href)="\.?\/?([^"]+)"/g)].map((match) => match[1] ?? '');
  for (let name = queue.pop(); name !== undefined; name = queue.pop()) {
    const content = files.get(name);
    if (!content || first.has(name)) continue;
    first.add(name);
    if (!name.endsWith('.js')) continue;
    // import … from "./x.js", import "./x.js" and export … from "./x.js"; import("./x.js") comes later
    for (const match of content.toString().matchAll(/(?:\bfrom|\bimport)\s*["']([^"']+)["']/g)) {
      queue.push(posix.join(posix.dirname(name), match[1] ?? ''));
    }
  }
  return first;
}
