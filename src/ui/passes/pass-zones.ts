import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { factorOf, speedIssues } from '../../cover/marks/zoneSpeeds';
import type { ZoneWalk } from '../../cover/passTypes';
import { formatAreaOfPm } from '../../units/format';
import { formatClock, formatSpeed } from '../../units/formatPace';
import { headingWords } from '../../words/passWords';
import { countLaps, countWords, formatWalk } from '../../words/walkWords';
import { groundName } from '../../words/zoneWords';
import { AppPart } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import { doseInHand } from './dose-in-hand';
import { clockOf } from './walk-clock';

/** Each zone of a dose in walking order: heading, passes, length and time. */
@customElement('pass-zones')
export class PassZones extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      td, th { padding-right: 0.35rem; vertical-align: baseline; }
      td { font-size: var(--text-small); }
      td:last-child, th:last-child { padding-right: 0; }
      th[scope='row'] { font-size: var(--text); color: var(--ink); overflow-wrap: anywhere; font-weight: 400; line-height: 1.2; }
      th[scope='row'] b { font-weight: 650; }
      th[scope='row'] span { display: block; font-size: var(--text-small); color: var(--ink-soft); white-space: nowrap; }
      .no { width: 1.6rem; }
    `,
  ];

  protected override render() {
    const hand = doseInHand(this.app);
    const { units } = this.app;
    if (!hand?.walk) return nothing;
    const { walk } = hand;
    const clock = clockOf(hand);
    const named = new Map(walk.from.zones.map((zone) => [zone.zoneId, zone]));
    const speeds = clock?.timeline.speeds ?? [];
    const speedMPerS = hand.pace?.speedMPerS ?? null;
    const names = new Map(walk.from.zones.map((zone) => [zone.zoneId, zone.name]));
    const hasCoats = walk.dose.walks.some((each) => each.coat === 2);
    return html`<table>
      <thead><tr><th class="no"><abbr title="Place in the walking order">No.</abbr></th><th>Zone, area</th><th>Heading</th><th class="num">Passes, laps</th><th class="num">Length, time${speedMPerS === null ? '' : ', pace'}</th></tr></thead>
      <tbody>${walk.dose.walks.map((each, i) => {
        const zone = named.get(each.zoneId);
        const seconds = clock?.seconds[i] ?? null;
        return html`<tr>
          <td>${i + 1}</td>
          <th scope="row"><b>${groundName(zone?.name ?? '')}</b>${hasCoats ? `, ${each.coat === 1 ? 'first' : 'second'} coat` : ''}
            <span>${this.areaWords(each.zoneId, zone?.areaM2 ?? each.areaM2)}</span></th>
          <td>${patternWords(each)}</td>
          <td class="num">${countWords(each.passes, countLaps(each, walk.dose.legs))}</td>
          <td class="num">${formatWalk(each.lengthM, units)}<br />${seconds === null ? '–' : formatClock(seconds)}${speedMPerS === null ? nothing : html`<br />${formatSpeed(speedMPerS * factorOf(speeds, each), units)}`}</td>
        </tr>`;
      })}</tbody></table>
      <p class="quiet">Time with turns and refills, without the ways between zones.${
        speedMPerS === null
          ? ''
          : ' Pace so that just the zone’s own amount goes out: where passes lie closer, a little faster.'
      }</p>
      ${issueNotes(speedIssues(speeds, names, speedMPerS, units))}`;
  }

  /** As the visit tells it: to the digits that the measuring allows. */
  private areaWords(zoneId: string, areaM2: number): string {
    const sigmaM2 = this.app.session.derived.measured.zones.get(zoneId)?.netSigmaM2 ?? 0;
    return formatAreaOfPm(areaM2, sigmaM2, this.app.units);
  }
}

/** "87°", "87°, laps", "laps alone". */
function patternWords({ headingDeg, pattern }: ZoneWalk): string {
  if (headingDeg === null || pattern === 'round') return 'laps alone';
  return `${headingWords(headingDeg)}${pattern === 'both' ? ', laps' : ''}`;
}
