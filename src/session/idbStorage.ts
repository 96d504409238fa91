import { delMany, get, getMany, keys, promisifyRequest, set, type UseStore } from 'idb-keyval';
import { yardToGeoJson } from '../yard/encode';
import type { Yard } from '../yard/types';
import { openStore } from './openStore';
import { type Head, headAfterSave, isHead, NOT_STORED, openStates, type State } from './storedStates';
import type { YardStorage } from './types';

const LAST_OPEN = 'last-open';
const HEAD = 'head:';
const ADVICE = 'Export the yard to a file to be safe.';
const headKey = (id: string) => `${HEAD}${id}`;
const stateKeyStart = (id: string) => `state:${id}:`;
const stateKey = (id: string, revision: number) => `${stateKeyStart(id)}${revision}`;

/** One tab tells the others that it stored or removed a yard. */
interface Notice {
  readonly id: string;
  readonly tab: string;
}

/**
 * Yards in this browser's IndexedDB, by idb-keyval. A save is one transaction: it checks that no
 * other tab stored the yard in between, writes the newest state, thins the earlier ones and
 * writes the head, all or nothing.
 * @param name of the database, for tests
 */
export function createIdbStorage(name = 'measured-yard'): YardStorage {
  const known = new Map<string, number>();
  const tab = Math.random().toString(36).slice(2);
  const channelName = `${name}-changes`;
  const sender = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(channelName);
  // In Node an open channel would keep the process alive; browsers have no unref.
  (sender as { unref?: () => void } | null)?.unref?.();
  const tell = (id: string) => sender?.postMessage({ id, tab } satisfies Notice);
  const withStore = openStore(name, 'yards', ADVICE);
  let askedToKeep = false;

  async function headOf(id: string, from: UseStore): Promise<Head | undefined> {
    const head = await get<unknown>(headKey(id), from);
    return isHead(head) ? head : undefined;
  }

  return {
    list: () =>
      withStore('The list of yards could not be read', async (from) => {
        const found = (await keys(from)).filter((key) => typeof key === 'string');
        const sound = (
          await getMany<unknown>(
            found.filter((key) => key.startsWith(HEAD)),
            from,
          )
        ).filter(isHead);
        const lost = new Set(found.map(idOfState).filter((id) => id !== null));
        for (const head of sound) lost.delete(head.id);
        const mended = await Promise.all(
          [...lost].map((id) => from('readonly', (objects) => headFromStates(id, objects))),
        );
        return [...sound, ...mended.filter((head) => head !== undefined)]
          .map(({ id, name: yardName, savedAt, zoneCount }) => ({ id, name: yardName, savedAt, zoneCount }))
          .sort((a, b) => b.savedAt - a.savedAt);
      }),

    open: (id) =>
      withStore('The yard could not be read', async (from) => {
        const head =
          (await headOf(id, from)) ?? (await from('readonly', (objects) => headFromStates(id, objects)));
        if (head === undefined) return NOT_STORED;
        const wanted = [head, ...head.earlier].map((ref) => stateKey(id, ref.revision));
        const [newest, ...earlier] = await getMany<State | undefined>(wanted, from);
        known.set(id, head.revision);
        return openStates(newest, earlier);
      }),

    async save(yard, savedAt) {
      const file = yardToGeoJson(yard);
      const revision = await withStore('The yard could not be saved', (into) =>
        writeState(into, yard, file, savedAt, known.get(yard.id)),
      );
      known.set(yard.id, revision);
      tell(yard.id);
      if (!askedToKeep) {
        askedToKeep = true;
        askToKeep();
      }
    },

    async remove(id) {
      await withStore('The yard could not be removed', async (from) => {
        const own = (await keys(from)).filter((key) => key === headKey(id) || isStateOf(id, key));
        const last = await get(LAST_OPEN, from);
        await delMany(last === id ? [...own, LAST_OPEN] : own, from);
      });
      known.delete(id);
      tell(id);
      // late: most yards have no picture of their own
      const pictures = (await import('./pictureStorage')).createPictureStorage(name);
      if ((await pictures.list(id)).length === 0) return;
      const users = await withStore('The yard’s pictures could not be removed', pictureUsers);
      await pictures.removeOfYard(id, users);
    },

    lastOpenId: () =>
      withStore('The last open yard could not be read', async (from) => {
        const id = await get<unknown>(LAST_OPEN, from);
        return typeof id === 'string' ? id : null;
      }),

    setLastOpenId: (id) => withStore('The open yard could not be noted', (into) => set(LAST_OPEN, id, into)),

    watch(id, changed) {
      if (typeof BroadcastChannel === 'undefined') return () => undefined;
      const channel = new BroadcastChannel(channelName);
      (channel as { unref?: () => void }).unref?.();
      channel.onmessage = (event: MessageEvent<Notice>) => {
        if (event.data.id === id && event.data.tab !== tab) changed();
      };
      return () => channel.close();
    },
  };
}

