import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { checkBaseLayer } from '../../map/sources';
import { changeSettings } from '../../yard/edits';
import type { BaseLayer, Issue } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';

type Sort = 'xyz' | 'wms' | 'picture';
const SORT_WORDS: Readonly<Record<Sort, string>> = {
  xyz: 'Tiles by address (XYZ)',
  wms: 'Map service (WMS)',
  picture: 'A picture by its address, with known edges',
};
/** Entry of a tile source, map service or picture by its address. Event `closed` when done. */
@customElement('own-layer-form')
export class OwnLayerForm extends AppPart {
  static override styles = [
    shared,
    css`
      form { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; border: 1px solid var(--line-strong); padding: 0.75rem; }
      .whole { grid-column: 1 / -1; }
      p { margin: 0; }
    `,
  ];

  @state() private sort: Sort = 'xyz';
  @state() private values: Readonly<Record<string, string>> = { version: '1.3.0', maxNativeZoom: '19' };
  @state() private issues: readonly Issue[] = [];

  protected override render() {
    return html`
      <form @submit=${this.save}>
        <label class="whole">Sort<select @change=${(event: Event) => {
          this.sort = fieldValue(event) as Sort;
        }}>
          ${(Object.keys(SORT_WORDS) as Sort[]).map((sort) => html`<option value=${sort} .selected=${sort === this.sort}>${SORT_WORDS[sort]}</option>`)}</select></label>
        ${this.field('name', 'Name', 'whole')}
        ${this.sort === 'xyz' ? this.renderXyz() : nothing}
        ${this.sort === 'wms' ? this.renderWms() : nothing}
        ${this.sort === 'picture' ? this.renderPicture() : nothing}
        ${this.field('attribution', 'Credit line, as the source asks', 'whole')}
        ${this.issues.map((issue) => html`<p class="note error whole" role="alert">${issue.message}</p>`)}
        <div class="row whole"><button class="primary">Add and show</button>
          <button type="button" @click=${this.close}>Cancel</button></div>
      </form>
    `;
  }

  private renderXyz() {
    return html`${this.field('url', 'Address with {z}, {x} and {y}', 'whole')}
      ${this.field('maxNativeZoom', 'Deepest zoom it has')}`;
  }

  private renderWms() {
    return html`${this.field('url', 'Address of the service', 'whole')}
      ${this.field('layers', 'Layers')}
      <label>Version<select @change=${(event: Event) => this.set('version', fieldValue(event))}>
        <option value="1.3.0" .selected=${this.values.version === '1.3.0'}>1.3.0</option>
        <option value="1.1.1" .selected=${this.values.version === '1.1.1'}>1.1.1</option></select></label>`;
  }

  private renderPicture() {
    return html`
      ${this.field('url', 'Address of the picture', 'whole')}
      ${this.field('north', 'North edge, latitude')}${this.field('south', 'South edge, latitude')}
      ${this.field('west', 'West edge, longitude')}${this.field('east', 'East edge, longitude')}
      <p class="quiet whole">North must be up in the picture. A picture on this device has a form of its own: “A picture of your own”.</p>`;
  }

  private field(key: string, label: string, place = '') {
    return html`<label class=${place}>${label}<input autocomplete="off" .value=${this.values[key] ?? ''}
      @input=${(event: Event) => this.set(key, fieldValue(event))} /></label>`;
  }

  private set(key: string, value: string): void {
    this.values = { ...this.values, [key]: value };
  }

  private layer(): BaseLayer {
    const text = (key: string) => (this.values[key] ?? '').trim();
    const degrees = (key: string) => (text(key) === '' ? Number.NaN : Number(text(key)));
    const id = this.app.newId('layer');
    const name = text('name') || SORT_WORDS[this.sort];
    const [url, attribution] = [text('url'), text('attribution')];
    if (this.sort === 'xyz') {
      const maxNativeZoom = Number(text('maxNativeZoom'));
      return { kind: 'xyz', id, name, url, attribution, maxNativeZoom };
    }
    if (this.sort === 'wms') {
      const version = text('version') === '1.1.1' ? '1.1.1' : '1.3.0';
      return { kind: 'wms', id, name, url, attribution, layers: text('layers'), version };
    }
    const edges = {
      west: degrees('west'),
      south: degrees('south'),
      east: degrees('east'),
      north: degrees('north'),
    };
    return { kind: 'picture', id, name, url, attribution, ...edges };
  }

  private save(event: Event): void {
    event.preventDefault();
    const layer = this.layer();
    const issues = [...checkBaseLayer(layer)];
    if ('url' in layer && layer.url === '') {
      issues.unshift({
        code: 'base-layer-url',
        severity: 'error',
        message: 'The address is missing.',
        place: {},
      });
    }
    if (
      layer.kind === 'xyz' &&
      !(Number.isInteger(layer.maxNativeZoom) && layer.maxNativeZoom >= 1 && layer.maxNativeZoom <= 24)
    ) {
      issues.push({
        code: 'base-layer-zoom',
        severity: 'error',
        message: 'The deepest zoom is a whole number from 1 to 24.',
        place: {},
      });
    }
    this.issues = issues;
    if (issues.length > 0) return;
    this.app.dispatch('Add source', (yard) =>
      changeSettings(yard, { baseLayer: layer, ownLayers: [...yard.settings.ownLayers, layer] }),
    );
    this.app.map?.fit();
    this.close();
  }

  private close(): void {
    this.dispatchEvent(new CustomEvent('closed'));
  }
}
