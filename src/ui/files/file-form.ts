import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { AppPart, fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';
import type { ImportPlace } from './import-preview';

/** Files that can be read, by their endings; what a file is is told by its content. */
const ACCEPTED =
  '.geojson,.json,.geojsonl,.ndjson,.kml,.kmz,.gpx,.zip,.shp,.dbf,.prj,.cpg,.csv,.txt,.tsv,.png,.jpg,.jpeg,.webp,.tif,.tiff,.tfw,.pgw,.jgw,.wld';

/** Shapes from files or pasted text. Everything is shown before it comes in. */
@customElement('file-form')
export class FileForm extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      input[type='file'] { padding: 0; }
      ::file-selector-button { min-height: 42px; margin-right: 0.75rem; padding: 0 0.75rem; font: inherit; color: var(--ink); background: var(--sheet-sunk); border: 0; border-right: 1px solid var(--line-strong); }
      form { display: grid; gap: 0.5rem; margin-top: 0.75rem; }
      textarea { font-family: ui-monospace, monospace; font-size: 0.875rem; }
      .fault { color: var(--danger); margin: 0; }
    `,
  ];

  /** where it is offered to put the zones at first. */
  @property() place: ImportPlace = 'into';
  @state() private text = '';
  @state() private fault = '';

  protected override render() {
    return html`
      <label>Files<input type="file" multiple accept=${ACCEPTED} @change=${this.openFiles} /></label>
      <p class="quiet">GeoJSON, KML, KMZ, GPX, a shapefile (zipped, or its .shp, .dbf and .prj together), or a table (CSV) with latitude and longitude. Files can also be dropped anywhere on the page. What is in them is shown before anything comes in.</p>
      <form @submit=${this.openText}>
        <label>Or paste GeoJSON, KML, GPX or a table here<textarea rows="4" spellcheck="false" .value=${this.text} aria-invalid=${this.fault ? 'true' : 'false'} @input=${(
          event: Event,
        ) => {
          this.text = fieldValue(event);
          this.fault = '';
        }}></textarea></label>
        ${this.fault ? html`<p class="fault" role="alert">${this.fault}</p>` : ''}
        <div><button>See what is in it</button></div>
      </form>`;
  }

  private async openFiles(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const files = [...(input.files ?? [])];
    input.value = '';
    if (files.length === 0) return;
    await (await this.load())?.openImport(this.app, files, this.place);
  }

  private async openText(event: Event): Promise<void> {
    event.preventDefault();
    if (this.text.trim() === '') {
      this.fault = 'Paste some text first.';
      return;
    }
    await (await this.load())?.openImportText(this.app, this.text, this.place);
  }

  private async load(): Promise<typeof import('./import-open') | null> {
    try {
      return await import('./import-open');
    } catch {
      const message = 'What opens files could not be loaded. Check the connection and try again.';
      this.app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
      return null;
    }
  }
}
