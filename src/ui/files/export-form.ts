import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { EXPORT_FORMATS, type ExportFormat } from '../../io/exportFormats';
import type { OutlineChoice } from '../../io/exportShapes';
import type { Issue } from '../../yard/types';
import { AppPart, isTicked } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import { saveFile } from '../parts/save-file';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';

const FORMAT_WORDS: Readonly<Record<ExportFormat, string>> = {
  kml: 'KML',
  kmz: 'KMZ (KML, zipped)',
  gpx: 'GPX (outlines as tracks)',
  shapefile: 'Shapefile (zipped)',
  geojson: 'GeoJSON, outlines alone',
  csv: 'Table of areas (CSV)',
};
const OUTLINE_WORDS: Readonly<Record<OutlineChoice, string>> = {
  drawn: 'as drawn',
  net: 'net: less what other zones take',
};
type Which = 'all' | 'chosen';

/** Zones out, in the formats that other programs read. */
@customElement('export-form')
export class ExportForm extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      form { display: grid; gap: 0.5rem; border: 1px solid var(--line-strong); padding: 0.5rem 0.75rem 0.75rem; margin: 0 0 0.75rem; }
      h3 { margin: 0; }
    `,
  ];

  @state() private format: ExportFormat = 'kml';
  @state() private outline: OutlineChoice = 'drawn';
  @state() private which: Which = 'all';
  @state() private withMarks = true;
  @state() private outcome = '';
  @state() private issues: readonly Issue[] = [];

  protected override render() {
    const { zones, marks } = this.app.yard;
    const chosen = this.app.view.selectedZoneIds.length;
    const which: Which = chosen > 0 ? this.which : 'all';
    const whichWords = { all: `all ${zones.length}`, chosen: `the ${chosen} chosen` };
    return html`<form @submit=${this.save}>
      <h3>For other programs</h3>
      ${selectField('Format', this.format, EXPORT_FORMATS, FORMAT_WORDS, (format) =>
        this.change(() => {
          this.format = format;
        }),
      )}
      ${
        chosen > 0
          ? selectField('Zones', which, ['all', 'chosen'], whichWords, (value) =>
              this.change(() => {
                this.which = value;
              }),
            )
          : nothing
      }
      ${
        this.format === 'csv'
          ? html`<p class="quiet">Gross and net area, its error, perimeter and slope of each zone, in ${this.app.units === 'us' ? 'square feet and feet' : 'square metres and metres'}.</p>`
          : html`${selectField('Outlines', this.outline, ['drawn', 'net'], OUTLINE_WORDS, (outline) =>
              this.change(() => {
                this.outline = outline;
              }),
            )}
            ${
              marks.length > 0
                ? html`<label class="check"><input type="checkbox" .checked=${this.withMarks} @change=${(
                    event: Event,
                  ) => {
                    this.withMarks = isTicked(event);
                  }} />with drains, wells, hose bibs and gates</label>`
                : nothing
            }`
      }
      <div><button ?disabled=${zones.length === 0}>Save the file</button></div>
      ${this.outcome ? html`<p role="status">${this.outcome}</p>` : nothing}
      ${issueNotes(this.issues)}
    </form>`;
  }

  private change(set: () => void): void {
    set();
    this.outcome = '';
    this.issues = [];
  }

  private async save(event: Event): Promise<void> {
    event.preventDefault();
    const { app } = this;
    const ids = app.view.selectedZoneIds;
    const zoneIds = this.which === 'chosen' && ids.length > 0 ? ids : null;
    try {
      const { exportFile } = await import('../../io/exportFile');
      const options = { zoneIds, outline: this.outline, withMarks: this.withMarks };
      const file = await exportFile(
        app.yard,
        app.session.derived.measured,
        this.format,
        options,
        app.services.now(),
      );
      this.issues = file.issues;
      if (file.count === 0 && this.format !== 'csv') {
        this.outcome = 'Nothing is left to write.';
        return;
      }
      saveFile(file.name, file.mediaType, file.content);
      this.outcome = `“${file.name}” with ${file.count === 1 ? '1 zone' : `${file.count} zones`} was handed to the browser.`;
    } catch {
      const message = 'What writes this format could not be loaded. Check the connection and try again.';
      app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
    }
  }
}
