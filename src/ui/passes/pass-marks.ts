import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { walkNotes } from '../../cover/marks/walkNotes';
import type { WalkNote } from '../../cover/passTypes';
import { markLines, markSign, type NoteLine, vesselWords } from '../../words/markWords';
import { AppPart } from '../parts/app-part';
import { fold } from '../parts/fold';
import { shared } from '../parts/shared';
import { doseInHand } from './dose-in-hand';
import { wayOf } from './moment-words';
import { vesselSwatch, walkKeyStyles } from './walk-key';

/** Vessels that are listed without unfolding. */
const FEW = 4;

/** What a dose is drawn from, and where each vessel runs out or stands at a quarter, in walking order. */
@customElement('pass-marks')
export class PassMarks extends AppPart {
  static override styles = [
    shared,
    fold,
    walkKeyStyles,
    css`
      :host { display: block; }
      ul, ol { list-style: none; margin: 0 0 0.5rem; padding: 0; }
      .vessels li { padding: 0.2rem 0; display: flex; gap: 0.6rem; align-items: center; line-height: 1.25; }
      .vessels span { display: block; }
      .vessels span::first-letter { text-transform: uppercase; }
      ol { border-top: 1px solid var(--line); }
      ol li { border-bottom: 1px solid var(--line); }
      ol button { display: grid; grid-template-columns: 3.4rem minmax(0, 1fr); gap: 0 0.6rem; align-items: center; width: 100%; padding: 0.3rem 0; border: 0; background: none; text-align: left; line-height: 1.25; }
      ol button:hover { background: var(--sheet-sunk); }
      .sign { justify-self: start; border: 1.5px solid var(--ink); border-radius: var(--radius); padding: 0.1rem 0.3rem; font-weight: 650; font-size: var(--text-small); white-space: nowrap; }
      .sign.out { background: var(--ink); color: var(--sheet); }
      .sign.end { border-style: dashed; border-color: var(--line-strong); font-weight: 400; }
      b { font-weight: 650; }
    `,
  ];

  protected override render() {
    const hand = doseInHand(this.app);
    const way = hand && wayOf(hand);
    if (!hand?.walk || !way) return nothing;
    const { dose, from } = hand.walk;
    const { units } = this.app;
    if (dose.vessels.length === 0) {
      return html`<p class="quiet">What it is drawn from is not known. With packs on the label, a tank or a hopper that holds so much, the places where each runs out stand here.</p>`;
    }
    const notes = walkNotes(dose, from.zones);
    const names = new Map(from.zones.map((zone) => [zone.zoneId, zone.name]));
    const lines = markLines(notes, dose.vessels, names, way, units);
    const vessels = html`<ul class="vessels">${dose.vessels.map((vessel, i) => html`<li>${vesselSwatch(i, this.app.theme)}<span>${vesselWords(vessel, way, units)}</span></li>`)}</ul>`;
    return html`
      ${dose.vessels.length <= FEW ? vessels : html`<details class="fold"><summary>All ${dose.vessels.length} it is drawn from</summary>${vessels}</details>`}
      <p class="quiet">Numbered as on the map. A line shows its place; if a level is off there, change your step before the next.</p>
      <ol>${lines.map((line, i) => this.renderLine(line, notes[i] as WalkNote))}</ol>`;
  }

  private renderLine(line: NoteLine, note: WalkNote) {
    const { mark } = line;
    const isOut = mark !== null && mark.left === 0;
    return html`<li><button @click=${() => this.show(note)}>
      <span class="sign ${isOut ? 'out' : mark ? '' : 'end'}">${mark ? markSign(mark) : 'end'}</span>
      <span>${isOut ? html`<b>${line.what}</b>` : line.what}<br /><span class="quiet">${line.where}, ${line.after}</span></span>
    </button></li>`;
  }

  /** Event `walk-shown`: the drawing shows a place of the walk, and wants to be seen. */
  private show(note: WalkNote): void {
    this.app.walks.goTo?.(note.walkedM);
    this.dispatchEvent(new CustomEvent('walk-shown', { bubbles: true, composed: true }));
  }
}
