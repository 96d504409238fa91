import { css, html } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { heldNeed, suggestHold } from '../../need/flushHold';
import { growthPotentials } from '../../need/growthPotential';
import { monthlyNeed } from '../../need/monthlyNeed';
import { zonesOfNeed } from '../../need/needOfZone';
import { newNeed } from '../../need/setUpNeeds';
import { findSpecies } from '../../need/species';
import { type ProductYear, yearByMonth } from '../../season/yearByMonth';
import { SEASON_WORDS } from '../../words/needWords';
import { replaceEntry } from '../../yard/edits';
import {
  GRASS_SEASONS,
  type GrassSeason,
  type Issue,
  type NutrientNeed,
  type ZoneChoice,
} from '../../yard/types';
import { chartYears } from '../chart/chartYears';
import { focusAll } from '../parts/focus-all';
import '../chart/year-chart';
import { yearChartData } from '../chart/yearChartData';
import { AppPart, fieldValue } from '../parts/app-part';
import { issueNotes, issuesAt } from '../parts/issue-notes';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import { yearToBegin } from '../season/calendar-model';
import '../visit/zone-choice';
import './guide-scale';
import './hold-fields';
import type { NeedChange } from './need-change';
import './split-fields';
import { speciesField } from './speciesField';

/** Entry of one need: ground, grass, the year's nitrogen, its months and the hold; the chart shows what comes of it. */
@customElement('need-form')
export class NeedForm extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; container-type: inline-size; }
      h4 { margin: 1rem 0 0.5rem; padding-top: 0.5rem; border-top: 1px solid var(--line); font-size: 1rem; }
      .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr)); gap: 0.5rem; align-items: start; }
      .year { max-width: 11rem; margin: 0.75rem 0 0.5rem; }
      guide-scale, .note { margin-top: 0.5rem; }
    `,
  ];

  @property({ attribute: false }) need!: NutrientNeed;
  @property({ attribute: false }) issues: readonly Issue[] = [];
  /** the year chosen for the chart; null: the one it begins with. */
  @state() private year: number | null = null;
  @query('#name') private nameField?: HTMLInputElement;

  /** Puts the cursor in the name, all of it chosen. */
  focusName(): void {
    focusAll(this, () => this.nameField);
  }

  protected override render() {
    const { app, rev, need, issues } = this;
    const at = (...fields: string[]) => issueNotes(issuesAt(issues, ...fields));
    const placed = issuesAt(issues, 'season', 'nKgPerM2', 'split', 'hold');
    const ground = zonesOfNeed(app.yard, need);
    const mowing = [...new Set(ground.map((zone) => zone.mowing))];
    return html`<form @submit=${(event: Event) => event.preventDefault()} @need-change=${(event: CustomEvent<NeedChange>) => this.change(event.detail)}>
      <label>Name<input id="name" autocomplete="off" .value=${need.name}
        @input=${(event: Event) => this.change({ field: 'name', change: { name: fieldValue(event) } })} /></label>
      ${issueNotes(issues.filter((issue) => !placed.includes(issue)))}
      <h4>Ground</h4>
      <zone-choice .app=${app} .rev=${rev} .choice=${need.zones}
        @choice-change=${(event: CustomEvent<ZoneChoice>) => this.change({ field: 'zones', change: { zones: event.detail } })}></zone-choice>
      <h4>Grass and its year</h4>
      <div class="fields">
        ${speciesField('Grass', need.speciesId, 'Not told, or a mixture', (speciesId) => this.chooseSpecies(speciesId))}
        ${selectField<GrassSeason>('Season of growth', need.season, GRASS_SEASONS, SEASON_WORDS, (season) => this.chooseSeason(season))}
      </div>
      ${at('season')}
      <guide-scale .app=${app} .rev=${rev} .need=${need} .mowing=${mowing.length === 1 ? (mowing[0] ?? null) : null}></guide-scale>
      ${at('nKgPerM2')}
      <h4>Over the months</h4>
      <split-fields .app=${app} .rev=${rev} .need=${need}></split-fields>
      ${at('split')}
      ${this.renderChart()}
      <h4>Before the spring flush</h4>
      <hold-fields .app=${app} .rev=${rev} .need=${need}></hold-fields>
      ${at('hold')}
    </form>`;
  }

  private renderChart() {
    const { app, need } = this;
    const { yard, session } = app;
    const { measured } = session.derived;
    const { entries } = session.derived.season();
    const zones = zonesOfNeed(yard, need).map((zone) => ({
      zoneId: zone.id,
      areaM2: measured.zones.get(zone.id)?.netM2 ?? 0,
    }));
    const { years, first } = chartYears(
      entries,
      new Set(zones.map((zone) => zone.zoneId)),
      app.today(),
      yearToBegin(yard, app.today()),
    );
    const year = this.year !== null && years.includes(this.year) ? this.year : first;
    const months = monthlyNeed(need, yard.climate);
    const nameOf = ({ productId, productName }: ProductYear) =>
      yard.products.find(({ id }) => id === productId)?.name || productName || 'Unnamed product';
    const data = yearChartData(yearByMonth(entries, zones, year), nameOf, {
      needKgPerM2: months && heldNeed(months, need.hold).months,
      growth: growthPotentials(yard.climate, need.season),
      capKgPerM2: yard.caps.nPerYear,
    });
    return html`
      <label class="year">Year of the chart<select @change=${(event: Event) => {
        this.year = Number(fieldValue(event));
      }}>${years.map((each) => html`<option value=${each} .selected=${each === year}>${each}</option>`)}</select></label>
      <year-chart .data=${data} .units=${app.units} .of=${`${need.name || 'this ground'}, ${year}`}></year-chart>`;
  }

  /** Another grass brings its season, its first published range and the suggestions that go with them. */
  private chooseSpecies(speciesId: string): void {
    const { need, app } = this;
    const season = findSpecies(speciesId)?.season ?? need.season;
    const zones = zonesOfNeed(app.yard, need);
    const mowing = zones.every((zone) => zone.mowing === zones[0]?.mowing)
      ? (zones[0]?.mowing ?? null)
      : null;
    const fresh = newNeed(need.id, speciesId, app.yard.climate, mowing, { season });
    this.change({
      field: 'species',
      change: {
        speciesId,
        guideId: fresh.guideId,
        ...(fresh.guideId !== '' ? { nKgPerM2: fresh.nKgPerM2 } : {}),
        ...(season === need.season ? {} : this.ofSeason(season)),
      },
    });
  }

  private chooseSeason(season: GrassSeason): void {
    if (season !== this.need.season) this.change({ field: 'season', change: this.ofSeason(season) });
  }

  /** What follows the season: an even split of other months, a hold of other days where there is one. */
  private ofSeason(season: GrassSeason): Partial<NutrientNeed> {
    const { need, app } = this;
    const fresh = newNeed(need.id, '', app.yard.climate, null, { season });
    return {
      season,
      ...(need.split.kind === 'even' ? { split: fresh.split } : {}),
      ...(need.hold === null ? {} : { hold: suggestHold(season, app.yard.climate).hold }),
    };
  }

  private change({ field, change }: NeedChange): void {
    const { id } = this.need;
    this.app.dispatch(
      'Change need',
      (yard) => {
        const now = yard.needs.find((need) => need.id === id);
        return now ? replaceEntry(yard, 'needs', { ...now, ...change }) : yard;
      },
      `need ${id} ${field}`,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'need-form': NeedForm;
  }
}
