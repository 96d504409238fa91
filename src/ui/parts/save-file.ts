/** How long the browser may take to begin a download, ms. */
const KEEP_MS = 10_000;

/** Hands a file to the browser's download. */
export function saveFile(name: string, mediaType: string, content: string | Uint8Array): void {
  const part = typeof content === 'string' ? content : content.slice();
  const url = URL.createObjectURL(new Blob([part as BlobPart], { type: mediaType }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), KEEP_MS);
}
