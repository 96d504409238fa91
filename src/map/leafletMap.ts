import L from 'leaflet';
import 'leaflet/dist/leaflet.css';
import './map.css';
import { cornersOfPicture } from '../survey/picture/ownPicture';
import type { Issue, Position } from '../yard/types';
import { Aim } from './aim';
import { BaseLayers } from './baseLayers';
import { toLatLng } from './coords';
import { createFitButton } from './fitButton';
import { createGridLayer } from './gridLayer';
import { listenToKeys } from './keys';
import { LabelPlan } from './labelPlan';
import { MarkLayers } from './marks';
import { moveInto } from './moveInto';
import { onMap } from './onMap';
import { Overlays } from './overlays';
import { ParcelLayer } from './parcelLayer';
import { PatternSheet } from './patterns';
import type { PictureSource } from './pictureLayer';
import { MAX_ZOOM } from './sources';
import { ToolRunner } from './tools';
import { TrialLayer } from './trialLayer';
import type { MapEvents, MapPicture, MapPort } from './types';
import { differsByWalkAlone, WalkOnMap } from './walkOnMap';
import { ZoneLayers } from './zoneLayers';

/** Panes from the ground up. */
const PANES = {
  'yard-base': 200,
  'yard-zones': 400,
  'yard-overlays': 420,
  'yard-labels': 450,
  'yard-marks': 600,
  'yard-drawing': 610,
  'yard-notes': 630,
  'yard-handles': 640,
} as const;

const FIT_PADDING_PX = 40;
const SMALL_MAP_PX = 500;
/** Maps this wide or less are a phone's, px. */
const PHONE_PX = 500;
const BAR_PX = 80;
/** With fewer zones than these a picture of the person's own is still being drawn over, and shown whole. */
const FEW_ZONES = 3;
const REVEAL_PADDING_PX = 24;
/** What is nearer to the edge of the view than this share of it is not seen well enough. */
const REVEAL_MARGIN = 0.06;
const LOCATE_LIMIT_MS = 15_000;

/**
 * The map in an element of the page (not in a shadow tree: Leaflet's style sheet is the page's).
 * @param element empty block with a size of its own; its later changes of size are followed
 * @param events what the person did; called with [lon, lat] in degrees and SI figures
 * @param pictures gives the store of the person's own pictures; asked when the first one is shown
 * @returns the port that draws pictures of the document and runs the tools. No request is made before
 * a picture names a base layer other than the grid.
 */
