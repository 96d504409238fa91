import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { AppPart, fieldValue } from '../parts/app-part';
import { fold } from '../parts/fold';
import '../files/export-form';
import '../files/import-form';
import './settings-form';
import { shared } from '../parts/shared';
import type { StepTabs } from '../step-tabs';
import type { YardLibrary } from '../yard-library';
import './yard-list';

/** Yards: what is kept in this browser, files in and out, samples, settings. */
@customElement('yards-panel')
export class YardsPanel extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      form.new { display: grid; grid-template-columns: 1fr auto; gap: 0.35rem; align-items: end; margin: 0.75rem 0; }
      form.new .fault { grid-column: 1 / -1; margin: 0; color: var(--danger); font-size: var(--text-small); }
      .samples { list-style: none; margin: 0; padding: 0; display: grid; gap: 0.5rem; }
      .samples li { display: grid; grid-template-columns: 1fr auto; gap: 0.5rem; align-items: center; }
      .samples p { margin: 0; }
    `,
  ];

  @property({ attribute: false }) library!: YardLibrary;
  @state() private newName = '';
  @state() private isNameMissing = false;

  protected override render() {
    const { app, library, rev } = this;
    const { save } = app.session;
    return html`
      <h2>Yards</h2>
      ${save.state === 'failed' ? this.renderFailed(save) : nothing}
      <yard-list .app=${app} .rev=${rev} .library=${library}></yard-list>
      <form class="new" @submit=${this.openNew}>
        <label>Name of a new yard<input .value=${this.newName} autocomplete="off"
          aria-invalid=${this.isNameMissing ? 'true' : 'false'} aria-describedby=${this.isNameMissing ? 'no-name' : nothing}
          @input=${(event: Event) => {
            this.newName = fieldValue(event);
            this.isNameMissing = false;
          }} /></label>
        <button>New yard</button>
        ${this.isNameMissing ? html`<p class="fault" id="no-name" role="alert">Type a name for the new yard first.</p>` : nothing}
      </form>
      <details class="fold" open><summary>Files</summary>
        <p><button @click=${() => library.download()}>Export “${app.yard.name}” (.geojson)</button></p>
        <export-form .app=${app} .rev=${rev}></export-form>
        <import-form .app=${app} .rev=${rev} .library=${library}></import-form>
      </details>
      <details class="fold"><summary>Sample yards</summary>
        <ul class="samples">
          ${app.services.samples.map(
            (sample) => html`<li><p><b>${sample.name}</b><br /><span class="quiet">${sample.words}</span></p>
              <button aria-label=${`Open a copy of ${sample.name}`} @click=${() => library.openSample(sample)}>Open a copy</button></li>`,
          )}
        </ul>
      </details>
      <details class="fold"><summary>Settings of “${app.yard.name}”</summary>
        <settings-form .app=${app} .rev=${rev}></settings-form></details>
      <p class="quiet">Everything stays in this browser. Clearing its data clears the yards: export a file now and then.</p>
    `;
  }

  private renderFailed(save: { readonly message: string; readonly conflict: boolean }) {
    const { app, library } = this;
    return html`<div class="note error"><p>${save.message}</p>
      ${
        save.conflict
          ? html`<div class="row"><button @click=${() => app.session.reloadStored()}>Take the other tab’s state</button>
              <button @click=${() => library.keepAsCopy()}>Keep this one as a copy</button></div>`
          : html`<button @click=${() => app.session.flush()}>Try again</button>`
      }</div>`;
  }

  private openNew(event: Event): void {
    event.preventDefault();
    const name = this.newName.trim();
    this.isNameMissing = name === '';
    if (this.isNameMissing) {
      (event.target as HTMLFormElement).querySelector('input')?.focus();
      return;
    }
    this.newName = '';
    void this.openAndMeasure(name);
  }

  /** A new yard begins on the first step; the focus goes there too, as this form is gone. */
  private async openAndMeasure(name: string): Promise<void> {
    const tabs = (this.getRootNode() as ShadowRoot).querySelector<StepTabs>('step-tabs');
    await this.library.openNew(name);
    this.app.setView({ step: 'measure' });
    await new Promise((resolve) => setTimeout(resolve));
    await tabs?.updateComplete;
    tabs?.shadowRoot?.querySelector<HTMLElement>('[aria-current="page"]')?.focus();
  }
}
