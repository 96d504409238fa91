import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Tool } from '../../map/types';
import { repeatZone } from '../../measure/shapes';
import { KIND_WORDS } from '../../words/zoneWords';
import { removeZones } from '../../yard/edits';
import type { Zone, ZoneKind } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { fold } from '../parts/fold';
import { isFree } from '../parts/is-free';
import { shared } from '../parts/shared';

const KINDS_TO_CUT: readonly ZoneKind[] = ['bed', 'hardscape', 'structure', 'water', 'turf', 'other'];
/** How far beside its model a copy is laid, m. */
const BESIDE_M = 3;

/** What stands in the folds; fetched when a fold is opened first. */
const LOAD = {
  outline: () => import('./zone-outline-tools'),
  whole: () => import('./zone-whole-tools'),
} as const;

/** What can be done with one zone, by pointer or by typed values. */
@customElement('zone-tools')
export class ZoneTools extends AppPart {
  static override styles = [
    shared,
    fold,
    css`
      :host { display: block; }
      .tools { display: grid; grid-template-columns: 1fr 1fr; gap: 0.35rem; margin-bottom: 0.5rem; }
    `,
  ];

  @property({ attribute: false }) zone!: Zone;

  @state() private cutKind: ZoneKind = 'bed';

  protected override render() {
    const { zone, app } = this;
    const { tool } = app.view;
    const isDraw = (purpose: 'hole' | 'cut') => tool.type === 'draw' && tool.purpose === purpose;
    const draw = (purpose: 'hole' | 'cut', kind: ZoneKind): Tool => ({
      type: 'draw',
      shape: 'polygon',
      purpose,
      kind,
      zoneId: zone.id,
    });
    const reshape: Tool = { type: 'reshape', zoneId: zone.id, isAlone: !app.options.sharedCorners };
    return html`
      <div class="tools">
        ${this.button('Reshape corners', reshape, tool.type === 'reshape')}
        ${this.button('Split by a line', { type: 'split', zoneId: zone.id }, tool.type === 'split')}
        ${this.button('Cut a hole', draw('hole', zone.kind), isDraw('hole'))}
        <button @click=${() => app.map?.fit([zone.id])}>Show</button>
        ${this.button(`Cut out: ${KIND_WORDS[this.cutKind].toLowerCase()}`, draw('cut', this.cutKind), isDraw('cut'), true)}
        <select aria-label="Kind to cut out of the zone" @change=${(event: Event) => {
          this.cutKind = fieldValue(event) as ZoneKind;
        }}>
          ${KINDS_TO_CUT.map((kind) => html`<option value=${kind} .selected=${kind === this.cutKind}>${KIND_WORDS[kind]}</option>`)}
        </select>
        <button class="danger" @click=${this.removeZone}>Delete</button>
        <button @click=${this.copy}>Copy beside</button>
      </div>
      <details class="fold" @toggle=${(event: Event) => this.opened(event, 'outline')}><summary>Curves, strips, alignment</summary>
        <zone-outline-tools .app=${app} .rev=${this.rev} .zone=${zone}></zone-outline-tools></details>
      <details class="fold" @toggle=${(event: Event) => this.opened(event, 'whole')}><summary>Move, turn, flip, repeat, change order</summary>
        <zone-whole-tools .app=${app} .rev=${this.rev} .zone=${zone}></zone-whole-tools></details>
    `;
  }

  /** @param mayBeLocked the tool leaves the zone's own outline */
  private button(words: string, wanted: Tool, isOn: boolean, mayBeLocked = false) {
    const take = () => {
      if (isOn) this.app.setView({ tool: { type: 'select' } });
      else if (mayBeLocked || isFree(this.app, this.zone)) this.app.setView({ tool: wanted });
    };
    return html`<button aria-pressed=${isOn ? 'true' : 'false'} @click=${take}>${words}</button>`;
  }

  private opened(event: Event, part: keyof typeof LOAD): void {
    if (!(event.target as HTMLDetailsElement).open) return;
    LOAD[part]().catch(() => {
      const message = 'This part could not be loaded. Check the connection, then close and open it again.';
      this.app.tell({ code: 'part-not-loaded', severity: 'error', message, place: {} });
    });
  }

  private removeZone(): void {
    const { app, zone } = this;
    if (isFree(app, zone)) app.dispatch('Delete zone', (yard) => removeZones(yard, [zone.id]));
  }

  /** A twin of the zone, moved a little aside, chosen for the next step. */
  private copy(): void {
    const { app, zone } = this;
    const { plane } = app.session.derived.measured;
    const twin = { id: app.newId('zone'), name: `${zone.name} copy` };
    if (app.attempt('Copy zone', (yard) => repeatZone(yard, zone.id, [twin], [BESIDE_M, 0], plane)))
      app.setView({ selectedZoneIds: [twin.id] });
  }
}
