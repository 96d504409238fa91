/**
 * What to say of a failed database.
 * @param doing what was tried, as the beginning of a sentence
 * @param advice a sentence that says what to do about it
 */
export function storageMessage(doing: string, error: unknown, advice: string): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  const reason =
    name === 'QuotaExceededError'
      ? 'the browser’s space for this page is full'
      : name === 'SecurityError' || name === 'InvalidStateError' || name === 'ReferenceError'
        ? 'this browser does not let the page store anything here (a private window, perhaps)'
        : `the browser’s storage failed${name === '' ? '' : ` (${name})`}`;
  return `${doing}: ${reason}. ${advice}`;
}
