import { createStore, type UseStore } from 'idb-keyval';
import { StorageError } from './storageError';
import { storageMessage } from './storageMessage';

/** Runs work on a database. @param doing what is tried, as the beginning of a sentence */
export type WithStore = <T>(doing: string, work: (store: UseStore) => Promise<T>) => Promise<T>;

/**
 * A database of the browser, opened at the first call and, after a failure, anew at the next. What fails
 * rejects with a StorageError whose message is for the person.
 * @param advice a sentence that says what to do about a failure
 */
export function openStore(database: string, storeName: string, advice: string): WithStore {
  let store: UseStore | null = null;
  return async (doing, work) => {
    store ??= createStore(database, storeName);
    try {
      return await work(store);
    } catch (error) {
      if (error instanceof StorageError) throw error;
      store = null;
      throw new StorageError(storageMessage(doing, error, advice), false, { cause: error });
    }
  };
}
