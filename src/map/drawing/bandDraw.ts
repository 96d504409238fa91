import L from 'leaflet';
import { makeBand } from '../../measure/band';
import type { Position } from '../../yard/types';
import { toLatLngs } from '../coords';
import type { Tool } from '../types';
import { PathDraw } from './pathDraw';
import type { DrawContext } from './session';

type BandTool = Extract<Tool, { type: 'band' }>;

/** A line that becomes a band of ground; the band is shown as the line grows. Width and joints may change on the way. */
export class BandDraw extends PathDraw {
  constructor(context: DrawContext, tool: () => BandTool, onDone: (line: readonly Position[]) => void) {
    const band = L.polygon([], {
      pane: 'yard-drawing',
      interactive: false,
      className: 'yard-draw-shape',
      weight: 2,
      smoothFactor: 0,
    }).addTo(context.map);
    const draw = (shown: readonly Position[]) => {
      const { widthM, joint } = tool();
      band.setLatLngs(shown.length > 1 ? toLatLngs(makeBand(shown, widthM, joint, context.plane())) : []);
    };
    super(context, {
      closes: false,
      mayCross: true,
      onDone,
      onLine: draw,
      onStop: () => band.remove(),
    });
  }

  /** Another width or joint was set. */
  toolChanged(): void {
    this.update();
  }
}
