import type { BuildOptions, BuiltBatch } from '../../io/deskTypes';
import type { ImportClient } from '../../io/importClient';
import { freeName, KIND_WORDS, MARK_WORDS } from '../../words/zoneWords';
import { emptyYard } from '../../yard/defaults';
import { rename, setParcel } from '../../yard/edits';
import type { Mark, Parcel, Yard, Zone } from '../../yard/types';
import type { AppController } from '../app-controller';
import { YardLibrary } from '../yard-library';
import type { ImportPlace } from './import-preview';
import { findSlipsLate } from './import-slips';

/** Zones up to this many, with so few corners, are measured in one go. */
const FEW_ZONES = 12;
const FEW_CORNERS = 400;
/** Work in one go at most about so long, ms; a frame follows. */
const SLICE_MS = 18;

/** What was gathered from the reader. */
export interface Gathered {
  readonly zones: readonly Zone[];
  readonly marks: readonly Mark[];
  readonly parcel: Parcel | null;
  readonly kept: readonly unknown[];
  /** the document of a whole yard's file, without its ground. */
  readonly yard: Yard | null;
}

/** Fetches everything ticked from the reader, batch by batch. */
export async function gather(client: ImportClient, options: BuildOptions): Promise<Gathered> {
  const zones: Zone[] = [];
  const marks: Mark[] = [];
  const kept: unknown[] = [];
  let parcel: Parcel | null = null;
  await client.startBuild();
  for (;;) {
    const batch: BuiltBatch = await client.nextBatch(options);
    zones.push(...batch.zones);
    marks.push(...batch.marks);
    kept.push(...batch.kept);
    parcel ??= batch.parcel;
    if (batch.isLast) return { zones, marks, parcel, kept, yard: batch.yard };
  }
}

/**
 * Brings what was gathered into the open yard as one step of undo, or makes a new yard of it. Zones are
 * measured a few at a time as passing states, so that the page never stands still; the document changes
 * once, at the end. @param isWanted asked between the slices: false gives it up and leaves the yard as it was
 * @param onProgress share of the zones measured, 0 to 1
 * @returns ids of the new zones; null when given up
 */
export async function bringIn(
  app: AppController,
  gathered: Gathered,
  place: ImportPlace,
  name: string,
  isWanted: () => boolean,
  onProgress: (share: number) => void,
): Promise<readonly string[] | null> {
  if (place === 'new') await openNewYard(app, gathered, name);
  const isWhole = place === 'new' && gathered.yard !== null;
  const zones = named(gathered.zones, app.yard, (zone) => KIND_WORDS[zone.kind], 'zone', app, isWhole);
  const marks = named(gathered.marks, app.yard, (mark) => MARK_WORDS[mark.kind], 'mark', app, isWhole);
  await measureInSlices(app, zones, isWanted, onProgress);
  if (!isWanted()) {
    app.session.preview(null);
    return null;
  }
  const count = zones.length === 1 ? '1 zone' : `${zones.length} zones`;
  app.dispatch(zones.length > 0 ? `Bring in ${count}` : 'Bring in from a file', (yard) => {
    const { features = [] } = yard.extra;
    const grown: Yard = {
      ...yard,
      zones: [...yard.zones, ...zones],
      marks: [...yard.marks, ...marks],
      ...(gathered.kept.length > 0 && {
        extra: { ...yard.extra, features: [...features, ...gathered.kept] },
      }),
    };
    return gathered.parcel ? setParcel(grown, gathered.parcel) : grown;
  });
  if (isFew(zones)) app.fitSoon(zones.length > 0 ? zones.map((zone) => zone.id) : undefined);
  else findSlipsLate(app);
  return zones.map((zone) => zone.id);
}

/** The new yard without its ground: products, visits and settings of a whole yard's file, or nothing. */
async function openNewYard(app: AppController, { yard }: Gathered, name: string): Promise<void> {
  const id = app.newId('yard');
  const library = new YardLibrary(app);
  const base = yard
    ? { ...yard, id }
    : { ...emptyYard(id, name), settings: { ...emptyYard(id, name).settings, units: app.units } };
  await library.take(rename(base, library.freeYardName((yard ? base.name : name).trim() || 'Yard')));
}

/** New ids (the visits of a whole yard name its zones, so those keep theirs), and a name for each that has none. */
function named<T extends { readonly id: string; readonly name: string }>(
  items: readonly T[],
  yard: Yard,
  wordOf: (item: T) => string,
  prefix: string,
  app: AppController,
  keepsIds: boolean,
): T[] {
  const taken = [...yard.zones, ...yard.marks].map((each) => each.name);
  const ids = new Set<string>();
  return items.map((item) => {
    const name = item.name.trim() === '' ? freeName(wordOf(item), taken) : item.name;
    taken.push(name);
    const id = keepsIds && !ids.has(item.id) ? item.id : app.newId(prefix);
    ids.add(id);
    return { ...item, name, id };
  });
}

async function measureInSlices(
  app: AppController,
  zones: readonly Zone[],
  isWanted: () => boolean,
  onProgress: (share: number) => void,
): Promise<void> {
  if (isFew(zones)) return;
  const before = app.session.yard;
  // the outermost first: so the yard's plane is settled from the start, and no zone is measured twice
  const order = outermostFirst(zones);
  // the list of overlaps and gaps waits, as it does during a drag
  app.beforeReshape = before;
  try {
    const first = Math.min(4, order.length);
    let count = first;
    let step = 4;
    for (;;) {
      const start = performance.now();
      const chosen = new Set(order.slice(0, count));
      app.session.preview({
        ...before,
        zones: [...before.zones, ...zones.filter((zone) => chosen.has(zone))],
      });
      const { derived } = app.session;
      void derived.measured;
      await nextFrame();
      const took = performance.now() - start;
      // the outermost zones are there: the map goes to them now, while it has little to draw anew
      if (count === first) app.map?.fit(order.slice(0, first).map((zone) => zone.id));
      onProgress(count / order.length);
      if (count >= order.length || !isWanted()) return;
      step = Math.max(1, Math.min(40, Math.round((step * SLICE_MS) / Math.max(4, took))));
      count = Math.min(order.length, count + step);
    }
  } finally {
    app.beforeReshape = null;
  }
}

function isFew(zones: readonly Zone[]): boolean {
  const corners = zones.reduce((sum, zone) => sum + zone.parts.flat(2).length, 0);
  return zones.length <= FEW_ZONES && corners <= FEW_CORNERS;
}

function outermostFirst(zones: readonly Zone[]): Zone[] {
  const firstOf = (zone: Zone) => zone.parts[0]?.[0]?.[0] ?? ([0, 0] as const);
  const by = (axis: 0 | 1) => zones.toSorted((a, b) => firstOf(a)[axis] - firstOf(b)[axis]);
  const [lon, lat] = [by(0), by(1)];
  const outer = [lon[0], lon.at(-1), lat[0], lat.at(-1)].filter((zone) => zone !== undefined);
  return [...new Set([...outer, ...zones])];
}

function nextFrame(): Promise<void> {
  return new Promise((resolve) => {
    // a page in the background gets no frames
    const timer = setTimeout(resolve, 100);
    requestAnimationFrame(() => {
      clearTimeout(timer);
      setTimeout(resolve);
    });
  });
}
