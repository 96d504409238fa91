import type { AppController } from '../app-controller';

/** The veil goes when no drag was heard of for so long, ms. */
const QUIET_MS = 250;
/** What a pasted text must begin with to be taken for a file. */
const FILE_TEXT = /^\s*(\{[\s\S]*"(type|features|coordinates)"|<\?xml|<(kml|gpx)\b)/i;

/**
 * Files dropped anywhere on the page, and files or GeoJSON text pasted outside of a field, are opened for
 * import. What opens them is fetched with the first. @returns a function that ends it
 */
export function watchDrops(app: AppController): () => void {
  let hide = 0;
  let isVeiled = false;
  const veil = (isOn: boolean) => {
    clearTimeout(hide);
    if (isOn) hide = window.setTimeout(() => veil(false), QUIET_MS);
    if (isOn === isVeiled) return;
    isVeiled = isOn;
    void import('./drop-veil').then(({ setVeil }) => setVeil(isVeiled)).catch(() => undefined);
  };
  const open = async (files: readonly File[], text = '') => {
    try {
      const importing = await import('./import-open');
      if (files.length > 0) await importing.openImport(app, files);
      else await importing.openImportText(app, text);
    } catch {
      const message = 'What opens files could not be loaded. Check the connection and try again.';
      app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
    }
  };
  const onDrag = (event: DragEvent) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = 'copy';
    veil(true);
  };
  const onDrop = (event: DragEvent) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    veil(false);
    void open([...event.dataTransfer.files]);
  };
  const onPaste = (event: ClipboardEvent) => {
    const [target] = event.composedPath();
    if (target instanceof HTMLElement && target.matches('input, textarea, select, [contenteditable]')) return;
    const files = [...(event.clipboardData?.files ?? [])];
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (files.length === 0 && !FILE_TEXT.test(text)) return;
    event.preventDefault();
    void open(files, text);
  };
  window.addEventListener('dragover', onDrag);
  window.addEventListener('drop', onDrop);
  window.addEventListener('paste', onPaste);
  return () => {
    window.removeEventListener('dragover', onDrag);
    window.removeEventListener('drop', onDrop);
    window.removeEventListener('paste', onPaste);
  };
}
