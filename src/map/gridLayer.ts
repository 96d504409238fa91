import type L from 'leaflet';
import { createPlane } from '../measure/plane';
import type { LocalPlane } from '../measure/types';
import type { Position, UnitSystem, Yard } from '../yard/types';
import { gridSpacing } from './gridSpacing';

export interface GridLayer {
  update(yard: Yard, units: UnitSystem): void;
  /** @param isCoveredInPart something lies on the paper: the figures are drawn over it. */
  setShown(shown: boolean, isCoveredInPart: boolean): void;
  destroy(): void;
}

/** The zero is laid anew when the yard, or with nothing drawn the view, lies farther from it than this, m. */
const FAR_M = 500;

/**
 * Drafting paper under the map: a square grid laid on the ground, figures on its strong lines. Its zero is
 * the south-west corner of the yard when that was opened, or the middle of the view while nothing is drawn;
 * it stays there while the yard is edited. Drawn on two canvases behind the panes, again at each move; the
 * one of the figures comes to the front where a picture lies on the paper. Colours from the theme.
 */
export function createGridLayer(map: L.Map): GridLayer {
  const container = map.getContainer();
  const [canvas, figures] = [document.createElement('canvas'), document.createElement('canvas')];
  for (const each of [canvas, figures]) {
    each.className = 'yard-grid';
    each.setAttribute('aria-hidden', 'true');
  }
  container.prepend(canvas, figures);
  let plane: LocalPlane | null = null;
  let shown: Yard | null = null;
  let corner: Position | null = null;
  let units: UnitSystem = 'us';
  let isShown = true;
  let isOver = false;

  /** Lays the zero anew where it is too far off to be of use. */
  function placeZero(): void {
    const { lng, lat } = map.getCenter();
    const wanted = corner ?? ([lng, lat] as const);
    if (Math.abs(wanted[1]) >= 90) return;
    if (!plane || Math.hypot(...plane.toPlane(wanted)) > FAR_M) plane = createPlane(wanted);
  }

  function draw(): void {
    placeZero();
    const size = map.getSize();
    const ratio = window.devicePixelRatio || 1;
    for (const each of [canvas, figures]) {
      each.width = Math.round(size.x * ratio);
      each.height = Math.round(size.y * ratio);
    }
    const [pen, figurePen] = [canvas.getContext('2d'), figures.getContext('2d')];
    if (!pen || !figurePen || !plane || !isShown || size.x === 0) return;
    pen.scale(ratio, ratio);
    figurePen.scale(ratio, ratio);
    const theme = getComputedStyle(container);
    const [left, top] = toPlaneAt(0, 0, plane);
    const [right, bottom] = toPlaneAt(size.x, size.y, plane);
    const metresPerPx = (right - left) / size.x;
    const { minorM, majorEvery, unitM, unitName } = gridSpacing(metresPerPx, units);
    const xOf = (east: number) => ((east - left) / (right - left)) * size.x;
    const yOf = (north: number) => ((north - top) / (bottom - top)) * size.y;
    const columns = range(left, right, minorM);
    const rows = range(bottom, top, minorM);
    for (const isMajor of [false, true]) {
      pen.beginPath();
      pen.strokeStyle = theme.getPropertyValue(isMajor ? '--grid-major' : '--grid-minor');
      pen.lineWidth = 1;
      for (const i of columns)
        if ((i % majorEvery === 0) === isMajor) line(pen, xOf(i * minorM), 0, true, size.y);
      for (const i of rows)
        if ((i % majorEvery === 0) === isMajor) line(pen, 0, yOf(i * minorM), false, size.x);
      pen.stroke();
    }
    figurePen.font = `11px ${theme.getPropertyValue('--font-num') || 'sans-serif'}`;
    figurePen.fillStyle = theme.getPropertyValue('--ink-soft');
    figurePen.strokeStyle = theme.getPropertyValue('--paper');
    figurePen.lineWidth = 4;
    figurePen.lineJoin = 'round';
    figurePen.textBaseline = 'top';
    const write = (text: string, x: number, y: number) => {
      if (isOver) figurePen.strokeText(text, x, y);
      figurePen.fillText(text, x, y);
    };
    const text = (i: number) => `${Number(((i * minorM) / unitM).toPrecision(9))}`;
    let free = 0;
    for (const i of columns) {
      const x = xOf(i * minorM) + 3;
      if (i % majorEvery !== 0 || x < free) continue;
      const label = `${text(i)} ${unitName}`;
      write(label, x, 3);
      free = x + figurePen.measureText(label).width + 8;
    }
    for (const i of rows) {
      const y = yOf(i * minorM) + 3;
      if (i % majorEvery === 0 && y > 24) write(`${text(i)} ${unitName}`, 4, y);
    }
  }

  function toPlaneAt(x: number, y: number, on: LocalPlane): readonly [number, number] {
    const latLng = map.containerPointToLatLng([x, y]);
    return on.toPlane([latLng.lng, latLng.lat]);
  }

  map.on('move zoom zoomend resize viewreset', draw);
  return {
    update(yard, nextUnits) {
      if (yard.id !== shown?.id) plane = null;
      if (yard !== shown) corner = southWestOf(yard);
      shown = yard;
      units = nextUnits;
      draw();
    },
    setShown(shown, isCoveredInPart) {
      isShown = shown;
      isOver = isCoveredInPart;
      canvas.hidden = !shown;
      figures.hidden = !shown;
      figures.classList.toggle('is-over', isOver);
      draw();
    },
    destroy() {
      map.off('move zoom zoomend resize viewreset', draw);
      canvas.remove();
      figures.remove();
    },
  };
}

function southWestOf({ zones, marks }: Yard): Position | null {
  const places = zones.flatMap((zone) => zone.parts.flat(2));
  if (places.length === 0) places.push(...marks.map((mark) => mark.position));
  let corner: Position | null = null;
  for (const [lon, lat] of places) {
    if (Number.isFinite(lon) && Number.isFinite(lat))
      corner = corner ? [Math.min(corner[0], lon), Math.min(corner[1], lat)] : [lon, lat];
  }
  return corner;
}

function range(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step);
  const count = Math.min(2000, Math.floor(to / step) - first + 1);
  return Array.from({ length: Math.max(0, count) }, (_, i) => first + i);
}

function line(pen: CanvasRenderingContext2D, x: number, y: number, isUpright: boolean, length: number): void {
  const sharpX = Math.round(x) + (isUpright ? 0.5 : 0);
  const sharpY = Math.round(y) + (isUpright ? 0 : 0.5);
  pen.moveTo(sharpX, sharpY);
  pen.lineTo(sharpX + (isUpright ? 0 : length), sharpY + (isUpright ? length : 0));
}
