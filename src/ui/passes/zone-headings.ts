import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { CoverZone } from '../../cover/passTypes';
import type { PlaneRings } from '../../measure/types';
import { formatLength } from '../../units/format';
import { windWords } from '../../words/compassWords';
import { headingWords } from '../../words/passWords';
import { groundName } from '../../words/zoneWords';
import { AppPart } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { shared } from '../parts/shared';
import { type DoseInHand, doseInHand } from './dose-in-hand';
import { setHeadings } from './passes-edits';
import { longestEdges, nearestEdge, type ZoneEdge } from './zone-edges';

/** Edges that the list offers. */
const MOST_EDGES = 8;
/** Shorter ones give no direction, m. */
const LEAST_EDGE_M = 1;

/** Which way the passes lie on each zone: what makes the shortest walk, typed degrees, or along an edge of it. */
@customElement('zone-headings')
export class ZoneHeadings extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      ul { list-style: none; margin: 0; padding: 0; }
      li { border-bottom: 1px solid var(--line); padding: 0.5rem 0 0.75rem; }
      li > div { display: grid; grid-template-columns: 8.5rem minmax(0, 1fr); gap: 0.5rem; align-items: end; }
      li:last-child { border-bottom: 0; }
      li p { grid-column: 1 / -1; margin: 0; line-height: 1.25; }
      .row { grid-column: 1 / -1; gap: 0.35rem; }
      .row button { flex: 1 1 auto; }
    `,
  ];

  /** visit and dose that the drawn edge belongs to. */
  private shown: string | null = null;
  /** the edge chosen last: two edges may have one heading. */
  private taken: { readonly zoneId: string; readonly index: number; readonly headingDeg: number } | null =
    null;

  protected override render() {
    const hand = doseInHand(this.app);
    if (!hand) return nothing;
    const zones = this.zonesOf(hand);
    return html`<p class="quiet">Degrees clockwise from north; passes are walked both ways. “Shortest walk” is the shortest by length. Another heading at each visit keeps ruts and grain from forming.</p>
      <ul>${zones.map((zone) => this.renderZone(hand, zone, zones))}</ul>`;
  }

  /** Placed zones of the dose, in the order of the visit: one that changed with the walk would swap fields under the hand. */
  private zonesOf({ figures }: DoseInHand): readonly Pick<CoverZone, 'zoneId' | 'name'>[] {
    return figures?.zones.filter((zone) => zone.isPlaced !== false && zone.areaM2 > 0) ?? [];
  }

  protected override willUpdate(): void {
    const hand = doseInHand(this.app);
    const shown = hand && `${hand.visit.id} ${hand.dose.id}`;
    if (this.shown !== null && shown !== this.shown && this.app.trial) this.app.setTrial(null);
    this.shown = shown;
  }

  private renderZone(
    hand: DoseInHand,
    zone: Pick<CoverZone, 'zoneId' | 'name'>,
    all: readonly { readonly zoneId: string }[],
  ) {
    const { zoneId } = zone;
    const name = groundName(zone.name);
    const set = hand.dose.passes.headings[zoneId] ?? null;
    const laid =
      hand.walk?.dose.walks.find((each) => each.zoneId === zoneId && each.coat === 1)?.headingDeg ?? null;
    const edges = longestEdges(this.outlineOf(zoneId))
      .filter((edge) => edge.lengthM >= LEAST_EDGE_M)
      .slice(0, MOST_EDGES);
    const last = this.taken?.zoneId === zoneId ? this.taken.headingDeg : null;
    const isLast = last !== null && set === last;
    const along =
      set === null
        ? -1
        : edges.findIndex((edge, i) => edge.headingDeg === set && (!isLast || i === this.taken?.index));
    return html`<li><div role="group" aria-label=${name}>
      <p><b>${name}</b>${
        set !== null
          ? `: ${headingWords(set)}`
          : laid === null
            ? ': shortest walk'
            : `: shortest walk, ${headingWords(laid)}`
      }</p>
      <number-field label="Heading" suffix="°" optional .value=${set === null ? null : Math.round(set * 10) / 10} .min=${0} .max=${360}
        @number-change=${(event: CustomEvent<NumberChange>) => this.set([zoneId], event.detail.value, `heading ${hand.dose.id} ${zoneId}`)}></number-field>
      <label>Along an edge<select @change=${(event: Event) => this.chooseEdge(zoneId, edges, event)}>
        <option value="" .selected=${along < 0}>choose one of its longest</option>
        ${edges.map((edge, i) => html`<option value=${i} .selected=${i === along}>${i + 1}. ${windWords(edge.facesDeg)} side, ${formatLength(edge.lengthM, this.app.units)}, ${Math.round(edge.headingDeg) % 180}°</option>`)}
      </select></label>
      <div class="row">
        <button @click=${() => this.point(zoneId, name)}>Point at an edge</button>
        ${set === null ? nothing : html`<button @click=${() => this.set([zoneId], null)}>Shortest walk</button>`}
        ${
          set !== null && all.length > 1
            ? html`<button @click=${() =>
                this.set(
                  all.map((each) => each.zoneId),
                  set,
                )}>Same for all</button>`
            : nothing
        }
      </div>
    </div></li>`;
  }

  private outlineOf(zoneId: string): readonly PlaneRings[] {
    return this.app.session.derived.measured.zones.get(zoneId)?.netPlaneParts ?? [];
  }

  private chooseEdge(zoneId: string, edges: readonly ZoneEdge[], event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    const index = Number(value);
    const edge = edges[index];
    if (value === '') this.set([zoneId], null);
    else if (edge) {
      this.taken = { zoneId, index, headingDeg: edge.headingDeg };
      this.takeEdge(zoneId, edge);
    }
  }

  private async point(zoneId: string, name: string): Promise<void> {
    const { app } = this;
    const place = await app.pick(`Point at the edge of ${name} that the passes are to go along.`);
    if (!place) return;
    const edge = nearestEdge(this.outlineOf(zoneId), app.session.derived.measured.plane.toPlane(place));
    if (edge) this.takeEdge(zoneId, edge);
  }

  /** Passes along an edge, which is shown on the drawing until something else is. */
  private takeEdge(zoneId: string, edge: ZoneEdge): void {
    const { app } = this;
    const { plane } = app.session.derived.measured;
    this.set([zoneId], edge.headingDeg);
    const points = [plane.toLonLat(edge.from), plane.toLonLat(edge.to)];
    app.setTrial({ lines: [{ points, isClosed: false, style: 'main' }], points: [], circles: [] });
  }

  private set(zoneIds: readonly string[], headingDeg: number | null, mergeKey?: string): void {
    const hand = doseInHand(this.app);
    if (!hand) return;
    if (this.app.trial) this.app.setTrial(null);
    const label = headingDeg === null ? 'Take the shortest walk' : 'Set heading of passes';
    this.app.dispatch(
      label,
      (yard) => setHeadings(yard, hand.visit.id, hand.dose.id, zoneIds, headingDeg),
      mergeKey,
    );
  }

  override disconnectedCallback(): void {
    if (this.app.trial) this.app.setTrial(null);
    super.disconnectedCallback();
  }
}
