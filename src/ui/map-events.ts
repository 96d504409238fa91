import type { MapEvents, Tool, ZoneOutline } from '../map/types';
import { makeBand } from '../measure/band';
import { createPlane } from '../measure/plane';
import { addMatched, cutHole, cutOut, splitZone } from '../measure/shapes';
import { shiftFit } from '../survey/picture/handMoves';
import { freeName, KIND_WORDS, MARK_WORDS } from '../words/zoneWords';
import { newParcel, newZone } from '../yard/defaults';
import { addMark, changePicture, replaceMark, setParcel } from '../yard/edits';
import type { Curve, Mark, Position, Ring, Yard, Zone, ZoneKind } from '../yard/types';
import type { AppController } from './app-controller';
import { surveyNow } from './measure/drawn-survey';

/** A zone for a ring just drawn or typed, named and classed by the options of the drawing. */
export function zoneFromRing(
  app: AppController,
  kind: ZoneKind,
  ring: Ring,
  method: Zone['survey']['method'],
  curves: readonly Curve[] = [],
): Zone {
  const names = app.yard.zones.map((zone) => zone.name);
  return newZone(app.newId('zone'), kind, [[ring]], {
    name: freeName(KIND_WORDS[kind], names),
    mowing: kind === 'turf' ? app.options.mowing : null,
    survey: surveyNow(app, method).survey,
    curves,
  });
}

/** What the map reports, turned into edits of the document. */
export function createMapEvents(app: AppController): MapEvents {
  return {
    select: (zoneIds) => app.setView({ selectedZoneIds: zoneIds }),
    drawn: (ring, tool, curves) => addDrawn(app, ring, tool, curves),
    splitLine(line, zoneId) {
      const plane = app.session.derived.measured.plane;
      const id = app.newId('zone');
      const isDone = app.attempt('Split zone', (yard) => splitZone(yard, zoneId, line, id, plane));
      if (isDone) app.setView({ selectedZoneIds: [zoneId, id] });
      return isDone;
    },
    reshaped(outlines, label) {
      app.beforeReshape = null;
      app.session.preview(null);
      app.dispatch(label, (yard) => withOutlines(yard, outlines));
    },
    reshaping(outlines) {
      app.beforeReshape = outlines === null ? null : (app.beforeReshape ?? app.session.yard);
      app.session.preview(app.beforeReshape && outlines && withOutlines(app.beforeReshape, outlines));
    },
    markPlaced(kind, position) {
      const names = app.yard.marks.map((mark) => mark.name);
      const mark: Mark = {
        id: app.newId('mark'),
        kind,
        position,
        name: freeName(MARK_WORDS[kind], names),
        extra: {},
      };
      app.dispatch(`Add ${MARK_WORDS[kind].toLowerCase()}`, (yard) => addMark(yard, mark));
    },
    markMoved(markId, position) {
      app.dispatch('Move mark', (yard) => moveMark(yard, markId, position));
    },
    picked: (position) => app.endPick(position),
    pictureShifted: (eastM, northM) => shiftPicture(app, eastM, northM),
    bandLine: (line, tool) => addBand(app, line, tool),
    live: (figures) => app.setLive(figures),
    message: (issue) => app.tell(issue),
    toolEnded: () => app.setView({ tool: { type: 'select' } }),
  };
}

function addDrawn(
  app: AppController,
  ring: Ring,
  tool: Extract<Tool, { type: 'draw' }>,
  curves: readonly Curve[] = [],
): boolean {
  const plane = app.session.derived.measured.plane;
  const { zoneId } = tool;
  if (tool.purpose === 'parcel') {
    const { survey } = surveyNow(app, 'traced');
    const parcel = newParcel([[ring]], survey, curves);
    app.dispatch('Draw outline of the property', (yard) => setParcel(yard, parcel));
    return true;
  }
  if (tool.purpose === 'hole' && zoneId !== null)
    return app.attempt('Cut hole', (yard) => cutHole(yard, zoneId, ring, plane, curves));
  const zone = zoneFromRing(app, tool.kind, ring, 'traced', curves);
  const label = `Add ${KIND_WORDS[tool.kind].toLowerCase()}`;
  const isDone =
    tool.purpose === 'cut' && zoneId !== null
      ? app.attempt(label, (yard) => cutOut(yard, zoneId, ring, zone, plane))
      : app.attempt(label, (yard) => ({ ok: true, yard: addMatched(yard, zone, plane) }));
  if (isDone) app.setView({ selectedZoneIds: [zone.id] });
  return isDone;
}

function addBand(
  app: AppController,
  line: readonly Position[],
  tool: Extract<Tool, { type: 'band' }>,
): boolean {
  const { plane } = app.session.derived.measured;
  // an empty yard's plane lies elsewhere
  const [first = plane.origin] = line;
  const parts = makeBand(line, tool.widthM, tool.joint, createPlane(first));
  if (parts.length === 0) {
    const message = 'A band needs a line of some length and a width.';
    app.tell({ code: 'band-empty', severity: 'error', message, place: {} });
    return false;
  }
  const zone: Zone = { ...zoneFromRing(app, tool.kind, [], 'traced'), parts };
  const label = `Add ${KIND_WORDS[tool.kind].toLowerCase()}`;
  const isDone = app.attempt(label, (yard) => ({ ok: true, yard: addMatched(yard, zone, plane) }));
  if (isDone) app.setView({ selectedZoneIds: [zone.id] });
  return isDone;
}

/** The yard with other outlines of some zones; nothing else of them changes. */
function withOutlines(yard: Yard, outlines: readonly ZoneOutline[]): Yard {
  const byId = new Map(outlines.map((one) => [one.zoneId, one]));
  const zones = yard.zones.map((zone) => {
    const outline = byId.get(zone.id);
    return outline ? { ...zone, parts: outline.parts, curves: outline.curves } : zone;
  });
  return { ...yard, zones };
}

/** The picture shown, moved by a drag. */
function shiftPicture(app: AppController, eastM: number, northM: number): void {
  const { baseLayer } = app.yard.settings;
  if (baseLayer.kind !== 'own-picture') return;
  app.dispatch('Shift picture', (yard) =>
    changePicture(yard, baseLayer.id, (picture) => ({
      ...picture,
      toGround: shiftFit(picture.toGround, eastM, northM),
    })),
  );
}

function moveMark(yard: Yard, markId: string, position: Position): Yard {
  const mark = yard.marks.find((each) => each.id === markId);
  return mark ? replaceMark(yard, { ...mark, position }) : yard;
}
