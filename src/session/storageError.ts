/** A failure of storage. `message` is a sentence for the person. */
export class StorageError extends Error {
  /** @param conflict another tab stored the same yard in the meantime. */
  constructor(
    message: string,
    readonly conflict: boolean,
    options?: ErrorOptions,
  ) {
    super(message, options);
    this.name = 'StorageError';
  }
}

/** The one sentence for a conflict between two tabs. */
export const CONFLICT_MESSAGE =
  'Another tab changed this yard. Nothing more is saved here until you load its state or keep yours as a copy.';
