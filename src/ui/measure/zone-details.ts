import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { MeasuredZone } from '../../measure/types';
import { formatCuts } from '../../units/columns';
import { formatAreaPm, formatLength } from '../../units/format';
import { fallWords } from '../../words/compassWords';
import { slopeWords, surfaceWords } from '../../words/slopeWords';
import { KIND_WORDS, KINDS_TO_DRAW, MATERIAL_WORDS, MOWING_WORDS } from '../../words/zoneWords';
import { removeZones, replaceZone } from '../../yard/edits';
import { MATERIALS, MOWING_CLASSES, type Zone, type ZoneKind } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { fold } from '../parts/fold';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';
import './zone-tools';

/** What stands in the folds; fetched when a fold is opened first. */
const LOAD = {
  survey: () => import('./zone-survey'),
  slope: () => import('./zone-slope'),
  place: () => import('./zone-place'),
} as const;

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

  private askedPlace = false;

  private get zone(): Zone | undefined {
    return this.app.yard.zones.find((zone) => zone.id === this.app.view.selectedZoneIds[0]);
  }

  protected override render() {
    const { zone, app } = this;
    if (!zone) return nothing;
    const measured = app.session.derived.measured.zones.get(zone.id);
    return html`
      <section aria-label="Chosen zone">
        ${measured ? this.renderFigures(measured, zone) : html`<p class="note error">This outline cannot be measured. Reshape it or undo.</p>`}
        ${this.renderKind(zone)}
        ${zone.isPlaced ? html`<zone-tools .app=${app} .rev=${this.rev} .zone=${zone}></zone-tools>` : this.renderPlace(zone)}
        <label class="check"><input type="checkbox" .checked=${zone.isLocked}
          @change=${(event: Event) => this.change(isTicked(event) ? 'Lock zone' : 'Unlock zone', { isLocked: isTicked(event) })} />
          Locked: outline and place stay</label>
        <details class="fold" @toggle=${(event: Event) => this.opened(event, 'survey')}><summary>How measured, note, what it cuts</summary>
          <zone-survey .app=${app} .rev=${this.rev} .zone=${zone}></zone-survey></details>
        <details class="fold" @toggle=${(event: Event) => this.opened(event, 'slope')}><summary>Slope${zone.slope === null ? '' : `: ${slopeWords(zone.slope)}`}${zone.slope !== null && zone.downhillDeg !== null ? `, ${fallWords(zone.downhillDeg)}` : ''}</summary>
          <zone-slope .app=${app} .rev=${this.rev} .zone=${zone}></zone-slope></details>
      </section>
    `;
  }

  /** A zone without a place: its sketch, and the tools that need no map. */
  private renderPlace(zone: Zone) {
    if (!this.askedPlace) this.load('place');
    this.askedPlace = true;
    return html`
      <zone-place .app=${this.app} .rev=${this.rev} .zone=${zone}></zone-place>
      <button class="danger" ?disabled=${zone.isLocked} @click=${() =>
        this.app.dispatch('Delete zone', (yard) => removeZones(yard, [zone.id]))}>Delete</button>
    `;
  }

  private renderFigures(measured: MeasuredZone, { slope }: Zone) {
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
        yard.settings.showSurface && slope !== null
          ? html`<p>${surfaceWords(measured.netM2, measured.netSigmaM2, slope, units)}</p>`
          : nothing
      }
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
          zone.kind === 'turf'
            ? html`<label class="whole">Sown or laid on (empty: established)<input type="date" .value=${zone.plantedOn ?? ''}
                @change=${(event: Event) => this.change('Set day of planting', { plantedOn: fieldValue(event) || null })} /></label>`
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

  private change(label: string, change: Partial<Zone>): void {
    const { zone } = this;
    if (zone) this.app.dispatch(label, (yard) => replaceZone(yard, { ...zone, ...change }));
  }

  private changeKind(kind: ZoneKind): void {
    this.change('Change kind', {
      kind,
      mowing: kind === 'turf' ? 'regular' : null,
      material: kind === 'hardscape' ? 'concrete' : null,
      plantedOn: null,
    });
  }

  private load(part: keyof typeof LOAD): void {
    LOAD[part]().catch(() => {
      const message = 'This part could not be loaded. Check the connection, then close and open it again.';
      this.app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
    });
  }

  private opened(event: Event, part: keyof typeof LOAD): void {
    if ((event.target as HTMLDetailsElement).open) this.load(part);
  }
}
