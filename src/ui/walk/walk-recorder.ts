import { createWalkStore, type WalkDraft, type WalkStore } from '../../session/walkDraft';
import { findWalkedOff } from '../../survey/walk/findWalkedOff';
import { judgeFix, NONE_REJECTED } from '../../survey/walk/judgeFix';
import type { Fix, JudgedFixes, PoorFix, Stand, WalkOptions, WalkResult } from '../../survey/walk/types';
import { OPEN_SKY_ACCURACY_M } from '../../survey/walk/walkDefaults';
import { walkFromTrack } from '../../survey/walk/walkFromTrack';
import type { Issue } from '../../yard/types';
import { keepScreenOn, type ScreenKeeper } from './screen-keeper';
import { troubleOf } from './walk-words';

export type WalkState = 'none' | 'paused' | 'walking' | 'ended';

/** A corner needs this many positions before it is taken by itself. */
const LEAST_AT_CORNER = 5;
/** No position for so long is told. */
const QUIET_MS = 20_000;
/** A whole day at one position a second is no walk. */
const MOST_FIXES = 20_000;

/** A long walk is worked out anew only after so many times what it took: the phone has more to do. */
const REST = 10;

/** The outline worked out last: of how many positions, when, and how long it took. */
interface Made {
  readonly key: string;
  readonly count: number;
  readonly result: WalkResult;
  readonly atMs: number;
  readonly tookMs: number;
}

/** The last position that came, and what became of it. */
export interface LastFix {
  readonly fix: Fix;
  readonly fault: PoorFix | null;
}

/** A corner that was stood at: its number, its positions, and those left out because the person had walked on. */
export interface TakenCorner {
  readonly number: number;
  readonly count: number;
  readonly leftOut: number;
}

/**
 * Records a walk: listens to the device's location, judges each position, keeps the draft stored and the
 * screen on.
 */
export class WalkRecorder {
  draft: WalkDraft | null = null;
  state: WalkState = 'none';
  last: LastFix | null = null;
  counts: JudgedFixes['rejected'] = NONE_REJECTED;
  accepted: Fix[] = [];
  /** what the last stand came to. */
  taken: TakenCorner | null = null;
  /** what hinders the recording just now. */
  trouble: Issue | null = null;
  isScreenKept = false;
  /** the walk put aside last, kept as a zone or thrown away: while the page is open it can be taken up again. */
  aside: WalkDraft | null = null;

  private watch: number | null = null;
  private keeper: ScreenKeeper | null = null;
  private quiet: ReturnType<typeof setTimeout> | undefined;
  /** least delay seen between the receiver's clock and this one: the rest of a delay is age. */
  private leastDelayMs = Number.POSITIVE_INFINITY;
  private made: Made | null = null;

  /** told after everything that can be seen. */
  listener: (() => void) | null = null;
  /** grows with every change. */
  ticks = 0;

  constructor(private readonly store: WalkStore = createWalkStore()) {}

  private changed(): void {
    this.ticks += 1;
    this.listener?.();
  }

  /** Fetches the unfinished walk of a yard, paused; a stand or stretch that a reload broke off is ended. */
  async open(yardId: string): Promise<void> {
    if (this.draft?.yardId === yardId) return;
    this.stopListening();
    this.take(null);
    try {
      this.take(await this.store.load(yardId));
      this.endStand();
    } catch {
      this.trouble = notKept('What was walked before could not be read from this browser’s store.');
    }
    this.changed();
  }

  begin(draft: WalkDraft): void {
    this.take(draft);
    this.save();
    this.listen();
  }

  /** Goes on with a paused or ended walk. */
  resume(): void {
    this.listen();
  }

  private listen(): void {
    if (!this.draft) return;
    this.trouble = null;
    this.state = 'walking';
    if (!('geolocation' in navigator)) this.fail(troubleOf('none'));
    else if (!isSecureContext) this.fail(troubleOf('insecure'));
    else {
      this.leastDelayMs = Number.POSITIVE_INFINITY;
      this.watch = navigator.geolocation.watchPosition(
        (position) => this.hear(position),
        (error) => this.hearError(error),
        { enableHighAccuracy: true, maximumAge: 0, timeout: 60_000 },
      );
      this.waitQuiet();
      this.keeper = keepScreenOn((isKept) => {
        this.isScreenKept = isKept;
        this.changed();
      });
    }
    this.changed();
  }

