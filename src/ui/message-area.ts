import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { AppController } from './app-controller';
import { AppPart } from './parts/app-part';
import { shared } from './parts/shared';

/** ms that a plain note stays, and one with a button; errors and warnings stay until closed or overtaken by what is done next. */
const NOTE_MS = 6_000;
const NOTE_TO_ACT_ON_MS = 12_000;

/** One message beside the map, until it is closed, another takes its place or the work goes on. */
@customElement('message-area')
export class MessageArea extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; pointer-events: none; }
      .message { pointer-events: auto; display: flex; gap: 0.5rem; align-items: center; margin: 0; max-width: 40rem; max-height: 7.5rem; overflow: auto; background: var(--sheet); border: 1px solid var(--line-strong); border-left-width: 6px; padding: 0.25rem 0.25rem 0.25rem 0.75rem; }
      .message.error { border-left-color: var(--danger); background: var(--danger-ground); }
      .message.warning { border-left-color: var(--warn); background: var(--warn-ground); }
      p { margin: 0.4rem 0; flex: 1; overflow-wrap: anywhere; }
    `,
  ];

  private shown: AppController['message'] = null;
  private timer = 0;

  override disconnectedCallback(): void {
    clearTimeout(this.timer);
    this.shown = null;
    super.disconnectedCallback();
  }

  protected override updated(): void {
    const { message } = this.app;
    if (message === this.shown) return;
    this.shown = message;
    clearTimeout(this.timer);
    if (message?.issue.severity === 'note') this.leaveLater();
  }

  /** Not while it is pointed at or being tabbed through. */
  private leaveLater(): void {
    this.timer = window.setTimeout(
      () => {
        if (this.matches(':hover, :focus-within')) this.leaveLater();
        else this.app.say(null);
      },
      this.app.message?.action ? NOTE_TO_ACT_ON_MS : NOTE_MS,
    );
  }

  protected override render() {
    const { message } = this.app;
    const isError = message?.issue.severity === 'error';
    return html`
      <div role="status" aria-live=${isError ? 'assertive' : 'polite'}>
        ${
          message
            ? html`<div class="message ${message.issue.severity}">
                <p>${message.issue.message}</p>
                ${message.action ? html`<button @click=${this.act}>${message.action.label}</button>` : nothing}
                <button class="plain" aria-label="Close the message" @click=${() => this.app.say(null)}>✕</button>
              </div>`
            : nothing
        }
      </div>
    `;
  }

  private act(): void {
    const action = this.app.message?.action;
    this.app.say(null);
    action?.run();
  }
}
