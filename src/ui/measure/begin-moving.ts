import type { AppController } from '../app-controller';

/** A zone on the map is worth dragging between these sizes, px; else the map goes to it. */
const LEAST_PX = 60;
const MOST_PX = 500;

/**
 * Puts a zone just laid on the map into the person's hand, to be moved and turned into place; the map goes
 * to it when it is too small or too large there. @param sizeM its larger extent, m
 */
export function beginMoving(app: AppController, zoneId: string, sizeM: number): void {
  const sizePx = sizeM / (app.map?.metresPerPixel() ?? Number.NaN);
  // the map hears of the zone in the microtask that the dispatch asked for
  queueMicrotask(() => {
    app.setView({ tool: { type: 'reshape', zoneId } });
    if (!(sizePx >= LEAST_PX && sizePx <= MOST_PX)) app.fitSoon([zoneId]);
    app.note(
      'zone-to-place',
      'Drag the crossed arrows to move it, the round arrow to turn it; then press Done.',
    );
  });
}
