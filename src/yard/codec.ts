/** Both directions of the yard's file format. Reading carries the schema library: load it late. */
export { type DecodedYard, yardFromGeoJson } from './decode';
export { STORED_DECIMALS, type YardFile, yardToGeoJson } from './encode';
