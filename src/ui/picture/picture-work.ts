import type { Trial } from '../../map/types';
import {
  cornersOfPicture,
  isOnPicture,
  type OwnPicture,
  pixelOfPlace,
  placeOfPixel,
} from '../../survey/picture/ownPicture';
import { pointMisses } from '../../survey/picture/refitPicture';
import type { PictureMeta, Pixel } from '../../survey/picture/types';
import { changePicture } from '../../yard/edits';
import type { Issue, PictureFit, Position } from '../../yard/types';
import type { AppController } from '../app-controller';
import { carryTracedZones, changeFit, ownPictures } from './picture-edits';
import { PictureTrail } from './picture-trail';

/** By what a picture is set. */
export const PICTURE_WAYS = ['points', 'lengths', 'hand'] as const;
export type PictureWay = (typeof PICTURE_WAYS)[number];

/** While its ground is pointed at on the map, a picture is shown no stronger than this. */
const DIM = 0.35;

/** How far corners may go, as a share of the diagonal, before the view goes after the picture. */
const LEAP_SHARE = 0.75;
const MOVE_SHARE = 0.05;

const works = new WeakMap<AppController, PictureWork>();

/** One for each controller: what is under way outlives the form, which gives way to the map while places are picked. */
export function pictureWorkOf(app: AppController): PictureWork {
  const kept = works.get(app);
  if (kept) return kept;
  const made = new PictureWork(app);
  works.set(app, made);
  return made;
}

/** What is under way with the pictures of the open yard and not in the document. */
export class PictureWork {
  way: PictureWay = 'points';
  /** a point marked in the picture whose place on the ground is still to come. */
  pendingPoint: Pixel | null = null;
  /** a line marked in the picture whose length is still to come. */
  pendingLength: { readonly from: Pixel; readonly to: Pixel } | null = null;
  /** the first of two places being marked. */
  pendingEnd: Pixel | null = null;
  /** why the last pick or entry came to nothing. */
  fault = '';
  /** how pictures lay when zones were traced over them. */
  readonly trail = new PictureTrail();
  private chosenId: string | null = null;
  private yardId = '';
  private readonly metas = new Map<string, PictureMeta | null>();
  private readonly asked = new Set<string>();
  private trialShown: { readonly key: string; readonly trial: Trial | null } = { key: '', trial: null };

  constructor(readonly app: AppController) {}

  /** The picture being set: the one shown, else the one chosen last. */
  get picture(): OwnPicture | null {
    this.begin();
    const { baseLayer } = this.app.yard.settings;
    if (baseLayer.kind === 'own-picture') return baseLayer;
    return ownPictures(this.app.yard).find((each) => each.id === this.chosenId) ?? null;
  }

  /** Another yard begins anew. */
  private begin(): void {
    if (this.yardId === this.app.yard.id) return;
    this.yardId = this.app.yard.id;
    this.chosenId = null;
    this.forget();
  }

  /** Drops what is half done. */
  forget(): void {
    this.pendingPoint = null;
    this.pendingLength = null;
    this.pendingEnd = null;
    this.fault = '';
  }

  setWay(way: PictureWay): void {
    this.way = way;
    this.forget();
    this.app.notify();
  }

  /** What is stored of a picture: undefined while it is looked up, null when it is not in this browser. */
  metaOf(pictureId: string): PictureMeta | null | undefined {
    if (!this.asked.has(pictureId)) {
      this.asked.add(pictureId);
      void this.app.services
        .pictures()
        .then((store) => store.readMeta(pictureId))
        .catch(() => null)
        .then((meta) => {
          this.metas.set(pictureId, meta);
          this.app.notify();
        });
    }
    return this.metas.get(pictureId);
  }

  /** A picture was read just now. */
  noteMeta(meta: PictureMeta): void {
    this.asked.add(meta.pictureId);
    this.metas.set(meta.pictureId, meta);
  }

  /** One undoable change of the picture being set; the view goes after it only when it leaps away. */
  edit(label: string, change: (picture: OwnPicture) => OwnPicture, mergeKey?: string): void {
    this.change(label, change, mergeKey, LEAP_SHARE);
  }

  /** The same for what was measured, by which the picture is laid anew; the view goes after it when it moves much. */
  editFit(label: string, change: (fit: PictureFit) => PictureFit, mergeKey?: string): void {
    this.change(label, (picture) => changeFit(picture, change), mergeKey, MOVE_SHARE);
  }

  private change(
    label: string,
    change: (picture: OwnPicture) => OwnPicture,
    mergeKey: string | undefined,
    share: number,
  ): void {
    const { picture, app } = this;
    if (!picture) return;
    this.trail.observe(app.yard, picture);
    app.dispatch(
      label,
      (yard) => {
        const next = changePicture(yard, picture.id, change);
        // a drawing without a place has no other ground than its picture
        return yard.settings.isLocal ? carryTracedZones(yard, next, picture.id) : next;
      },
      mergeKey,
    );
    this.fault = '';
    const now = this.picture;
    this.trail.observe(app.yard, now);
    if (!now || !(shareMoved(picture, now) > share)) return;
    if (isOnlyShifted(picture, now)) this.goAlong(picture, now);
    else app.map?.showPlaces(cornersOfPicture(now));
  }

