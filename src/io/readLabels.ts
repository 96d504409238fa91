import { yardFromGeoJson } from '../yard/decode';
import { MEMBER } from '../yard/encode';
import type { Issue } from '../yard/types';
import { parseJson } from './parseJson';
import { type LabelsRead, readLabelsCsv } from './readLabelsCsv';
import { LABELS_MEMBER } from './writeLabels';

/**
 * Reads labels from the text of a file, told by its content: a file of labels, a whole yard (its shelf is
 * taken), or a table. Older versions migrate as yards do. Nothing is thrown: what is wrong is told, with
 * its line or its path in the file, and a label that cannot be read is left out.
 */
export function readLabels(text: string): LabelsRead {
  if (!/^\uFEFF?\s*[{[]/.test(text)) return readLabelsCsv(text);
  const parsed = parseJson(text);
  if (!parsed.ok) return { products: [], issues: [parsed.issue] };
  const { value } = parsed;
  if (!isMembers(value)) return refused(NO_LABELS, '');
  const member = value[LABELS_MEMBER];
  if (member === undefined && isMembers(value[MEMBER])) return shelfOf(value, `${MEMBER}.products`);
  if (!isMembers(member)) return refused(NO_LABELS, LABELS_MEMBER);
  const { version } = member;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return refused('The version of the file is not a whole number.', `${LABELS_MEMBER}.version`);
  if (!Array.isArray(value.products)) return refused('The file has no list of products.', 'products');
  const yard = { schemaVersion: version, id: 'labels', name: 'Labels', products: value.products };
  return shelfOf({ type: 'FeatureCollection', features: [], [MEMBER]: yard }, 'products');
}

const NO_LABELS = `This file holds no labels: it has neither a “${LABELS_MEMBER}” nor a “${MEMBER}” member.`;

/** The shelf of a yard file. @param path what the list of products is called in the file that was opened */
function shelfOf(file: unknown, path: string): LabelsRead {
  const { yard, issues } = yardFromGeoJson(file);
  const own = `${MEMBER}.products`;
  const told = issues.flatMap((issue): Issue[] => {
    if (yard === null) return [issue];
    const at = issue.place.path ?? '';
    return at.startsWith(own) ? [{ ...issue, place: { path: `${path}${at.slice(own.length)}` } }] : [];
  });
  const products = yard?.products ?? [];
  if (products.length === 0 && told.length === 0) return refused('There is no product in this file.', path);
  return { products, issues: told };
}

function isMembers(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function refused(message: string, path: string): LabelsRead {
  return { products: [], issues: [{ code: 'labels-unread', severity: 'error', message, place: { path } }] };
}