/**
 * Writes one state in one transaction. A head that is lost or damaged is made again there from the states
 * that are stored, so that the check against other tabs holds and no earlier state is forgotten.
 * @param known revision this tab last opened or saved; undefined when it never did
 * @returns the new state's revision
 * @throws StorageError (conflict) as headAfterSave; DOMException when the database fails
 */
function writeState(
  into: UseStore,
  yard: Yard,
  file: unknown,
  savedAt: number,
  known: number | undefined,
): Promise<number> {
  return into('readwrite', async (objects) => {
    const before = await promisifyRequest<unknown>(objects.get(headKey(yard.id)));
    const stored = isHead(before) ? before : await headFromStates(yard.id, objects);
    // A damaged head without any state: there is nothing to run into, and this save mends it.
    const isGone = stored === undefined && before !== undefined;
    const { head, drop } = headAfterSave(stored, isGone ? undefined : known, yard, savedAt);
    try {
      objects.put({ savedAt, file } satisfies State, stateKey(yard.id, head.revision));
      for (const revision of drop) objects.delete(stateKey(yard.id, revision));
      objects.put(head, headKey(yard.id));
    } catch (error) {
      objects.transaction.abort();
      throw error;
    }
    await promisifyRequest(objects.transaction);
    return head.revision;
  });
}

/** Finds a stored yard that a picture still serves: a copy names the pictures of the yard it was made of. */
async function pictureUsers(from: UseStore): Promise<(pictureId: string) => string | null> {
  const found = (await keys(from)).filter((key) => typeof key === 'string' && idOfState(key) !== null);
  const states = (await getMany<unknown>(found, from)).map((state) => JSON.stringify(state));
  return (pictureId) => {
    const at = states.findIndex((text) => text.includes(JSON.stringify(pictureId)));
    return at < 0 ? null : idOfState(String(found[at]));
  };
}

function idOfState(key: string): string | null {
  return /^state:(.*):\d+$/s.exec(key)?.[1] ?? null;
}

function isStateOf(id: string, key: IDBValidKey): key is string {
  return typeof key === 'string' && idOfState(key) === id;
}

/** Makes a head again from the states that are there, for a head that is lost or damaged. */
async function headFromStates(id: string, objects: IDBObjectStore): Promise<Head | undefined> {
  const range = IDBKeyRange.bound(stateKeyStart(id), `${stateKeyStart(id)}\uffff`);
  const [found, states] = await Promise.all([
    promisifyRequest(objects.getAllKeys(range)),
    promisifyRequest<unknown[]>(objects.getAll(range)),
  ]);
  const refs = found.flatMap((key, i) =>
    isStateOf(id, key)
      ? [{ revision: Number(key.slice(stateKeyStart(id).length)), savedAt: savedAtOf(states[i]) }]
      : [],
  );
  const [newest, ...earlier] = refs.sort((a, b) => b.revision - a.revision);
  if (newest === undefined) return undefined;
  return { format: 1, id, name: `Damaged entry ${id}`, zoneCount: 0, ...newest, earlier };
}

/** When a state was saved, ms since the epoch; 0 where it does not say so. */
function savedAtOf(state: unknown): number {
  const savedAt = (state as Partial<State> | null | undefined)?.savedAt;
  return typeof savedAt === 'number' && Number.isFinite(savedAt) ? savedAt : 0;
}

/** Asks the browser once not to clear this data when space runs short. A refusal changes nothing. */
function askToKeep(): void {
  if (typeof navigator === 'undefined' || navigator.storage?.persist === undefined) return;
  navigator.storage.persist().catch(() => undefined);
}
