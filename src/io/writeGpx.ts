import type { ExportShapes } from './exportShapes';
import { degreesText, escapeXml } from './writeShapes';

/**
 * The shapes as a GPX 1.1 document (topografix.com/GPX/1/1): each outline is a closed track, each mark a
 * waypoint. GPX knows no areas: a hole is a track of its own of the type `hole`.
 */
export function gpxText({ shapes, marks }: ExportShapes): string {
  const tag = (name: string, text: string) => (text === '' ? '' : `<${name}>${escapeXml(text)}</${name}>`);
  const points = marks.map(
    ({ position: [lon, lat], name, kind }) =>
      `<wpt lat="${degreesText(lat)}" lon="${degreesText(lon)}">${tag('name', name)}${tag('type', kind)}</wpt>`,
  );
  const tracks = shapes.flatMap(({ zone, parts }) =>
    parts.flatMap((rings, part) =>
      rings.map((ring, i) => {
        const own = parts.length === 1 ? zone.name : `${zone.name} ${part + 1}`;
        const corners = ring.map(
          ([lon, lat]) => `<trkpt lat="${degreesText(lat)}" lon="${degreesText(lon)}"/>`,
        );
        const name = i === 0 ? own : `${own}, hole ${i}`;
        return `<trk>${tag('name', name)}${tag('desc', i === 0 ? zone.note : '')}${tag('type', i === 0 ? zone.kind : 'hole')}<trkseg>\n${corners.join('\n')}\n</trkseg></trk>`;
      }),
    ),
  );
  const head =
    '<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="Measured Yard" xmlns="http://www.topografix.com/GPX/1/1">';
  return `${[head, ...points, ...tracks, '</gpx>'].join('\n')}\n`;
}
