import type L from 'leaflet';
import { createPlane } from '../measure/plane';
import type { LocalPlane } from '../measure/types';
import type { Curve, Position } from '../yard/types';
import type { Aim } from './aim';
import type { BaseLayers } from './baseLayers';
import { toPosition } from './coords';
import { type DrawContext, type DrawSession, tellIssue } from './drawing/session';
import { Waiting } from './drawing/waiting';
import type { MapEvents, MapPicture, Tool } from './types';

const SELECT: Tool = { type: 'select' };
/** Tools that live on points put on the ground. */
const POINT_TOOLS: ReadonlySet<Tool['type']> = new Set([
  'draw',
  'split',
  'mark',
  'pick',
  'edge',
  'band',
  'gauge',
]);
/** Beyond this from its origin a plane's scale is off by more than about one in a thousand, m. */
const PLANE_REACH_M = 5000;

/** A tool that asks for one place. */
class OnePlace implements DrawSession {
  constructor(
    private readonly map: L.Map,
    private readonly aim: Aim,
    private readonly onPlaced: (position: Position) => void,
  ) {
    map.on('click', this.onClick);
  }
  private readonly onClick = (event: L.LeafletMouseEvent): void => this.addPointAt(event.latlng);
  addPointAt(at: L.LatLng): void {
    this.onPlaced(toPosition(at));
  }
  finish(): void {
    this.onPlaced(this.aim.position());
  }
  stop(): void {
    this.map.off('click', this.onClick);
  }
}

/** Which tool is at work, and its session. Starts and ends them; tells the app when one ends by itself. */
export class ToolRunner {
  tool: Tool = SELECT;
  session: DrawSession | null = null;
  readonly hold = { rightAngle: false, snapping: true, isSuspended: false };
  isSwallowing = false;
  private turn = 0;

  constructor(
    private readonly map: L.Map,
    private readonly aim: Aim,
    private readonly events: MapEvents,
    private readonly picture: () => MapPicture | null,
    private readonly base: BaseLayers,
  ) {}

  set(tool: Tool): void {
    if (JSON.stringify(tool) === JSON.stringify(this.tool) && (this.session || tool.type === 'select'))
      return;
    if (tool.type === 'band' && this.tool.type === 'band' && this.session) {
      // another width or joint: what is drawn stays
      this.tool = tool;
      this.bandChanged();
      return;
    }
    this.stop();
    this.tool = tool;
    this.mark();
    switch (tool.type) {
      case 'select':
        return;
      case 'draw':
        this.startDraw(tool);
        return;
      case 'split':
        this.startPath(false, (line) =>
          this.doneUnlessRefused(() => this.events.splitLine(line, tool.zoneId)),
        );
        return;
      case 'gauge':
        void this.load(async () => {
          const { PathDraw } = await import('./drawing/pathDraw');
          const options = {
            closes: false,
            mayCross: true,
            staysShown: true,
            tellsAngles: true,
            onDone: () => {},
          };
          return () => new PathDraw(this.context(), options);
        });
        return;
      case 'band':
        this.startBand();
        return;
      case 'edge':
        void this.load(async () => {
          const { EdgeSession } = await import('./drawing/edgeTool');
          return () => new EdgeSession(this.context(), tool);
        });
        return;
      case 'reshape':
        void this.load(async () => {
          const { Reshape } = await import('./drawing/reshape');
          return () => new Reshape(this.context(), tool);
        });
        return;
      case 'mark':
        this.session = new OnePlace(this.map, this.aim, (position) =>
          this.done(() => this.events.markPlaced(tool.kind, position)),
        );
        return;
      case 'shift-picture':
        void this.load(async () => {
          const { PictureDrag } = await import('./pictureDrag');
          return () => new PictureDrag(this.context(), this.base);
        });
        return;
      case 'pick':
        this.session = new OnePlace(this.map, this.aim, (position) =>
          this.done(() => this.events.picked(position)),
        );
        return;
    }
  }

