import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { READY_LAYERS } from '../../map/sources';
import { changeSettings } from '../../yard/edits';
import type { BaseLayer } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import './own-layer-form';
import { shared } from '../parts/shared';

type NamedLayer = Exclude<BaseLayer, { kind: 'grid' }>;

function isNamed(layer: BaseLayer): layer is NamedLayer {
  return layer.kind !== 'grid';
}

function keyOf(layer: BaseLayer): string {
  return layer.kind === 'grid' ? 'grid' : layer.id;
}

/** What lies under the drawing: plain grid, a ready aerial, or a source of the person's own. */
@customElement('base-layer-panel')
export class BaseLayerPanel extends AppPart {
  static override styles = [
    shared,
    css`
      fieldset { border: 0; padding: 0; margin: 0; }
      .own { display: flex; justify-content: space-between; align-items: center; gap: 0.5rem; }
      .own label { flex: 1; overflow-wrap: anywhere; }
    `,
  ];

  @state() private isAdding = false;

  protected override render() {
    const { baseLayer, ownLayers } = this.app.yard.settings;
    const own = ownLayers.filter(isNamed);
    const { isLocal } = this.app.yard.settings;
    // a drawing without a place on the Earth has no ground that an aerial could show
    const ready = isLocal ? READY_LAYERS.filter((layer) => layer.kind === 'grid') : READY_LAYERS;
    const known = [...READY_LAYERS, ...own];
    const extra =
      isNamed(baseLayer) && !known.some((layer) => keyOf(layer) === keyOf(baseLayer)) ? [baseLayer] : [];
    return html`
      <fieldset>
        <legend class="visually-hidden">Ground under the drawing</legend>
        ${ready.map((layer) => this.renderChoice(layer))}
        ${extra.map((layer) => this.renderChoice(layer))}
        ${own.map(
          (layer) => html`<div class="own">${this.renderChoice(layer)}
            ${
              layer.kind === 'own-picture'
                ? html`<button aria-label=${`Set ${layer.name}`} @click=${() => this.setPicture(layer)}>Set</button>`
                : nothing
            }
            <button class="danger" aria-label=${`Remove ${layer.name}`} @click=${() => this.removeLayer(layer)}>Remove</button></div>`,
        )}
      </fieldset>
      <p><button @click=${() => this.app.setView({ way: 'picture' })}>A picture of your own</button></p>
      <p class="quiet">${
        isLocal
          ? 'This yard is a local drawing without a place on the Earth: aerials have nothing to show. Give it a place under “Find a place”.'
          : 'An aerial or tile server is asked for pictures of the ground shown only while it is chosen here.'
      }</p>
      ${
        isLocal
          ? nothing
          : this.isAdding
            ? html`<own-layer-form .app=${this.app} .rev=${this.rev} @closed=${() => {
                this.isAdding = false;
              }}></own-layer-form>`
            : html`<button @click=${() => {
                this.isAdding = true;
              }}>Add a source of your own</button>`
      }
      ${this.isAdding || isLocal ? nothing : html`<p class="quiet">A tile address, a map service (WMS), or a picture by its address.</p>`}
    `;
  }

  private renderChoice(layer: BaseLayer) {
    const isOn = keyOf(layer) === keyOf(this.app.yard.settings.baseLayer);
    return html`<label class="check"><input type="radio" name="layer" .checked=${isOn}
      @change=${() => this.app.dispatch('Change ground', (yard) => changeSettings(yard, { baseLayer: layer }))} />
      ${layer.kind === 'grid' ? 'Drafting paper with a grid' : layer.name}</label>`;
  }

  private setPicture(layer: NamedLayer): void {
    this.app.dispatch('Change ground', (yard) => changeSettings(yard, { baseLayer: layer }));
    this.app.setView({ way: 'picture' });
  }

  private removeLayer(layer: NamedLayer): void {
    this.app.dispatch('Remove source', (yard) => {
      const { baseLayer, ownLayers } = yard.settings;
      return changeSettings(yard, {
        ownLayers: ownLayers.filter((each) => keyOf(each) !== layer.id),
        ...(keyOf(baseLayer) === layer.id ? { baseLayer: { kind: 'grid' as const } } : {}),
      });
    });
  }
}
