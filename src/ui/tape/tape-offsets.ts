import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import {
  measureOffsets,
  type OffsetSide,
  outlineOffsets,
  type RuleResult,
} from '../../survey/tape/makeOffsets';
import type { OffsetRule } from '../../survey/tape/offsetOutline';
import { readOffsets } from '../../survey/tape/readOffsets';
import type { TapeError, TapeShape } from '../../survey/tape/types';
import { formatAreaPm } from '../../units/format';
import type { Issue, UnitSystem } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import type { TapeDraft } from './tape-draft';

type Offsets = TapeDraft['offsets'];

const SIDES = ['left', 'right', 'both', 'across'] as const;
const SIDE_WORDS: Readonly<Record<OffsetSide, string>> = {
  left: 'To the left of the line',
  right: 'To the right of the line',
  both: 'To both sides',
  across: 'Whole width across the line',
};
const RULE_WORDS: Readonly<Record<OffsetRule, string>> = {
  trapezoid: 'Trapezoid rule',
  simpson: 'Simpson’s rule',
  parabolic: 'Parabolas, any spacing',
};

/** What a table of offsets comes to: the rules side by side, and the outline of the chosen one. */
export interface OffsetsMade {
  readonly rules: readonly RuleResult[];
  readonly shape: TapeShape | null;
  readonly issues: readonly Issue[];
}

/** Reads and measures the table of a draft. Nothing typed yet gives neither shape nor issue. */
export function makeOffsets(offsets: Offsets, error: TapeError, system: UnitSystem): OffsetsMade {
  const none = { rules: [], shape: null, issues: [] };
  if (offsets.text.trim() === '') return none;
  if (offsets.isSpaced && offsets.spacingM === null) {
    const message = 'Type the distance from station to station.';
    return { ...none, issues: [{ code: 'spacing-missing', severity: 'error', message, place: {} }] };
  }
  const { side } = offsets;
  const read = readOffsets(offsets.text, {
    side,
    spacingM: offsets.isSpaced ? offsets.spacingM : null,
    system,
  });
  if (!read.ok) return { ...none, issues: read.issues };
  const measured = measureOffsets(read.rows, side, error, system);
  if (!measured.ok) return { ...none, issues: measured.issues };
  const { rules } = measured;
  const result = rules.find((each) => each.ok && each.rule === offsets.rule) ?? rules[0];
  return { rules, shape: result?.ok ? outlineOffsets(read.rows, side, result) : null, issues: [] };
}

/** The table of offsets along a base line. Event `offsets-change` with the changed part of the draft. */
@customElement('tape-offsets')
export class TapeOffsets extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: start; }
      .whole { grid-column: 1 / -1; margin: 0; }
      textarea { min-height: 8rem; font-variant-numeric: tabular-nums; }
      fieldset { border: 0; margin: 0.5rem 0 0; padding: 0; }
      legend { padding: 0; font-size: var(--text-small); color: var(--ink-soft); }
      .rule { display: grid; grid-template-columns: auto 1fr auto; gap: 0.5rem; align-items: center; min-height: var(--touch); color: var(--ink); font-size: var(--text); border-bottom: 1px solid var(--line); }
      .rule .why { grid-column: 2 / -1; }
      .rule b { font-weight: 650; white-space: nowrap; }
    `,
  ];

  @property({ attribute: false }) offsets!: Offsets;
  @property({ attribute: false }) made!: OffsetsMade;

  protected override render() {
    const { offsets, app } = this;
    const isUs = app.units === 'us';
    const [first, second] = isUs ? ['8’ 4"', '12’ 6"'] : ['2.4', '3.8'];
    const station = offsets.isSpaced ? ['', ''] : isUs ? ['0  ', '10  '] : ['0  ', '3  '];
    const other = offsets.side === 'both' ? (isUs ? ['  5’', '  4’ 2"'] : ['  1.5', '  1.2']) : ['', ''];
    const example = `${station[0]}${first}${other[0]}\n${station[1]}${second}${other[1]}`;
    const columns = [
      ...(offsets.isSpaced ? [] : ['station']),
      ...(offsets.side === 'both'
        ? ['left offset', 'right offset']
        : [offsets.side === 'across' ? 'width' : 'offset']),
    ].join(', ');
    return html`
      <div class="fields">
        <p class="quiet whole">Lay the tape straight along the ground: the base line. At stations along it measure square to the edge.</p>
        <div class="whole">${selectField('Offsets lie', offsets.side, SIDES, SIDE_WORDS, (side) => this.send({ side }))}</div>
        <label>Stations<select @change=${(event: Event) => this.send({ isSpaced: fieldValue(event) === 'spaced' })}>
          <option value="typed" .selected=${!offsets.isSpaced}>Typed on each line</option>
          <option value="spaced" .selected=${offsets.isSpaced}>Equally spaced</option></select></label>
        ${
          offsets.isSpaced
            ? html`<quantity-field label="Spacing" quantity="length" optional .system=${app.units} .min=${0.01} .max=${1000} .value=${offsets.spacingM}
                @quantity-change=${(event: CustomEvent<QuantityChange>) => this.send({ spacingM: event.detail.valueSi })}></quantity-field>`
            : html`<span></span>`
        }
        <label class="whole">One line a station: ${columns}<textarea rows="6" spellcheck="false" autocomplete="off" .value=${offsets.text}
          placeholder=${example} aria-invalid=${this.made.issues.length > 0 ? 'true' : 'false'}
          @input=${(event: Event) => this.send({ text: fieldValue(event) })}></textarea></label>
        <p class="quiet whole">A bare number is in ${isUs ? 'feet; 12’ 6" and 3.8 m are understood' : 'metres; 12’ 6" and 380 cm are understood'}. A table can be pasted. Write 0 where the edge meets the line.</p>
      </div>
      ${this.made.rules.length > 0 ? this.renderRules() : nothing}
    `;
  }

  private renderRules() {
    return html`<fieldset><legend>Area by each rule; the chosen one makes the outline</legend>
      ${this.made.rules.map((result) =>
        result.ok
          ? html`<label class="rule"><input type="radio" name="rule" .checked=${result.rule === this.chosenRule}
              @change=${() => this.send({ rule: result.rule })} /><span>${RULE_WORDS[result.rule]}</span>
              <b>${formatAreaPm(result.areaM2, result.areaSigmaM2, this.app.units)}</b></label>`
          : html`<p class="quiet">${RULE_WORDS[result.rule]}: ${result.why}</p>`,
      )}</fieldset>
      <p class="quiet">The trapezoid rule takes the edge as straight from offset to offset, the others as a smooth curve. What the edge does between stations no rule knows: more stations help.</p>`;
  }

  private get chosenRule(): OffsetRule {
    const { rules } = this.made;
    return rules.some((each) => each.ok && each.rule === this.offsets.rule) ? this.offsets.rule : 'trapezoid';
  }

  private send(change: Partial<Offsets>): void {
    this.dispatchEvent(new CustomEvent<Partial<Offsets>>('offsets-change', { detail: change }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tape-offsets': TapeOffsets;
  }
}
