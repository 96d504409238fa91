import type { Position } from '../yard/types';
import type { MapEvents, MapPicture, MapPort, Tool } from './types';

/** A map without a screen, for tests of what uses the port: keeps what it was told, and acts as a person would. */
export interface FakeMap extends MapPort {
  readonly pictures: readonly MapPicture[];
  readonly tool: Tool;
  readonly calls: readonly string[];
  /** what the person does: goes out by the same events as from the real map. */
  readonly events: MapEvents;
  /** draws a ring (open or closed) with the draw tool in hand, which then ends. */
  drawRing(ring: readonly Position[]): void;
}

/** @throws Error from drawRing() when no draw tool was set: a mistake of the test. */
export function createFakeMap(events: MapEvents): FakeMap {
  const pictures: MapPicture[] = [];
  const calls: string[] = [];
  let tool: Tool = { type: 'select' };
  let centre: Position = [0, 0];
  const note = (call: string) => {
    calls.push(call);
  };
  const end = () => {
    tool = { type: 'select' };
    events.toolEnded();
  };
  return {
    pictures,
    calls,
    events,
    get tool() {
      return tool;
    },
    drawRing(ring) {
      const drawTool = tool;
      const [first] = ring;
      if (drawTool.type !== 'draw' || !first) throw new Error('drawRing() needs a draw tool and a ring');
      const last = ring[ring.length - 1];
      const isClosed = last !== undefined && last[0] === first[0] && last[1] === first[1];
      tool = { type: 'select' };
      events.drawn(isClosed ? ring : [...ring, first], drawTool);
      if (tool.type === 'select') events.toolEnded();
    },
    show: (picture) => void pictures.push(picture),
    setTool(next) {
      tool = next;
      note(`setTool ${next.type}`);
    },
    finish: () => note('finish'),
    cancel() {
      note('cancel');
      if (tool.type !== 'select') end();
    },
    backOnePoint: () => note('backOnePoint'),
    addSide: (lengthM, bearingDeg) => note(`addSide ${lengthM} ${bearingDeg}`),
    setRightAngle: (on) => note(`setRightAngle ${on}`),
    setSnapping: (on) => note(`setSnapping ${on}`),
    fit: (zoneIds) => note(`fit ${zoneIds?.join() ?? ''}`.trim()),
    showPlaces: (places) => note(`showPlaces ${places.length}`),
    goTo(position) {
      centre = position;
      note(`goTo ${position.join()}`);
    },
    reveal: (position) => note(`reveal ${position.join()}`),
    center: () => centre,
    metresPerPixel: () => 0.1,
    locate: async () => null,
    destroy: () => note('destroy'),
  };
}
