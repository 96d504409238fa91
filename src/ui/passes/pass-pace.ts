import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { WalkTimeline } from '../../cover/marks/walkTimeline';
import type { DosePace } from '../../pace/types';
import type { DoseEquipment } from '../../plan/equipmentOfDose';
import type { DoseFigures } from '../../plan/types';
import { formatClock } from '../../units/formatPace';
import { passPaceWords, usualPassM } from '../../words/paceWords';
import { dryingWords } from '../../words/passWords';
import { productName } from '../../words/productWords';
import type { CalibrationKind } from '../../yard/types';
import { openEquipment } from '../equipment/equipment-open';
import { AppPart } from '../parts/app-part';
import { issueNotes, withoutName } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import { doseInHand } from './dose-in-hand';
import { isUnwalkable } from './pace-issues';
import { paceLinesOf } from './pace-lines';
import { clockOf } from './walk-clock';

/** What finds out what an issue of the pace misses. */
const MEASURES: Readonly<Record<string, readonly [string, CalibrationKind]>> = {
  'flow-not-measured': ['Do the bucket test', 'bucket'],
  'product-share-not-measured': ['Do the bucket test', 'bucket'],
  'speed-not-measured': ['Time a walk', 'walk'],
  'setting-not-found': ['Do a catch test', 'catch'],
  'setting-off': ['Do a catch test', 'catch'],
};

/** How fast to walk: speed, times, steps, and what speaks against it. */
@customElement('pass-pace')
export class PassPace extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      dl { margin: 0.5rem 0; }
      dl div { display: grid; grid-template-columns: 9rem minmax(0, 1fr); gap: 0 0.75rem; padding: 0.3rem 0; border-bottom: 1px solid var(--line); }
      dt { color: var(--ink-soft); }
      dd { margin: 0; font-weight: 600; }
      dt { overflow-wrap: anywhere; }
    `,
  ];

  protected override render() {
    const hand = doseInHand(this.app);
    if (!hand?.figures || !hand.equipment || !hand.pace) return nothing;
    const { figures, pace } = hand;
    const { units } = this.app;
    const lines = paceLinesOf(pace, figures, hand.equipment.equipment, units);
    const clock = clockOf(hand);
    const drying = hand.walk ? dryingWords(hand.walk.dose) : '';
    const pass = usualPassM(hand.walk?.dose.legs ?? []);
    const words = pass === null ? null : passPaceWords(pace, pass, units);
    return html`
      ${issueNotes(
        withoutName(
          pace.issues.filter((issue) => !isUnwalkable(issue)),
          productName(figures.product),
        ),
      )}
      ${this.renderMeasure(hand.equipment, pace, figures)}
      ${
        lines.length === 0
          ? html`<p>How fast to walk is not known: neither what comes out nor your own walk is measured.</p>`
          : html`<dl>
              ${lines.map((line) => html`<div><dt>${line.label}</dt><dd>${line.words}</dd></div>`)}
              ${words === null ? nothing : html`<div><dt>A usual pass</dt><dd>${words}</dd></div>`}
            </dl>`
      }
      ${clock ? html`<p class="quiet">Zones here without turns. Of ${formatClock(clock.totalS)} in all${drying === '' ? '' : `, ${drying}`}: ${shareWords(clock.timeline)}.</p>` : nothing}`;
  }

  /** The guided form that finds out what is not measured yet. */
  private renderMeasure({ equipment, isAssumed }: DoseEquipment, pace: DosePace, figures: DoseFigures) {
    const ask = pace.issues.map(({ code }) => MEASURES[code]).find((each) => each !== undefined);
    if (!ask) return nothing;
    const [words, kind] = ask;
    const { dose, rate } = figures;
    const asked = { productId: dose.productId, kgPerM2: rate.kgPerM2, coats: dose.passes.coats };
    return html`<div class="row"><button @click=${() => openEquipment(this.app, isAssumed ? null : equipment.id, isAssumed ? null : kind, asked)}>${isAssumed ? 'Add your equipment' : words}</button></div>`;
  }
}

/** "12 min 05 s with product going out, 1 min 20 s turning, 30 s changing bottles". */
function shareWords({ workingS, turnS, carryS, refillS }: WalkTimeline): string {
  const parts: readonly (readonly [number, string])[] = [
    [workingS, 'with product going out'],
    [turnS, 'turning'],
    [carryS, 'on the way, shut'],
    [refillS, 'changing or filling'],
  ];
  return parts
    .filter(([seconds]) => seconds >= 0.5)
    .map(([seconds, words]) => `${formatClock(seconds)} ${words}`)
    .join(', ');
}
