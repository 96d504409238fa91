import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { needIssues } from '../../need/needIssues';
import { turfWithoutNeed, zonesOfNeed } from '../../need/needOfZone';
import { newNeed, setUpNeeds } from '../../need/setUpNeeds';
import { formatArea } from '../../units/format';
import { needWords } from '../../words/needWords';
import { freeName, zoneName } from '../../words/zoneWords';
import { addEntry, removeEntry } from '../../yard/edits';
import type { Issue, NutrientNeed } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { entryList } from '../parts/entry-list';
import { shared } from '../parts/shared';
import './need-form';
import { speciesField } from './speciesField';

/** The yearly nitrogen of each group of zones: a list of which one is open, and what sets it up. */
@customElement('need-section')
export class NeedSection extends AppPart {
  static override styles = [
    shared,
    entryList,
    css`
      :host { display: block; }
      .acts { margin-top: 1rem; padding-top: 0.75rem; border-top: 1px solid var(--line); }
      .begin { display: grid; gap: 0.5rem; margin-bottom: 0.75rem; }
    `,
  ];

  @state() private openId: string | null = null;
  /** the grass the set-up is to be made for. */
  @state() private grass = '';
  private isNew = false;

  protected override updated(): void {
    const form = this.isNew ? this.renderRoot.querySelector('need-form') : null;
    if (!form) return;
    this.isNew = false;
    form.focusName();
  }

  protected override render() {
    const { yard } = this.app;
    const issues = needIssues(yard);
    const bare = yard.needs.length > 0 ? turfWithoutNeed(yard) : [];
    return html`
      <h3>Yearly nitrogen</h3>
      <p class="quiet">What each group of zones wants over a year, by its grass. The season is planned and held against it; label and local rules go first.</p>
      ${yard.needs.length === 0 ? nothing : html`<ul>${yard.needs.map((need) => this.renderNeed(need, issues))}</ul>`}
      ${bare.length === 0 ? nothing : html`<p class="note"><b>By no need: </b>${bare.map(zoneName).join(', ')}.</p>`}
      ${this.renderBegin()}
    `;
  }

  private renderBegin() {
    const { yard } = this.app;
    if (!yard.zones.some((zone) => zone.kind === 'turf') && yard.needs.length === 0)
      return html`<p class="note">There is no turf yet. <button class="plain" @click=${() => this.app.setView({ step: 'measure' })}>Measure it first</button></p>`;
    const canSetUp = setUpNeeds(yard, this.grass, () => 'trial').length > 0;
    return html`<div class="begin">
      ${
        canSetUp
          ? html`${speciesField('Grass of the lawn', this.grass, 'Choose the grass', (grass) => {
              this.grass = grass;
            })}
            <div class="row"><button class="primary" ?disabled=${this.grass === ''} @click=${this.setUp}>Set up from my zones</button>
            <button @click=${this.add}>Add one by hand</button></div>
            <p class="quiet">Makes a need for low-cut turf and one for regular turf, where you have them, from the middle of a published range. Move it afterwards.</p>`
          : html`<div class="row"><button @click=${this.add}>Add a group of zones</button></div>`
      }</div>`;
  }

  private renderNeed(need: NutrientNeed, issues: readonly Issue[]) {
    const { app, rev, openId } = this;
    const isOpen = need.id === openId;
    const own = issues.filter((issue) => issue.place.needId === need.id);
    const { measured } = app.session.derived;
    const area = zonesOfNeed(app.yard, need).reduce(
      (sum, zone) => sum + (measured.zones.get(zone.id)?.netM2 ?? 0),
      0,
    );
    const faults = own.filter((issue) => issue.severity !== 'note').length;
    return html`<li class=${isOpen ? 'chosen' : ''}>
      <button class="open" aria-expanded=${isOpen ? 'true' : 'false'} @click=${() => {
        this.openId = isOpen ? null : need.id;
      }}><b>${need.name || 'Without a name'}</b><span>${formatArea(area, app.units)}</span>
        <span class="words">${needWords(need, app.units)}${faults > 0 ? `; ${faults} to check` : ''}</span></button>
      ${
        isOpen
          ? html`<need-form .app=${app} .rev=${rev} .need=${need} .issues=${own}></need-form>
            <div class="row acts"><button class="danger" @click=${() => this.removeNeed(need)}>Remove this need</button></div>`
          : nothing
      }</li>`;
  }

  private setUp(): void {
    const { app, grass } = this;
    const needs = setUpNeeds(app.yard, grass, () => app.newId('need'));
    app.dispatch('Set up needs', (yard) => needs.reduce((now, need) => addEntry(now, 'needs', need), yard));
    this.openId = needs[0]?.id ?? null;
  }

  private add(): void {
    const { app } = this;
    const name = freeName(
      'Group',
      app.yard.needs.map((need) => need.name),
    );
    const need = newNeed(app.newId('need'), this.grass, app.yard.climate, null, { name });
    app.dispatch('Add need', (yard) => addEntry(yard, 'needs', need));
    this.openId = need.id;
    this.isNew = true;
  }

  private removeNeed(need: NutrientNeed): void {
    this.app.dispatch('Remove need', (yard) => removeEntry(yard, 'needs', need.id));
    this.openId = null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'need-section': NeedSection;
  }
}
