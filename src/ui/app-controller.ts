import type { DrawLive, MapEvents, MapPicture, MapPort, Trial } from '../map/types';
import type { ShapeResult } from '../measure/shapes';
import type { PictureStorage } from '../session/pictureStorage';
import type { DerivedVisit, OpenResult, YardEntry, YardSession, YardStorage } from '../session/types';
import type { Issue, MowingClass, Position, UnitSystem, Yard, ZoneKind } from '../yard/types';
import type { App, CoverageState, ViewState } from './app';
import { createMapEvents } from './map-events';
import { PictureMaker } from './map-picture';
import type { Theme } from './theme';
import { Walks } from './walks';

export interface Sample {
  readonly id: string;
  readonly name: string;
  readonly words: string;
  /** text of the GeoJSON file. */
  load(): Promise<string>;
}

/** What the shell needs from outside; `main.ts` joins the real ones. */
export interface Services {
  readonly storage: YardStorage;
  /** @param isNew the yard is not in the store yet: it is saved at once. */
  openSession(yard: Yard, isNew: boolean): YardSession;
  createMap(element: HTMLElement, events: MapEvents): Promise<MapPort>;
  /** the store of the person's own pictures; fetched when first asked for. */
  pictures(): Promise<PictureStorage>;
  readonly samples: readonly Sample[];
  /** turns an address that names a bundled picture into one the browser can load. */
  resolveUrl(url: string): string;
  now(): Date;
}

export interface Message {
  readonly issue: Issue;
  readonly action: { readonly label: string; run(): void } | null;
}

/** How the next drawing behaves; of the screen, not of the document. */
export interface DrawOptions {
  readonly kind: ZoneKind;
  readonly mowing: MowingClass;
  readonly rightAngle: boolean;
  readonly snapping: boolean;
  /** corners that neighbours share move together. */
  readonly sharedCorners: boolean;
}

/** How long the panels wait for the next figures of a drag, ms. */
const PANELS_MS = 150;
/** code of the message that the yard could not be stored. */
const NOT_SAVED = 'not-saved';

const FIRST_VIEW: ViewState = {
  step: 'measure',
  selectedZoneIds: [],
  visitId: null,
  doseId: null,
  productId: null,
  tool: { type: 'select' },
  way: null,
  isBroad: false,
};

/** State of the screen and the way from events to the document. */
export class AppController implements App {
  view: ViewState = FIRST_VIEW;
  map: MapPort | null = null;
  message: Message | null = null;
  live: DrawLive | null = null;
  options: DrawOptions = {
    kind: 'turf',
    mowing: 'regular',
    rightAngle: false,
    snapping: true,
    sharedCorners: true,
  };
  theme: Theme = 'light';
  trial: Trial | null = null;
  /** picture files that were dropped, until their form takes them. */
  pictureFiles: readonly File[] | null = null;
  entries: readonly YardEntry[] = [];
  /** a stored yard that did not open whole. */
  damaged: { readonly id: string; readonly result: Extract<OpenResult, { ok: false }> } | null = null;
  /** issues of the last import or opening, shown until closed. */
  fileIssues: readonly Issue[] = [];
  /** the document as it was when the drag under way began; null when none is. The list of slips waits. */
  beforeReshape: Yard | null = null;

  readonly walks = new Walks(this);
  private readonly maker = new PictureMaker(this);
  private current: YardSession | null = null;
  private stopListening: (() => void) | null = null;
  private listeners = new Set<() => void>();
  private lastSlips: MapPicture['slips'] = [];
  private isScheduled = false;
  private telling = 0;
  private onPicked: ((position: Position | null) => void) | null = null;
  private toldFailure = '';
  private wasSaving = false;
  /** the document as it was at the last change heard of. */
  private lastYard: Yard | null = null;
  /** the message was told in this turn of events: what else happens in it does not clear it. */
  private isMessageNew = false;

  constructor(readonly services: Services) {}

  get isOpen(): boolean {
    return this.current !== null;
  }

  get session(): YardSession {
    if (!this.current) throw new Error('no yard is open yet');
    return this.current;
  }

  get yard(): Yard {
    return this.session.yard;
  }

