import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LabelMatch, LabelPick } from '../../io/takeLabels';
import { usesOf } from '../../plan/applyUse';
import { FORM_WORDS, packsWords, productName } from '../../words/productWords';
import { freeName } from '../../words/zoneWords';
import type { Issue, Product } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import { undoStep } from '../parts/undo-step';
import { shownAnalysis } from './product-edits';

type How = 'copy' | 'replace';

/** A label of the file with what is to become of it. */
interface Offer extends LabelMatch {
  readonly isTaken: boolean;
  /** where the shelf has one of that name. */
  readonly how: How;
}

/** What of a label its members are told as; those left out are "the rest of the label". */
const PART_WORDS: Partial<Readonly<Record<keyof Product, string>>> = {
  form: 'form',
  analysis: 'analysis',
  ingredients: 'ingredients',
  densityKgPerL: 'density',
  seed: 'seed tag',
  limePct: 'lime value',
  rate: 'label rate',
  applicator: 'uses',
  useName: 'uses',
  carrierLPerM2: 'carrier water',
  carrierIsTotal: 'carrier water',
  spreadDistanceM: 'spread distance',
  otherUses: 'uses',
  packIds: 'uses',
  packs: 'packs',
  limits: 'limits',
  note: 'note',
};

/** "analysis, packs": each part once. */
function differenceWords(differs: readonly (keyof Product)[]): string {
  return [...new Set(differs.map((key) => PART_WORDS[key] ?? 'the rest of the label'))].join(', ');
}

