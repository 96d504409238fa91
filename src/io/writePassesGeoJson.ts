import type { Feature, FeatureCollection, Position } from 'geojson';
import type { ExportedFile } from './exportFile';
import {
  type PassesExport,
  passesFileName,
  passesIssues,
  type WrittenDose,
  writtenDoses,
} from './writePasses';

/**
 * The walks of a visit as a GeoJSON collection (RFC 7946): a LineString for each leg in walking order, a
 * Point for each run-out mark. Lengths in m, areas in m², `left` as a share of the full vessel.
 */
export function passesGeoJson(input: PassesExport): ExportedFile {
  const doses = writtenDoses(input);
  const features = doses.flatMap(featuresOf);
  const collection: FeatureCollection = { type: 'FeatureCollection', features };
  return {
    name: passesFileName(input, '.geojson'),
    mediaType: 'application/geo+json',
    content: `{"type": "${collection.type}",\n"features": [\n${features.map((each) => JSON.stringify(each)).join(',\n')}\n]}\n`,
    count: features.length,
    issues: passesIssues(input, doses),
  };
}

function featuresOf({ dose, productName, legs, marks }: WrittenDose): Feature[] {
  const shared = { dose: dose.doseId, product: productName };
  return [
    ...legs.map(
      ({ leg, index, number, zoneName, line }): Feature => ({
        type: 'Feature',
        id: `${dose.doseId}/leg/${index + 1}`,
        geometry: { type: 'LineString', coordinates: line.map((at): Position => [...at]) },
        properties: {
          ...shared,
          order: index + 1,
          kind: leg.kind,
          zone: zoneName,
          zoneId: leg.zoneId,
          coat: leg.coat,
          number,
          lengthM: figure(leg.lengthM),
        },
      }),
    ),
    ...marks.map(
      ({ mark, name, zoneName, at }, i): Feature => ({
        type: 'Feature',
        id: `${dose.doseId}/mark/${i + 1}`,
        geometry: { type: 'Point', coordinates: [...at] },
        properties: {
          ...shared,
          kind: 'run-out-mark',
          name,
          zone: zoneName,
          zoneId: mark.zoneId,
          vessel: mark.kind,
          number: mark.number,
          left: mark.left,
          leg: mark.legIndex + 1,
          alongM: figure(mark.alongM),
          doneM2: figure(mark.doneM2),
        },
      }),
    ),
  ];
}

/** A figure to a thousandth. */
function figure(value: number): number {
  return Math.round(value * 1e3) / 1e3;
}
