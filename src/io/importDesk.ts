import { searchCrs } from '../picture/crs';
import type { Issue, Position, Yard } from '../yard/types';
import { buildBatch } from './buildZones';
import type {
  BuildOptions,
  BuiltBatch,
  DeskContext,
  DeskCounts,
  DeskFilter,
  DeskOverview,
  DeskPage,
  DeskRow,
  DeskSketch,
} from './deskTypes';
import { createFilter } from './filterFeatures';
import { isMarkKind } from './guessKind';
import {
  type Candidate,
  FIRST_RULES,
  type ImportRules,
  MOST_CORNERS,
  MOST_ZONES,
  type NamedFile,
  type SourceFeature,
  type TargetKind,
} from './importTypes';
import { candidateOf, isTwin, type JudgeContext, judgeFeature } from './judgeFeature';
import { middleOfFile } from './middleOfFile';
import { readProjection } from './projection';
import { readAnyFiles } from './readAnyFile';
import { sketchOf } from './sketchFeatures';
import { summarizeFeatures } from './summarizeFeatures';

/** Features judged between two reports of progress. */
const JUDGED_AT_ONCE = 1_000;
/** Zones within this of the yard are ticked at first when there are too many to tick all, m. */
const NEAR_M = 100;
/** Zones built for one message, and corners. */
const BATCH_ZONES = 25;
const BATCH_CORNERS = 2_000;

/** A person's own word on one feature. */
interface Edit {
  readonly name?: string;
  readonly kind?: TargetKind;
}

/**
 * Everything read from the dropped files, and what is to come in of it. Lives in a worker; the page
 * asks it for counts, pages of the list, a sketch and at last the zones in batches.
 */
export class ImportDesk {
  private sources: SourceFeature[] = [];
  private candidates: Candidate[] = [];
  private issues: Issue[] = [];
  private judgeIssues: Issue[] = [];
  private fileCrs: string | null = null;
  private yard: Yard | null = null;
  private rules: ImportRules;
  private crsName: string | null = null;
  private judge: JudgeContext | null = null;
  private files: readonly NamedFile[] = [];
  private readonly edits = new Map<number, Edit>();
  private ticked = new Set<number>();
  private tickWords = '';
  private batch: number[] = [];

  /** @param onProgress share of the work done, 0 to 1, and what is being done */
  constructor(
    private readonly context: DeskContext,
    private readonly onProgress: (share: number, words: string) => void,
  ) {
    this.rules = { ...FIRST_RULES, checksTwins: context.checksTwins };
  }

  /** Reads the files and judges all features. */
  async open(files: readonly NamedFile[]): Promise<DeskOverview> {
    this.files = files;
    await this.read();
    await this.judgeAll();
    return this.overview();
  }

  /** Changes the rules and judges again; ticks start anew, but for what the yard has already. */
  async setRules(change: Partial<ImportRules>): Promise<DeskOverview> {
    if (Object.keys(change).join() === 'checksTwins') return this.judgeTwins(change);
    const isOther = change.csvRows !== undefined && change.csvRows !== this.rules.csvRows;
    this.rules = { ...this.rules, ...change };
    if (isOther) {
      const { crs } = this.rules;
      await this.read();
      this.rules = { ...this.rules, crs };
    }
    await this.judgeAll();
    return this.overview();
  }

  /** Judges those again that the open yard has already; all else stays as it is. */
  private judgeTwins(change: Partial<ImportRules>): DeskOverview {
    this.rules = { ...this.rules, ...change };
    if (!this.judge) throw new Error('nothing is open');
    const judge = { ...this.judge, rules: this.rules };
    this.judge = judge;
    this.candidates.forEach(({ areaM2, box }, index) => {
      const source = this.sources[index];
      if (!source || !box || !this.context.zones.some((zone) => isTwin(zone, areaM2, box))) return;
      const candidate = candidateOf(judgeFeature(source, judge));
      this.candidates[index] = candidate;
      if (candidate.outcome === 'offered') this.ticked.delete(index);
      else if (canComeIn(candidate)) this.ticked.add(index);
    });
    return this.overview();
  }

  private async read(): Promise<void> {
    this.sources = [];
    this.issues = [];
    this.yard = null;
    this.fileCrs = null;
    this.edits.clear();
    await readAnyFiles(this.files, this.rules, {
      add: (feature) => this.sources.push(feature),
      tell: (issue) => this.issues.push(issue),
      setCrs: (text) => {
        if (text !== null) this.fileCrs = text;
      },
      setYard: (yard) => {
        this.yard = yard;
      },
      progress: (share) => this.onProgress(0.5 * share, 'Reading'),
    });
    this.rules = { ...this.rules, crs: this.fileCrs };
  }

