import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Issue } from '../yard/types';
import { AppPart } from './app-part';
import { shared } from './shared';
import type { YardLibrary } from './yard-library';

/** A GeoJSON file in: as a yard of its own, or its zones into the yard on the table. */
@customElement('import-form')
export class ImportForm extends AppPart {
  static override styles = [
    shared,
    css`
      fieldset { border: 1px solid var(--line-strong); padding: 0.25rem 0.75rem; margin: 0 0 0.5rem; }
      ul { margin: 0; padding-left: 1.1rem; }
      input[type='file'] { padding: 0; }
      ::file-selector-button { min-height: 42px; margin-right: 0.75rem; padding: 0 0.75rem; font: inherit; color: var(--ink); background: var(--sheet-sunk); border: 0; border-right: 1px solid var(--line-strong); }
      .result { margin-top: 0.5rem; scroll-margin-top: 1rem; }
    `,
  ];

  @property({ attribute: false }) library!: YardLibrary;
  @state() private isInto = false;
  @state() private isBusy = false;
  @state() private outcome = '';

  protected override render() {
    const { fileIssues } = this.app;
    return html`
      <fieldset>
        <legend>Import a GeoJSON file</legend>
        <label class="check"><input type="radio" name="where" .checked=${!this.isInto} @change=${() => {
          this.isInto = false;
        }} />as a new yard</label>
        <label class="check"><input type="radio" name="where" .checked=${this.isInto} @change=${() => {
          this.isInto = true;
        }} />add its zones to this yard</label>
        <label>File<input type="file" accept=".geojson,.json,application/geo+json,application/json" ?disabled=${this.isBusy} @change=${this.read} /></label>
        ${this.isBusy ? html`<p>Reading…</p>` : nothing}
        ${this.outcome ? html`<p class="result" id="outcome" tabindex="-1" role="status">${this.outcome}</p>` : nothing}
      </fieldset>
      ${
        fileIssues.length > 0
          ? html`<div class="note warning" id="told" tabindex="-1" role="group" aria-labelledby="told-head"><p id="told-head"><b>${fileIssues.length === 1 ? 'One thing' : `${fileIssues.length} things`} to know about the file</b></p>
              <ul>${fileIssues.map((issue) => html`<li>${describeIssue(issue)}</li>`)}</ul>
              <button class="plain" @click=${this.clear}>Close the list</button></div>`
          : nothing
      }
    `;
  }

  private clear(): void {
    this.app.fileIssues = [];
    this.app.notify();
  }

  private async read(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (!file) return;
    this.isBusy = true;
    this.outcome = '';
    try {
      const text = await file.text();
      const name = file.name.replace(/\.(geo)?json$/i, '');
      const isDone = this.isInto
        ? await this.library.importInto(text)
        : await this.library.importAsNew(text, name);
      this.outcome = isDone ? `“${file.name}” was read.` : `Nothing in “${file.name}” could be used.`;
    } catch {
      this.outcome = `“${file.name}” could not be read.`;
    }
    this.isBusy = false;
    input.value = '';
    await this.updateComplete;
    this.showOutcome();
  }

  /** What was found is below the fold as a rule: it is brought into view and read out. */
  private showOutcome(): void {
    const outcome = this.renderRoot.querySelector<HTMLElement>('#outcome');
    const told = this.renderRoot.querySelector<HTMLElement>('#told');
    (told ?? outcome)?.focus({ preventScroll: true });
    outcome?.scrollIntoView({ block: 'start' });
  }
}

function describeIssue(issue: Issue): string {
  const { line, path } = issue.place;
  const where = line !== undefined ? ` (line ${line})` : path ? ` (${path})` : '';
  return `${issue.message}${where}`;
}
