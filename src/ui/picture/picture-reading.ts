import { cornersOfPicture, type OwnPicture } from '../../survey/picture/ownPicture';
import type { PictureMeta } from '../../survey/picture/types';
import { changePicture } from '../../yard/edits';
import type { Issue } from '../../yard/types';
import type { AppController } from '../app-controller';
import { noteYardWithPictures } from './picture-cleaning';
import { addPicture, layByPosition, layFlat } from './picture-edits';
import { pictureWorkOf } from './picture-work';

/** A picture laid flat is taken to be about this wide, m: what the view shows, within these bounds. */
const GUESS_M = { least: 20, most: 300 } as const;
const SHARE_OF_VIEW = 0.6;

/** How far the reading of a file has come. */
export interface ReadingState {
  readonly name: string;
  /** 0 to 1. */
  readonly share: number;
  cancel(): void;
}

const readings = new WeakMap<AppController, PictureReading>();

/** One for each controller; a reading goes on while the form is closed. */
export function pictureReadingOf(app: AppController): PictureReading {
  const kept = readings.get(app);
  if (kept) return kept;
  const made = new PictureReading(app);
  readings.set(app, made);
  return made;
}

/** Reads files into the store of pictures and lays them under the drawing. */
export class PictureReading {
  state: ReadingState | null = null;
  issues: readonly Issue[] = [];

  constructor(private readonly app: AppController) {}

  /**
   * Reads a picture with its side files. Told in `issues` when it cannot be read.
   * @param lost a picture of the yard whose file is no longer in this browser: the new file takes its place
   */
  async read(files: readonly File[], lost: OwnPicture | null = null): Promise<void> {
    const { app } = this;
    if (this.state || files.length === 0) return;
    const yardId = app.yard.id;
    const control = new AbortController();
    const pictureId = app.newId('picture');
    const name = files.length === 1 ? (files[0]?.name ?? '') : `${files.length} files`;
    const show = (share: number) => {
      this.state = { name, share, cancel: () => control.abort() };
      app.notify();
    };
    this.issues = [];
    show(0);
    try {
      const [{ openPicture }, store] = await Promise.all([
        import('../../picture/openPicture'),
        app.services.pictures(),
      ]);
      const ids = { pictureId, yardId };
      const result = await openPicture(files, ids, store, ({ share }) => show(share), control.signal);
      if (!result.ok) this.issues = [result.issue];
      else if (app.yard.id !== yardId) {
        await store.remove(pictureId);
        this.fail('picture-left', 'Another yard was opened while the picture was read, so it was not kept.');
      } else if (lost && !isSameSize(lost, result.meta)) {
        await store.remove(pictureId);
        this.fail(
          'picture-other',
          `This picture is ${sizeWords(result.meta)}; “${lost.name}” was ${sizeWords(lost)}. Choose the file it was made from, or open this one as a picture of its own.`,
        );
      } else this.take(result.meta, lost);
    } catch {
      this.fail(
        'picture-not-opened',
        'What reads pictures could not be loaded. Check the connection and try again.',
      );
    }
    this.state = null;
    app.notify();
  }

  private fail(code: string, message: string): void {
    this.issues = [{ code, severity: 'error', message, place: {} }];
  }

  private take(meta: PictureMeta, lost: OwnPicture | null): void {
    const { app } = this;
    const work = pictureWorkOf(app);
    work.noteMeta(meta);
    noteYardWithPictures(localStorage, app.yard.id);
    this.issues = meta.issues;
    if (lost) {
      app.dispatch('Put picture back', (yard) =>
        changePicture(yard, lost.id, (each) => ({ ...each, pictureId: meta.pictureId })),
      );
      return;
    }
    work.forget();
    const picture = this.lay(meta);
    app.dispatch('Add picture', (yard) => addPicture(yard, picture));
    app.map?.showPlaces(cornersOfPicture(picture));
  }

  /** By its own position where it has one; else flat in the middle of the view, or where the camera stood. */
  private lay(meta: PictureMeta): OwnPicture {
    const { app } = this;
    const { isLocal } = app.yard.settings;
    const middle = app.map?.center() ?? app.session.derived.measured.plane.origin;
    const screenPx = SHARE_OF_VIEW * Math.min(innerWidth, innerHeight);
    const sideM = Math.max(
      GUESS_M.least,
      Math.min(GUESS_M.most, (app.map?.metresPerPixel() ?? 0.1) * screenPx),
    );
    const widthM = sideM * Math.min(1, meta.widthPx / meta.heightPx);
    const start = isLocal ? middle : (meta.cameraPosition ?? middle);
    const flat = layFlat(meta, app.newId('layer'), start, widthM);
    if (!meta.position) return flat;
    // in a drawing without a place its scale and direction count, its place does not
    return layByPosition(flat, isLocal ? { ...meta.position, origin: middle } : meta.position);
  }
}

function isSameSize(a: OwnPicture, b: PictureMeta): boolean {
  return a.widthPx === b.widthPx && a.heightPx === b.heightPx;
}

/** "4,000 by 3,000 pixels". */
export function sizeWords({
  widthPx,
  heightPx,
}: {
  readonly widthPx: number;
  readonly heightPx: number;
}): string {
  return `${widthPx.toLocaleString('en-US')} by ${heightPx.toLocaleString('en-US')} pixels`;
}
