import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { isLeast } from '../../buy/compareProducts';
import type { CompareKey, CompareOption } from '../../buy/compareTypes';
import { formatMoney } from '../../units/format';
import { amountWords, productName, useName } from '../../words/productWords';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';
import { WidthWatch } from '../parts/width-watch';
import {
  alongWords,
  BOUND_WORDS,
  boughtWords,
  groundCost,
  KEY_WORDS,
  nitrogenCost,
  rateNumber,
  rateUnit,
  spanWords,
} from './compare-words';

/** Narrower than this the table is a list of cards, px. */
const TABLE_PX = 600;
/** Columns of the table beside the product. */
const COLUMNS: readonly CompareKey[] = ['visits', 'cost', 'costPerKgN', 'solubleNPerVisit', 'saltPerVisit'];
const SHORT_WORDS: Readonly<Partial<Record<CompareKey, string>>> = { cost: 'Whole packs, cost' };

/**
 * The options of a comparison: a table where there is room, cards else. Event `sort-change` with the
 * figure of the heading that was pressed.
 */
@customElement('compare-result')
export class CompareResult extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      table { border-top: 2px solid var(--ink); }
      thead th { vertical-align: bottom; padding: 0; }
      thead th:first-child { padding: 0.3rem 0; }
      thead button { border: 0; background: none; padding: 0.3rem 0.25rem 0.3rem 0; width: 100%; font-size: var(--text-small); font-weight: 600; text-align: inherit; color: var(--ink-soft); line-height: 1.2; }
      thead [aria-sort='ascending'] button { color: var(--ink); text-decoration: underline; text-decoration-thickness: 2px; text-underline-offset: 0.2rem; }
      tbody { border-bottom: 1px solid var(--line-strong); }
      tbody th, tbody td { border-bottom: 0; padding: 0.4rem 0.5rem 0 0; }
      tbody th { color: var(--ink); font-size: var(--text); font-weight: 650; min-width: 8.5rem; }
      tbody tr:last-child td { padding-bottom: 0.5rem; }
      td.num, th.num { white-space: normal; }
      tbody td:nth-child(3), tbody td:nth-child(4) { min-width: 7rem; }
      td.num > b, dd > b { font-weight: 650; white-space: nowrap; }
      small { display: block; font-size: var(--text-small); font-weight: 400; color: var(--ink-soft); }
      .least { display: inline-block; border: 1px solid var(--ok); color: var(--ok); padding: 0 0.25rem; font-size: 0.75rem; line-height: 1.25; white-space: nowrap; }
      .against { color: var(--danger); font-weight: 650; font-size: var(--text-small); margin: 0.25rem 0 0; }
      article { border-top: 2px solid var(--ink); padding: 0.5rem 0 0.75rem; }
      article h3 { margin: 0 0 0.35rem; }
      dl { display: grid; grid-template-columns: minmax(0, 8.5rem) 1fr; gap: 0.2rem 0.75rem; margin: 0 0 0.5rem; }
      dt { color: var(--ink-soft); font-size: var(--text-small); padding-top: 0.1rem; }
      dd { margin: 0; }
    `,
  ];

  /** in the order they are shown. */
  @property({ attribute: false }) options: readonly CompareOption[] = [];
  @property({ attribute: false }) sort: CompareKey = 'cost';
  /** what soil tests say to a product that carries phosphorus; null: nothing against it. */
  @property({ attribute: false }) phosphorus: { readonly isRefused: boolean; readonly words: string } | null =
    null;
  /** what the rules of the place say against an option, in sentences. */
  @property({ attribute: false }) ruleWords: (option: CompareOption) => readonly string[] = () => [];

  @state() private isTable = false;
  protected readonly widthWatch = new WidthWatch(this, (widthPx) => {
    this.isTable = widthPx >= TABLE_PX;
  });

  protected override render() {
    if (this.options.length === 0)
      return html`<p class="note">None of the chosen products can be compared.</p>`;
    return this.isTable ? this.renderTable() : this.options.map((option) => this.renderCard(option));
  }

  private heading(key: CompareKey): string {
    const { units } = this.app;
    if (key === 'costPerKgN') return `Cost of 1 ${units === 'us' ? 'lb' : 'kg'} N, only what is used`;
    const words = SHORT_WORDS[key] ?? KEY_WORDS[key];
    return key === 'solubleNPerVisit' || key === 'saltPerVisit' ? `${words}, ${rateUnit(units)}` : words;
  }

  private renderTable() {
    return html`<table>
      <caption class="visually-hidden">Products side by side, least ${KEY_WORDS[this.sort].toLowerCase()} first</caption>
      <thead><tr><th scope="col">Product and use</th>${COLUMNS.map(
        (key) => html`<th scope="col" class="num" aria-sort=${this.sort === key ? 'ascending' : 'none'}>
          <button @click=${() => this.dispatchEvent(new CustomEvent('sort-change', { detail: key }))}>${this.heading(key)}</button></th>`,
      )}</tr></thead>
      ${this.options.map((option) => {
        const more = this.renderMore(option);
        return html`<tbody>
          <tr><th scope="row">${this.renderName(option)}</th>${COLUMNS.map(
            (key) => html`<td class="num">${this.renderFigure(option, key)}</td>`,
          )}</tr>
          <tr><td colspan=${COLUMNS.length + 1}>${more}</td></tr>
        </tbody>`;
      })}
    </table>`;
  }

  private renderCard(option: CompareOption) {
    return html`<article><h3>${this.renderName(option)}</h3>
      <dl>${COLUMNS.map((key) => html`<dt>${this.heading(key)}</dt><dd>${this.renderFigure(option, key)}</dd>`)}</dl>
      ${this.renderMore(option)}</article>`;
  }

  private renderName({ product }: CompareOption) {
    return html`${productName(product)} <small>${useName(product)}</small>`;
  }

  private renderFigure(option: CompareOption, key: CompareKey) {
    const { units, yard } = this.app;
    const { currency } = yard.settings;
    const mark = isLeast(this.options, option, key) ? html`<span class="least">least</span> ` : nothing;
    switch (key) {
      case 'visits':
        return html`${mark}<b>${option.visits}</b><small>${spanWords(option)}</small>`;
      case 'cost':
        return html`${mark}<b>${option.cost === null ? 'no price' : formatMoney(option.cost, currency)}</b>
          <small>${boughtWords(option, units)}</small>`;
      case 'costPerKgN':
        return html`${mark}<b>${nitrogenCost(option.costPerKgN, units, currency)}</b>
          <small>${groundCost(option, units, currency) ?? nothing}</small>`;
      case 'solubleNPerVisit':
      case 'saltPerVisit':
        return html`${mark}<b>${option[key] === null ? 'not known' : rateNumber(option[key], units)}</b>`;
      default:
        return nothing;
    }
  }

  private renderMore(option: CompareOption) {
    const { units } = this.app;
    const { product, total, perVisit, visits, left, bound, issues, nutrients } = option;
    const amount =
      visits === 1
        ? `${amountWords(product, total, units)} in one visit`
        : `${amountWords(product, total, units)} in all, ${amountWords(product, perVisit, units)} at each visit, ${BOUND_WORDS[bound]}`;
    const over =
      left === null || left === 0
        ? ''
        : `; ${amountWords(product, { ...total, value: left }, units)} left over`;
    const along = alongWords(option, units);
    const phosphorus = nutrients.P2O5 > 0 ? this.phosphorus : null;
    const against = [
      ...(phosphorus?.isRefused ? [phosphorus.words] : []),
      ...this.ruleWords(option),
      ...issues.map((issue) => `${issue.message.charAt(0).toUpperCase()}${issue.message.slice(1)}.`),
    ];
    return html`<small>${amount}${over}.${along ? ` Comes along: ${along}.` : ''}${
      phosphorus && !phosphorus.isRefused ? ` ${phosphorus.words}` : ''
    }</small>
      ${against.map((words) => html`<p class="against">Against it: ${words}</p>`)}`;
  }
}
