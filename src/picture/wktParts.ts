/** The horizontal part of a compound system, and the base of a bound one. */
export function planePartOf(text: string): string {
  const start = text.search(/\b(PROJCS|PROJCRS|PROJECTEDCRS)\s*[[(]/i);
  const from =
    start >= 0 ? start : text.search(/\b(GEOGCS|GEOGCRS|GEODCRS|GEODETICCRS|GEOGRAPHICCRS)\s*[[(]/i);
  if (from < 0) return text;
  let depth = 0;
  for (let i = from; i < text.length; i++) {
    if (text[i] === '[' || text[i] === '(') depth++;
    if ((text[i] === ']' || text[i] === ')') && --depth === 0) return text.slice(from, i + 1);
  }
  return text.slice(from);
}

/** Mean shifts of datums that would need a grid file, or that the library does not know by their names. Source: EPSG:1173, 1314, 1777. */
const DATUM_SHIFTS: readonly (readonly [RegExp, readonly number[], number])[] = [
  [/North.?American.?(Datum.?)?1927|NAD.?27/i, [-8, 160, 176], 10],
  [/OSGB|Ordnance.?Survey/i, [446.448, -125.157, 542.06, 0.15, 0.247, 0.842, -20.489], 2],
  [/Deutsches.?Hauptdreiecksnetz|DHDN/i, [598.1, 73.7, 418.2, 0.202, 0.045, -2.455, 6.7], 3],
];
/** Datums that are taken as WGS 84, and by how much that may be off, metres (EPSG:1188, 9774, 1149). */
const NEAR_WGS84: readonly (readonly [RegExp, number])[] = [
  [/WGS.?(19)?84/i, 0],
  [/North.?American.?(Datum.?)?1983$|NAD.?83$/i, 4],
  [/North.?American|NAD.?83|NAD_1983/i, 2],
  [/ETRS|European.?Terrestrial|RGF.?93|SWEREF|GDA|Geocentric.?Datum/i, 3],
];

/** Mean shift to WGS 84 of a datum by its name in WKT: three or seven numbers (m, arc seconds, ppm); null: as the text says. */
export function shiftOfDatum(datum: string): readonly number[] | null {
  return DATUM_SHIFTS.find(([pattern]) => pattern.test(datum))?.[1] ?? null;
}

/** How well a datum named in WKT is brought to WGS 84, metres; null when not known. */
export function accuracyOfDatum(datum: string, wkt: string): number | null {
  const shifted = DATUM_SHIFTS.find(([pattern]) => pattern.test(datum));
  if (shifted !== undefined) return shifted[2];
  const near = NEAR_WGS84.find(([pattern]) => pattern.test(datum));
  return near?.[1] ?? (/TOWGS84/i.test(wkt) ? 5 : null);
}
