import type { Position } from '../yard/types';
import type { ExportedFile } from './exportFile';
import {
  type PassesExport,
  passesFileName,
  passesIssues,
  type WrittenDose,
  type WrittenLeg,
  writtenDoses,
} from './writePasses';
import { degreesText, escapeXml } from './writeShapes';

/**
 * The walks of a visit as a GPX 1.1 document (topografix.com/GPX/1/1): a waypoint for each run-out mark, a
 * track for each zone and coat in walking order, ways between zones as tracks of the type `way`. No times:
 * it is a plan.
 */
export function passesGpx(input: PassesExport): ExportedFile {
  const doses = writtenDoses(input);
  const points = doses.flatMap(waypointsOf);
  const tracks = doses
    .flatMap(({ productName, legs }) => runsOf(legs).map((run) => ({ productName, run })))
    .map(({ productName, run }, i) => trackOf(productName, run, i + 1));
  const title = [input.yard.name, input.visit.visit.name].filter((text) => text.trim() !== '').join(', ');
  const head =
    '<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="Measured Yard" xmlns="http://www.topografix.com/GPX/1/1">';
  const metadata = title === '' ? [] : [`<metadata>${tag('name', title)}</metadata>`];
  return {
    name: passesFileName(input, '.gpx'),
    mediaType: 'application/gpx+xml',
    content: `${[head, ...metadata, ...points, ...tracks, '</gpx>'].join('\n')}\n`,
    count: points.length + tracks.length,
    issues: passesIssues(input, doses),
  };
}

function tag(name: string, text: string): string {
  return text === '' ? '' : `<${name}>${escapeXml(text)}</${name}>`;
}

function place(name: 'wpt' | 'trkpt', [lon, lat]: Position): string {
  return `<${name} lat="${degreesText(lat)}" lon="${degreesText(lon)}"`;
}

function waypointsOf({ marks, productName }: WrittenDose): string[] {
  return marks.map(({ name, zoneName, at }) => {
    const desc = [productName, zoneName].filter((text) => text !== '').join(', ');
    return `${place('wpt', at)}>${tag('name', name)}${tag('desc', desc)}<type>run-out mark</type></wpt>`;
  });
}

/** Legs of one zone and coat that follow each other; a way between zones is a run of its own. */
function runsOf(legs: readonly WrittenLeg[]): readonly (readonly WrittenLeg[])[] {
  const runs: WrittenLeg[][] = [];
  for (const each of legs) {
    const before = runs.at(-1)?.[0];
    const isSame = before?.leg.zoneId === each.leg.zoneId && before.leg.coat === each.leg.coat;
    if (isSame) runs.at(-1)?.push(each);
    else runs.push([each]);
  }
  return runs;
}

function trackOf(productName: string, run: readonly WrittenLeg[], number: number): string {
  const first = run[0] as WrittenLeg;
  const isWay = first.leg.zoneId === null;
  const isSecond = first.leg.coat === 2;
  const name = [productName, isWay ? 'way between zones' : first.zoneName, isSecond ? 'second coat' : '']
    .filter((text) => text !== '')
    .join(', ');
  const points: Position[] = [];
  for (const at of run.flatMap(({ line }) => line)) {
    const last = points.at(-1);
    if (last?.[0] !== at[0] || last[1] !== at[1]) points.push(at);
  }
  const lines = points.map((at) => `${place('trkpt', at)}/>`);
  return `<trk>${tag('name', name)}<number>${number}</number><type>${isWay ? 'way' : 'passes'}</type><trkseg>\n${lines.join('\n')}\n</trkseg></trk>`;
}
