import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { MeasuredZone } from '../measure/types';
import { formatArea, formatAreaPm, formatLength } from '../units/format';
import { suggestedSurvey } from '../yard/defaults';
import { replaceZone } from '../yard/edits';
import {
  MATERIALS,
  type Material,
  MOWING_CLASSES,
  type MowingClass,
  SURVEY_METHODS,
  type SurveyMethod,
  type Zone,
  type ZoneKind,
} from '../yard/types';
import { AppPart, fieldValue, isTicked } from './app-part';
import { fold } from './fold';
import './quantity-field';
import type { QuantityChange } from './quantity-field';
import { shared } from './shared';
import { KIND_WORDS, KINDS_TO_DRAW, MATERIAL_WORDS, MOWING_WORDS, SURVEY_WORDS, zoneWords } from './words';
import './zone-tools';

/** One zone: its figures, what it is, how it was measured, and what can be done with it. */
@customElement('zone-details')
export class ZoneDetails extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; margin-bottom: 0.75rem; }
      section { border: 1px solid var(--line-strong); border-top: 4px solid var(--accent); padding: 0.5rem 0.75rem 0.75rem; }
      header { display: flex; justify-content: space-between; align-items: start; gap: 0.5rem; }
      h3 { margin: 0.5rem 0 0; font-size: 1.125rem; overflow-wrap: anywhere; }
      .figure { margin: 0.25rem 0; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; margin: 0.5rem 0; }
      .whole { grid-column: 1 / -1; }
      ul { margin: 0 0 0.5rem; padding-left: 1.1rem; }
      zone-tools { margin-top: 0.75rem; }
    `,
  ];

  private get zone(): Zone | undefined {
    return this.app.yard.zones.find((zone) => zone.id === this.app.view.selectedZoneIds[0]);
  }

  protected override render() {
    const { zone, app } = this;
    if (!zone) return nothing;
    const measured = app.session.derived.measured.zones.get(zone.id);
    return html`
      <section aria-label="Chosen zone">
        <header>
          <h3>${zone.name || 'Zone without a name'}</h3>
          <button class="plain" @click=${() => app.setView({ selectedZoneIds: [] })}>Close</button>
        </header>
        <p class="quiet">${zoneWords(zone)}</p>
        ${measured ? this.renderFigures(measured) : html`<p class="note error">This outline cannot be measured. Reshape it or undo.</p>`}
        <zone-tools .app=${app} .rev=${this.rev} .zone=${zone}></zone-tools>
        <details class="fold"><summary>Name, kind, note, how measured</summary>${this.renderFields(zone)}</details>
      </section>
    `;
  }

  private renderFigures(measured: MeasuredZone) {
    const { units, yard } = this.app;
    const nameOf = (id: string) => yard.zones.find((zone) => zone.id === id)?.name || 'a zone without a name';
    return html`
      <p class="figure">${formatAreaPm(measured.netM2, measured.netSigmaM2, units)}</p>
      <p class="quiet">net; outline ${formatLength(measured.netPerimeterM, units)}</p>
      ${
        measured.cutBy.length > 0
          ? html`<p>Drawn ${formatArea(measured.grossM2, units)}, less</p>
              <ul>${measured.cutBy.map((cut) => html`<li>${nameOf(cut.zoneId)}: ${formatArea(cut.areaM2, units)}</li>`)}</ul>`
          : nothing
      }
    `;
  }

  private renderFields(zone: Zone) {
    const choice = (
      label: string,
      now: string,
      pairs: readonly (readonly [string, string])[],
      set: (value: string) => void,
    ) =>
      html`<label>${label}<select @change=${(event: Event) => set(fieldValue(event))}>
        ${pairs.map(([value, words]) => html`<option value=${value} .selected=${value === now}>${words}</option>`)}</select></label>`;
    return html`
      <div class="fields">
        <label class="whole">Name<input .value=${zone.name} autocomplete="off"
          @change=${(event: Event) => this.change('Name zone', { name: fieldValue(event).trim() })} /></label>
        ${choice(
          'Kind',
          zone.kind,
          KINDS_TO_DRAW.map((kind) => [kind, KIND_WORDS[kind]] as const),
          (kind) => this.changeKind(kind as ZoneKind),
        )}
        ${
          zone.kind === 'turf'
            ? choice(
                'Mowing class',
                zone.mowing ?? 'regular',
                MOWING_CLASSES.map((each) => [each, MOWING_WORDS[each]] as const),
                (mowing) => this.change('Change mowing class', { mowing: mowing as MowingClass }),
              )
            : nothing
        }
        ${
          zone.kind === 'hardscape'
            ? choice(
                'Material',
                zone.material ?? 'concrete',
                MATERIALS.map((each) => [each, MATERIAL_WORDS[each]] as const),
                (material) => this.change('Change material', { material: material as Material }),
              )
            : nothing
        }
        <label class="whole">Note<textarea .value=${zone.note}
          @change=${(event: Event) => this.change('Change note', { note: fieldValue(event) })}></textarea></label>
        ${choice(
          'How measured',
          zone.survey.method,
          SURVEY_METHODS.map((each) => [each, SURVEY_WORDS[each]] as const),
          (method) => this.change('Change how measured', { survey: suggestedSurvey(method as SurveyMethod) }),
        )}
        <quantity-field label="Corner error, one sigma" quantity="length" .system=${this.app.units} .value=${zone.survey.vertexSigmaM} .min=${0}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => this.changeSigma(event.detail.valueSi)}></quantity-field>
        <p class="quiet whole">How far off a corner may be, as a standard deviation in each direction. It gives the ± of the area.</p>
        <label class="check whole"><input type="checkbox" .checked=${zone.cutsSameKind}
          @change=${(event: Event) => this.change('Change what cuts what', { cutsSameKind: isTicked(event) })} />
          Cuts earlier zones of its own kind</label>
      </div>
    `;
  }

  private change(label: string, change: Partial<Zone>): void {
    const { zone } = this;
    if (zone) this.app.dispatch(label, (yard) => replaceZone(yard, { ...zone, ...change }));
  }

  private changeKind(kind: ZoneKind): void {
    this.change('Change kind', {
      kind,
      mowing: kind === 'turf' ? 'regular' : null,
      material: kind === 'hardscape' ? 'concrete' : null,
    });
  }

  private changeSigma(vertexSigmaM: number | null): void {
    const { zone } = this;
    if (zone && vertexSigmaM !== null)
      this.change('Change corner error', { survey: { ...zone.survey, vertexSigmaM } });
  }
}
