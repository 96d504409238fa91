import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Issue } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import './file-form';
import { shared } from '../parts/shared';
import type { YardLibrary } from '../yard-library';

/** Files in, on the Yards screen; and what was found when a stored yard or sample was opened. */
@customElement('import-form')
export class ImportForm extends AppPart {
  static override styles = [
    shared,
    css`
      fieldset { border: 1px solid var(--line-strong); padding: 0.25rem 0.75rem 0.75rem; margin: 0 0 0.5rem; min-width: 0; }
      ul { margin: 0; padding-left: 1.1rem; }
    `,
  ];

  @property({ attribute: false }) library!: YardLibrary;

  protected override render() {
    const { fileIssues } = this.app;
    return html`
      <fieldset><legend>Bring in from files</legend>
        <file-form place="new" .app=${this.app} .rev=${this.rev}></file-form></fieldset>
      ${
        fileIssues.length > 0
          ? html`<div class="note warning" role="group" aria-labelledby="told-head"><p id="told-head"><b>${fileIssues.length === 1 ? 'One thing' : `${fileIssues.length} things`} to know about the file</b></p>
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
}

function describeIssue(issue: Issue): string {
  const { line, path } = issue.place;
  const where = line !== undefined ? ` (line ${line})` : path ? ` (${path})` : '';
  return `${issue.message}${where}`;
}
