import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Yard } from '../yard/types';
import { AppPart } from './parts/app-part';
import { shared } from './parts/shared';
import type { YardLibrary } from './yard-library';

/** A stored yard that did not open whole: what is wrong, what could be rescued, earlier states. */
@customElement('recovery-view')
export class RecoveryView extends AppPart {
  static override styles = [
    shared,
    css`
      ul { list-style: none; margin: 0 0 0.75rem; padding: 0; }
      li { display: grid; grid-template-columns: 1fr auto; gap: 0.5rem; align-items: center; padding: 0.35rem 0; border-bottom: 1px solid var(--line); }
    `,
  ];

  @property({ attribute: false }) library!: YardLibrary;

  protected override render() {
    const { damaged } = this.app;
    if (!damaged) return nothing;
    const { issues, salvaged, earlier } = damaged.result;
    const name = this.app.entries.find((entry) => entry.id === damaged.id)?.name ?? 'A yard';
    return html`
      <h2>“${name}” is damaged in storage</h2>
      <p>Its newest state could not be read whole. Nothing has been thrown away.</p>
      ${issues.map((issue) => html`<p class="note ${issue.severity}">${issue.message}</p>`)}
      <ul>
        ${earlier.map((state) => this.renderChoice(`State of ${new Date(state.savedAt).toLocaleString()}`, state.yard))}
        ${salvaged ? this.renderChoice('What could be read of the newest state', salvaged) : nothing}
      </ul>
      ${!salvaged && earlier.length === 0 ? html`<p>No earlier state is whole either. Import an exported file if you have one.</p>` : nothing}
      <div class="row">
        ${
          this.app.isOpen
            ? html`<button @click=${this.leave}>Back to “${this.app.yard.name}”</button>`
            : html`<button @click=${() => this.library.openNew('My yard')}>Begin a new yard</button>`
        }
        <button class="danger" @click=${this.removeDamaged}>Remove the damaged yard</button>
      </div>
      ${this.renderOthers(damaged.id)}
    `;
  }

  private renderOthers(damagedId: string) {
    const others = this.app.entries.filter((entry) => entry.id !== damagedId);
    if (this.app.isOpen || others.length === 0) return nothing;
    return html`<h3>Other yards</h3><ul>
      ${others.map((entry) => html`<li><span>${entry.name}</span><button @click=${() => this.library.open(entry.id)}>Open</button></li>`)}</ul>`;
  }

  private renderChoice(words: string, yard: Yard) {
    const count = yard.zones.length;
    return html`<li><span>${words}<br /><span class="quiet">${count === 1 ? '1 zone' : `${count} zones`}</span></span>
      <button class="primary" @click=${() => this.library.recover(yard)}>Open this</button></li>`;
  }

  private leave(): void {
    this.app.damaged = null;
    this.app.notify();
  }

  private async removeDamaged(): Promise<void> {
    const id = this.app.damaged?.id;
    if (id === undefined) return;
    await this.library.remove(id);
    if (!this.app.isOpen) await this.library.start();
  }
}
