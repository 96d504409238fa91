import type { Feature, FeatureCollection } from 'geojson';
import type { ExportShape, ExportShapes } from './exportShapes';

/** The shapes as a plain GeoJSON collection (RFC 7946) with figures as properties: areas in m², lengths in m. */
export function shapesToGeoJson({ shapes, marks }: ExportShapes): FeatureCollection {
  return {
    type: 'FeatureCollection',
    features: [
      ...shapes.map(
        (shape): Feature => ({
          type: 'Feature',
          id: shape.zone.id,
          geometry:
            shape.parts.length === 1
              ? { type: 'Polygon', coordinates: mutable(shape.parts[0] ?? []) }
              : { type: 'MultiPolygon', coordinates: shape.parts.map(mutable) },
          properties: propertiesOf(shape),
        }),
      ),
      ...marks.map(
        (mark): Feature => ({
          type: 'Feature',
          id: mark.id,
          geometry: { type: 'Point', coordinates: [...mark.position] },
          properties: { name: mark.name, kind: mark.kind },
        }),
      ),
    ],
  };
}

/** The collection as text, one feature a line. */
export function geoJsonText(shapes: ExportShapes): string {
  const { features } = shapesToGeoJson(shapes);
  return `{"type": "FeatureCollection",\n"features": [\n${features.map((each) => JSON.stringify(each)).join(',\n')}\n]}\n`;
}

function propertiesOf(shape: ExportShape): Record<string, string | number> {
  const { zone } = shape;
  return {
    name: zone.name,
    kind: zone.kind,
    ...(zone.mowing === null ? {} : { mowing: zone.mowing }),
    ...(zone.material === null ? {} : { material: zone.material }),
    ...(zone.note === '' ? {} : { note: zone.note }),
    grossAreaM2: figure(shape.grossM2),
    netAreaM2: figure(shape.netM2),
    netAreaPlusMinusM2: figure(shape.plusMinusM2),
    netPerimeterM: figure(shape.perimeterM),
  };
}

/** A figure to a millionth. */
function figure(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

function mutable(rings: ExportShape['parts'][number]): number[][][] {
  return rings.map((ring) => ring.map((position) => [...position]));
}

/** Text for an XML document: markup escaped, characters that XML 1.0 (section 2.2) forbids left out. */
export function escapeXml(text: string): string {
  return withoutControls(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** The text without characters that XML forbids: controls but tab and line ends, lone surrogates, U+FFFE and U+FFFF. */
export function withoutControls(text: string): string {
  return [...text]
    .filter((char) => {
      const code = char.codePointAt(0) ?? 0;
      return code > 0x1f
        ? !(code >= 0xd800 && code <= 0xdfff) && (code & 0xfffe) !== 0xfffe
        : [9, 10, 13].includes(code);
    })
    .join('');
}

/** A degree in plain decimals, never in exponents. */
export function degreesText(value: number): string {
  return value
    .toFixed(11)
    .replace(/\.?0+$/, '')
    .replace(/^-0$/, '0');
}
