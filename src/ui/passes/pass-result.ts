import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatLength, formatNumber, formatPercent } from '../../units/format';
import { formatClock, formatSpeed } from '../../units/formatPace';
import { beyondHoseWords, dryingWords, OPEN_SWATH_WORDS, walkIssues } from '../../words/passWords';
import { formatWalk, walkPartsWords } from '../../words/walkWords';
import { groundName } from '../../words/zoneWords';
import { AppPart } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import { type DoseInHand, doseInHand } from './dose-in-hand';
import { isUnwalkable } from './pace-issues';
import { clockOf } from './walk-clock';
import { sumWalks, type WalkSums, type ZoneShare } from './walk-sums';

/** A smaller share of a zone is not told. */
const LEAST_SHARE = 5e-4;

/** What comes of the passes: the whole walk in figures, what they miss and cover twice, and zone by zone. */
@customElement('pass-result')
export class PassResult extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      dl { margin: 0 0 0.5rem; }
      .big { display: grid; grid-template-columns: 1.05fr 1.25fr 1fr; border: solid var(--ink); border-width: 2px 0 1px; }
      .big div { display: flex; flex-direction: column-reverse; padding: 0.4rem 0.25rem 0.4rem 0; }
      .big div:not(:nth-child(3n + 1)) { border-left: 1px solid var(--line); padding-left: 0.6rem; }
      .big div:nth-child(n + 4) { border-top: 1px solid var(--line); }
      dt { color: var(--ink-soft); font-size: var(--text-small); }
      dd { margin: 0; }
      .big dd { font-size: 1.3125rem; font-weight: 650; line-height: 1.15; white-space: nowrap; }
      .rows div { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0 0.75rem; padding: 0.3rem 0; border-bottom: 1px solid var(--line); }
      .rows dd { font-weight: 650; text-align: right; }
      .rows dd.quiet { grid-column: 1 / -1; text-align: left; font-weight: 400; }
    `,
  ];

  protected override render() {
    const hand = doseInHand(this.app);
    if (!hand?.walk) return nothing;
    const { units } = this.app;
    const { dose } = hand.walk;
    const sums = sumWalks(dose);
    const clock = clockOf(hand);
    const ratio = sums.leastM > 0 ? sums.onGroundM / sums.leastM : null;
    const speed = hand.pace?.speedMPerS ?? null;
    const isUsual = hand.pace?.source === 'usual';
    const names = new Map(hand.walk.from.zones.map(({ zoneId, name }) => [zoneId, name]));
    const on = (most: ZoneShare | null) => (most ? `“${groundName(names.get(most.zoneId) ?? '')}”` : null);
    const mostOn = (most: ZoneShare | null) =>
      most && most.share >= LEAST_SHARE ? `; most on ${on(most)}, ${formatPercent(most.share)} of it` : '';
    const drying = dryingWords(dose);
    const issues = [...walkIssues(dose, names), ...(hand.pace?.issues.filter(isUnwalkable) ?? [])];
    return html`
      <dl class="big">
        ${big('Walk', formatWalk(dose.lengthM, units))}
        ${big(`Time${isUsual ? ', about' : ''}${drying === '' ? '' : ', without drying'}`, clock ? formatClock(clock.totalS) : '–')}
        ${big(isUsual ? 'Pace, usual' : 'Pace', speed === null ? '–' : formatSpeed(speed, units))}
        ${big('Passes', String(sums.passes))}
        ${big('Laps', String(dose.legs.filter((leg) => leg.kind === 'lap').length))}
        ${big('Turns', String(sums.turns))}
      </dl>
      <p class="quiet">${walkPartsWords(sums.parts, units)}.${drying === '' ? nothing : html` The time is <b>${drying}</b>.`}
        ${
          ratio === null
            ? nothing
            : html`On the ground it is <b>${formatNumber(ratio, 3)} times</b> the least there could be (${formatWalk(sums.leastM, units)}: the ground divided by the distance between passes).`
        }</p>
      <dl class="rows">
        ${row('Missed', formatPercent(sums.missed), `ground that no pass reaches${mostOn(sums.mostMissed)}`)}
        ${row('Covered twice', formatPercent(sums.double), `beyond the overlap that is meant${mostOn(sums.mostDouble)}`)}
        ${row('Beyond the edge', formatPercent(sums.outside), this.beyondWords(hand, sums, on(sums.farthest)))}
        ${dose.overWetM >= 0.05 ? row('Over wet ground', formatLength(dose.overWetM, units), 'walked where product has just gone down') : nothing}
        ${this.renderHose(hand, names)}
      </dl>
      ${issueNotes(issues)}
    `;
  }

  private beyondWords({ dose, equipment }: DoseInHand, { outsideM }: WalkSums, on: string | null): string {
    if (outsideM <= 0) return 'nothing lands past the outline of the ground';
    const far = `at most ${formatLength(outsideM, this.app.units)} past the outline of ${on ?? 'the ground'}`;
    const isGuarded = dose.passes.isGuarded && equipment?.equipment.hasEdgeGuard;
    return isGuarded ? `${far}; ${OPEN_SWATH_WORDS}` : far;
  }

  private renderHose({ walk }: DoseInHand, names: ReadonlyMap<string, string>) {
    const hose = walk?.dose.hose;
    if (!walk || !hose) return nothing;
    const { units } = this.app;
    const { lengthM } = this.app.yard.settings.hose;
    const beyond = hose.beyondM2 > 0.05 ? beyondHoseWords(hose, names, units) : 'it reaches everywhere';
    return row(
      'Hose must reach',
      formatLength(hose.farthestM, units),
      lengthM === null
        ? 'the length of the hose is not told'
        : `laid round houses, water and beds; the hose is ${formatLength(lengthM, units)}: ${beyond}`,
    );
  }
}

function big(words: string, figure: string) {
  return html`<div><dt>${words}</dt><dd>${figure}</dd></div>`;
}

function row(words: string, figure: string, more: string) {
  return html`<div><dt>${words}</dt><dd>${figure}</dd><dd class="quiet">${more}</dd></div>`;
}
