import { css, html, nothing, svg } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { DeskCounts, DeskFilter, DeskOverview, DeskPage, DeskSketch } from '../../io/deskTypes';
import { createImportClient, type ImportClient } from '../../io/importClient';
import {
  type ImportRules,
  MOST_CORNERS,
  MOST_ZONES,
  type NamedFile,
  type TargetKind,
} from '../../io/importTypes';
import { SUGGESTED_SIGMA_M } from '../../yard/defaults';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { bringIn, gather } from './import-add';
import './import-asks';
import { importContext } from './import-context';
import './import-list';
import { countOf, describeCounts, describeDone, describeOverview } from './import-words';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';

/** Where it goes: a yard of its own, or the open one. */
export type ImportPlace = 'new' | 'into';

/** Rows of one page of the list. */
export const PAGE_ROWS = 50;
const SKETCH_PX = { width: 340, height: 240 } as const;

const FIRST_FILTER: DeskFilter = { text: '', layer: null, show: 'all', near: null };

/** What is in a file, before anything of it comes in: a dialog over the page. */
@customElement('import-preview')
export class ImportPreview extends AppPart {
  static override styles = [
    shared,
    css`
      dialog { width: min(74rem, calc(100vw - 2rem)); max-width: none; height: min(56rem, calc(100dvh - 2rem)); max-height: none; padding: 0; border: 2px solid var(--ink); background: var(--sheet); color: var(--ink); }
      dialog::backdrop { background: rgb(10 20 28 / 0.45); }
      .whole { display: grid; grid-template-rows: auto minmax(0, 1fr) auto; height: 100%; }
      .head, .foot { padding: 0.6rem 1rem; display: flex; gap: 0.75rem; align-items: center; flex-wrap: wrap; }
      .head { border-bottom: 1px solid var(--line-strong); justify-content: space-between; }
      .head h2 { margin: 0; overflow-wrap: anywhere; }
      .foot { border-top: 1px solid var(--line-strong); justify-content: space-between; }
      .foot p { margin: 0; flex: 1 1 16rem; }
      .body { display: grid; grid-template-columns: 22.5rem minmax(0, 1fr); min-height: 0; }
      .side { padding: 0.75rem 1rem; overflow: auto; border-right: 1px solid var(--line); min-width: 0; }
      .list { padding: 0.75rem 1rem; overflow: auto; min-width: 0; }
      svg { display: block; width: 100%; height: auto; background: var(--paper); border: 1px solid var(--line); }
      .key { display: flex; flex-wrap: wrap; gap: 0.25rem 1rem; margin: 0.25rem 0 0.75rem; padding: 0; list-style: none; font-size: var(--text-small); color: var(--ink-soft); }
      .key svg { display: inline-block; width: 1.6rem; height: 0.9rem; vertical-align: -0.1rem; margin-right: 0.35rem; }
      .yard { fill: none; stroke: var(--ink-soft); stroke-width: 1; stroke-dasharray: 4 3; }
      .others { fill: none; stroke: var(--line-strong); stroke-width: 0.8; }
      .ticked { fill: var(--accent); fill-opacity: 0.16; stroke: var(--accent); stroke-width: 1.6; }
      .mark { fill: var(--accent); }
      fieldset { border: 1px solid var(--line-strong); padding: 0.25rem 0.75rem 0.5rem; margin: 0 0 0.75rem; min-width: 0; }
      legend { font-weight: 650; padding: 0 0.3rem; }
      .wait { padding: 1.5rem 1rem; }
      progress { width: 100%; height: 1.1rem; accent-color: var(--accent); }
      .fault { color: var(--danger); font-weight: 650; }
      ul.told { margin: 0; padding-left: 1.1rem; }
      @media (max-width: 820px) {
        dialog { width: 100vw; height: 100dvh; max-height: 100dvh; border: 0; margin: 0; }
        .body { display: block; overflow: auto; }
        .side { border-right: 0; overflow: visible; border-bottom: 1px solid var(--line); }
        .list { overflow: visible; }
        .head, .foot { padding: 0.5rem 0.75rem; gap: 0.4rem; }
        .head h2 { font-size: 1.05rem; flex: 1 1 0; }
        .foot .row { width: 100%; }
        .foot .row button { flex: 1; }
        .foot p { flex-basis: 100%; font-size: var(--text-small); }
      }
    `,
  ];