  get units(): UnitSystem {
    return this.current?.yard.settings.units ?? 'us';
  }

  get visit(): DerivedVisit | null {
    const { visitId } = this.view;
    return visitId === null || !this.current ? null : this.current.derived.visit(visitId);
  }

  get coverage(): CoverageState {
    return this.walks.state;
  }

  /** @returns a function that ends the subscription. */
  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Puts a yard on the table in place of the one before. */
  async adopt(yard: Yard, isNew: boolean): Promise<void> {
    const before = this.current;
    this.map?.setTool({ type: 'select' });
    this.stopListening?.();
    const session = this.services.openSession(yard, isNew);
    this.current = session;
    this.stopListening = session.subscribe(() => this.afterChange());
    this.damaged = null;
    this.live = null;
    this.trial = null;
    this.endPick(null);
    this.view = { ...FIRST_VIEW, step: this.view.step, visitId: yard.visits[0]?.id ?? null };
    this.afterChange();
    this.map?.fit();
    await before?.close();
  }

  setView(change: Partial<ViewState>): void {
    const before = this.view;
    this.view = { ...before, ...change };
    const isOtherPanel =
      (change.step ?? before.step) !== before.step ||
      ((change.way ?? null) !== before.way && 'way' in change);
    if (isOtherPanel || (change.tool ?? before.tool) !== before.tool) this.clearOldMessage();
    if (isOtherPanel) this.trial = null;
    if (change.tool && change.tool.type !== 'pick') this.endPick(null);
    if (change.tool && change.tool !== before.tool) {
      this.live = null;
      this.map?.setTool(change.tool);
    } else if (change.step && change.step !== before.step && before.tool.type !== 'select') {
      this.view = { ...this.view, tool: { type: 'select' } };
      this.map?.setTool(this.view.tool);
    }
    this.notify();
  }

  setOptions(change: Partial<DrawOptions>): void {
    this.options = { ...this.options, ...change };
    if (change.rightAngle !== undefined) this.map?.setRightAngle(change.rightAngle);
    if (change.snapping !== undefined) this.map?.setSnapping(change.snapping);
    this.notify();
  }

  setTheme(theme: Theme): void {
    this.theme = theme;
    this.notify();
  }

  setTrial(trial: Trial | null): void {
    this.trial = trial;
    this.notify();
  }

  pick(words: string): Promise<Position | null> {
    this.endPick(null);
    return new Promise((resolve) => {
      this.onPicked = resolve;
      this.setView({ tool: { type: 'pick', words } });
    });
  }

  /** What was asked for by `pick` has its answer. */
  endPick(position: Position | null): void {
    const answer = this.onPicked;
    this.onPicked = null;
    answer?.(position);
  }

  setLive(live: DrawLive | null): void {
    this.live = live;
    this.notify();
  }

  dispatch(label: string, edit: (yard: Yard) => Yard, mergeKey?: string): void {
    this.session.dispatch(label, edit, mergeKey);
  }

  /**
   * Runs an edit that can refuse; a refusal is told and makes no step.
   * @returns true when it was done.
   */
  attempt(label: string, edit: (yard: Yard) => ShapeResult): boolean {
    const result = edit(this.session.yard);
    if (!result.ok) {
      this.tell(result.issue);
      return false;
    }
    this.dispatch(label, () => result.yard);
    return true;
  }

  tell(issue: Issue): void {
    this.say(issue, null);
  }

  say(issue: Issue | null, action: Message['action'] = null): void {
    this.message = issue ? { issue, action } : null;
    this.isMessageNew = issue !== null;
    if (issue)
      setTimeout(() => {
        this.isMessageNew = false;
      });
    this.notify();
  }

  /** A message goes with the next command, tool, step or way of measuring; that nothing is saved stands until it is. */
  private clearOldMessage(): void {
    if (this.isMessageNew || this.message?.issue.code === NOT_SAVED) return;
    this.message = null;
  }

  /** A plain word to the person that nothing is wrong with. */
  note(code: string, message: string, action: Message['action'] = null): void {
    this.say({ code, severity: 'note', message, place: {} }, action);
  }