/** Labels in: what a file holds is shown, chosen from, and taken up in one step. Nothing goes from the shelf. */
@customElement('label-open')
export class LabelOpen extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: grid; gap: 0.5rem; }
      p { margin: 0; }
      input[type='file'] { padding: 0; }
      ::file-selector-button { min-height: 42px; margin-right: 0.75rem; padding: 0 0.75rem; font: inherit; color: var(--ink); background: var(--sheet-sunk); border: 0; border-right: 1px solid var(--line-strong); }
      ul { list-style: none; margin: 0; padding: 0; border-top: 1px solid var(--line); }
      li { display: grid; gap: 0.25rem; padding: 0 0 0.5rem; border-bottom: 1px solid var(--line); }
      li .words { margin-left: 1.85rem; }
      li .analysis { margin-left: auto; font-weight: 650; white-space: nowrap; }
      .state { font-weight: 650; }
      .preview { border: 1px solid var(--line-strong); padding: 0.5rem 0.75rem 0.75rem; display: grid; gap: 0.5rem; }
      .notes { max-height: 16rem; overflow: auto; }
      h3 { margin: 0; }
    `,
  ];

  /** a file that came in another way than by the field. */
  @property({ attribute: false }) given: File | null = null;
  @state() private fileName = '';
  @state() private offers: readonly Offer[] | null = null;
  @state() private issues: readonly Issue[] = [];
  @state() private outcome = '';

  protected override updated(changed: Map<string, unknown>): void {
    if (!changed.has('given') || this.given === null) return;
    void this.open(this.given)
      .then(() => this.updateComplete)
      .then(() => this.scrollIntoView({ block: 'nearest' }));
  }

  protected override render() {
    return html`
      <label>File of labels<input type="file" accept=".json,.geojson,.csv,.tsv,.txt" @change=${this.openFile} /></label>
      <p class="quiet">A file of labels, the file of a whole yard (its shelf), or a table with the headings of the one saved here. What is in it is shown before anything comes in.</p>
      ${this.offers ? this.renderPreview(this.offers) : nothing}
      ${this.outcome ? html`<p role="status">${this.outcome}</p>` : nothing}
    `;
  }

  private renderPreview(offers: readonly Offer[]) {
    const taken = offers.filter((offer) => offer.isTaken).length;
    const faults = this.issues.filter((issue) => issue.severity === 'error').length;
    return html`<section class="preview" aria-label="Labels in the file">
      <h3>${this.fileName}: ${offers.length === 1 ? '1 label' : `${offers.length} labels`}${faults > 0 ? `, ${faults === 1 ? '1 fault' : `${faults} faults`}` : ''}</h3>
      ${this.issues.length > 0 ? html`<div class="notes" tabindex="0" role="group" aria-label="Faults in the file">${issueNotes(this.issues)}</div>` : nothing}
      ${offers.length > 0 ? html`<ul>${offers.map((offer, i) => this.renderOffer(offer, i))}</ul>` : nothing}
      <div class="row">
        ${offers.length > 0 ? html`<button type="button" class="primary" ?disabled=${taken === 0} @click=${this.take}>Take ${taken === 1 ? '1 label' : `${taken} labels`}</button>` : nothing}
        <button type="button" @click=${this.close}>${offers.length > 0 ? 'Leave all' : 'Close'}</button>
      </div>
    </section>`;
  }

  private renderOffer(offer: Offer, index: number) {
    const { label, present, differs } = offer;
    const uses = usesOf(label).length;
    const packs = packsWords(label, this.app.units);
    const state =
      present === null
        ? 'New.'
        : differs.length === 0
          ? 'Already on the shelf, the same.'
          : `The shelf has one of that name; it differs in ${differenceWords(differs)}.`;
    return html`<li>
      <label class="check"><input type="checkbox" .checked=${offer.isTaken}
        @change=${(event: Event) => this.change(index, { isTaken: isTicked(event) })} />${productName(label)}<span class="analysis">${shownAnalysis(label)}</span></label>
      <p class="quiet words"><span class="state">${state}</span> ${FORM_WORDS[label.form]}${uses > 1 ? `, ${uses} uses` : ''}${packs === '' ? '' : `, packs: ${packs}`}</p>
      ${
        present && offer.isTaken
          ? html`<label class="words">Take it<select @change=${(event: Event) => this.change(index, { how: fieldValue(event) as How })}>
              <option value="copy" .selected=${offer.how === 'copy'}>as a copy beside it</option>
              <option value="replace" .selected=${offer.how === 'replace'}>in its place; visits, stock and prices stay</option></select></label>`
          : nothing
      }
    </li>`;
  }

  private async openFile(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    input.value = '';
    if (file) await this.open(file);
  }

  private async open(file: File): Promise<void> {
    const { app } = this;
    try {
      const [{ readLabels }, { matchLabels }, { decodeText }] = await Promise.all([
        import('../../io/readLabels'),
        import('../../io/takeLabels'),
        import('../../io/decodeText'),
      ]);
      const text = decodeText(new Uint8Array(await file.arrayBuffer()));
      const { products, issues } = readLabels(text);
      this.fileName = file.name;
      this.issues = issues;
      this.outcome = '';
      this.offers = matchLabels(app.yard.products, products).map((match) => ({
        ...match,
        isTaken: match.present === null,
        how: 'copy',
      }));
    } catch {
      const message = 'The file could not be read, or what reads labels could not be loaded. Try it again.';
      app.tell({ code: 'labels-not-read', severity: 'error', message, place: {} });
    }
  }

  private change(index: number, change: Partial<Pick<Offer, 'isTaken' | 'how'>>): void {
    this.offers = (this.offers ?? []).map((offer, i) => (i === index ? { ...offer, ...change } : offer));
  }

  private close(): void {
    this.offers = null;
    this.issues = [];
  }

  private async take(): Promise<void> {
    const { app } = this;
    const { takeLabels } = await import('../../io/takeLabels');
    const names = app.yard.products.map((one) => one.name);
    const picks = (this.offers ?? [])
      .filter((offer) => offer.isTaken)
      .map(({ label, present, how }): LabelPick => {
        if (present && how === 'replace') return { label, how: 'replace', productId: present.id };
        const name = names.includes(label.name) ? freeName(`${label.name}, copy`, names) : label.name;
        names.push(name);
        return { label, how: 'add', id: app.newId('product'), name };
      });
    app.dispatch('Take labels from a file', (yard) => takeLabels(yard, picks));
    const words = picks.length === 1 ? '1 label is' : `${picks.length} labels are`;
    this.outcome = `${words} on the shelf.`;
    this.close();
    app.note('labels-taken', this.outcome, undoStep(app));
  }
}
