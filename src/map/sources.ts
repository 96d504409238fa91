import type { BaseLayer, Issue } from '../yard/types';

/** Deepest zoom of the map; sources with coarser tiles are enlarged past their own last zoom. */
export const MAX_ZOOM = 22;

/**
 * Ready base layers. Nothing is asked of any of them until the person chooses one.
 * Both aerials are works of the United States government; acknowledgement is asked for.
 * Zooms: 16 is the deepest level the first one's tile cache is commonly taken to hold.
 */
export const READY_LAYERS: readonly BaseLayer[] = [
  { kind: 'grid' },
  {
    kind: 'xyz',
    id: 'ready-usgs-imagery',
    name: 'USGS The National Map: aerial',
    url: 'https://basemap.nationalmap.gov/arcgis/rest/services/USGSImageryOnly/MapServer/tile/{z}/{y}/{x}',
    attribution: 'Aerial: U.S. Geological Survey, The National Map',
    maxNativeZoom: 16,
  },
  {
    kind: 'wms',
    id: 'ready-usda-naip',
    name: 'USDA NAIP: aerial, 0.6 to 1 m a pixel',
    url: 'https://gis.apfo.usda.gov/arcgis/services/NAIP/USDA_CONUS_PRIME/ImageServer/WMSServer',
    layers: '0',
    version: '1.3.0',
    attribution: 'Aerial: USDA, National Agriculture Imagery Program',
  },
];

function fault(code: string, message: string): Issue {
  return { code, severity: 'error', message, place: {} };
}

function checkUrl(text: string, name: string): Issue | null {
  let url: URL;
  try {
    url = new URL(text, 'https://picture.invalid/');
  } catch {
    return fault('base-layer-url', `The address of “${name}” is not a web address.`);
  }
  if (['https:', 'http:', 'blob:'].includes(url.protocol) || text.startsWith('data:image/')) return null;
  return fault('base-layer-url', `The address of “${name}” must begin with https:// or http://.`);
}

const KNOWN_PLACES = new Set(['x', 'y', '-y', 'z', 's', 'r']);

/**
 * Whether a base layer can be asked for at all.
 * @returns issues in words; empty when it is fine. No request is made.
 */
export function checkBaseLayer(layer: BaseLayer): Issue[] {
  if (!('url' in layer)) return [];
  const badUrl = checkUrl(layer.url, layer.name);
  if (badUrl) return [badUrl];
  if (layer.kind === 'xyz') {
    const places = [...layer.url.matchAll(/\{ *([\w-]+) *\}/g)].map((match) => match[1] ?? '');
    const strange = places.find((place) => !KNOWN_PLACES.has(place));
    if (strange !== undefined) {
      return [
        fault('base-layer-place', `The address of “${layer.name}” holds {${strange}}, which is not known.`),
      ];
    }
    const hasAll =
      places.includes('z') && places.includes('x') && (places.includes('y') || places.includes('-y'));
    if (!hasAll) {
      return [fault('base-layer-place', `The address of “${layer.name}” must hold {z}, {x} and {y}.`)];
    }
  }
  if (layer.kind === 'wms' && layer.layers.trim() === '') {
    return [fault('base-layer-wms', `“${layer.name}” needs the name of at least one WMS layer.`)];
  }
  if (layer.kind === 'picture') {
    const edges = [layer.west, layer.south, layer.east, layer.north];
    const inRange = Math.abs(layer.south) <= 90 && Math.abs(layer.north) <= 90;
    if (!edges.every(Number.isFinite) || !inRange || layer.east <= layer.west || layer.north <= layer.south) {
      return [
        fault(
          'base-layer-edges',
          `The edges of “${layer.name}” must be degrees, west below east and south below north.`,
        ),
      ];
    }
  }
  return [];
}