  private startDraw(tool: Extract<Tool, { type: 'draw' }>): void {
    const onDone = (ring: readonly Position[], curves: readonly Curve[] = []) =>
      this.doneUnlessRefused(() => this.events.drawn(ring, tool, curves));
    if (tool.shape === 'polygon') {
      this.startPath(true, onDone);
      return;
    }
    const { shape } = tool;
    void this.load(async () => {
      if (shape === 'freehand') {
        const { FreehandDraw } = await import('./drawing/freehandDraw');
        return () => new FreehandDraw(this.context(), onDone);
      }
      const { ShapeDraw } = await import('./drawing/shapeDraw');
      return () => new ShapeDraw(this.context(), shape, onDone);
    });
  }

  private startPath(closes: boolean, onDone: (line: readonly Position[]) => void): void {
    void this.load(async () => {
      const { PathDraw } = await import('./drawing/pathDraw');
      return () => new PathDraw(this.context(), { closes, onDone });
    });
  }

  private bandChanged = (): void => {};

  private startBand(): void {
    const now = () => this.tool as Extract<Tool, { type: 'band' }>;
    void this.load(async () => {
      const { BandDraw } = await import('./drawing/bandDraw');
      return () => {
        const session = new BandDraw(this.context(), now, (line) =>
          this.doneUnlessRefused(() => this.events.bandLine(line, now())),
        );
        this.bandChanged = () => session.toolChanged();
        return session;
      };
    });
  }

  /**
   * A tool that is fetched when first used; dropped when another was taken meanwhile. Points put before
   * it is there are kept for it.
   */
  private async load(fetch: () => Promise<() => DrawSession>): Promise<void> {
    const { turn } = this;
    const waiting = new Waiting(this.map);
    this.session = waiting;
    try {
      const start = await fetch();
      if (turn !== this.turn) return;
      waiting.stop();
      const session = start();
      this.session = session;
      waiting.handOver(session, () => this.session === session);
    } catch {
      if (turn !== this.turn) return;
      const message = 'This tool could not be loaded. Check the connection and try again.';
      this.events.message(tellIssue('tool-not-loaded', message));
      this.end();
    }
  }

  private context(): DrawContext {
    return {
      map: this.map,
      events: this.events,
      picture: this.picture,
      plane: () => this.plane(),
      hold: this.hold,
      end: () => this.end(),
    };
  }

  /** The yard's plane; on ground far from it (a yard with nothing drawn yet) one at the map's middle. */
  private plane(): LocalPlane {
    const centre = toPosition(this.map.getCenter());
    const plane = this.picture()?.measured.plane;
    if (plane && Math.hypot(...plane.toPlane(centre)) < PLANE_REACH_M) return plane;
    return createPlane(centre);
  }

  /** The result goes out; when it is taken the tool ends, else it goes on with what is drawn. */
  private doneUnlessRefused(report: () => boolean): void {
    const { tool, turn } = this;
    if (!report()) return;
    this.swallowClick();
    if (this.tool === tool && this.turn === turn) this.end();
  }

  /** The tool has its result: it ends, then the result goes out. */
  private done(report: () => void): void {
    this.swallowClick();
    this.stop();
    this.tool = SELECT;
    this.mark();
    report();
    if (this.tool === SELECT) this.events.toolEnded();
  }

  /** The click that ended a shape may still be on its way; it must not select what lies there now. */
  private swallowClick(): void {
    this.isSwallowing = true;
    const free = () => {
      this.isSwallowing = false;
    };
    this.map.getContainer().addEventListener('pointerdown', free, { once: true, capture: true });
    setTimeout(free, 400);
  }

  end(): void {
    this.stop();
    this.tool = SELECT;
    this.mark();
    this.events.toolEnded();
  }

  cancel(): void {
    if (this.tool.type === 'select') return;
    if (this.session?.cancelDrag?.()) return;
    this.end();
  }

  get takesPoints(): boolean {
    return POINT_TOOLS.has(this.tool.type);
  }

  private mark(): void {
    const box = this.map.getContainer();
    box.classList.toggle('is-drawing', this.takesPoints);
    box.classList.toggle('is-reshaping', this.tool.type === 'reshape');
  }

  stop(): void {
    this.turn += 1;
    const { session } = this;
    this.session = null;
    session?.stop();
  }
}
