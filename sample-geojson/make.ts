/**
 * Writes the three sample yards and the aerial-like picture of the first from shapes known in metres.
 * Run: npm run sample. The picture is linear in longitude and latitude (equirectangular over its small box).
 */
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { yardToGeoJson } from '../src/yard/codec';
import type { BaseLayer, Yard } from '../src/yard/types';
import { PICTURE, paintPicture } from './picture/paintPicture';
import { cornerLotFrame, cornerLotYard } from './yards/cornerLot';
import { longAcreYard } from './yards/longAcre';
import { townhouseYard } from './yards/townhouse';

const folder = dirname(fileURLToPath(import.meta.url));
const [west, south] = cornerLotFrame.place([PICTURE.westM, PICTURE.southM]);
const [east, north] = cornerLotFrame.place([PICTURE.westM + PICTURE.sideM, PICTURE.southM + PICTURE.sideM]);

const picture: BaseLayer = {
  kind: 'picture',
  id: 'sample-picture',
  name: 'Drawn aerial picture of the sample',
  url: 'sample:corner-lot-picture',
  west,
  south,
  east,
  north,
  attribution: 'Drawn from known shapes; no real place',
};

function writeYard(file: string, yard: Yard): void {
  writeFileSync(join(folder, file), `${JSON.stringify(yardToGeoJson(yard), null, 1)}\n`);
}

writeYard('corner-lot.geojson', cornerLotYard(picture));
writeYard('townhouse.geojson', townhouseYard());
writeYard('long-acre.geojson', longAcreYard());
writeFileSync(join(folder, 'corner-lot-picture.png'), paintPicture());
writeFileSync(
  join(folder, 'corner-lot-picture.json'),
  `${JSON.stringify({ west, south, east, north, mPerPx: PICTURE.mPerPx, projection: 'linear in longitude and latitude' }, null, 2)}\n`,
);
