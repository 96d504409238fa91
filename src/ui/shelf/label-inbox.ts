/*
 * A file of labels that was dropped on the page or opened elsewhere, until the shelf takes it.
 */
let waiting: File | null = null;
const listeners = new Set<() => void>();

/** How a file of labels begins: our own, or a table with the headings saved here. */
const LABELS =
  /^\uFEFF?\s*(\{\s*"measured-yard-labels"|("?No\."?[,;\t])?"?Product"?[,;\t]"?Form"?[,;\t\r\n])/;

/** Whether a file is one of labels, by its first bytes. */
export function isLabelFile(head: Uint8Array): boolean {
  return LABELS.test(new TextDecoder('utf-8', { ignoreBOM: true }).decode(head.subarray(0, 200)));
}

/** Lays a file down for the shelf. */
export function offerLabelFile(file: File): void {
  waiting = file;
  for (const listener of [...listeners]) listener();
}

/** The file that waits, which then waits no more. */
export function takeLabelFile(): File | null {
  const file = waiting;
  waiting = null;
  return file;
}

/** @returns a function that ends the listening. */
export function onLabelFile(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
