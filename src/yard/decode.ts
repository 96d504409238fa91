import { type DecodedFeature, decodeFeature, isMembers, without } from './decodeFeature';
import { DEFAULT_CAPS, NO_CLIMATE, SCHEMA_VERSION } from './defaults';
import { MEMBER } from './encode';
import { migrate } from './migrations';
import { readSettings } from './schema';
import {
  checkCapsShape,
  checkClimateShape,
  checkEquipmentShape,
  checkNeedShape,
  checkOverrideShape,
  checkProductShape,
  checkProgramShape,
  checkRuleShape,
  checkSoilTestShape,
  checkVisitShape,
} from './schemaPlan';
import type { Fault } from './shapes';
import type { Issue, Mark, Parcel, Yard, Zone } from './types';

/** What became of a file: the yard, and what was wrong with it. */
export interface DecodedYard {
  /** null when the value is no yard file at all, or one of a newer version. */
  readonly yard: Yard | null;
  /** every fault found; what an error names was left out of the yard. */
  readonly issues: readonly Issue[];
}

/**
 * Reads a yard from the object of its file, checking every part: good zones, products and visits
 * are kept, each bad one is left out and told. Older versions migrate. Self-crossing is not checked
 * here (see io/readGeoJson).
 * @param value anything, as from JSON.parse or storage; not changed
 */
export function yardFromGeoJson(value: unknown): DecodedYard {
  if (!isMembers(value) || value.type !== 'FeatureCollection' || !Array.isArray(value.features)) {
    return refused('not-a-collection', 'This is not a GeoJSON FeatureCollection.', '');
  }
  const before = value[MEMBER];
  if (!isMembers(before)) {
    return refused('no-yard-member', `The file has no “${MEMBER}” member, so it holds no yard.`, MEMBER);
  }
  const version = before.schemaVersion ?? 0;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return refused(
      'bad-version',
      'The version of the file is not a whole number.',
      `${MEMBER}.schemaVersion`,
    );
  }
  if (version > SCHEMA_VERSION) {
    return refused(
      'newer-version',
      `The file was written by a newer version of this program (file version ${version}; this one reads up to ${SCHEMA_VERSION}). Update the program to open it.`,
      `${MEMBER}.schemaVersion`,
    );
  }
  const file = migrate(value, version, SCHEMA_VERSION);
  const member = file[MEMBER] as Readonly<Record<string, unknown>>;
  const issues: Issue[] = [];
  const features = decodeFeatures(file.features as readonly unknown[], issues);

  const settings = readSettings(member.settings);
  tellFaults(
    settings.faults,
    `${MEMBER}.settings`,
    'The setting',
    'its usual value is used',
    'warning',
    issues,
  );

  const collection = without(file, ['type', 'features', 'bbox', MEMBER]);
  const more = without(member, ['schemaVersion', 'id', 'name', 'settings', ...LISTS, 'climate', 'caps']);
  const yard: Yard = {
    schemaVersion: SCHEMA_VERSION,
    id: text(member.id, 'yard', 'id', issues),
    name: text(member.name, 'Yard', 'name', issues),
    zones: features.zones,
    marks: features.marks,
    parcel: features.parcel,
    products: decodeList(member, 'products', 'product', checkProductShape, issues),
    equipment: decodeList(member, 'equipment', 'piece of equipment', checkEquipmentShape, issues),
    visits: decodeList(member, 'visits', 'visit', checkVisitShape, issues),
    soilTests: decodeList(member, 'soilTests', 'soil test', checkSoilTestShape, issues),
    needs: decodeList(member, 'needs', 'need', checkNeedShape, issues),
    climate: decodeOne(member, 'climate', checkClimateShape, NO_CLIMATE, issues),
    programs: decodeList(member, 'programs', 'program', checkProgramShape, issues),
    caps: decodeOne(member, 'caps', checkCapsShape, DEFAULT_CAPS, issues),
    rules: decodeList(member, 'rules', 'rule', checkRuleShape, issues),
    overrides: decodeList(member, 'overrides', 'override', checkOverrideShape, issues),
    settings: settings.settings,
    extra: {
      ...(collection && { collection }),
      ...(more && { member: more }),
      ...(features.others.length > 0 && { features: features.others }),
    },
  };
  return { yard, issues };
}