  @property({ attribute: false }) files: readonly NamedFile[] = [];
  @property({ attribute: false }) place: ImportPlace = 'into';

  @state() private stage: 'reading' | 'ready' | 'adding' | 'failed' = 'reading';
  @state() private share = 0;
  @state() private doing = 'Reading';
  @state() private overview: DeskOverview | null = null;
  @state() private counts: DeskCounts | null = null;
  @state() private filter: DeskFilter = FIRST_FILTER;
  @state() private offset = 0;
  @state() private page: DeskPage | null = null;
  @state() private sketch: DeskSketch | null = null;
  @state() private sigmaM: number = SUGGESTED_SIGMA_M.imported;
  @state() private keepsOthers = false;
  @state() private newName = '';
  @state() private failure = '';
  @query('dialog') private dialog!: HTMLDialogElement;

  private client: ImportClient | null = null;
  private asked = 0;
  private openedBy: Element | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.openedBy = deepActive();
  }

  protected override firstUpdated(): void {
    this.dialog.showModal();
    void this.start();
  }

  override disconnectedCallback(): void {
    this.client?.close();
    this.client = null;
    super.disconnectedCallback();
  }

  private get heading(): string {
    const [first] = this.files;
    return this.files.length === 1
      ? `What is in “${first?.name ?? ''}”`
      : `What is in ${this.files.length} files`;
  }

  protected override render() {
    return html`<dialog aria-labelledby="title" @cancel=${this.onCancel}>
      <div class="whole">
        <div class="head"><h2 id="title">${this.heading}</h2><button @click=${this.close}>Cancel</button></div>
        ${this.stage === 'ready' ? this.renderReady() : this.renderWait()}
        ${this.stage === 'ready' ? this.renderFooter() : nothing}
      </div>
    </dialog>`;
  }

  private renderWait() {
    if (this.stage === 'failed') {
      return html`<div class="wait"><p class="note error" role="alert">${this.failure} Nothing was changed.</p></div>`;
    }
    const percent = Math.round(100 * this.share);
    return html`<div class="wait" aria-busy="true">
      <p id="doing">${this.doing}… ${percent} %</p>
      <progress max="1" .value=${this.share} aria-labelledby="doing"></progress>
      <p class="quiet">${this.stage === 'reading' ? 'Nothing comes in before you say so.' : 'The zones are measured as they come in. Cancel leaves the yard as it was.'}</p>
    </div>`;
  }

  private renderReady() {
    const { overview } = this;
    if (!overview) return nothing;
    return html`<div class="body">
      <section class="side" aria-label="How it comes in" tabindex="0">
        <p role="status">${describeOverview(overview)}</p>
        ${overview.tickWords ? html`<p class="note warning">${overview.tickWords}</p>` : nothing}
        ${overview.issues.length > 0 ? html`<div class="note ${overview.issues.some((issue) => issue.severity === 'error') ? 'error' : 'warning'}"><ul class="told">${overview.issues.slice(0, 30).map((issue) => html`<li>${issue.message}</li>`)}</ul></div>` : nothing}
        <import-asks .app=${this.app} .overview=${overview} .client=${this.client} @rules-change=${(event: CustomEvent<Partial<ImportRules>>) => this.changeRules(event.detail)}></import-asks>
        ${this.renderPlace()}
        ${this.renderSketch()}
      </section>
      <section class="list" aria-label="Features in the file" tabindex="0">
        <import-list .app=${this.app} .overview=${overview} .page=${this.page} .filter=${this.filter} .offset=${this.offset}
          @filter-change=${(event: CustomEvent<DeskFilter>) => this.setFilter(event.detail)}
          @offset-change=${(event: CustomEvent<number>) => this.setOffset(event.detail)}
          @tick=${(event: CustomEvent<{ which: number | null; isOn: boolean }>) => this.tick(event.detail.which, event.detail.isOn)}
          @edit=${(event: CustomEvent<{ which: number | null; name?: string; kind?: TargetKind }>) => this.edit(event.detail)}></import-list>
      </section>
    </div>`;
  }

  private renderPlace() {
    const { overview, place } = this;
    const yard = this.app.yard;
    const kept =
      overview && overview.crsName === null && !overview.rules.isSwapped ? overview.byOutcome.kept : 0;
    const radio = (value: ImportPlace, words: string) =>
      html`<label class="check"><input type="radio" name="place" .checked=${place === value} @change=${() => this.setPlace(value)} />${words}</label>`;
    return html`<fieldset><legend>Where it goes</legend>
        ${radio('into', `into “${yard.name}”`)}
        ${radio('new', overview?.yard ? `as a new yard: “${overview.yard.name}” with ${countOf(overview.yard.products, 'product')} and ${countOf(overview.yard.visits, 'visit')}` : 'as a new yard')}
        ${
          place === 'new' && !overview?.yard
            ? html`<label>Its name<input autocomplete="off" .value=${this.newName} @input=${(
                event: Event,
              ) => {
                this.newName = fieldValue(event);
              }} /></label>`
            : nothing
        }
      </fieldset>
      <fieldset><legend>How well it is known</legend>
        <quantity-field label="Error of a corner (one standard deviation)" quantity="length" .system=${this.app.units} .min=${0} .max=${100} .value=${this.sigmaM}
          hint="For all zones that bring no error of their own."
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            this.sigmaM = event.detail.valueSi ?? this.sigmaM;
          }}></quantity-field>
        ${
          kept > 0
            ? html`<label class="check"><input type="checkbox" .checked=${this.keepsOthers} @change=${(
                event: Event,
              ) => {
                this.keepsOthers = isTicked(event);
              }} />Keep ${countOf(kept, 'line or point', 'lines and points')} with the yard, untouched and not drawn</label>`
            : nothing
        }
      </fieldset>`;
  }

  private renderSketch() {
    const { sketch } = this;
    if (!sketch) return nothing;
    const { width, height } = SKETCH_PX;
    return html`<svg viewBox="0 0 ${width} ${height}" role="img" aria-label="Sketch of what would come in, north up">
        <path class="yard" d=${sketch.yard}></path><path class="others" d=${sketch.others}></path><path class="ticked" d=${sketch.ticked}></path>
        ${sketch.points.map(([x, y]) => svgDot(x, y))}
      </svg>
      <ul class="key">
        <li><svg viewBox="0 0 26 14" aria-hidden="true"><path class="ticked" d="M1 1H25V13H1Z"></path></svg>comes in</li>
        <li><svg viewBox="0 0 26 14" aria-hidden="true"><path class="others" d="M1 1H25V13H1Z"></path></svg>listed, not ticked</li>
        ${sketch.yard ? html`<li><svg viewBox="0 0 26 14" aria-hidden="true"><path class="yard" d="M1 1H25V13H1Z"></path></svg>the open yard</li>` : nothing}
        ${sketch.isPart ? html`<li>Only the first 400 shapes are drawn.</li>` : nothing}
      </ul>`;
  }

  private renderFooter() {
    const { counts, overview } = this;
    const words = counts ? describeCounts(counts, this.app.units) : '';
    const excess = counts && (counts.zones > MOST_ZONES || counts.corners > MOST_CORNERS);
    const isNothing =
      !counts ||
      (counts.zones + counts.marks === 0 && !counts.hasParcel && !(overview?.yard && this.place === 'new'));
    return html`<div class="foot">
      <p role="status" class=${excess ? 'fault' : ''}>${excess ? `Too much at once: at most ${MOST_ZONES} zones and ${MOST_CORNERS.toLocaleString('en-US')} corners. Now ${words}` : words}</p>
      <div class="row"><button @click=${this.close}>Cancel</button>
        <button class="primary" ?disabled=${isNothing || excess} @click=${this.finish}>Bring in</button></div>
    </div>`;
  }

  private async start(): Promise<void> {
    this.newName = (this.files[0]?.name ?? '').replace(/\.[^.]+$/, '');
    this.stage = 'reading';
    const client = createImportClient(importContext(this.app, this.place === 'into'), (share, words) => {
      this.share = share;
      this.doing = words;
    });
    this.client = client;
    try {
      this.take(await client.open(this.files));
      if (this.overview?.yard && this.app.yard.zones.length === 0) this.place = 'new';
      this.stage = 'ready';
      await this.refresh();
    } catch (error) {
      this.fail(error);
    }
  }

  private take(overview: DeskOverview): void {
    this.overview = overview;
    this.counts = overview.counts;
  }

  private async refresh(): Promise<void> {
    const { client } = this;
    if (!client) return;
    this.asked += 1;
    const { asked } = this;
    const page = await client.list(this.filter, this.offset, PAGE_ROWS);
    if (asked !== this.asked) return;
    this.page = page;
    const sketch = await client.sketch(this.filter, SKETCH_PX.width, SKETCH_PX.height);
    if (asked === this.asked) this.sketch = sketch;
  }

  private async changeRules(change: Partial<ImportRules>): Promise<void> {
    const { client } = this;
    if (!client) return;
    this.stage = 'reading';
    this.share = 0.5;
    try {
      this.take(await client.setRules(change));
      this.stage = 'ready';
      await this.refresh();
    } catch (error) {
      this.fail(error);
    }
  }

  private async setPlace(place: ImportPlace): Promise<void> {
    this.place = place;
    const { client } = this;
    if (!client) return;
    this.take(await client.setRules({ checksTwins: place === 'into' }));
    await this.refresh();
  }

  private setFilter(filter: DeskFilter): void {
    this.filter = filter;
    this.offset = 0;
    void this.refresh();
  }

  private setOffset(offset: number): void {
    this.offset = offset;
    void this.refresh();
  }

  private async tick(which: number | null, isOn: boolean): Promise<void> {
    const { client } = this;
    if (!client) return;
    this.counts = await client.tick(which ?? this.filter, isOn);
    await this.refresh();
  }

  private async edit({
    which,
    ...change
  }: {
    which: number | null;
    name?: string;
    kind?: TargetKind;
  }): Promise<void> {
    const { client } = this;
    if (!client) return;
    this.counts = await client.edit(which ?? this.filter, change);
    await this.refresh();
  }

  private async finish(): Promise<void> {
    const { client, app } = this;
    if (!client) return;
    this.stage = 'adding';
    this.doing = 'Bringing in';
    this.share = 0;
    try {
      const source = this.files.length === 1 ? (this.files[0]?.name ?? '') : `${this.files.length} files`;
      const gathered = await gather(client, {
        vertexSigmaM: this.sigmaM,
        source,
        keepOthers: this.keepsOthers,
      });
      const zoneIds = await bringIn(
        app,
        gathered,
        this.place,
        this.newName,
        () => this.isConnected,
        (share) => {
          this.share = share;
        },
      );
      if (zoneIds === null) return;
      app.setView({ step: 'measure', way: null, selectedZoneIds: zoneIds.length <= 30 ? zoneIds : [] });
      await nextTask();
      app.note(
        'brought-in',
        `${describeDone(zoneIds.length, gathered.marks.length, gathered.parcel !== null)} One undo takes it back.`,
      );
      this.close();
    } catch (error) {
      this.fail(error);
    }
  }

  private fail(error: unknown): void {
    const words = error instanceof Error ? error.message : String(error);
    this.failure = `The file could not be read: ${words}.`;
    this.stage = 'failed';
  }

  private onCancel(event: Event): void {
    event.preventDefault();
    this.close();
  }

  /** Ends reading or adding at once; what was only passing is taken back by whoever adds. */
  private close(): void {
    this.dialog.close();
    this.remove();
    // after the next drawing, so that nothing is laid out twice
    const back = this.openedBy;
    requestAnimationFrame(() => {
      setTimeout(() => {
        if (back instanceof HTMLElement && back.isConnected && document.activeElement === document.body)
          back.focus();
      });
    });
  }
}

/** Lets the browser draw before what comes next. */
function nextTask(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

function svgDot(x: number, y: number) {
  return svg`<circle class="mark" cx=${x.toFixed(1)} cy=${y.toFixed(1)} r="3.5"></circle>`;
}

function deepActive(): Element | null {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active;
}
