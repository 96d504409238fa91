/*
 * Makes crsTable.json from the package epsg-index (EPSG dataset): npx tsx src/picture/makeCrsTable.ts
 * Left out of it: all that `utmZones.ts` makes by formula. Grid files of datum shifts are not part of this
 * program; where the dataset asks for one, the published mean shift stands in, with its stated accuracy.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

interface Entry {
  readonly code: string;
  readonly kind: string;
  readonly name: string;
  readonly proj4: string | null;
  readonly accuracy: number | null;
}

/** Every plane system of the United States on these datums: state plane in m, ft and US survey ft, and county systems. */
const US = /^(NAD83|NAD83\(HARN\)|NAD83\(NSRS2007\)|NAD83\(2011\)|NAD27) \/ /;
/** National grids and common systems elsewhere, by EPSG code. */
const OTHERS = `
  3857 3395 4326 4269 4267 4258 4283 7844 4167 4674 4617 6318 4759 4152
  2945 2946 2947 2948 2949 2950 2951 2952 6372
  27700 29903 2157 28992 2154 27572 3942 3943 3944 3945 3946 3947 3948 3949 3950 2056 21781
  31466 31467 31468 31469 31254 31255 31256 31287 3416 31370 3812 2169
  3006 3007 3008 3009 3010 3011 3012 3013 3014 3015 3016 3017 3018 3067 3763 3035 3034 2100
  2180 2176 2177 2178 2179 5514 3794 3765 23700 3844 3301 3346 3059 3003 3004 7791 7792
  2193 3116 5880 7755 2039 3414 2326 3826 5179 5186
  ${Array.from({ length: 19 }, (_, i) => 6669 + i).join(' ')}`
  .trim()
  .split(/\s+/);

/**
 * Published mean shifts to WGS 84: EPSG transformation, three or seven numbers (m, arc seconds of the
 * position vector convention, parts per million), accuracy in m. In place of grid files, and of those
 * entries of epsg-index whose rotations have the other convention's sign. Read from the EPSG dataset as
 * PROJ 9.1 has it.
 */
const MEAN_SHIFTS: readonly (readonly [name: RegExp, shift: string, accuracyM: number])[] = [
  [/^NAD27 \/ Alaska/, '-5,135,172', 12], // EPSG:1176, Alaska mainland
  [/^NAD27/, '-8,160,176', 10], // EPSG:1173, conterminous United States
  [/^OSGB36/, '446.448,-125.157,542.06,0.15,0.247,0.842,-20.489', 2], // EPSG:1314
  [/^DHDN/, '598.1,73.7,418.2,0.202,0.045,-2.455,6.7', 3], // EPSG:1777
  [/^Amersfoort/, '565.4171,50.3319,465.5524,-0.398957388,0.343987817,-1.87740164,4.0725', 1], // EPSG:4833
  [/^LUREF/, '-189.6806,18.3463,-42.7695,-0.33746,-3.09264,2.53861,0.4598', 1], // EPSG:5486
  [/^BD72/, '-106.8686,52.2978,-103.7239,0.3366,-0.457,1.8422,-1.2747', 1], // EPSG:15929
  [/^Hong Kong 1980/, '-162.619,-276.959,-161.764,0.067753,-2.243648,-1.158828,-1.094246', 1], // EPSG:1825
  [/^NTF/, '-168,-60,320', 2], // EPSG:1193
  [/^Pulkovo 1942\(58\)/, '2.329,-147.042,-92.08,-0.309,0.325,0.497,5.69', 3], // EPSG:15995, Romania
  [/^Israel 1993/, '23.772,17.49,17.859,-0.3132,-1.85274,1.67299,-5.4262', 1], // EPSG:9676
];
/** NAD27 outside of the states on the mainland: no one mean shift of these holds there. */
const LEFT_OUT =
  /^NAD27 \/ (BLM|MTM|MTQ|Quebec|Alberta|Cuba|New Brunswick|Michigan Old|Alaska zone (9|10)\b|US National Atlas|.*Offshore)/;

const all = JSON.parse(
  readFileSync(fileURLToPath(import.meta.resolve('epsg-index/all.json')), 'utf8'),
) as Readonly<Record<string, Entry>>;

const rows = Object.values(all)
  .filter((one) => one.proj4 !== null && (OTHERS.includes(one.code) || isUsPlane(one)))
  .sort((a, b) => Number(a.code) - Number(b.code))
  .map((one) => [one.code, rowOf(one)] as const);

function isUsPlane({ kind, name }: Entry): boolean {
  return kind === 'CRS-PROJCRS' && US.test(name) && !/ \/ UTM zone /.test(name) && !LEFT_OUT.test(name);
}

function rowOf({ name, proj4, accuracy }: Entry): readonly [string, string, number] {
  const plain = (proj4 ?? '').replace(/ \+(no_defs|type=crs|wktext)\b/g, '');
  if (/^NAD83\b/.test(name)) {
    // its versions differ from WGS 84 and one another by 1 to 2 m (EPSG:1188 states 4 m, EPSG:9774 2 m): left out
    const bare = plain.replace(/ \+towgs84=\S+/, '').replace(/\+datum=NAD83/, '+ellps=GRS80');
    return [name, bare, accuracy ?? 2];
  }
  const shift = MEAN_SHIFTS.find(([pattern]) => pattern.test(name));
  if (shift !== undefined) {
    const bare = plain.replace(/ \+(nadgrids|towgs84)=\S+/, '').replace(/\+datum=NAD27/, '+ellps=clrk66');
    return [name, `${bare} +towgs84=${shift[1]}`, shift[2]];
  }
  return [name, plain, accuracy ?? (/^WGS 84/.test(name) ? 0 : 1)];
}

const text = rows.map(([code, row]) => `  ${JSON.stringify(code)}: ${JSON.stringify(row)}`).join(',\n');
writeFileSync(fileURLToPath(new URL('./crsTable.json', import.meta.url)), `{\n${text}\n}\n`);