export function createLeafletMap(
  element: HTMLElement,
  events: MapEvents,
  pictures: () => Promise<PictureSource>,
): MapPort {
  const map = L.map(element, {
    zoomControl: false,
    attributionControl: false,
    maxZoom: MAX_ZOOM,
    minZoom: 2,
    zoomSnap: 0.5,
    zoomDelta: 1,
    center: [0, 0],
    zoom: 18,
  });
  for (const [name, zIndex] of Object.entries(PANES)) map.createPane(name).style.zIndex = String(zIndex);
  element.classList.add('yard-map');
  element.setAttribute('role', 'application');
  element.setAttribute('aria-label', 'Map of the yard. Arrow keys move it, plus and minus zoom.');
  const zoomButtons = L.control.zoom({
    position: 'bottomright',
    zoomInTitle: 'Zoom in',
    zoomOutTitle: 'Zoom out',
  });
  zoomButtons
    .addTo(map)
    .getContainer()
    ?.append(createFitButton(() => fitView()));
  L.control.attribution({ position: 'bottomleft', prefix: false }).addTo(map);

  let picture: MapPicture | null = null;
  let scale: L.Control.Scale | null = null;
  let scaleUnits = '';
  let hasFitted = false;
  /** where the view stood when the whole yard was shown last; null: since then parts of it were, or a tool was taken. */
  let fittedTo: { readonly zoom: number; readonly corner: L.Point } | null = null;
  /** the person has moved the view or taken a tool: it is theirs, and no longer fitted to new sizes. */
  let isTaken = false;
  let here: L.Circle | null = null;

  const grid = createGridLayer(map);
  const patterns = new PatternSheet(element);
  const base = new BaseLayers(map, (issue) => events.message(issue), pictures);
  const aim = new Aim(map);
  const tools = new ToolRunner(map, aim, events, () => picture, base);
  const zones = new ZoneLayers(map, patterns, pick);
  const overlays = new Overlays(map, patterns);
  const marks = new MarkLayers(map, events);
  const parcel = new ParcelLayer(map);
  const trial = new TrialLayer(map);
  const walk = new WalkOnMap(map, new LabelPlan(map, zones, overlays), events);
  const keys = listenToKeys(map, {
    session: () => tools.session,
    takesPoints: () => tools.takesPoints,
    finish: () => tools.session?.finish(),
    cancel: () => tools.cancel(),
    suspend: (isHeld) => {
      tools.hold.isSuspended = isHeld;
    },
  });
  map.on('click', () => {
    if (tools.isSwallowing) return;
    if (tools.tool.type === 'select' && picture && picture.selectedZoneIds.length > 0) events.select([]);
  });
  const take = () => {
    isTaken = true;
  };
  for (const type of ['pointerdown', 'wheel', 'keydown'] as const)
    element.addEventListener(type, take, { passive: true, capture: true });
  // The ground stays where it is on the screen when bars come and go below the map; another width is
  // another screen, and keeps the middle.
  const sizes = new ResizeObserver(() => {
    const before = map.getSize();
    map.invalidateSize({ animate: false, pan: before.x !== element.clientWidth } as L.ZoomPanOptions);
    // a yard shown whole stays so: a bar that comes up would lie over the lowest of it
    if (!hasFitted || !isTaken || isAsFitted()) fitView();
    else if (map.getSize().y < before.y && tools.tool.type === 'select') revealChosen();
  });
  sizes.observe(element);

  /** Whether the view is still that in which the whole yard was shown last: the top left stays when the height changes. */
  function isAsFitted(): boolean {
    return (
      fittedTo !== null &&
      fittedTo.zoom === map.getZoom() &&
      map.project(map.getBounds().getNorthWest()).distanceTo(fittedTo.corner) < 1
    );
  }

  /** Brings the chosen zones into view by moving; zooms out only when they are larger than the view. */
  function revealChosen(): void {
    const chosen = picture?.yard.zones.filter((zone) => picture?.selectedZoneIds.includes(zone.id)) ?? [];
    const bounds = L.latLngBounds(chosen.flatMap((zone) => zone.parts.flat(2)).map(toLatLng));
    if (!bounds.isValid()) return;
    const pad = L.point(REVEAL_PADDING_PX, REVEAL_PADDING_PX);
    const spots = L.bounds([
      map.latLngToContainerPoint(bounds.getNorthWest()),
      map.latLngToContainerPoint(bounds.getSouthEast()),
    ]);
    const room = map.getSize().subtract(pad.multiplyBy(2));
    const size = spots.getSize();
    if (size.x > room.x || size.y > room.y) map.fitBounds(bounds, { padding: pad, animate: false });
    else map.panBy(moveInto(spots, L.bounds(pad, map.getSize().subtract(pad))), { animate: false });
  }

  function pick(zoneId: string, event: L.LeafletMouseEvent): void {
    if (tools.tool.type !== 'select' || tools.isSwallowing) return;
    L.DomEvent.stopPropagation(event);
    const selected = picture?.selectedZoneIds ?? [];
    if (!event.originalEvent.shiftKey) events.select([zoneId]);
    else if (selected.includes(zoneId)) events.select(selected.filter((id) => id !== zoneId));
    else events.select([...selected, zoneId]);
  }

  function showScale(units: MapPicture['units']): void {
    if (units === scaleUnits) return;
    scaleUnits = units;
    scale?.remove();
    const isUs = units === 'us';
    scale = L.control
      .scale({ position: 'bottomleft', metric: !isUs, imperial: isUs, maxWidth: 140 })
      .addTo(map);
  }

  function fitView(zoneIds?: readonly string[]): void {
    if (!picture || map.getSize().x === 0) return;
    const chosen = picture.yard.zones.filter((zone) => !zoneIds || zoneIds.includes(zone.id));
    const places: Position[] = chosen.flatMap((zone) => zone.parts.flat(2));
    if (!zoneIds) {
      places.push(...picture.yard.marks.map((mark) => mark.position));
      places.push(...(picture.yard.parcel?.parts.flat(2) ?? []));
    }
    const bounds = L.latLngBounds(places.map(toLatLng));
    if (picture.baseLayer.kind === 'picture' && !bounds.isValid()) {
      const { south, west, north, east } = picture.baseLayer;
      bounds.extend([south, west]).extend([north, east]);
    }
    const isFew = !zoneIds && chosen.length < FEW_ZONES;
    if (picture.baseLayer.kind === 'own-picture' && (isFew || !bounds.isValid())) {
      for (const corner of cornersOfPicture(picture.baseLayer)) bounds.extend(toLatLng(corner));
    }
    showBounds(bounds);
    fittedTo =
      zoneIds || !bounds.isValid()
        ? null
        : { zoom: map.getZoom(), corner: map.project(map.getBounds().getNorthWest()) };
  }

  /** @param barPx kept free above for the bar that lies over the top of a large map while a tool is at work */
  function showBounds(bounds: L.LatLngBounds, barPx = 0): void {
    if (!bounds.isValid()) return;
    hasFitted = true;
    const { x, y } = map.getSize();
    const isSmall = Math.min(x, y) < SMALL_MAP_PX;
    const padding = isSmall ? FIT_PADDING_PX / 2 : FIT_PADDING_PX;
    const fitBeside = (freeRightPx: number) =>
      map.fitBounds(bounds, {
        paddingTopLeft: [padding, padding + (isSmall ? 0 : barPx)],
        paddingBottomRight: [padding + freeRightPx, padding],
        maxZoom: 21,
        animate: false,
      });
    fitBeside(0);
    // on a phone the buttons in the corner cover what lies under them
    const buttons = element.querySelector('.leaflet-bottom.leaflet-right .leaflet-bar');
    if (!buttons || x > PHONE_PX) return;
    const { width, height } = buttons.getBoundingClientRect();
    const corner = map.latLngToContainerPoint(bounds.getSouthEast());
    if (corner.x > x - width - padding && corner.y > y - height - padding) fitBeside(width);
  }

  async function locate(): Promise<Issue | null> {
    const none = (message: string): Issue => ({
      code: 'no-location',
      severity: 'warning',
      message,
      place: {},
    });
    if (!('geolocation' in navigator)) return none('This device or browser tells no location.');
    return new Promise((resolve) => {
      navigator.geolocation.getCurrentPosition(
        ({ coords }) => {
          const at = L.latLng(coords.latitude, coords.longitude);
          here?.remove();
          here = L.circle(at, {
            radius: coords.accuracy,
            pane: 'yard-overlays',
            interactive: false,
            className: 'yard-here',
            weight: 2,
          }).addTo(map);
          map.setView(at, Math.max(map.getZoom(), 19));
          resolve(null);
        },
        (error) => {
          const isDenied = error.code === error.PERMISSION_DENIED;
          resolve(
            none(isDenied ? 'The browser was not allowed to tell the location.' : 'No location was found.'),
          );
        },
        { enableHighAccuracy: true, timeout: LOCATE_LIMIT_MS },
      );
    });
  }

  return {
    show(given) {
      const next = onMap(given);
      const isWalkerAlone = picture !== null && differsByWalkAlone(picture, next);
      if (isWalkerAlone) {
        picture = next;
        walk.show(next);
        return;
      }
      const isOtherYard = picture?.yard.id !== next.yard.id;
      picture = next;
      const { isImagery, isCovered } = base.show(next.baseLayer, next.underLayer);
      element.classList.toggle('on-imagery', isImagery);
      patterns.setGround(isImagery ? 'imagery' : next.dark ? 'dark' : 'light');
      grid.setShown(!isCovered, isImagery);
      grid.update(next.yard, next.units);
      showScale(next.units);
      zones.show(next);
      overlays.show(next);
      marks.show(next);
      parcel.show(next);
      trial.show(next);
      walk.show(next);
      tools.session?.pictureChanged?.();
      if (isOtherYard) {
        const { origin } = next.measured.plane;
        hasFitted = false;
        isTaken = false;
        map.setView(toLatLng(origin), 19, { animate: false });
        fitView();
      }
    },
    setTool(tool) {
      keys.hideCrosshair();
      if (tool.type !== 'select') {
        isTaken = true;
        fittedTo = null;
      }
      tools.set(tool);
    },
    finish: () => tools.session?.finish(),
    cancel: () => tools.cancel(),
    backOnePoint: () => void tools.session?.backOnePoint?.(),
    addSide: (lengthM, bearingDeg) => tools.session?.addSide?.(lengthM, bearingDeg),
    setRightAngle(on) {
      tools.hold.rightAngle = on;
    },
    setSnapping(on) {
      tools.hold.snapping = on;
    },
    fit: fitView,
    showPlaces(places) {
      isTaken = true;
      showBounds(L.latLngBounds(places.map(toLatLng)), BAR_PX);
    },
    goTo(position, zoom) {
      hasFitted = true;
      isTaken = true;
      map.setView(toLatLng(position), zoom ?? map.getZoom());
      aim.set(position);
    },
    reveal(position) {
      const at = toLatLng(position);
      if (map.getBounds().pad(-REVEAL_MARGIN).contains(at)) return;
      isTaken = true;
      map.setView(at, map.getZoom(), { animate: false });
    },
    center: () => aim.position(),
    metresPerPixel() {
      const y = map.getSize().y / 2;
      return map.containerPointToLatLng([0, y]).distanceTo(map.containerPointToLatLng([100, y])) / 100;
    },
    locate,
    destroy() {
      tools.stop();
      keys.destroy();
      sizes.disconnect();
      grid.destroy();
      map.remove();
    },
  };
}