  /** Stops listening; a stand or stretch under way ends, and counts when it has a position. */
  pause(): void {
    if (this.state !== 'walking') return;
    this.endStand();
    this.stopListening();
    this.state = 'paused';
    this.save();
    this.changed();
  }

  /** The walk is over; its outline can be kept, or the walk gone on with. */
  end(): void {
    this.endStand();
    this.stopListening();
    this.state = 'ended';
    this.save();
    this.changed();
  }

  /** Puts the walk aside. @returns when the store has forgotten it */
  async drop(): Promise<void> {
    const yardId = this.draft?.yardId;
    this.endStand();
    this.aside = this.draft;
    this.stopListening();
    this.take(null);
    this.changed();
    if (yardId !== undefined) await this.store.drop(yardId).catch(() => undefined);
  }

  /** Takes up the walk that was put aside last, paused. */
  takeUp(): void {
    const { aside } = this;
    if (!aside || this.draft) return;
    this.aside = null;
    this.take(aside);
    this.save();
    this.changed();
  }

  beginStand(): void {
    this.change({ openFromMs: Date.now() });
    this.changed();
  }

  /** @returns whether a corner was taken */
  endStand(): boolean {
    const stand = this.standNow();
    if (!stand || !this.draft) return false;
    const { mode, stands } = this.draft;
    const leftMs = mode === 'corners' ? this.leftCornerMs() : null;
    const kept = leftMs === null ? stand : { ...stand, toMs: leftMs };
    const count = this.countIn(kept);
    const isTaken = count > 0;
    const leftOut = this.countIn(stand) - count;
    if (mode === 'corners') this.taken = { number: stands.length + 1, count, leftOut };
    this.change({ openFromMs: null, stands: isTaken ? [...stands, kept] : stands });
    this.changed();
    return isTaken;
  }

  dropLastCorner(): void {
    this.taken = null;
    if (this.standNow()) this.change({ openFromMs: null });
    else if (this.draft) this.change({ stands: this.draft.stands.slice(0, -1) });
    this.changed();
  }

  /** Changes how the walk is read; positions are judged again. */
  change(fields: Partial<WalkDraft>): void {
    if (!this.draft) return;
    this.draft = { ...this.draft, ...fields };
    if (fields.limits) this.judgeAgain();
    this.save();
  }

  /** The stand under way, up to now. */
  standNow(): Stand | null {
    const fromMs = this.draft?.openFromMs ?? null;
    return fromMs === null ? null : { fromMs, toMs: Date.now() };
  }

  /** A corner is taken by itself once it was stood at for the time set. */
  private isStoodEnough(): boolean {
    const [{ draft }, stand] = [this, this.standNow()];
    if (draft?.mode !== 'corners' || !stand) return false;
    return stand.toMs - stand.fromMs >= 1000 * draft.standS && this.countIn(stand) >= LEAST_AT_CORNER;
  }

  /** When the corner under way was left, by its positions; null: not yet. */
  private leftCornerMs(): number | null {
    const [{ draft }, stand] = [this, this.standNow()];
    if (draft?.mode !== 'corners' || !stand) return null;
    return findWalkedOff(this.positionsIn(stand), OPEN_SKY_ACCURACY_M);
  }

  countIn(stand: Stand): number {
    return this.positionsIn(stand).length;
  }

  private positionsIn({ fromMs, toMs }: Stand): readonly Fix[] {
    return this.accepted.filter(({ timeMs }) => timeMs !== null && timeMs >= fromMs && timeMs <= toMs);
  }

  /** Positions that the outline is made of: those at corners, or on the edge. */
  get usedCount(): number {
    const now = this.standNow();
    const stands = [...(this.draft?.stands ?? []), ...(now ? [now] : [])];
    return stands.reduce((sum, stand) => sum + this.countIn(stand), 0);
  }

  get options(): WalkOptions | null {
    const { draft } = this;
    return (
      draft && {
        mode: draft.mode,
        limits: draft.limits,
        toleranceM: draft.toleranceM,
        assumedAccuracyM: OPEN_SKY_ACCURACY_M,
      }
    );
  }

  /** Positions of the edge in mode `round`, of everything in mode `corners`. */
  line(): readonly Fix[] {
    const { draft, accepted } = this;
    if (draft?.mode !== 'round') return accepted;
    const stretches = this.stretches();
    return accepted.filter(({ timeMs }) =>
      stretches.some(({ fromMs, toMs }) => timeMs !== null && timeMs >= fromMs && timeMs <= toMs),
    );
  }

