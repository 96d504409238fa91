import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { MeasuredZone } from '../measure/types';
import { formatCuts } from '../units/columns';
import { formatAreaPm, formatLength } from '../units/format';
import { suggestedSurvey } from '../yard/defaults';
import { replaceZone } from '../yard/edits';
import { MATERIALS, MOWING_CLASSES, SURVEY_METHODS, type Zone, type ZoneKind } from '../yard/types';
import { AppPart, fieldValue, isTicked } from './app-part';
import { fold } from './fold';
import './quantity-field';
import { KIND_WORDS, KINDS_TO_DRAW, MATERIAL_WORDS, MOWING_WORDS, SURVEY_WORDS } from '../words/zoneWords';
import type { QuantityChange } from './quantity-field';
import { selectField } from './select-field';
import { shared } from './shared';
import './zone-tools';

/** One zone: its figures, what it is, how it was measured, and what can be done with it. */
@customElement('zone-details')
export class ZoneDetails extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; margin-bottom: 0.75rem; }
      section { padding: 0.25rem 0.75rem 0.75rem 1rem; box-shadow: inset 4px 0 0 var(--accent); background: var(--sheet); }
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
        ${measured ? this.renderFigures(measured) : html`<p class="note error">This outline cannot be measured. Reshape it or undo.</p>`}
        ${this.renderKind(zone)}
        <zone-tools .app=${app} .rev=${this.rev} .zone=${zone}></zone-tools>
        <details class="fold"><summary>Note, how measured, what it cuts</summary>${this.renderSurvey(zone)}</details>
      </section>
    `;
  }

  private renderFigures(measured: MeasuredZone) {
    const { units, yard } = this.app;
    const nameOf = (id: string) => yard.zones.find((zone) => zone.id === id)?.name || 'a zone without a name';
    const account = formatCuts(
      measured.grossM2,
      measured.cutBy.map((cut) => cut.areaM2),
      measured.netM2,
      measured.netSigmaM2,
      units,
    );
    return html`
      <p class="figure">${formatAreaPm(measured.netM2, measured.netSigmaM2, units)}</p>
      <p class="quiet">net; outline ${formatLength(measured.netPerimeterM, units)}</p>
      ${
        measured.cutBy.length > 0
          ? html`<p>Drawn ${account.gross}, less</p>
              <ul>${measured.cutBy.map((cut, index) => html`<li>${nameOf(cut.zoneId)}: ${account.cuts[index]}</li>`)}</ul>`
          : nothing
      }
    `;
  }

  private renderKind(zone: Zone) {
    return html`
      <div class="fields">
        <label class="whole">Name<input .value=${zone.name} autocomplete="off"
          @change=${(event: Event) => this.change('Name zone', { name: fieldValue(event).trim() })} /></label>
        ${selectField('Kind', zone.kind, KINDS_TO_DRAW, KIND_WORDS, (kind) => this.changeKind(kind))}
        ${
          zone.mowing
            ? selectField('Mowing class', zone.mowing, MOWING_CLASSES, MOWING_WORDS, (mowing) =>
                this.change('Change mowing class', { mowing }),
              )
            : nothing
        }
        ${
          zone.material
            ? selectField('Material', zone.material, MATERIALS, MATERIAL_WORDS, (material) =>
                this.change('Change material', { material }),
              )
            : nothing
        }
      </div>
    `;
  }

  private renderSurvey(zone: Zone) {
    const { method, vertexSigmaM } = zone.survey;
    return html`
      <div class="fields">
        <label class="whole">Note<textarea .value=${zone.note}
          @change=${(event: Event) => this.change('Change note', { note: fieldValue(event) })}></textarea></label>
        ${selectField('How measured', method, SURVEY_METHODS, SURVEY_WORDS, (next) =>
          this.change('Change how measured', { survey: suggestedSurvey(next) }),
        )}
        <quantity-field label="Corner error, one sigma" quantity="length" .system=${this.app.units} .value=${vertexSigmaM} .min=${0} .max=${100}
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
