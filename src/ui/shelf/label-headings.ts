import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { columnHeading, LABEL_COLUMNS, type LabelColumn } from '../../io/labelColumns';
import type { UnitSystem } from '../../yard/types';
import { shared } from '../parts/shared';

/** What a cell of a column may hold, in words. */
function cellWords(column: LabelColumn): string {
  switch (column.kind) {
    case 'text':
      return 'text';
    case 'yes-no':
      return 'yes or no';
    case 'choice':
      return column.values.join(', ');
    case 'packs':
      return 'numbers of packs, counted down the rows of the product, such as 1 2; empty: all of them';
    case 'number': {
      if (column.units === null) return column.isWhole ? 'whole number' : 'number';
      const labels = [...column.units.us, ...column.units.metric].map((unit) => unit.label);
      return labels.length > 2 ? `number; the unit can be ${[...new Set(labels)].join(', ')}` : 'number';
    }
  }
}

/** The columns of a table of labels, and what stands in each. */
@customElement('label-headings')
export class LabelHeadings extends LitElement {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .scroll { max-height: 20rem; overflow: auto; border: 1px solid var(--line); padding: 0 0.5rem; }
      td { font-size: var(--text-small); overflow-wrap: anywhere; }
      p { margin: 0 0 0.5rem; font-size: var(--text-small); color: var(--ink-soft); }
    `,
  ];

  @property() system: UnitSystem = 'us';

  protected override render() {
    return html`
      <p>Columns may stand in any order, and those not used may be missing; Product, Form and Rate basis with its rate must be there. The rows of one product share its number or its name. What holds for the whole product stands in its first row; each row may add one use, one pack and one ingredient.</p>
      <div class="scroll" tabindex="0" role="group" aria-label="Columns of the table"><table>
        <thead><tr><th scope="col">Heading</th><th scope="col">What stands in it</th></tr></thead>
        <tbody>${LABEL_COLUMNS.map((column) => html`<tr><td>${columnHeading(column, this.system)}</td><td>${cellWords(column)}</td></tr>`)}</tbody>
      </table></div>
    `;
  }
}
