import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { DeskOverview } from '../../io/deskTypes';
import type { ImportClient } from '../../io/importClient';
import type { FillChoice, ImportRules } from '../../io/importTypes';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';

const FILL_WORDS: Readonly<Record<FillChoice, string>> = {
  'non-zero': 'counts once',
  'even-odd': 'is left out',
};
const ROW_WORDS: Readonly<Record<ImportRules['csvRows'], string>> = {
  auto: 'as the columns suggest',
  corners: 'corners of shapes',
  points: 'single points',
};

/**
 * What only the person can know of a file: its reference system, the order of its coordinates, how
 * crossing outlines are meant. Event `rules-change` with what changed.
 */
@customElement('import-asks')
export class ImportAsks extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      fieldset { border: 1px solid var(--line-strong); padding: 0.25rem 0.75rem 0.5rem; margin: 0 0 0.75rem; min-width: 0; }
      legend { font-weight: 650; padding: 0 0.3rem; }
      form { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0.35rem; align-items: end; }
      ul { list-style: none; margin: 0.35rem 0 0; padding: 0; max-height: 12rem; overflow: auto; }
      li button { width: 100%; text-align: left; }
      .fault { color: var(--danger); margin: 0.35rem 0 0; }
    `,
  ];

  @property({ attribute: false }) overview!: DeskOverview;
  @property({ attribute: false }) client: ImportClient | null = null;
  @state() private words = '';
  @state() private found: readonly { readonly code: string; readonly name: string }[] | null = null;

  protected override render() {
    const { overview } = this;
    const { rules } = overview;
    const asksOrder = overview.swapCount > 0 || rules.isSwapped;
    return html`
      ${overview.asksCrs !== null || rules.crs !== null ? this.renderCrs() : nothing}
      ${
        asksOrder
          ? html`<fieldset><legend>Order of the coordinates</legend>
              ${rules.isSwapped ? nothing : html`<p>${overview.swapCount === 1 ? 'One feature looks' : `${overview.swapCount.toLocaleString('en-US')} features look`} as if latitude stood first.</p>`}
              <label class="check"><input type="checkbox" .checked=${rules.isSwapped} @change=${(event: Event) => this.change({ isSwapped: isTicked(event) })} />Swap latitude and longitude in the whole file</label></fieldset>`
          : nothing
      }
      ${
        overview.hasCrossings
          ? html`<fieldset><legend>Outlines that cross themselves</legend>
              ${selectField('Ground that an outline goes round more than once', rules.fill, ['non-zero', 'even-odd'], FILL_WORDS, (fill) => this.change({ fill }))}</fieldset>`
          : nothing
      }
      ${
        overview.hasTable
          ? html`<fieldset><legend>Rows of the table</legend>
              ${selectField('They are', rules.csvRows, ['auto', 'corners', 'points'], ROW_WORDS, (csvRows) => this.change({ csvRows }))}</fieldset>`
          : nothing
      }`;
  }

  private renderCrs() {
    const { overview } = this;
    return html`<fieldset><legend>Reference system</legend>
      ${overview.asksCrs === null ? nothing : html`<p class="note warning">${overview.asksCrs} Name the system of the file.</p>`}
      ${overview.crsName === null ? nothing : html`<p>In use: <b>${overview.crsName}</b></p>`}
      <form @submit=${this.search}>
        <label>EPSG number, words of its name, or the text of a .prj file<input autocomplete="off" .value=${this.words} placeholder="utm 14, or 32614" @input=${(
          event: Event,
        ) => {
          this.words = fieldValue(event);
        }} /></label><button>Find</button>
      </form>
      ${
        this.found === null
          ? nothing
          : this.found.length === 0
            ? html`<p class="fault" role="alert">No system of that name is known here.</p>`
            : html`<ul aria-label="Systems found">${this.found.map((crs) => html`<li><button @click=${() => this.change({ crs: crs.code })}>${crs.name} <span class="quiet">${crs.code}</span></button></li>`)}</ul>`
      }
      ${overview.rules.crs === null ? nothing : html`<button class="plain" @click=${() => this.change({ crs: null })}>Read the numbers as degrees</button>`}
    </fieldset>`;
  }

  private async search(event: Event): Promise<void> {
    event.preventDefault();
    const words = this.words.trim();
    if (words === '') return;
    if (/[[+]/.test(words)) {
      this.change({ crs: words });
      return;
    }
    this.found = (await this.client?.findCrs(words)) ?? [];
    const [only] = this.found;
    if (only && this.found.length === 1) this.change({ crs: only.code });
  }

  private change(rules: Partial<ImportRules>): void {
    this.found = null;
    this.dispatchEvent(new CustomEvent('rules-change', { detail: rules }));
  }
}
