import type { Way } from '../app';

/** What each way is called, and when it serves. */
export const WAY_WORDS: Readonly<Record<Way, { readonly name: string; readonly when: string }>> = {
  picture: { name: 'A picture of your own', when: 'A drone photo, a screenshot or a scan to trace over' },
  tape: { name: 'Tape', when: 'Lengths, and offsets from a base line' },
  plat: { name: 'Plat or deed', when: 'Sides, bearings and curves as written' },
  walk: { name: 'Walk', when: 'Round the ground with the phone' },
  corners: { name: 'Corners by coordinates', when: 'Latitude and longitude of each corner' },
  file: { name: 'A file', when: 'GeoJSON, KML, GPX, shapefile, CSV' },
  parcel: { name: 'Outline of the property', when: 'Checks that every bit of ground is in a zone' },
};
