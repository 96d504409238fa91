import type { MapEvents, Tool } from '../map/types';
import { cutHole, cutOut, moveSharedCorner, splitZone } from '../measure/shapes';
import { freeName, KIND_WORDS, MARK_WORDS } from '../words/zoneWords';
import { newZone } from '../yard/defaults';
import { addMark, addZone, changeSettings, replaceMark, replaceZone, setParcel } from '../yard/edits';
import type { BaseLayer, Issue, Mark, Position, Ring, Rings, Yard, Zone, ZoneKind } from '../yard/types';
import type { AppController } from './app-controller';
import { surveyNow } from './drawn-survey';
import { movedCorner } from './moved-corner';

/** A zone for a ring just drawn or typed, named and classed by the options of the drawing. */
export function zoneFromRing(
  app: AppController,
  kind: ZoneKind,
  ring: Ring,
  method: Zone['survey']['method'],
): Zone {
  const names = app.yard.zones.map((zone) => zone.name);
  return newZone(app.newId('zone'), kind, [[ring]], {
    name: freeName(KIND_WORDS[kind], names),
    mowing: kind === 'turf' ? app.options.mowing : null,
    survey: surveyNow(app, method).survey,
  });
}

/** What the map reports, turned into edits of the document. */
export function createMapEvents(app: AppController): MapEvents {
  return {
    select: (zoneIds) => app.setView({ selectedZoneIds: zoneIds }),
    drawn: (ring, tool) => addDrawn(app, ring, tool),
    splitLine(line, zoneId) {
      const plane = app.session.derived.measured.plane;
      const id = app.newId('zone');
      const isDone = app.attempt('Split zone', (yard) => splitZone(yard, zoneId, line, id, plane));
      if (isDone) app.setView({ selectedZoneIds: [zoneId, id] });
      return isDone;
    },
    reshaped(zoneId, parts, label) {
      app.beforeReshape = null;
      app.session.preview(null);
      app.dispatch(label, (yard) =>
        reshape(app, yard, zoneId, parts, (issue) =>
          app.tell({
            ...issue,
            severity: 'warning',
            message: `Neighbours stay where they were. ${issue.message}`,
          }),
        ),
      );
    },
    reshaping(zoneId, parts) {
      app.beforeReshape = parts === null ? null : (app.beforeReshape ?? app.session.yard);
      app.session.preview(app.beforeReshape && parts && reshape(app, app.beforeReshape, zoneId, parts));
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
    bandLine: () => false,
    live: (figures) => app.setLive(figures),
    message: (issue) => app.tell(issue),
    toolEnded: () => app.setView({ tool: { type: 'select' } }),
  };
}

function addDrawn(app: AppController, ring: Ring, tool: Extract<Tool, { type: 'draw' }>): boolean {
  const plane = app.session.derived.measured.plane;
  if (tool.purpose === 'hole' && tool.zoneId !== null) {
    const { zoneId } = tool;
    return app.attempt('Cut hole', (yard) => cutHole(yard, zoneId, ring, plane));
  }
  if (tool.purpose === 'parcel') {
    const { survey } = surveyNow(app, 'traced');
    const parcel = { name: '', parts: [[ring]], curves: [], survey, extra: {} };
    app.dispatch('Draw outline of the property', (yard) => setParcel(yard, parcel));
    return true;
  }
  const zone = zoneFromRing(app, tool.kind, ring, 'traced');
  const label = `Add ${KIND_WORDS[tool.kind].toLowerCase()}`;
  const { zoneId } = tool;
  const isDone =
    tool.purpose === 'cut' && zoneId !== null
      ? app.attempt(label, (yard) => cutOut(yard, zoneId, ring, zone, plane))
      : app.attempt(label, (yard) => ({ ok: true, yard: addZone(yard, zone) }));
  if (isDone) app.setView({ selectedZoneIds: [zone.id] });
  return isDone;
}

/**
 * New parts of a zone; a single moved corner takes its neighbours' corners along when that is wished.
 * @param refused called when a neighbour cannot follow (its outline would cross itself) and stays
 */
function reshape(
  app: AppController,
  yard: Yard,
  zoneId: string,
  parts: readonly Rings[],
  refused?: (issue: Issue) => void,
): Yard {
  const zone = yard.zones.find((each) => each.id === zoneId);
  if (!zone) return yard;
  const corner = app.options.sharedCorners ? movedCorner(zone.parts, parts) : null;
  const moved = corner && moveSharedCorner(yard, corner.from, corner.to);
  if (moved && !moved.ok) refused?.(moved.issue);
  return replaceZone(moved?.ok ? moved.yard : yard, { ...zone, parts });
}

/** The picture shown, moved by a drag. */
function shiftPicture(app: AppController, eastM: number, northM: number): void {
  app.dispatch('Shift picture', (yard) => {
    const { baseLayer, ownLayers } = yard.settings;
    if (baseLayer.kind !== 'own-picture') return yard;
    const [a, b, c, d, e, f] = baseLayer.toGround;
    const moved: BaseLayer = { ...baseLayer, toGround: [a, b, c + eastM, d, e, f + northM] };
    return changeSettings(yard, {
      baseLayer: moved,
      ownLayers: ownLayers.map((each) => ('id' in each && each.id === moved.id ? moved : each)),
    });
  });
}

function moveMark(yard: Yard, markId: string, position: Position): Yard {
  const mark = yard.marks.find((each) => each.id === markId);
  return mark ? replaceMark(yard, { ...mark, position }) : yard;
}
