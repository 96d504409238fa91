import L from 'leaflet';
import { cornersOfPicture, type OwnPicture } from '../survey/picture/ownPicture';
import type { PictureLevel, PictureMeta } from '../survey/picture/types';
import type { Issue } from '../yard/types';
import { escapeHtml, toLatLng, toPosition } from './coords';
import { bared, type Drawn, movedBy, paintTile, type Strip, touches } from './pictureSurface';
import { type LaidTile, layTile, levelFor, type PictureView, scaleOfView, tilesSeen } from './pictureView';
import { TileCache, type TileKey } from './tileCache';

/** Where the tiles of pictures are read. */
export interface PictureSource {
  readMeta(pictureId: string): Promise<PictureMeta | null>;
  readTile(pictureId: string, level: number, col: number, row: number): Promise<Blob | null>;
}

/** The surface reaches beyond the map by this share of it on each side, so that panning has room. */
const ROOM = 0.25;
/** Most pixels of the surface; browsers of phones hold no more in one canvas. */
const MOST_PX = 12_000_000;
/** From this many px of the screen to a pixel of the picture, pixels are shown as squares. */
const SQUARES_FROM = 6;

/** The map works out where a place will be after a zoom; used by its own layers, not in its types. */
interface ZoomingMap {
  _latLngToNewLayerPoint(latLng: L.LatLng, zoom: number, center: L.LatLng): L.Point;
}

/**
 * A picture under any affine, drawn from its tiles on one canvas that is larger than the map: it moves with
 * the panes while panned, is stretched with them while zoomed, and is drawn anew at rest.
 */
export class PictureLayer {
  private readonly canvas = document.createElement('canvas');
  private readonly pen = this.canvas.getContext('2d');
  private readonly tiles: TileCache;
  private levels: readonly PictureLevel[] = [];
  private drawn: Drawn | null = null;
  private frame = 0;
  /** tiles were put over coarser ones; all is drawn anew at rest. */
  private isPatched = false;
  private isMissing = false;
  private isToldLost = false;
  private isRemoved = false;
  private readonly attribution: string;
  private readonly handlers: L.LeafletEventHandlerFnMap;

  constructor(
    private readonly map: L.Map,
    private readonly source: () => Promise<PictureSource>,
    private picture: OwnPicture,
    private readonly tell: (issue: Issue) => void,
  ) {
    const { pictureId } = picture;
    this.tiles = new TileCache(
      async ({ level, col, row }) => (await this.source()).readTile(pictureId, level, col, row),
      (key) => this.patch(key),
      () => this.tellLost(),
    );
    this.canvas.className = 'yard-own-picture leaflet-zoom-animated';
    this.canvas.setAttribute('aria-hidden', 'true');
    map.getPane('yard-base')?.append(this.canvas);
    this.attribution = escapeHtml(picture.attribution);
    map.attributionControl?.addAttribution(this.attribution);
    this.handlers = {
      move: () => this.follow(),
      moveend: () => this.draw(),
      zoom: () => this.stretch(map.getCenter(), map.getZoom()),
      zoomanim: (event) => this.stretch((event as L.ZoomAnimEvent).center, (event as L.ZoomAnimEvent).zoom),
    };
    map.on(this.handlers);
    void this.begin();
  }

  /** Shows the same picture laid otherwise. */
  update(picture: OwnPicture): void {
    const isMoved = picture.toGround !== this.picture.toGround || picture.origin !== this.picture.origin;
    this.picture = picture;
    this.canvas.style.opacity = String(picture.opacity);
    if (isMoved) this.redraw();
  }

  /** Moves the picture by px of the screen for the time of a drag; null: back to its place. */
  shift(by: L.Point | null): void {
    this.canvas.style.marginLeft = by ? `${by.x}px` : '';
    this.canvas.style.marginTop = by ? `${by.y}px` : '';
  }

  remove(): void {
    this.isRemoved = true;
    cancelAnimationFrame(this.frame);
    this.map.off(this.handlers);
    this.map.attributionControl?.removeAttribution(this.attribution);
    this.canvas.remove();
    this.tiles.close();
  }

