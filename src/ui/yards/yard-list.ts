import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { YardEntry } from '../../session/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';
import type { YardLibrary } from '../yard-library';

/** The yards kept in this browser. */
@customElement('yard-list')
export class YardList extends AppPart {
  static override styles = [
    shared,
    css`
      ul { list-style: none; margin: 0; padding: 0; }
      li { padding: 0.5rem 0; border-bottom: 1px solid var(--line); }
      li.on { box-shadow: inset 4px 0 0 var(--accent); padding-left: 0.75rem; background: var(--sheet-sunk); }
      p { margin: 0 0 0.25rem; overflow-wrap: anywhere; }
      form { display: grid; grid-template-columns: 1fr auto auto; gap: 0.35rem; align-items: end; }
      .row { gap: 0.35rem; }
      .ask { margin: 0.5rem 0 0; }
      .gone { padding: 0.5rem 0; border-bottom: 1px solid var(--line); }
      .gone .row { align-items: center; justify-content: space-between; }
    `,
  ];

  @property({ attribute: false }) library!: YardLibrary;
  @state() private renaming: string | null = null;
  @state() private name = '';
  /** yard whose removal is asked about. */
  @state() private asking: string | null = null;

  private readonly savedFormat = new Intl.DateTimeFormat(undefined, {
    dateStyle: 'medium',
    timeStyle: 'short',
  });

  protected override render() {
    const { removed } = this.library;
    return html`<ul aria-label="Yards in this browser">${this.app.entries.map((entry) => this.renderEntry(entry))}</ul>
      ${
        removed.length > 0
          ? html`<section class="gone" aria-label="Removed yards">
              <p class="quiet">Removed. They can be put back until this page is closed or loaded again.</p>
              ${removed.map(
                (yard) => html`<p class="row"><b>${yard.name || 'Yard without a name'}</b>
                  <button aria-label=${`Put ${yard.name} back`} @click=${() => this.library.putBack(yard)}>Put it back</button></p>`,
              )}</section>`
          : nothing
      }`;
  }

  private renderEntry(entry: YardEntry) {
    const isOpen = this.app.yard.id === entry.id;
    const name = (isOpen ? this.app.yard.name : entry.name) || 'Yard without a name';
    if (this.renaming === entry.id) return this.renderRename(entry);
    const count = isOpen ? this.app.yard.zones.length : entry.zoneCount;
    return html`<li class=${isOpen ? 'on' : ''}>
      <p><b>${name}</b> <span class="quiet">${count === 1 ? '1 zone' : `${count} zones`}, saved ${this.savedFormat.format(entry.savedAt)}</span></p>
      <div class="row">
        ${isOpen ? html`<button disabled>Open now</button>` : html`<button aria-label=${`Open ${name}`} @click=${() => this.library.open(entry.id)}>Open</button>`}
        <button aria-label=${`Rename ${name}`} @click=${() => this.startRename(entry.id, name)}>Rename</button>
        <button class="danger" aria-label=${`Remove ${name}`} @click=${() => this.ask(entry.id)}>Remove</button>
      </div>
      ${
        this.asking === entry.id
          ? html`<div class="note warning ask" role="alert">
              <p>Remove “${name}” with all its zones, products and visits? It can be put back until this page is closed or loaded again; after that it cannot be got back. Export it first to keep a file.</p>
              <div class="row"><button class="danger" @click=${() => this.removeNow(entry.id)}>Remove it</button>
                <button @click=${() => {
                  this.asking = null;
                }}>Keep it</button></div></div>`
          : nothing
      }
    </li>`;
  }

  private renderRename(entry: YardEntry) {
    return html`<li>
      <form @submit=${(event: Event) => this.rename(event, entry.id)}>
        <label>Name<input .value=${this.name} autocomplete="off" @input=${(event: Event) => {
          this.name = fieldValue(event);
        }} /></label>
        <button class="primary">Rename</button>
        <button type="button" @click=${() => {
          this.renaming = null;
        }}>Cancel</button>
      </form>
      ${this.name.trim() === '' ? html`<p class="quiet">Type a name.</p>` : nothing}
    </li>`;
  }

  private ask(id: string): void {
    this.asking = id;
    void this.updateComplete.then(() => {
      const box = this.renderRoot.querySelector('.ask');
      box?.scrollIntoView({ block: 'nearest' });
      // the harmless answer is at hand
      box?.querySelector<HTMLButtonElement>('button:not(.danger)')?.focus();
    });
  }

  private removeNow(id: string): void {
    this.asking = null;
    void this.library.remove(id);
  }

  private startRename(id: string, name: string): void {
    this.renaming = id;
    this.name = name;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLInputElement>('form input')?.focus(),
    );
  }

  private rename(event: Event, id: string): void {
    event.preventDefault();
    const name = this.name.trim();
    if (name === '') return;
    this.renaming = null;
    void this.library.rename(id, name);
  }
}