  /** The view goes with the picture, which stays where it is on the screen. */
  private goAlong(before: OwnPicture, now: OwnPicture): void {
    const { map } = this.app;
    const middle = map && pixelOfPlace(before, map.center());
    if (middle) map.goTo(placeOfPixel(now, middle));
  }

  /** Lets the person point at a place of the picture. @returns null when given up or beside it */
  async pickPixel(words: string): Promise<Pixel | null> {
    const { picture, app } = this;
    if (!picture) return null;
    this.fault = '';
    const place = await app.pick(words);
    const pixel = place && pixelOfPlace(picture, place);
    if (!pixel) return null;
    if (isOnPicture(picture, pixel)) return pixel;
    this.fault = 'That place is not on the picture. Point at it in the picture itself.';
    app.notify();
    return null;
  }

  /** Lets the person point at two places of the picture; the first is shown meanwhile. */
  async pickTwo(first: string, second: string): Promise<{ readonly from: Pixel; readonly to: Pixel } | null> {
    const from = await this.pickPixel(first);
    if (!from) return null;
    this.pendingEnd = from;
    this.showTrial();
    const to = await this.pickPixel(second);
    this.pendingEnd = null;
    this.showTrial();
    if (!to) return null;
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) >= 1) return { from, to };
    this.fail('Both places are the same.');
    return null;
  }

  /** Lets the person point at a place of the ground; what lies under the picture shows through meanwhile. */
  async pickGround(words: string): Promise<Position | null> {
    const { picture, app } = this;
    if (!picture) return null;
    this.fault = '';
    if (picture.opacity > DIM)
      app.session.preview(changePicture(app.yard, picture.id, (each) => ({ ...each, opacity: DIM })));
    try {
      return await app.pick(words);
    } finally {
      app.session.preview(null);
    }
  }

  /** Tells a fault of an entry or pick. */
  fail(message: string): void {
    this.fault = message;
    this.app.notify();
  }

  tell(issue: Issue): void {
    this.app.tell(issue);
  }

  /** Shows points, lengths and what is half done over the map. Called at each rendering; quiet when nothing changed. */
  showTrial(): void {
    const { picture, app } = this;
    const trial = picture && this.trialOf(picture);
    const key = JSON.stringify(trial);
    if (key === this.trialShown.key && app.trial === this.trialShown.trial) return;
    this.trialShown = { key, trial };
    app.setTrial(trial);
  }

  private trialOf(picture: OwnPicture): Trial | null {
    const at = (pixel: Pixel) => placeOfPixel(picture, pixel);
    const fit = picture.fit ?? { points: [], distances: [] };
    const largest = largestMiss(picture);
    const points: Trial['points'][number][] = [];
    const lines: Trial['lines'][number][] = [];
    for (const [i, { pixel, ground, isOut }] of fit.points.entries()) {
      const style = isOut ? 'faint' : i === largest ? 'warn' : 'main';
      points.push({ at: ground, label: String(i + 1), style });
      lines.push({ points: [at(pixel), ground], isClosed: false, style });
    }
    for (const { from, to, isOut } of fit.distances)
      lines.push({ points: [at(from), at(to)], isClosed: false, style: isOut ? 'faint' : 'main' });
    if (this.pendingPoint)
      points.push({ at: at(this.pendingPoint), label: `${fit.points.length + 1} ?`, style: 'main' });
    if (this.pendingEnd) points.push({ at: at(this.pendingEnd), label: '', style: 'main' });
    if (this.pendingLength) {
      const ends = [at(this.pendingLength.from), at(this.pendingLength.to)];
      lines.push({ points: ends, isClosed: false, style: 'main' });
      for (const end of ends) points.push({ at: end, label: '', style: 'main' });
    }
    return points.length + lines.length > 0 ? { points, lines, circles: [] } : null;
  }
}

/** The same size and direction at another place. */
function isOnlyShifted({ toGround: [a, b, , d, e] }: OwnPicture, { toGround: now }: OwnPicture): boolean {
  return a === now[0] && b === now[1] && d === now[3] && e === now[4];
}

/** How far the corner that goes farthest went, as a share of the diagonal before. */
function shareMoved(before: OwnPicture, now: OwnPicture): number {
  const was = cornersOfPicture(before).map((corner) => pixelOfPlace(before, corner));
  const moved = cornersOfPicture(now).map((corner, i) => {
    const [to, from] = [pixelOfPlace(before, corner), was[i]];
    return to && from ? Math.hypot(to[0] - from[0], to[1] - from[1]) : Number.POSITIVE_INFINITY;
  });
  return Math.max(...moved) / Math.hypot(before.widthPx, before.heightPx);
}

/** How many points can tell which of them is wrong: two more than set the picture; without one of them another is spare. */
export function tellingPoints(picture: OwnPicture): number {
  return picture.fit?.kind === 'affine' ? 5 : 4;
}

/** The point of those that count with the largest miss; -1 when there are too few to tell which is wrong. */
export function largestMiss(picture: OwnPicture): number {
  const points = picture.fit?.points ?? [];
  const used = points.filter((point) => !point.isOut).length;
  if (used < tellingPoints(picture)) return -1;
  const misses = pointMisses(picture).map((miss, i) => (points[i]?.isOut ? -1 : miss));
  const most = Math.max(...misses);
  return most > 0.001 ? misses.indexOf(most) : -1;
}