/** Reads the features of a yard file; `issues` gathers the faults. */
function decodeFeatures(values: readonly unknown[], issues: Issue[]) {
  const zones: Zone[] = [];
  const marks: Mark[] = [];
  const others: unknown[] = [];
  let parcel: Parcel | null = null;
  const used = new Set<string>();
  values.forEach((value, i) => {
    const path = `features[${i}]`;
    const decoded: DecodedFeature = decodeFeature(value, {
      path,
      fallbackId: `feature-${i + 1}`,
      needsKind: true,
      surveyMethod: 'imported',
    });
    issues.push(...decoded.issues);
    if (decoded.type === 'other') others.push(value);
    if (decoded.type === 'zone') zones.push(withFreeId(decoded.zone, used, path, issues));
    if (decoded.type === 'parcel') {
      if (parcel === null) parcel = decoded.parcel;
      else {
        const message = 'The file has more than one outline of the property; the first is used.';
        issues.push({ code: 'double-parcel', severity: 'warning', message, place: { path } });
        others.push(value);
      }
    }
    if (decoded.type === 'mark') marks.push(withFreeId(decoded.mark, used, path, issues));
  });
  return { zones, marks, others, parcel };
}

function withFreeId<T extends { readonly id: string; readonly name: string }>(
  item: T,
  used: Set<string>,
  path: string,
  issues: Issue[],
): T {
  let id = item.id;
  for (let n = 2; used.has(id); n++) id = `${item.id}-${n}`;
  used.add(id);
  if (id === item.id) return item;
  const message = `The id “${item.id}” stands twice in the file; the later one${item.name === '' ? '' : ` (“${item.name}”)`} is now “${id}”.`;
  issues.push({ code: 'double-id', severity: 'warning', message, place: { path: `${path}.id` } });
  return { ...item, id };
}

type Members = Readonly<Record<string, unknown>>;
type Check<T> = (value: unknown) => { ok: true; value: T } | { ok: false; faults: readonly Fault[] };

/** Lists of the yard's own member. */
const LISTS = [
  'products',
  'equipment',
  'visits',
  'soilTests',
  'needs',
  'programs',
  'rules',
  'overrides',
] as const;

function decodeList<T extends { readonly id: string }>(
  member: Members,
  key: (typeof LISTS)[number],
  what: string,
  check: Check<T>,
  issues: Issue[],
): readonly T[] {
  const value = member[key];
  const path = `${MEMBER}.${key}`;
  if (!Array.isArray(value)) {
    if (value !== undefined) {
      const message = `The list of ${what}s is damaged and was not read.`;
      issues.push({ code: 'bad-list', severity: 'error', message, place: { path } });
    }
    return [];
  }
  const items: T[] = [];
  value.forEach((raw, i) => {
    const at = `${path}[${i}]`;
    const result = check(raw);
    const name = isMembers(raw) && typeof raw.name === 'string' && raw.name !== '' ? ` (“${raw.name}”)` : '';
    const who = `${what.charAt(0).toUpperCase()}${what.slice(1)} ${i + 1}${name}`;
    if (!result.ok) {
      const code = `bad-${what.replaceAll(' ', '-')}`;
      tellFaults(result.faults, at, `${who}:`, 'it was left out', 'error', issues, code);
    } else if (items.some((item) => item.id === result.value.id)) {
      const message = `${who} has the id of an earlier one and was left out.`;
      issues.push({ code: 'double-id', severity: 'error', message, place: { path: `${at}.id` } });
    } else items.push(result.value);
  });
  return items;
}

/** A single member; a damaged one is told and its usual value used. */
function decodeOne<T>(member: Members, key: string, check: Check<T>, usual: T, issues: Issue[]): T {
  if (member[key] === undefined) return usual;
  const result = check(member[key]);
  if (result.ok) return result.value;
  tellFaults(result.faults, `${MEMBER}.${key}`, `The ${key}:`, 'its usual value is used', 'warning', issues);
  return usual;
}

function tellFaults(
  faults: readonly Fault[],
  path: string,
  who: string,
  consequence: string,
  severity: Issue['severity'],
  issues: Issue[],
  code = 'bad-setting',
): void {
  for (const fault of faults) {
    const what = fault.path === '' ? 'it' : fault.path;
    const joint = fault.path === '' || fault.path.startsWith('[') ? '' : '.';
    const message = `${who} ${what} ${fault.message}; ${consequence}.`;
    issues.push({ code, severity, message, place: { path: `${path}${joint}${fault.path}` } });
  }
}

function text(value: unknown, standIn: string, key: string, issues: Issue[]): string {
  if (typeof value === 'string' && (value !== '' || key === 'name')) return value;
  const message = `The ${key} of the yard is missing; “${standIn}” is used.`;
  issues.push({ code: `no-${key}`, severity: 'warning', message, place: { path: `${MEMBER}.${key}` } });
  return standIn;
}

function refused(code: string, message: string, path: string): DecodedYard {
  return { yard: null, issues: [{ code, severity: 'error', message, place: { path } }] };
}
