import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { DOWNHILL_KEY_WORDS } from '../../words/edgeWords';
import { AppPart, fieldValue, isTicked } from '../parts/app-part';
import { shared } from '../parts/shared';
import type { HiddenLayer } from '../walks';
import { doseInHand } from './dose-in-hand';
import { PLAY_CHOICES, type PlayChoice, playWords } from './play-speed';
import { walkKey, walkKeyStyles } from './walk-key';

const LAYERS: readonly (readonly [HiddenLayer, string])[] = [
  ['passes', 'Passes and ways'],
  ['marks', 'Run-out marks'],
  ['tints', 'Ground of each container'],
  ['edges', 'Edges to rinse or sweep'],
  ['strips', 'Strips left untreated'],
];

/** Which layers of the walk the drawing shows. */
@customElement('walk-layers')
export class WalkLayers extends AppPart {
  static override styles = [
    shared,
    walkKeyStyles,
    css`
      :host { display: block; }
      fieldset { border: 0; margin: 0; padding: 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(10.5rem, 1fr)); gap: 0 0.5rem; }
      label.check { line-height: 1.2; }
      /* a wide screen has it on the bar below the drawing */
      .narrow { display: none; margin: 0.25rem 0 0.75rem; }
      @media (max-width: 820px) { .narrow { display: grid; } }
    `,
  ];

  protected override render() {
    const { walks } = this.app;
    const walk = doseInHand(this.app)?.walk;
    const hasDownhill = !walks.hides.has('edges') && this.app.visit?.rinseEdges.some((edge) => edge.downhill);
    return html`<fieldset><legend class="visually-hidden">Shown on the drawing</legend>
      ${LAYERS.map(
        ([
          layer,
          words,
        ]) => html`<label class="check"><input type="checkbox" .checked=${!walks.hides.has(layer)}
          @change=${(event: Event) => walks.setHidden(layer, !isTicked(event))} />${words}</label>`,
      )}
    </fieldset>
    <label class="narrow">The walk is played<select @change=${(event: Event) => walks.setPlay(fieldValue(event) as PlayChoice)}>
      ${PLAY_CHOICES.map((choice) => html`<option value=${choice} .selected=${choice === walks.play}>${playWords(choice)}</option>`)}</select></label>
    ${walk ? walkKey(walk.dose, this.app.theme) : nothing}
    ${hasDownhill ? html`<p class="quiet">${DOWNHILL_KEY_WORDS}</p>` : nothing}`;
  }
}
