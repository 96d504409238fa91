import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { replaceZone } from '../../yard/edits';
import type { Survey, Yard, Zone } from '../../yard/types';
import { AppPart, isTicked } from '../parts/app-part';
import { shared } from '../parts/shared';
import { surveyFields } from './survey-fields';

/** How several zones were measured, set for all of them at once; each change is one step. */
@customElement('group-edit')
export class GroupEdit extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; margin: 0.5rem 0; align-items: start; }
      .fields > label:first-child, .whole { grid-column: 1 / -1; margin: 0; }
      button.whole { justify-self: start; }
    `,
  ];

  private get zones(): readonly Zone[] {
    const { yard, view } = this.app;
    return yard.zones.filter((zone) => view.selectedZoneIds.includes(zone.id));
  }

  protected override render() {
    const { zones, app } = this;
    const [first] = zones;
    if (!first) return html``;
    const isMixed = zones.some((zone) => !isSameSurvey(zone.survey, first.survey));
    return html`
      ${
        isMixed
          ? html`<p class="note">These zones were measured in different ways; shown is ${first.name || 'the first'}. What you change is set for every one of them.
              <button @click=${() => this.each('Change how measured', () => ({ survey: first.survey }))}>Set all as shown</button></p>`
          : ''
      }
      <div class="fields">${surveyFields(app, first.survey, (label, survey) =>
        this.each(label, (zone) => ({ survey: { ...zone.survey, ...changeOf(first.survey, survey) } })),
      )}</div>
      <label class="check"><input type="checkbox" .checked=${zones.every((zone) => zone.isLocked)}
        @change=${(event: Event) => {
          const isLocked = isTicked(event);
          this.each(isLocked ? 'Lock zones' : 'Unlock zones', () => ({ isLocked }));
        }} />Locked: outlines and places stay</label>
    `;
  }

  private each(label: string, change: (zone: Zone) => Partial<Zone>): void {
    const ids = this.zones.map((zone) => zone.id);
    this.app.dispatch(label, (yard) =>
      ids.reduce<Yard>((made, id) => {
        const zone = made.zones.find((one) => one.id === id);
        return zone ? replaceZone(made, { ...zone, ...change(zone) }) : made;
      }, yard),
    );
  }
}

/** The members of a record that differ. */
function changeOf(from: Survey, to: Survey): Partial<Survey> {
  const keys = ['method', 'vertexSigmaM', 'scaleSigma', 'source'] as const;
  return Object.fromEntries(keys.filter((key) => from[key] !== to[key]).map((key) => [key, to[key]]));
}

function isSameSurvey(a: Survey, b: Survey): boolean {
  return (
    a.method === b.method &&
    a.vertexSigmaM === b.vertexSigmaM &&
    a.scaleSigma === b.scaleSigma &&
    a.source === b.source
  );
}
