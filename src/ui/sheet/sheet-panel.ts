import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { VisitCoverage } from '../../cover/passTypes';
import { roundRatios, scaleWords } from '../../print/paper';
import { SHEET_PARTS, type SheetModel, type SheetOptions, type SheetPart } from '../../print/types';
import { dosedName } from '../../words/productWords';
import { visitChoices } from '../../words/visitWords';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { printedCoverage } from './printed-coverage';
import './sheet-preview';

const PART_WORDS: Readonly<Record<SheetPart, string>> = {
  map: 'Zone map at scale',
  zones: 'Table of zones',
  products: 'Products and amounts',
  order: 'Order of work',
  passes: 'Passes and run-out marks',
  rinse: 'Edges to rinse',
  cautions: 'Cautions',
  record: 'Boxes to tick, room to write',
};
const PAPER_WORDS = { letter: 'Letter', a4: 'A4' } as const;
const ORIENTATION_WORDS = { auto: 'As fits best', portrait: 'Upright', landscape: 'Lying' } as const;
/** value of the choice that leaves the visit off. */
const NO_VISIT = '';
/** value of the choice that draws the passes of every dose. */
const ALL_DOSES = '';

type Choices = Omit<SheetOptions, 'drawnOn' | 'paper' | 'doseId'> & { paper: SheetOptions['paper'] | null };

/** How the sheet was last set up; of this session of the screen, not of the document. */
let lastChoices: Choices = {
  paper: null,
  orientation: 'auto',
  scale: 'auto',
  parts: SHEET_PARTS,
  bigType: false,
};

/** takes the pages that wait to be printed out of the document; null when there are none. */
let clearStage: (() => void) | null = null;

/** Puts pages in place of those that wait to be printed; null takes them away. */
function stagePages(mount: (() => () => void) | null): void {
  clearStage?.();
  clearStage = mount ? mount() : null;
}