  private async judgeAll(): Promise<void> {
    const { rules, context, sources } = this;
    const projection = await readProjection(rules.crs);
    this.judgeIssues = projection.ok ? [...projection.issues] : [projection.issue];
    this.crsName = projection.ok && projection.toLonLat ? projection.name : null;
    const toLonLat = projection.ok ? projection.toLonLat : null;
    const { yardBox } = context;
    const anchor: Position | null = yardBox
      ? [(yardBox[0] + yardBox[2]) / 2, (yardBox[1] + yardBox[3]) / 2]
      : middleOfFile(sources, rules, toLonLat);
    const judge: JudgeContext = { rules, toLonLat, units: context.units, anchor, existing: context.zones };
    this.judge = judge;
    this.candidates = [];
    for (let from = 0; from < sources.length; from += JUDGED_AT_ONCE) {
      for (const source of sources.slice(from, from + JUDGED_AT_ONCE)) {
        this.candidates.push(candidateOf(judgeFeature(source, judge)));
      }
      this.onProgress(
        0.5 + (0.5 * (from + JUDGED_AT_ONCE)) / Math.max(sources.length, JUDGED_AT_ONCE),
        'Checking',
      );
      await Promise.resolve();
    }
    this.tickFirst();
  }

  /** All that can come in, while they are few enough; else those near the yard; else none. */
  private tickFirst(): void {
    const usable = this.indices((candidate) => ['zone', 'parcel', 'mark'].includes(candidate.outcome));
    const take = (indices: readonly number[]) => {
      this.ticked = new Set(this.onlyOneParcel(indices));
      const { zones, corners } = this.counts();
      return zones <= MOST_ZONES && corners <= MOST_CORNERS;
    };
    this.tickWords = '';
    if (take(usable)) return;
    const limit = `At most ${MOST_ZONES} zones and ${MOST_CORNERS.toLocaleString('en-US')} corners come in at once.`;
    const isNear = createFilter(
      { text: '', layer: null, show: 'all', near: { of: 'yard', withinM: NEAR_M } },
      this.context,
      () => false,
    );
    const near = this.context.yardBox ? usable.filter((index) => this.passes(isNear, index)) : [];
    if (near.length > 0 && take(near)) {
      this.tickWords = `${limit} Only those near the yard are ticked.`;
      return;
    }
    this.ticked = new Set();
    this.tickWords = `${limit} None is ticked: list those you need, by place or name, and tick them.`;
  }

  private onlyOneParcel(indices: readonly number[]): readonly number[] {
    let hasParcel = false;
    return indices.filter((index) => {
      if (this.kindOf(index) !== 'parcel') return true;
      const isFirst = !hasParcel;
      hasParcel = true;
      return isFirst;
    });
  }

  private indices(test: (candidate: Candidate, index: number) => boolean): number[] {
    return this.candidates.flatMap((candidate, index) => (test(candidate, index) ? [index] : []));
  }

  private kindOf(index: number): TargetKind {
    return this.edits.get(index)?.kind ?? this.candidates[index]?.kind ?? 'other';
  }

  private passes(filter: ReturnType<typeof createFilter>, index: number): boolean {
    const [source, candidate] = [this.sources[index], this.candidates[index]];
    return source !== undefined && candidate !== undefined && filter(source, candidate, index);
  }

  private matching(filter: DeskFilter): number[] {
    const passes = createFilter(filter, this.context, (index) => this.ticked.has(index));
    return this.indices((_, index) => this.passes(passes, index));
  }

  counts(): DeskCounts {
    const sum = { zones: 0, marks: 0, hasParcel: false, corners: 0, areaM2: 0 };
    for (const index of this.ticked) {
      const candidate = this.candidates[index];
      if (!candidate) continue;
      const kind = this.kindOf(index);
      if (isPointOf(candidate)) sum.marks += 1;
      else if (kind === 'parcel') sum.hasParcel = true;
      else {
        sum.zones += 1;
        sum.areaM2 += candidate.areaM2;
      }
      sum.corners += isPointOf(candidate) ? 0 : candidate.corners;
    }
    return sum;
  }

  overview(): DeskOverview {
    const { yard } = this;
    const summary = summarizeFeatures(this.sources, this.candidates);
    const unknown = this.judgeIssues.find((issue) => issue.code === 'unknown-crs');
    return {
      ...summary,
      issues: [...this.issues, ...this.judgeIssues],
      rules: this.rules,
      crsName: this.crsName,
      asksCrs: summary.asksCrs ?? unknown?.message ?? null,
      hasTable:
        this.sources.some((source) => /^Lines? \d/.test(source.place)) &&
        this.files.some((file) => !/json|ndjson/i.test(file.name)),
      yard: yard && { name: yard.name, products: yard.products.length, visits: yard.visits.length },
      tickWords: this.tickWords,
      counts: this.counts(),
    };
  }

  /** A page of the list. @param limit at most so many rows */
  list(filter: DeskFilter, offset: number, limit: number): DeskPage {
    const matching = this.matching(filter);
    return {
      total: matching.length,
      rows: matching.slice(offset, offset + limit).map((index) => this.row(index)),
    };
  }

