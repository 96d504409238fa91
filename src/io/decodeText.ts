/** How the bytes of a text are to be read. */
export type TextCoding = 'utf-8' | 'utf-16le' | 'utf-16be';

/**
 * The coding of a text by its first bytes: by its byte-order mark, else by the place of the zero bytes
 * that every ASCII letter has in UTF-16 (RFC 2781 section 4.3 for the mark; RFC 4627 section 3 for the zeros).
 * @param head the first bytes, 4 or more where there are so many
 */
export function codingOf(head: Uint8Array): TextCoding {
  const [a, b, c, d] = head;
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  if (a !== 0 && b === 0 && c !== 0 && d === 0) return 'utf-16le';
  if (a === 0 && b !== 0 && c === 0 && d !== 0) return 'utf-16be';
  return 'utf-8';
}

/** Bytes as text, by their own coding; the byte-order mark is left out. */
export function decodeText(bytes: Uint8Array): string {
  return new TextDecoder(codingOf(bytes)).decode(bytes);
}

/** Reads a file as text, piece by piece. @param onText gets each piece and the bytes read so far */
export async function streamText(
  blob: Blob,
  onText: (text: string, bytesRead: number) => void | Promise<void>,
): Promise<void> {
  const head = new Uint8Array(await blob.slice(0, 4).arrayBuffer());
  const decoder = new TextDecoder(codingOf(head));
  const reader = blob.stream().getReader();
  let read = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    read += value.byteLength;
    await onText(decoder.decode(value, { stream: true }), read);
  }
  const rest = decoder.decode();
  if (rest !== '') await onText(rest, read);
}
