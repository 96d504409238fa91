import type { Issue, Position, Ring, Rings } from './types';

/** A fault of coordinates; `message` is the end of a sentence. */
export interface GeometryFault {
  readonly code: string;
  readonly severity: Issue['severity'];
  readonly message: string;
  readonly path: string;
}

/** A ring whose ends are this close, in degrees, is taken as closed by oversight: about 1 m of latitude. */
const ALMOST_CLOSED_DEG = 1e-5;

/**
 * Reads the coordinates of one polygon (RFC 7946, section 3.1.6). Either winding is taken as it is.
 * A ring that is not closed is closed; a third number (height) is left out: both are told as notes.
 * @param path path of `value` in the file, for the faults
 * @returns the rings (complete only when no fault is an error) and every fault found
 */
export function decodeRings(
  value: unknown,
  path: string,
): { readonly rings: Rings; readonly faults: readonly GeometryFault[] } {
  const faults: GeometryFault[] = [];
  if (!Array.isArray(value) || value.length === 0) {
    faults.push({
      code: 'no-coordinates',
      severity: 'error',
      message: 'a polygon of it has no rings.',
      path,
    });
    return { rings: [], faults };
  }
  const rings = value.map((ring, i) => decodeRing(ring, `${path}[${i}]`, faults));
  return { rings, faults };
}

function decodeRing(value: unknown, path: string, faults: GeometryFault[]): Ring {
  if (!Array.isArray(value)) {
    faults.push({
      code: 'bad-ring',
      severity: 'error',
      message: 'a ring must be a list of positions.',
      path,
    });
    return [];
  }
  const before = faults.length;
  let height = false;
  /** first fault of each code, and how many follow: one ring of another system must not give a thousand issues. */
  const firsts = new Map<string, { fault: GeometryFault; more: number }>();
  const positions: Position[] = [];
  value.forEach((item, i) => {
    const decoded = decodePoint(item, `${path}[${i}]`);
    for (const fault of decoded.faults) {
      if (fault.code === 'height-left-out') height = true;
      else {
        const first = firsts.get(fault.code);
        if (first === undefined) firsts.set(fault.code, { fault, more: 0 });
        else first.more++;
      }
    }
    if (decoded.position !== null) positions.push(decoded.position);
  });
  for (const { fault, more } of firsts.values()) {
    const also =
      more === 0 ? '' : ` ${more} more of this ring ${more === 1 ? 'has' : 'have'} the same fault.`;
    faults.push({ ...fault, message: fault.message + also });
  }
  if (height) faults.push(heightFault(path));
  if (faults.slice(before).some((fault) => fault.severity === 'error')) return [];
  return closeRing(positions, path, faults);
}

function closeRing(positions: Position[], path: string, faults: GeometryFault[]): Ring {
  const first = positions[0];
  const last = positions.at(-1);
  let ring = positions;
  if (first !== undefined && last !== undefined && (first[0] !== last[0] || first[1] !== last[1])) {
    const near = Math.hypot(first[0] - last[0], first[1] - last[1]) <= ALMOST_CLOSED_DEG;
    // Ends that nearly meet are one corner written twice; ends that are apart miss the closing position.
    ring = near && positions.length > 3 ? [...positions.slice(0, -1), first] : [...positions, first];
    const message = 'its ring did not end where it began and was closed.';
    faults.push({ code: 'ring-closed', severity: 'note', message, path });
  }
  const corners = new Set(ring.map(([lon, lat]) => `${lon},${lat}`)).size;
  if (ring.length < 4 || corners < 3) {
    const message = `a ring needs at least 3 different corners and has ${corners}.`;
    faults.push({ code: 'too-few-positions', severity: 'error', message, path });
  }
  return ring;
}

/**
 * Reads one position: longitude, latitude in degrees (RFC 7946, section 3.1.1).
 * @returns position null when a fault is an error
 */
export function decodePoint(
  value: unknown,
  path: string,
): { readonly position: Position | null; readonly faults: readonly GeometryFault[] } {
  const fail = (code: string, message: string) => ({
    position: null,
    faults: [{ code, severity: 'error' as const, message, path }],
  });
  if (!Array.isArray(value) || value.length < 2) {
    return fail('bad-position', 'a position must be a list of longitude and latitude.');
  }
  const [lon, lat] = value as unknown[];
  if (typeof lon !== 'number' || typeof lat !== 'number' || !Number.isFinite(lon) || !Number.isFinite(lat)) {
    return fail('not-a-number', `a coordinate is not a finite number (${show(lon)}, ${show(lat)}).`);
  }
  if (Math.abs(lat) > 90 && Math.abs(lat) <= 180 && Math.abs(lon) <= 90) {
    return fail(
      'swapped-order',
      `the latitude ${lat} is beyond 90 degrees; latitude and longitude look swapped (GeoJSON has longitude first).`,
    );
  }
  if (Math.abs(lat) > 90 || Math.abs(lon) > 360) {
    return fail(
      'out-of-range',
      `(${lon}, ${lat}) is no longitude and latitude in degrees; a file in metres or feet must be exported as WGS 84 first.`,
    );
  }
  const faults = value.length > 2 ? [heightFault(path)] : [];
  return { position: [lon, lat], faults };
}

function heightFault(path: string): GeometryFault {
  return { code: 'height-left-out', severity: 'note', message: 'heights in it are left out.', path };
}

function show(value: unknown): string {
  return typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? 'nothing');
}

/** `features[3]` as a person counts: "Feature 4". */
export function formatPlacePath(path: string): string {
  const match = /^features\[(\d+)\]/.exec(path);
  return match === null ? path : `Feature ${Number(match[1]) + 1}`;
}