  private row(index: number): DeskRow {
    const [source, candidate, edit] = [this.sources[index], this.candidates[index], this.edits.get(index)];
    if (!source || !candidate) throw new RangeError(`no feature ${index}`);
    const { outcome, name, corners, areaM2, notes } = candidate;
    return {
      index,
      place: source.place,
      layer: source.layer,
      name: edit?.name ?? name,
      outcome,
      kind: this.kindOf(index),
      isPoint: isPointOf(candidate),
      corners,
      areaM2,
      isTicked: this.ticked.has(index),
      notes,
    };
  }

  /** Ticks one feature, or all that a filter lists, as far as they can come in. */
  tick(which: number | DeskFilter, isOn: boolean): DeskCounts {
    const all = typeof which === 'number' ? [which] : this.matching(which);
    for (const index of all) {
      const candidate = this.candidates[index];
      if (!candidate || candidate.outcome === 'refused') continue;
      const isSingle = typeof which === 'number';
      if (!isOn) this.ticked.delete(index);
      else if (isSingle ? canComeIn(candidate) : ['zone', 'parcel', 'mark'].includes(candidate.outcome))
        this.ticked.add(index);
    }
    if (isOn && typeof which === 'number' && this.kindOf(which) === 'parcel') this.dropOtherParcels(which);
    else if (isOn) this.ticked = new Set(this.onlyOneParcel([...this.ticked]));
    return this.counts();
  }

  private dropOtherParcels(keep: number): void {
    for (const index of [...this.ticked]) {
      if (index !== keep && this.kindOf(index) === 'parcel') this.ticked.delete(index);
    }
  }

  /** The person's own name or kind for a feature, or for all that a filter lists. */
  edit(which: number | DeskFilter, change: Edit): DeskCounts {
    const all = typeof which === 'number' ? [which] : this.matching(which);
    for (const index of all) {
      const candidate = this.candidates[index];
      if (!candidate) continue;
      if (change.kind !== undefined && isMarkKind(change.kind) !== isPointOf(candidate)) continue;
      this.edits.set(index, { ...this.edits.get(index), ...change });
      if (change.kind === 'parcel' && typeof which === 'number' && this.ticked.has(index))
        this.dropOtherParcels(index);
    }
    this.ticked = new Set(this.onlyOneParcel([...this.ticked]));
    return this.counts();
  }

  /** Outlines of what a filter lists, beside the open yard's. */
  sketch(filter: DeskFilter, widthPx: number, heightPx: number): DeskSketch {
    const { judge } = this;
    if (!judge) throw new Error('nothing is open');
    return sketchOf(
      this.matching({ ...filter, show: filter.show === 'refused' ? 'refused' : filter.show }),
      (index) => this.ticked.has(index),
      (index) => judgeFeature(this.sources[index] as SourceFeature, judge),
      (index) => this.candidates[index]?.box ?? null,
      this.context,
      widthPx,
      heightPx,
    );
  }

  /** Reference systems by words of their names or the start of their code. */
  findCrs(words: string): Promise<readonly { readonly code: string; readonly name: string }[]> {
    return searchCrs(words);
  }

  /** Begins to build what is ticked. @returns how many batches of `nextBatch` follow at most */
  startBuild(): number {
    this.batch = [...this.ticked].sort((a, b) => a - b);
    return this.batch.length;
  }

  /** The next few zones; the first batch also brings marks, the lot and what is kept. */
  nextBatch(options: BuildOptions): BuiltBatch {
    const { judge } = this;
    if (!judge) throw new Error('nothing is open');
    const now: number[] = [];
    let corners = 0;
    for (let index = this.batch.shift(); index !== undefined; index = this.batch.shift()) {
      now.push(index);
      corners += this.candidates[index]?.corners ?? 0;
      if (now.length >= BATCH_ZONES || corners >= BATCH_CORNERS) break;
    }
    const isLast = this.batch.length === 0;
    const items = now.map((index) => {
      const source = this.sources[index] as SourceFeature;
      const judged = judgeFeature(source, judge);
      return {
        index,
        source,
        judged,
        name: this.edits.get(index)?.name ?? judged.name,
        kind: this.kindOf(index),
      };
    });
    const kept = isLast && options.keepOthers ? this.keptFeatures(judge) : [];
    const built = buildBatch(items, options);
    return {
      ...built,
      kept,
      yard: isLast && this.yard ? { ...this.yard, zones: [], marks: [], parcel: null } : null,
      isLast,
    };
  }

  /** Lines and points that become nothing, as they came; not from a file of another reference system. */
  private keptFeatures(judge: JudgeContext): unknown[] {
    if (judge.toLonLat !== null || judge.rules.isSwapped) return [];
    const others = this.indices(
      (candidate, index) => candidate.outcome === 'kept' && !this.ticked.has(index),
    );
    return others
      .slice(0, MOST_ZONES)
      .map((index): unknown => JSON.parse(this.sources[index]?.text ?? 'null'));
  }
}

function isPointOf(candidate: Candidate): boolean {
  return candidate.areaM2 === 0;
}

/** Whether a tick can bring it in: a point by itself becomes a mark. */
function canComeIn(candidate: Candidate): boolean {
  if (candidate.outcome === 'refused') return false;
  return candidate.outcome !== 'kept' || candidate.corners === 1;
}