  /** What the walk gives so far; null before anything was walked. While walking it may lag by some positions. */
  result(): WalkResult | null {
    const { draft, options } = this;
    if (!draft || !options) return null;
    const stretches = this.stretches();
    if (draft.mode === 'round' && stretches.length === 0) return null;
    const { limits, mode, toleranceM, fixes } = draft;
    const key = JSON.stringify([mode, toleranceM, limits, stretches.map(({ fromMs }) => fromMs)]);
    const { made } = this;
    const nowMs = performance.now();
    if (made?.key === key) {
      const isResting = this.state === 'walking' && nowMs - made.atMs < REST * made.tookMs;
      if (made.count === fixes.length || isResting) return made.result;
    }
    const result = walkFromTrack(fixes, options, stretches);
    const atMs = performance.now();
    this.made = { key, count: fixes.length, result, atMs, tookMs: atMs - nowMs };
    return result;
  }

  /** Stretches of the edge with the one under way; a corner under way does not count yet. */
  private stretches(): readonly Stand[] {
    const { draft } = this;
    if (!draft) return [];
    const now = draft.mode === 'round' ? this.standNow() : null;
    return now ? [...draft.stands, now] : draft.stands;
  }

  private take(draft: WalkDraft | null): void {
    this.draft = draft;
    this.state = draft ? 'paused' : 'none';
    this.last = null;
    this.taken = null;
    this.trouble = null;
    this.made = null;
    this.judgeAgain();
  }

  private judgeAgain(): void {
    this.accepted = [];
    this.counts = NONE_REJECTED;
    for (const fix of this.draft?.fixes ?? []) this.judge(fix, 0);
  }

  private judge(fix: Fix, ageMs: number): PoorFix | null {
    const limits = this.draft?.limits;
    if (!limits) return null;
    const fault = judgeFix(fix, this.accepted.at(-1) ?? null, limits, OPEN_SKY_ACCURACY_M, ageMs);
    if (fault) this.counts = { ...this.counts, [fault]: this.counts[fault] + 1 };
    else this.accepted.push(fix);
    return fault;
  }

  private hear({ coords, timestamp }: GeolocationPosition): void {
    if (this.state !== 'walking' || !this.draft) return;
    this.trouble = null;
    this.waitQuiet();
    const nowMs = Date.now();
    // the receiver's clock may differ from this one's: only what a delay has over the least one is age
    const delayMs = nowMs - timestamp;
    this.leastDelayMs = Math.min(this.leastDelayMs, delayMs);
    const fix: Fix = {
      position: [coords.longitude, coords.latitude],
      accuracyM: coords.accuracy,
      timeMs: nowMs,
    };
    const fault = this.judge(fix, delayMs - this.leastDelayMs);
    this.last = { fix, fault };
    if (fault !== 'too-old' && fault !== 'repeated') {
      this.draft = { ...this.draft, fixes: [...this.draft.fixes, fix] };
      this.save();
    }
    if (this.isStoodEnough() || this.leftCornerMs() !== null) {
      this.endStand();
      navigator.vibrate?.([120, 80, 120]);
    }
    if (this.draft.fixes.length >= MOST_FIXES) this.end();
    this.changed();
  }

  private hearError(error: GeolocationPositionError): void {
    if (error.code === error.PERMISSION_DENIED) this.fail(troubleOf('denied'));
    else {
      this.trouble = troubleOf(error.code === error.TIMEOUT ? 'quiet' : 'unavailable');
      this.changed();
    }
  }

  /** The walk cannot go on; a stand or stretch under way ends, so that the way walked unheard is no part of it. */
  private fail(trouble: Issue): void {
    this.endStand();
    this.stopListening();
    this.state = 'paused';
    this.trouble = trouble;
    this.changed();
  }

  private waitQuiet(): void {
    clearTimeout(this.quiet);
    this.quiet = setTimeout(() => {
      this.trouble = troubleOf('quiet');
      this.changed();
    }, QUIET_MS);
  }

  private stopListening(): void {
    clearTimeout(this.quiet);
    if (this.watch !== null) navigator.geolocation.clearWatch(this.watch);
    this.watch = null;
    this.keeper?.end();
    this.keeper = null;
    this.isScreenKept = false;
  }

  private save(): void {
    if (!this.draft) return;
    this.store.save(this.draft).catch(() => {
      this.trouble = notKept(
        'This walk is not being stored: it would be lost with a reload. Keep this page open.',
      );
      this.changed();
    });
  }
}

function notKept(message: string): Issue {
  return { code: 'walk-not-stored', severity: 'warning', message, place: {} };
}
