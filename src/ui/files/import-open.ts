import type { NamedFile } from '../../io/importTypes';
import { SNIFF_BYTES, sniffFile } from '../../io/sniffFile';
import type { AppController } from '../app-controller';
import { isLabelFile, offerLabelFile } from '../shelf/label-inbox';
import { type ImportPlace, ImportPreview } from './import-preview';

/** Files that say where a picture of the same name lies. */
const WORLD_FILE = /\.([tjpbg]g?fw|[tjpbg][a-z]w|wld|aux\.xml)$/i;
const WORLD_FILES_PRJ = /\.prj$/i;

/**
 * Shows what is in files before anything of it comes in. Pictures and their world files go to whoever
 * listens for the window's event `picture-files` (detail: `{ files }`), a file of labels to the shelf.
 * @param place where it is offered to put the zones at first
 */
export async function openImport(
  app: AppController,
  files: readonly File[],
  place: ImportPlace = 'into',
): Promise<void> {
  if (files.length === 0 || !app.isOpen) return;
  const heads = await Promise.all(
    files.map(async (file) => new Uint8Array(await file.slice(0, SNIFF_BYTES).arrayBuffer())),
  );
  const labels = files.find((_, i) => isLabelFile(heads[i] ?? new Uint8Array()));
  if (labels) {
    // what labels are goes to the shelf, which shows it before anything comes in
    offerLabelFile(labels);
    app.setView({ step: 'shelf', productId: null });
    return;
  }
  const isPicture = files.map((file, i) => sniffFile(file.name, heads[i] ?? new Uint8Array()) === 'picture');
  const hasPicture = isPicture.includes(true);
  const hasShape = files.some((file) => /\.shp$/i.test(file.name));
  const goesAlong = (file: File) =>
    WORLD_FILE.test(file.name) || (!hasShape && WORLD_FILES_PRJ.test(file.name));
  const pictures = files.filter((file, i) => isPicture[i] || (hasPicture && goesAlong(file)));
  const others = files.filter((file) => !pictures.includes(file));
  if (pictures.length > 0) {
    window.dispatchEvent(new CustomEvent('picture-files', { detail: { files: pictures } }));
  }
  if (others.length > 0)
    showPreview(
      app,
      others.map((file) => ({ name: file.name, blob: file })),
      place,
    );
}

/** Text pasted or typed, as if it were a file. */
export async function openImportText(
  app: AppController,
  text: string,
  place: ImportPlace = 'into',
): Promise<void> {
  const isXml = text.trimStart().startsWith('<');
  const isJson = /^[\s\p{Cc}]*[{[]/u.test(text);
  const name = isXml ? 'pasted text.kml' : isJson ? 'pasted text.geojson' : 'pasted text.csv';
  await openImport(app, [new File([text], name)], place);
}

function showPreview(app: AppController, files: readonly NamedFile[], place: ImportPlace): void {
  document.querySelector('import-preview')?.remove();
  const preview = new ImportPreview();
  preview.app = app;
  preview.files = files;
  preview.place = place;
  document.body.append(preview);
}
