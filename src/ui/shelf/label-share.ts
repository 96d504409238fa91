import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { productName } from '../../words/productWords';
import type { Product } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { fold } from '../parts/fold';
import { saveFile } from '../parts/save-file';
import { shared } from '../parts/shared';
import { shownAnalysis } from './product-edits';

type Format = 'json' | 'csv';

/** Labels out: as a file that another yard opens, or as a table; saved, or handed on where the device can. */
@customElement('label-share')
export class LabelShare extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: grid; gap: 0.5rem; }
      ul { list-style: none; margin: 0; padding: 0; border: solid var(--line); border-width: 1px 0; max-height: 18rem; overflow: auto; }
      li .quiet { margin-left: auto; white-space: nowrap; }
      p { margin: 0; }
    `,
  ];

  /** products left out; all others go along. */
  @state() private leftOut: ReadonlySet<string> = new Set();
  @state() private format: Format = 'json';
  @state() private withStock = false;
  @state() private outcome = '';
  @state() private hasHeadings = false;

  private get chosen(): readonly Product[] {
    return this.app.yard.products.filter((product) => !this.leftOut.has(product.id));
  }

  protected override render() {
    const { products } = this.app.yard;
    const { chosen } = this;
    const isAll = chosen.length === products.length;
    return html`
      <div class="row">
        <button type="button" ?disabled=${isAll} @click=${() =>
          this.choose(
            products.map((one) => one.id),
            true,
          )}>All</button>
        <button type="button" ?disabled=${chosen.length === 0} @click=${() =>
          this.choose(
            products.map((one) => one.id),
            false,
          )}>None</button>
      </div>
      <ul aria-label="Labels to share" tabindex="0">${products.map(
        (
          product,
        ) => html`<li><label class="check"><input type="checkbox" .checked=${!this.leftOut.has(product.id)}
          @change=${(event: Event) => this.choose([product.id], isTicked(event))} />${productName(product)}<span class="quiet">${shownAnalysis(product)}</span></label></li>`,
      )}</ul>
      <label>As<select @change=${(event: Event) => {
        this.format = fieldValue(event) as Format;
        this.outcome = '';
      }}>
        <option value="json" .selected=${this.format === 'json'}>a file of labels, for another yard (JSON)</option>
        <option value="csv" .selected=${this.format === 'csv'}>a table, for a spreadsheet (CSV)</option></select></label>
      ${
        this.format === 'csv'
          ? html`<p class="quiet">Units stand in the headings, in ${this.app.units === 'us' ? 'US' : 'metric'} measures. A label with several uses or packs takes several rows. The table can be opened here again.</p>`
          : nothing
      }
      ${
        this.format === 'csv'
          ? html`<details class="fold" @toggle=${this.loadHeadings}><summary>What stands in each column</summary>
              ${this.hasHeadings ? html`<label-headings .system=${this.app.units}></label-headings>` : nothing}</details>`
          : nothing
      }
      <label class="check"><input type="checkbox" .checked=${this.withStock} @change=${(event: Event) => {
        this.withStock = isTicked(event);
      }} />With prices and what is on hand</label>
      <div class="row">
        <button type="button" ?disabled=${chosen.length === 0} @click=${() => this.run('save')}>Save the file</button>
        ${canShareFiles() ? html`<button type="button" ?disabled=${chosen.length === 0} @click=${() => this.run('share')}>Hand it on</button>` : nothing}
        ${this.format === 'csv' ? html`<button type="button" @click=${() => this.run('headings')}>Save the headings alone</button>` : nothing}
      </div>
      ${this.outcome ? html`<p role="status">${this.outcome}</p>` : nothing}
    `;
  }

  private async loadHeadings(): Promise<void> {
    try {
      await import('./label-headings');
      this.hasHeadings = true;
    } catch {
      const message = 'The list of columns could not be loaded. Check the connection and try again.';
      this.app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
    }
  }

  private choose(ids: readonly string[], isOn: boolean): void {
    const next = new Set(this.leftOut);
    for (const id of ids) {
      if (isOn) next.delete(id);
      else next.add(id);
    }
    this.leftOut = next;
    this.outcome = '';
  }

  private async run(how: 'save' | 'share' | 'headings'): Promise<void> {
    const { app, format, withStock } = this;
    const products = how === 'headings' ? [] : this.chosen;
    const count = products.length === 1 ? '1 label' : `${products.length} labels`;
    try {
      const [{ labelsFileName, writeLabels }, { writeLabelsCsv }] = await Promise.all([
        import('../../io/writeLabels'),
        import('../../io/writeLabelsCsv'),
      ]);
      const isTable = format === 'csv';
      const text = isTable
        ? writeLabelsCsv(products, app.units, withStock || how === 'headings')
        : writeLabels(products, withStock);
      const type = isTable ? 'text/csv' : 'application/json';
      const name = labelsFileName(products, isTable ? '.csv' : '.json');
      if (how === 'share') {
        await shareText(name, type, text);
        this.outcome = `“${name}” with ${count} was handed on.`;
        return;
      }
      saveFile(name, isTable ? `${type};charset=utf-8` : type, text);
      this.outcome =
        how === 'headings'
          ? `“${name}” with the headings alone was handed to the browser.`
          : `“${name}” with ${count} was handed to the browser.`;
    } catch (error) {
      // the person closed the sheet of the device: nothing was handed on
      if (error instanceof DOMException && error.name === 'AbortError') return;
      const message =
        how === 'share'
          ? 'The device could not hand the file on. Save it instead.'
          : 'What writes labels could not be loaded. Check the connection and try again.';
      app.tell({ code: 'labels-not-written', severity: 'error', message, place: {} });
    }
  }
}

/** Whether the device hands files on to other programs (Web Share API). Plain text is what all of them take. */
function canShareFiles(): boolean {
  const probe = new File(['x'], 'x.txt', { type: 'text/plain' });
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [probe] });
}

/** Hands a file on; as plain text where its own kind is not let through. What it holds is told by its content. */
async function shareText(name: string, type: string, text: string): Promise<void> {
  const own = new File([text], name, { type });
  const plain = new File([text], `${name}.txt`, { type: 'text/plain' });
  await navigator.share({ files: [navigator.canShare({ files: [own] }) ? own : plain], title: name });
}
