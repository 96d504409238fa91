import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { ELEMENT_NAMES } from '../../yard/elementNames';
import { ELEMENTS, type Ingredient, type Issue, type LabelElement, type Product } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { issueNotes, issuesAt } from '../parts/issue-notes';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { shared } from '../parts/shared';
import { sendProductChange } from './product-form';

/** What labels often name beside plant food; any other word may be typed. */
const USUAL_INGREDIENTS = [
  'Humic acid',
  'Fulvic acid',
  'Kelp extract',
  'Amino acids',
  'Molasses',
  'Wetting agent',
  'Chelating agent',
  'Biochar',
  'Mycorrhizal fungi',
  'Plant growth regulator',
];

/** Other guaranteed elements and what else a label names, a row each. */
@customElement('content-lists')
export class ContentLists extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: grid; gap: 0.75rem; }
      h4 { margin: 0 0 0.25rem; font-size: var(--text-small); font-weight: 650; }
      ul { list-style: none; margin: 0; padding: 0; display: grid; gap: 0.5rem; }
      li { display: grid; gap: 0.5rem; align-items: end; grid-template-columns: 1fr auto; }
      .named { grid-template-columns: minmax(0, 1fr) minmax(7rem, 9rem) auto; }
      .add { display: grid; grid-template-columns: 1fr auto; gap: 0.5rem; align-items: end; margin-top: 0.5rem; }
      .one { margin-top: 0.5rem; }
      .note { margin: 0.25rem 0 0; }
      button.danger { padding: 0; }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  @property({ attribute: false }) issues: readonly Issue[] = [];

  protected override render() {
    return html`<div>${this.renderElements()}</div><div>${this.renderIngredients()}</div>`;
  }

  private renderElements() {
    const { elementsPct } = this.product.analysis;
    const given = ELEMENTS.filter((element) => elementsPct[element] !== undefined);
    const free = ELEMENTS.filter((element) => elementsPct[element] === undefined);
    return html`
      <h4>Other elements</h4>
      <ul>${given.map(
        (element) => html`<li>
          <number-field label=${`${element}, ${ELEMENT_NAMES[element].toLowerCase()}`} suffix="%" .value=${elementsPct[element] ?? 0} .min=${0} .max=${100}
            @number-change=${(event: CustomEvent<NumberChange>) => this.setElement(element, event.detail.value ?? 0)}></number-field>
          <button type="button" class="danger" aria-label=${`Remove ${ELEMENT_NAMES[element].toLowerCase()}`} @click=${() => this.setElement(element, null)}>✕</button></li>`,
      )}</ul>
      ${issueNotes(issuesAt(this.issues, 'analysis.elementsPct'))}
      ${
        free.length === 0
          ? ''
          : html`<div class="add"><label>Element<select id="element">${free.map((element) => html`<option value=${element}>${element}, ${ELEMENT_NAMES[element].toLowerCase()}</option>`)}</select></label>
            <button type="button" @click=${this.addElement}>Add element</button></div>`
      }
    `;
  }

  private renderIngredients() {
    const { ingredients } = this.product;
    return html`
      <h4>Humic acid, kelp and what else is named</h4>
      <datalist id="usual">${USUAL_INGREDIENTS.map((name) => html`<option value=${name}></option>`)}</datalist>
      <ul>${ingredients.map(
        (one, i) => html`<li class="named">
          <label>Ingredient ${i + 1}<input list="usual" autocomplete="off" .value=${one.name}
            @input=${(event: Event) => this.setIngredient(i, { name: fieldValue(event) })} /></label>
          <number-field label="Percent by weight" suffix="%" .value=${one.pct} .min=${0} .max=${100}
            @number-change=${(event: CustomEvent<NumberChange>) => this.setIngredient(i, { pct: event.detail.value ?? 0 })}></number-field>
          <button type="button" class="danger" aria-label=${`Remove ingredient ${i + 1}`} @click=${() => this.send(`ingredient ${i} remove`, ingredients.toSpliced(i, 1))}>✕</button></li>`,
      )}</ul>
      ${issueNotes(issuesAt(this.issues, 'ingredients'))}
      <div class="one"><button type="button" @click=${() => this.send('ingredient add', [...ingredients, { name: '', pct: 0 }])}>Add an ingredient</button></div>
    `;
  }

  private addElement(): void {
    const element = (this.renderRoot.querySelector('#element') as HTMLSelectElement).value as LabelElement;
    this.setElement(element, 0);
  }

  private setElement(element: LabelElement, pct: number | null): void {
    const { analysis } = this.product;
    const { [element]: _, ...others } = analysis.elementsPct;
    const elementsPct = pct === null ? others : { ...others, [element]: pct };
    sendProductChange(this, `element ${element}`, { analysis: { ...analysis, elementsPct } });
  }

  private setIngredient(index: number, change: Partial<Ingredient>): void {
    const { ingredients } = this.product;
    const next = ingredients.map((one, i) => (i === index ? { ...one, ...change } : one));
    this.send(`ingredient ${index} ${Object.keys(change)[0]}`, next);
  }

  private send(field: string, ingredients: readonly Ingredient[]): void {
    sendProductChange(this, field, { ingredients });
  }
}
