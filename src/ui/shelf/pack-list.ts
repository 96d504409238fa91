import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { isBulk, measuredUnit } from '../../plan/rate';
import type { Amount, Issue, Pack, Product } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { issueNotes, issuesAt } from '../parts/issue-notes';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { sendFieldLeft, sendProductChange } from './product-form';
import { fieldKey } from './product-gaps';
import '../parts/quantity-field';
import { amountWords } from '../../words/productWords';
import type { QuantityChange } from '../parts/quantity-field';
import { shared } from '../parts/shared';

/** Pack sizes of a product: what one holds, its price, how many are on hand. */
@customElement('pack-list')
export class PackList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      fieldset { border: 0; border-left: 2px solid var(--line); margin: 0 0 0.75rem; padding: 0 0 0 0.5rem; display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: end; }
      legend { padding: 0; font-size: var(--text-small); font-weight: 650; }
      quantity-field { grid-column: 1 / -1; }
      .whole { grid-column: 1 / -1; }
      .note { margin: 0; }
    `,
  ];

  @property({ attribute: false }) product!: Product;
  @property({ attribute: false }) issues: readonly Issue[] = [];

  protected override render() {
    const { packs } = this.product;
    const own = packs.flatMap((_, index) => this.issuesOf(index));
    return html`
      ${packs.map((pack, index) => this.renderPack(pack, index))}
      ${issueNotes(this.issues.filter((issue) => !own.includes(issue)))}
      <button type="button" @click=${this.add}>Add a pack size</button>
      ${this.renderPour()}
    `;
  }

  /** Changes nothing where a label has one use that opens every pack. */
  private renderPour() {
    const { canPour, otherUses, packIds } = this.product;
    if (otherUses.length === 0 && packIds === null && !canPour) return nothing;
    return html`<label class="check"><input type="checkbox" .checked=${canPour}
        @change=${(event: Event) => sendProductChange(this, 'canPour', { canPour: isTicked(event) })} />Packs may be poured over from one use to another</label>
      <p class="quiet">${
        canPour
          ? 'Every use draws on every pack: what is left in a hose-end bottle may go into the tank, and the bottle may be filled from a jug. What to open, what is on the shelf and what to buy are counted so.'
          : 'Each use draws on its own packs alone, and an opened pack stays with the use that opened it: what is left in a hose-end bottle does not go into the tank. What to open, what is on the shelf and what to buy are counted so.'
      }</p>`;
  }

  private renderPack(pack: Pack, index: number) {
    const { app, product } = this;
    const isVolume = pack.content.unit === 'L';
    const rest = product.packs.length > 1;
    const issues = this.issuesOf(index);
    return html`
      <fieldset>
        <legend>${pack.content.value > 0 ? amountWords(product, pack.content, app.units) : `Pack ${index + 1}`}</legend>
        <quantity-field label="One full pack holds" .quantity=${isVolume ? (isBulk(product) ? 'bulk-volume' : 'volume') : 'mass'} .system=${app.units} .value=${pack.content.value} .min=${0}
          @focusout=${() => sendFieldLeft(this, fieldKey({ packId: pack.id }))}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            if (event.detail.valueSi !== null)
              this.change(pack, { content: { ...pack.content, value: event.detail.valueSi } });
          }}></quantity-field>
        <label>Sold by<select @change=${(event: Event) => this.change(pack, { content: { unit: fieldValue(event), value: 0 } as Amount })}>
          <option value="L" .selected=${isVolume}>volume</option><option value="kg" .selected=${!isVolume}>weight</option></select></label>
        <number-field label=${`Price, ${app.yard.settings.currency}`} optional sign=${app.yard.settings.currency} .value=${pack.price} .min=${0}
          @number-change=${(event: CustomEvent<NumberChange>) => this.change(pack, { price: event.detail.value })}></number-field>
        <number-field label="On hand" suffix="packs" .value=${product.onHand[pack.id] ?? 0} .min=${0}
          @number-change=${(event: CustomEvent<NumberChange>) => this.setOnHand(pack, event.detail.value ?? 0)}></number-field>
        ${rest ? html`<button type="button" class="danger" @click=${() => this.removePack(pack)}>Remove this size</button>` : nothing}
        ${issues.length > 0 ? html`<div class="whole">${issueNotes(issues)}</div>` : nothing}
      </fieldset>
    `;
  }

  private issuesOf(index: number): readonly Issue[] {
    const pack = this.product.packs[index];
    return issuesAt(this.issues, `packs[${index}]`, `onHand.${pack?.id ?? ''}`);
  }

  private change(pack: Pack, change: Partial<Pack>): void {
    const packs = this.product.packs.map((one) => (one.id === pack.id ? { ...one, ...change } : one));
    sendProductChange(this, `pack ${pack.id} ${Object.keys(change)[0]}`, { packs });
  }

  private setOnHand(pack: Pack, count: number): void {
    const { [pack.id]: _, ...others } = this.product.onHand;
    const onHand = count > 0 ? { ...others, [pack.id]: count } : others;
    sendProductChange(this, `pack ${pack.id} onHand`, { onHand });
  }

  private add(): void {
    const unit = measuredUnit(this.product);
    const pack: Pack = { id: this.app.newId('pack'), content: { unit, value: 0 }, price: null };
    sendProductChange(this, `pack ${pack.id}`, { packs: [...this.product.packs, pack] });
  }

  private removePack(pack: Pack): void {
    const { [pack.id]: _, ...onHand } = this.product.onHand;
    const packs = this.product.packs.filter((one) => one.id !== pack.id);
    const left = (ids: readonly string[] | null) => ids?.filter((id) => id !== pack.id) ?? null;
    const packIds = left(this.product.packIds);
    const otherUses = this.product.otherUses.map((use) => ({ ...use, packIds: left(use.packIds) }));
    sendProductChange(this, `pack ${pack.id} remove`, { packs, onHand, packIds, otherUses });
  }
}
