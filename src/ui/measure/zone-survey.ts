import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { replaceZone } from '../../yard/edits';
import type { Zone } from '../../yard/types';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { shared } from '../parts/shared';
import { surveyFields } from './survey-fields';

/** Note, how a zone was measured and how well, and what it cuts. */
@customElement('zone-survey')
export class ZoneSurvey extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; margin: 0.5rem 0; align-items: start; }
      .fields > label:first-child, .whole { grid-column: 1 / -1; margin: 0; justify-self: stretch; }
      button.whole { justify-self: start; }
    `,
  ];

  @property({ attribute: false }) zone!: Zone;

  protected override render() {
    const { zone, app } = this;
    return html`
      <div class="fields">
        ${surveyFields(app, zone.survey, (label, survey) => this.change(label, { survey }))}
        <label class="whole">Note<textarea .value=${zone.note}
          @change=${(event: Event) => this.change('Change note', { note: fieldValue(event) })}></textarea></label>
        <label class="check whole"><input type="checkbox" .checked=${zone.cutsSameKind} ?disabled=${zone.isLocked || !zone.isPlaced}
          @change=${(event: Event) => this.change('Change what cuts what', { cutsSameKind: isTicked(event) })} />
          Cuts earlier zones of its own kind</label>
      </div>
    `;
  }

  private change(label: string, change: Partial<Zone>): void {
    this.app.dispatch(label, (yard) => {
      const zone = yard.zones.find((each) => each.id === this.zone.id);
      return zone ? replaceZone(yard, { ...zone, ...change }) : yard;
    });
  }
}