/** Sheet: the zone map and work sheet as they will be printed. */
@customElement('sheet-panel')
export class SheetPanel extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; margin-bottom: 0.5rem; }
      .whole { grid-column: 1 / -1; }
      fieldset { border: 0; margin: 0 0 0.5rem; padding: 0; }
      legend { padding: 0; font-size: var(--text-small); color: var(--ink-soft); }
      .parts { display: grid; grid-template-columns: 1fr 1fr; column-gap: 0.5rem; }
      .parts label { line-height: 1.2; }
      .parts input { flex: none; }
      .print { width: 100%; margin-bottom: 0.5rem; }
    `,
  ];

  @state() private choices: Choices = lastChoices;
  @state() private withVisit = true;
  /** dose whose passes are on the sheet; null: all of the visit's. */
  @state() private doseId: string | null = null;
  @state() private model: SheetModel | null = null;
  @state() private fault = '';

  private made: readonly unknown[] = [];

  override disconnectedCallback(): void {
    // printing itself can change the layout of the shell and with it this element: the pages must stay
    if (this.app.view.step !== 'sheet') stagePages(null);
    this.made = [];
    super.disconnectedCallback();
  }

  private get options(): SheetOptions {
    const paper = this.choices.paper ?? (this.app.units === 'us' ? 'letter' : 'a4');
    return { ...this.choices, paper, doseId: this.shownDoseId, drawnOn: this.app.today() };
  }

  private get visitId(): string | null {
    return this.withVisit ? this.app.view.visitId : null;
  }

  /** The dose chosen, where the visit on the sheet has it. */
  private get shownDoseId(): string | null {
    const doses = this.visitId === null ? [] : (this.app.visit?.figures.doses ?? []);
    return doses.some(({ dose }) => dose.id === this.doseId) ? this.doseId : null;
  }

  /** The walks of the visit on the sheet; none while they are laid anew: marks from before do not go with amounts of now. */
  private get coverage(): VisitCoverage | null {
    const { coverage } = this.app;
    if (this.visitId === null || !this.choices.parts.includes('passes')) return null;
    return printedCoverage(coverage);
  }

  protected override updated(_changed: PropertyValues): void {
    void this.draw();
  }

  /** Draws the sheet again when something it is made of has changed. */
  private async draw(): Promise<void> {
    const { derived } = this.app.session;
    const { visitId, choices, coverage, options } = this;
    const from = [derived, visitId, choices, coverage, options.doseId];
    if (from.every((item, i) => item === this.made[i])) return;
    this.made = from;
    try {
      const [{ sheetModel }, { mountSheet }] = await Promise.all([
        import('../../print/sheetModel'),
        import('../../print/mountSheet'),
        import('../../print/workSheet'),
      ]);
      if (this.made !== from || !this.isConnected) return;
      const model = sheetModel(derived.yard, derived, visitId, options, coverage);
      // the pages wait unseen, so that the browser's own print command prints them too
      stagePages(() => mountSheet(model, document.body));
      this.model = model;
      this.fault = '';
    } catch {
      this.made = [];
      this.fault = 'The sheet could not be loaded. Check the connection and open this screen again.';
    }
  }

  protected override render() {
    const { model, options, app } = this;
    const map = model?.pages.find((page) => page.type === 'map');
    const isRefused = map?.type === 'map' && options.scale !== 'auto' && map.ratio !== options.scale;
    return html`
      <h2>Sheet</h2>
      ${this.renderChoices(options)}
      <button class="primary print" ?disabled=${!model || model.pages.length === 0} @click=${() => window.print()}>Print</button>
      ${this.fault ? html`<p class="note error">${this.fault}</p>` : nothing}
      ${this.renderWait()}
      ${
        model
          ? html`
            <p>${pageWords(model.pages.length)} of ${PAPER_WORDS[model.paper.name]}, ${model.paper.landscape ? 'lying' : 'upright'}.
              ${map?.type === 'map' ? html`Scale <b>${map.scaleWords}</b>: print at 100 %, not “fit to page”, and measure the bar to be sure.` : nothing}</p>
            ${isRefused ? html`<p class="note warning">The yard does not fit on the paper at the scale chosen; the largest round one that fits is used.</p>` : nothing}
            ${model.pages.length === 0 ? html`<p class="note">No part chosen has anything to show.</p>` : nothing}
            <sheet-preview .model=${model}></sheet-preview>`
          : html`<p>Drawing the sheet…</p>`
      }
      ${app.yard.zones.length === 0 ? html`<p class="note">Nothing is drawn yet: the map stays empty until there are zones.</p>` : nothing}
    `;
  }

  /** That the passes are still to come, or will not. */
  private renderWait() {
    const { coverage } = this.app;
    if (this.visitId === null || !this.choices.parts.includes('passes')) return nothing;
    if (coverage.state === 'working')
      return html`<p class="note" role="status">The passes are being laid out; they come onto the sheet when they are done. What is printed now has none.</p>`;
    if (coverage.state === 'failed')
      return html`<p class="note error">The passes could not be laid out, so they are not on the sheet: ${coverage.message}</p>`;
    return nothing;
  }

  /** Which product's passes: a helper takes the map of the product in hand. */
  private renderDoses() {
    const doses = this.visitId === null ? [] : (this.app.visit?.figures.doses ?? []);
    if (doses.length < 2 || !this.choices.parts.includes('passes')) return nothing;
    const chosen = this.shownDoseId;
    return html`<label class="whole">Passes of<select @change=${(event: Event) => {
      this.doseId = fieldValue(event) || null;
    }}>
      <option value=${ALL_DOSES} .selected=${chosen === null}>every product, a map for each</option>
      ${doses.map(({ dose, product }) => html`<option value=${dose.id} .selected=${dose.id === chosen}>${dosedName(product)}</option>`)}
    </select></label>`;
  }

  private renderChoices(options: SheetOptions) {
    const { app } = this;
    return html`
      <div class="fields">
        <label class="whole">Visit on the sheet<select @change=${this.chooseVisit}>
          ${visitChoices(app.yard.visits, app.today()).map(({ id, words }) => html`<option value=${id} .selected=${id === this.visitId}>${words}</option>`)}
          <option value=${NO_VISIT} .selected=${this.visitId === null}>none, the yard alone</option>
        </select></label>
        ${selectField('Paper', options.paper, ['letter', 'a4'], PAPER_WORDS, (paper) => this.choose({ paper }))}
        ${selectField('Paper stands', options.orientation, ['auto', 'portrait', 'landscape'], ORIENTATION_WORDS, (orientation) => this.choose({ orientation }))}
        <label class="whole">Scale of the map<select @change=${(event: Event) => this.chooseScale(fieldValue(event))}>
          <option value="auto" .selected=${options.scale === 'auto'}>Largest round scale that fits</option>
          ${roundRatios(app.units).map((ratio) => html`<option value=${ratio} .selected=${ratio === options.scale}>${scaleWords(ratio, app.units)}</option>`)}
        </select></label>
        ${this.renderDoses()}
      </div>
      <fieldset><legend>Parts</legend><div class="parts">
        ${SHEET_PARTS.map(
          (part) => html`<label class="check"><input type="checkbox" .checked=${options.parts.includes(part)}
            @change=${(event: Event) => this.choosePart(part, isTicked(event))} />${PART_WORDS[part]}</label>`,
        )}
        <label class="check"><input type="checkbox" .checked=${options.bigType}
          @change=${(event: Event) => this.choose({ bigType: isTicked(event) })} />Big type</label>
      </div></fieldset>
    `;
  }

  private choose(change: Partial<Choices>): void {
    lastChoices = { ...this.choices, ...change };
    this.choices = lastChoices;
  }

  private chooseScale(value: string): void {
    this.choose({ scale: value === 'auto' ? 'auto' : Number(value) });
  }

  private choosePart(part: SheetPart, isIn: boolean): void {
    const { parts } = this.choices;
    this.choose({ parts: SHEET_PARTS.filter((one) => (one === part ? isIn : parts.includes(one))) });
  }

  private chooseVisit(event: Event): void {
    const visitId = fieldValue(event);
    this.withVisit = visitId !== NO_VISIT;
    if (this.withVisit) this.app.setView({ visitId });
  }
}

function pageWords(count: number): string {
  if (count === 0) return 'No page';
  return count === 1 ? 'One page' : `${count} pages`;
}
