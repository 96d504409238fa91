import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { elementalPct } from '../../plan/elemental';
import { pureLivePct } from '../../plan/pureLiveSeed';
import { isLiquid } from '../../plan/rate';
import { formatNumber } from '../../units/format';
import { volumeWords } from '../../words/labelWords';
import type { Analysis, Issue, Product, SeedTag } from '../../yard/types';
import { AppPart, isTicked } from '../parts/app-part';
import { issueNotes, issuesAt } from '../parts/issue-notes';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { sendProductChange } from './product-form';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';

/** Guaranteed analysis, its reading by elements, slow-release share, density; of seed its tag. */
@customElement('analysis-fields')
export class AnalysisFields extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.75rem 0.5rem; align-items: start; }
      .three { display: grid; grid-template-columns: repeat(3, 1fr); gap: 0.5rem; align-items: start; margin-bottom: 0.5rem; }
      .elements { margin: 0 0 0.5rem; }
      .note { margin: 0.25rem 0; }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  @property({ attribute: false }) issues: readonly Issue[] = [];
  @state() private showsElements = false;

  protected override render() {
    const { product, issues } = this;
    const { analysis } = product;
    const percent = (
      label: string,
      key: 'nPct' | 'p2o5Pct' | 'k2oPct',
    ) => html`<number-field label=${label} suffix="%" .value=${analysis[key]} .min=${0}
      @number-change=${(event: CustomEvent<NumberChange>) => this.set({ [key]: event.detail.value ?? 0 })}></number-field>`;
    const { nPct, pPct, kPct } = elementalPct(analysis);
    const held = isLiquid(product) ? volumeWords(product, this.app.units) : '';
    return html`
      <div class="three">${percent('N', 'nPct')}${percent('P₂O₅', 'p2o5Pct')}${percent('K₂O', 'k2oPct')}</div>
      ${issueNotes(issuesAt(issues, 'analysis').filter((issue) => !issue.place.path?.startsWith('analysis.elementsPct')))}
      <p class="quiet">Percent by weight. By label convention the second and third numbers are P₂O₅ and K₂O (oxides), not bare P and K.</p>
      <label class="check"><input type="checkbox" .checked=${this.showsElements} @change=${(event: Event) => {
        this.showsElements = isTicked(event);
      }} />Show P and K as elements</label>
      ${
        this.showsElements
          ? html`<p class="elements" role="status">As elements: <b>N ${formatNumber(nPct, 3)} %, P ${formatNumber(pPct, 3)} %, K ${formatNumber(kPct, 3)} %</b></p>`
          : nothing
      }
      <div class="fields">
        <number-field label="Slow-release share of the N" suffix="% of N" optional .value=${analysis.slowNPctOfN} .min=${0} .max=${100}
          @number-change=${(event: CustomEvent<NumberChange>) => this.set({ slowNPctOfN: event.detail.value })}></number-field>
        <quantity-field label="Density" quantity="density" optional .system=${this.app.units} .value=${product.densityKgPerL} .min=${0}
          hint=${isLiquid(product) ? 'Weight of a full gallon or litre; on the label or its safety sheet.' : ''}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => sendProductChange(this, 'densityKgPerL', { densityKgPerL: event.detail.valueSi })}></quantity-field>
        ${product.form === 'seed' || product.seed !== null ? this.renderSeed(product.seed) : nothing}
      </div>
      ${held === '' ? nothing : html`<p class="quiet">${held}</p>`}
      ${issueNotes(issuesAt(issues, 'densityKgPerL', 'seed'))}
    `;
  }

  private renderSeed(seed: SeedTag | null) {
    const field = (
      label: string,
      key: keyof SeedTag,
    ) => html`<number-field label=${label} suffix="%" optional .value=${seed?.[key] ?? null} .min=${0} .max=${100}
      @number-change=${(event: CustomEvent<NumberChange>) => this.setSeed(key, event.detail.value)}></number-field>`;
    return html`${field('Purity on the seed tag', 'purityPct')}${field('Germination on the tag', 'germinationPct')}
      ${seed && pureLivePct(seed) > 0 ? html`<p class="quiet">Pure live seed: ${formatNumber(pureLivePct(seed), 3)} % of the bag.</p>` : nothing}`;
  }

  private setSeed(key: keyof SeedTag, value: number | null): void {
    const { seed } = this.product;
    const next = {
      purityPct: seed?.purityPct ?? 0,
      germinationPct: seed?.germinationPct ?? 0,
      [key]: value ?? 0,
    };
    const isEmpty = next.purityPct === 0 && next.germinationPct === 0;
    sendProductChange(this, `seed ${key}`, { seed: isEmpty ? null : next });
  }

  private set(part: Partial<Analysis>): void {
    const analysis = { ...this.product.analysis, ...part };
    sendProductChange(this, `analysis.${Object.keys(part)[0]}`, { analysis });
  }
}
