import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { formatLength } from '../../units/format';
import { RULE_KIND_WORDS, ruleSourceWords, ruleTermsWords } from '../../words/ledgerWords';
import { addEntry, removeEntry, replaceEntry } from '../../yard/edits';
import { stripWidths } from '../../yard/stripWidths';
import type { LocalRule, RuleTerms, Yard } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { shared } from '../parts/shared';
import { blankRule, draftOfRule, type RuleDraft } from './rule-draft';
import './rule-form';
import { undoStep } from '../parts/undo-step';
import type { RuleDone } from './rule-form';

const KINDS = Object.keys(RULE_KIND_WORDS) as RuleTerms['kind'][];

/** Rules of the place, filled in by the person from the local code; none comes with the program. */
@customElement('rule-list')
export class RuleList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      ul { list-style: none; margin: 0 0 0.75rem; padding: 0; }
      li { border-bottom: 1px solid var(--line); padding: 0.25rem 0 0.5rem; }
      .head { display: flex; flex-wrap: wrap; align-items: center; gap: 0.25rem; }
      .head label { flex: 1 1 14rem; }
      .head input { flex: none; }
      .acts { display: flex; gap: 0.25rem; margin: 0.25rem 0 0 1.85rem; }
      li p { margin: 0 0 0.15rem 1.85rem; }
      .is-off p, .is-off label b { color: var(--ink-soft); }
      .add { display: grid; grid-template-columns: 1fr auto; gap: 0.5rem; align-items: end; }
    `,
  ];

  @state() private kind: RuleTerms['kind'] = 'no-phosphorus';
  /** the rule being changed, `new` for one being added; null: none. */
  @state() private openId: string | null = null;
  private draft: RuleDraft | null = null;

  protected override render() {
    const { rules } = this.app.yard;
    return html`
      <h3>Rules of the place</h3>
      <p class="note warning"><b>Check: </b>The local code decides, and it changes. These rules come empty: type what you read there, where and when.
        Visits are held against your entries, never against the law as it stands today. The caps further down are no rules of your place.</p>
      ${
        rules.length === 0
          ? html`<p>No rule is filled in. City, county and state offices and the extension service tell what holds where you are.</p>`
          : html`<ul>${rules.map((rule) => this.renderRule(rule))}</ul>`
      }
      ${
        this.openId === 'new' && this.draft
          ? html`<rule-form .app=${this.app} .rev=${this.rev} .draft=${this.draft} action="Add rule"
              @rule-done=${(event: CustomEvent<RuleDone>) => this.added(event.detail)}></rule-form>`
          : html`<form class="add" @submit=${this.openNew}>
              <label>Add a rule<select @change=${(event: Event) => {
                this.kind = fieldValue(event) as RuleTerms['kind'];
              }}>${KINDS.map((kind) => html`<option value=${kind} .selected=${kind === this.kind}>${RULE_KIND_WORDS[kind]}</option>`)}</select></label>
              <button>Fill it in</button></form>`
      }
    `;
  }

  private renderRule(rule: LocalRule) {
    const { app } = this;
    const name = rule.name.trim() || 'Rule without a name';
    if (this.openId === rule.id && this.draft) {
      return html`<li><rule-form .app=${app} .rev=${this.rev} .draft=${this.draft} action="Keep changes"
        @rule-done=${(event: CustomEvent<RuleDone>) => this.changed(rule, event.detail)}></rule-form></li>`;
    }
    return html`<li class=${rule.isOn ? '' : 'is-off'}>
      <div class="head">
        <label class="check"><input type="checkbox" .checked=${rule.isOn} aria-label=${`${name}: visits are held against it`}
          @change=${(event: Event) => this.replace(isTicked(event) ? 'Turn rule on' : 'Turn rule off', { ...rule, isOn: isTicked(event) })} /><b>${name}</b>${rule.isOn ? nothing : html` (off)`}</label>
      </div>
      <p>${ruleTermsWords(rule.terms, app.units)}.</p>
      <p class="quiet">${ruleSourceWords(rule)}</p>
      ${rule.terms.kind === 'buffer' && rule.isOn ? html`<p class="quiet">Visits leave out the wider of this and the strip of the yard's settings: ${formatLength(widthOf(app.yard, rule.terms.round), app.units)}.</p>` : nothing}
      <div class="acts"><button aria-label=${`Change ${name}`} @click=${() => this.open(rule)}>Change</button>
        <button class="danger" aria-label=${`Remove ${name}`} @click=${() => this.removeRule(rule)}>Remove</button></div>
    </li>`;
  }

  private openNew(event: Event): void {
    event.preventDefault();
    this.draft = blankRule(this.kind, RULE_KIND_WORDS[this.kind]);
    this.openId = 'new';
    void this.focusForm();
  }

  private open(rule: LocalRule): void {
    this.draft = draftOfRule(rule);
    this.openId = rule.id;
    void this.focusForm();
  }

  private async focusForm(): Promise<void> {
    await this.updateComplete;
    const form = this.renderRoot.querySelector('rule-form');
    await form?.updateComplete;
    form?.renderRoot.querySelector('input')?.focus();
  }

  private close(): void {
    this.openId = null;
    this.draft = null;
  }

  private added(done: RuleDone): void {
    this.close();
    if (done === null) return;
    const { name, source, readOn } = done.draft;
    const id = this.app.newId('rule');
    const rule: LocalRule = {
      id,
      name: name.trim(),
      isOn: true,
      terms: done.terms,
      source: source.trim(),
      readOn,
    };
    this.app.dispatch('Add rule', (yard) => addEntry(yard, 'rules', rule));
  }

  private changed(rule: LocalRule, done: RuleDone): void {
    this.close();
    if (done === null) return;
    const { name, source, readOn } = done.draft;
    this.replace('Change rule', {
      ...rule,
      name: name.trim(),
      source: source.trim(),
      readOn,
      terms: done.terms,
    });
  }

  private replace(label: string, rule: LocalRule): void {
    this.app.dispatch(label, (yard) => replaceEntry(yard, 'rules', rule));
  }

  private removeRule(rule: LocalRule): void {
    const { app } = this;
    app.dispatch('Remove rule', (yard) => removeEntry(yard, 'rules', rule.id));
    app.note('rule-removed', `“${rule.name.trim() || 'Rule without a name'}” is removed.`, undoStep(app));
  }
}

function widthOf(yard: Yard, round: Extract<RuleTerms, { kind: 'buffer' }>['round']): number {
  const { waterM, stormDrainM, wellM } = stripWidths(yard);
  return { water: waterM, 'storm-drain': stormDrainM, well: wellM }[round];
}

declare global {
  interface HTMLElementTagNameMap {
    'rule-list': RuleList;
  }
}