  newId(prefix: string): string {
    const bytes = crypto.getRandomValues(new Uint8Array(6));
    return `${prefix}-${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
  }

  today(): string {
    const now = this.services.now();
    const two = (value: number) => String(value).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  }

  async attachMap(element: HTMLElement): Promise<void> {
    try {
      const map = await this.services.createMap(element, createMapEvents(this));
      this.map = map;
      map.setSnapping(this.options.snapping);
      map.setRightAngle(this.options.rightAngle);
      this.redrawMap();
      if (this.current) map.fit();
    } catch (error) {
      const message = `The map could not be started: ${error instanceof Error ? error.message : String(error)}`;
      this.tell({ code: 'map-start', severity: 'error', message, place: {} });
    }
    this.notify();
  }

  /** Fits the map once it shows what was just made. @param zoneIds without them the whole yard */
  fitSoon(zoneIds?: readonly string[]): void {
    this.notify();
    queueMicrotask(() => this.map?.fit(zoneIds));
  }

  notify(): void {
    if (this.isScheduled) return;
    this.isScheduled = true;
    queueMicrotask(() => {
      this.isScheduled = false;
      if (this.current) this.walks.look();
      this.redrawMap();
      if (this.beforeReshape) this.tellSoon();
      else this.tellListeners();
    });
  }

  private tellListeners(): void {
    clearTimeout(this.telling);
    this.telling = 0;
    for (const listener of [...this.listeners]) listener();
  }

  /** While a drag is under way the drawing follows at every frame, the panels a few times a second. */
  private tellSoon(): void {
    if (this.telling !== 0) return;
    this.telling = window.setTimeout(() => this.tellListeners(), PANELS_MS);
  }

  /** Overlaps and gaps; as they were before the drag while one is under way. */
  get slips(): MapPicture['slips'] {
    return this.beforeReshape ? this.lastSlips : this.session.derived.slips();
  }

  /** Drops what names things that are gone (after undo, removal), then shows. */
  private afterChange(): void {
    const { yard } = this.session;
    if (this.lastYard !== yard) this.clearOldMessage();
    this.lastYard = yard;
    this.watchSave();
    const zoneIds = new Set(yard.zones.map((zone) => zone.id));
    const selected = this.view.selectedZoneIds.filter((id) => zoneIds.has(id));
    if (selected.length < this.view.selectedZoneIds.length)
      this.view = { ...this.view, selectedZoneIds: selected };
    const { tool } = this.view;
    if ('zoneId' in tool && tool.zoneId !== null && !zoneIds.has(tool.zoneId)) {
      this.view = { ...this.view, tool: { type: 'select' } };
      this.map?.setTool(this.view.tool);
    }
    if (!yard.visits.some((visit) => visit.id === this.view.visitId)) {
      this.view = { ...this.view, visitId: yard.visits[0]?.id ?? null };
    }
    this.notify();
  }

  /** A failure to save is told once, wherever the person is. */
  private watchSave(): void {
    const { save } = this.session;
    const message = save.state === 'failed' ? save.message : '';
    if (message !== '' && message !== this.toldFailure) {
      const issue: Issue = { code: NOT_SAVED, severity: 'error', message, place: {} };
      this.say(issue, { label: 'What to do', run: () => this.setView({ step: 'yards' }) });
    }
    if (save.state === 'saved') {
      if (this.message?.issue.code === NOT_SAVED) this.message = null;
      if (this.wasSaving) this.noteSaved();
    }
    this.wasSaving = save.state === 'saving';
    this.toldFailure = message;
  }

  /** The list of yards says when the yard on the table was last stored. */
  private noteSaved(): void {
    const { id, name, zones } = this.yard;
    const savedAt = this.services.now().getTime();
    this.entries = this.entries.map((entry) =>
      entry.id === id ? { ...entry, name, savedAt, zoneCount: zones.length } : entry,
    );
  }

  private picture(): MapPicture {
    if (!this.beforeReshape) this.lastSlips = this.view.step === 'measure' ? this.slips : [];
    return this.maker.make(this.lastSlips);
  }

  /** Draws the map alone; the panels stay as they are. For what changes at every frame. */
  redrawMap(): void {
    if (this.current) this.map?.show(this.picture());
  }
}