  private async begin(): Promise<void> {
    const { name, pictureId } = this.picture;
    this.canvas.style.opacity = String(this.picture.opacity);
    let meta: PictureMeta | null = null;
    try {
      meta = await (await this.source()).readMeta(pictureId);
    } catch {
      meta = null;
    }
    if (this.isRemoved) return;
    this.levels = meta?.levels ?? [];
    this.isMissing = this.levels.length === 0;
    if (this.isMissing) {
      const message = `The picture “${name}” is not in this browser; its outline is shown. Choose its file again under “A picture of your own”: it goes back to its place.`;
      this.tell({ code: 'picture-missing', severity: 'warning', message, place: {} });
    }
    this.redraw();
  }

  private tellLost(): void {
    if (this.isToldLost || this.isRemoved) return;
    this.isToldLost = true;
    const message = `Part of the picture “${this.picture.name}” could not be read from this browser’s storage. Choose its file again under “A picture of your own”.`;
    this.tell({ code: 'picture-damaged', severity: 'warning', message, place: {} });
  }

  /** Draws all anew at the next frame. */
  private redraw(): void {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      this.drawn = null;
      this.draw();
    });
  }

  /** Stretches what is drawn to another view while the map zooms. */
  private stretch(center: L.LatLng, zoom: number): void {
    if (!this.drawn) return;
    const at = (this.map as unknown as ZoomingMap)._latLngToNewLayerPoint(this.drawn.corner, zoom, center);
    L.DomUtil.setTransform(this.canvas, at, this.map.getZoomScale(zoom, this.drawn.zoom));
  }

  /** While panned: draws anew where the map comes to the edge of the surface. */
  private follow(): void {
    const { drawn, map } = this;
    if (!drawn || drawn.zoom !== map.getZoom()) return;
    const seen = L.bounds(
      map.containerPointToLayerPoint([0, 0]),
      map.containerPointToLayerPoint(map.getSize()),
    );
    const has = L.bounds(drawn.min, drawn.min.add(drawn.size));
    if (!drawn.origin.equals(map.getPixelOrigin()) || !has.contains(seen)) this.draw();
  }

  private view(drawn: Drawn): PictureView {
    const { map } = this;
    const from = drawn.origin.add(drawn.min);
    return {
      picture: this.picture,
      levels: this.levels,
      width: drawn.size.x,
      height: drawn.size.y,
      ratio: drawn.ratio,
      toSpot: (place) => {
        const { x, y } = map.project(toLatLng(place), drawn.zoom);
        return [x - from.x, y - from.y];
      },
      toPlace: ([x, y]) => toPosition(map.unproject(L.point(from.x + x, from.y + y), drawn.zoom)),
    };
  }

  /** Lays the surface about the middle of the view and draws what it does not hold already. */
  private draw(): void {
    const { map, pen, canvas } = this;
    const shown = map.getSize();
    if (!pen || shown.x === 0 || shown.y === 0 || this.isRemoved) return;
    const room = shown.multiplyBy(ROOM).round();
    const size = shown.add(room.multiplyBy(2));
    const ratio = Math.min(window.devicePixelRatio || 1, Math.sqrt(MOST_PX / (size.x * size.y)));
    const min = map.containerPointToLayerPoint(room.multiplyBy(-1));
    const next: Drawn = {
      zoom: map.getZoom(),
      origin: map.getPixelOrigin(),
      min,
      size,
      ratio,
      corner: map.layerPointToLatLng(min),
    };
    const before = this.drawn;
    this.drawn = next;
    L.DomUtil.setTransform(canvas, min, 1);
    const by = before && !this.isPatched ? movedBy(before, next) : null;
    if (by) {
      pen.setTransform(1, 0, 0, 1, 0, 0);
      pen.globalCompositeOperation = 'copy';
      pen.drawImage(canvas, -by.x * ratio, -by.y * ratio);
      pen.globalCompositeOperation = 'source-over';
      for (const strip of bared(by, size)) this.paint(next, strip);
    } else {
      this.isPatched = false;
      const [width, height] = [Math.round(size.x * ratio), Math.round(size.y * ratio)];
      if (canvas.width !== width || canvas.height !== height) {
        canvas.width = width;
        canvas.height = height;
        canvas.style.width = `${size.x}px`;
        canvas.style.height = `${size.y}px`;
      } else {
        pen.setTransform(1, 0, 0, 1, 0, 0);
        pen.clearRect(0, 0, width, height);
      }
      this.paint(next, null);
    }
  }

  /** Draws every tile seen, in a strip or on the whole surface; what is not ready is stood in for, and read. */
  private paint(drawn: Drawn, strip: Strip | null): void {
    const { pen } = this;
    if (!pen) return;
    const view = this.view(drawn);
    pen.save();
    pen.setTransform(drawn.ratio, 0, 0, drawn.ratio, 0, 0);
    if (strip) {
      pen.beginPath();
      pen.rect(...strip);
      pen.clip();
    }
    if (this.isMissing) this.paintOutline(view);
    else {
      this.setSmoothing(view);
      const seen = tilesSeen(view, levelFor(view));
      const lacking: LaidTile[] = [];
      for (const tile of seen) {
        if (strip && !touches(tile, strip)) continue;
        if (this.tiles.get(tile.key) || this.tiles.isEmpty(tile.key)) continue;
        lacking.push(tile);
      }
      this.paintStandIns(view, lacking, drawn.ratio);
      for (const pass of ['seam', 'tile'] as const) {
        for (const tile of seen) {
          const bitmap = strip && !touches(tile, strip) ? undefined : this.tiles.get(tile.key);
          if (bitmap) paintTile(pen, bitmap, tile, drawn.ratio, pass);
        }
      }
      const coarsest = { level: this.levels.length - 1, col: 0, row: 0 };
      this.tiles.want([coarsest, ...seen.map((tile) => tile.key)]);
    }
    pen.restore();
  }

  private setSmoothing(view: PictureView): void {
    if (!this.pen) return;
    this.pen.imageSmoothingEnabled = scaleOfView(view) * view.ratio < SQUARES_FROM;
    this.pen.imageSmoothingQuality = 'low';
  }

  /** For tiles still to come: the nearest coarser ones that are ready. */
  private paintStandIns(view: PictureView, lacking: readonly LaidTile[], ratio: number): void {
    const { pen } = this;
    const coarse = new Map<string, LaidTile>();
    for (const { key } of lacking) {
      for (let up = 1; key.level + up < this.levels.length; up++) {
        const above = { level: key.level + up, col: key.col >> up, row: key.row >> up };
        if (!this.tiles.get(above)) continue;
        const laid = layTile(view, above);
        if (laid) coarse.set(`${above.level}/${above.col}/${above.row}`, laid);
        break;
      }
    }
    const fromCoarsest = [...coarse.values()].sort((a, b) => b.key.level - a.key.level);
    for (const tile of fromCoarsest) {
      const bitmap = this.tiles.get(tile.key);
      if (bitmap && pen) paintTile(pen, bitmap, tile, ratio, 'tile');
    }
    if (fromCoarsest.length > 0) this.isPatched = true;
  }

  private paintOutline(view: PictureView): void {
    const { pen } = this;
    if (!pen) return;
    pen.beginPath();
    for (const corner of cornersOfPicture(view.picture)) pen.lineTo(...view.toSpot(corner));
    pen.closePath();
    const theme = getComputedStyle(this.map.getContainer());
    pen.strokeStyle = theme.getPropertyValue('--line-strong');
    pen.lineWidth = 2;
    pen.setLineDash([8, 6]);
    pen.stroke();
  }

  /** A tile has come: it is put where it belongs, and when the last is there all is drawn once more. */
  private patch(key: TileKey): void {
    const { drawn, pen } = this;
    if (!drawn || !pen) return;
    const view = this.view(drawn);
    if (key.level === levelFor(view)) {
      const tile = layTile(view, key);
      const bitmap = this.tiles.get(key);
      if (tile && bitmap) {
        pen.setTransform(drawn.ratio, 0, 0, drawn.ratio, 0, 0);
        this.setSmoothing(view);
        paintTile(pen, bitmap, tile, drawn.ratio, 'tile');
      }
    }
    this.isPatched = true;
    if (this.tiles.isIdle || key.level === this.levels.length - 1) this.redraw();
  }
}
