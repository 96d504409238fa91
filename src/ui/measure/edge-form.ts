import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { EdgePick, Tool, Trial } from '../../map/types';
import { alignedZone, alignZone } from '../../measure/alignZone';
import { type OffsetWay, offsetEdge, offsetOutlines } from '../../measure/offsetEdge';
import { freeName, KIND_WORDS, KINDS_TO_DRAW } from '../../words/zoneWords';
import type { Position, Zone, ZoneKind } from '../../yard/types';
import { zoneFromRing } from '../map-events';
import { AppPart, isTicked } from '../parts/app-part';
import '../parts/quantity-field';
import type { QuantityChange } from '../parts/quantity-field';
import { selectField } from '../parts/select-field';
import { shared } from '../parts/shared';

const WAYS: readonly OffsetWay[] = ['strip', 'inward', 'outward'];
const WAY_WORDS: Readonly<Record<OffsetWay, string>> = {
  strip: 'A zone of its own',
  inward: 'Take off the zone',
  outward: 'Add to the zone',
};
/** Widths to begin with: a foot, 30 cm. */
const FIRST_WIDTH_M = { us: 0.3048, metric: 0.3 } as const;

/** What is done with a side or stretch that was picked: its ground set off by a width, or the zone aligned by it. */
@customElement('edge-form')
export class EdgeForm extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .row { gap: 0.35rem; }
      .row > * { flex: 1 1 8rem; }
      .row > button { flex: 0 1 auto; white-space: nowrap; }
      .row > label.check { flex: 1 1 auto; }
    `,
  ];

  @state() private widthM: number | null = null;
  @state() private way: OffsetWay = 'strip';
  @state() private kind: ZoneKind | null = null;
  @state() private inLine = true;

  private shownKey = '';
  private finished: EdgePick | null = null;

  private get tool(): Extract<Tool, { type: 'edge' }> | null {
    const { tool } = this.app.view;
    return tool.type === 'edge' ? tool : null;
  }
  private get pick(): EdgePick | null {
    return this.app.live?.edgePick ?? null;
  }
  private get zone(): Zone | undefined {
    return this.app.yard.zones.find((zone) => zone.id === this.tool?.zoneId);
  }
  private get width(): number {
    return this.widthM ?? FIRST_WIDTH_M[this.app.units];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.shownKey !== '') this.app.setTrial(null);
    this.shownKey = '';
  }

  protected override updated(_changed: PropertyValues): void {
    this.preview();
    const { pick } = this;
    if (!pick?.isFinished || pick === this.finished) return;
    this.finished = pick;
    this.apply();
  }

  /** The outline as it would be, over the drawing; only when something it hangs on has changed. */
  private preview(): void {
    const { pick, zone, tool } = this;
    const key =
      pick && zone
        ? JSON.stringify([pick.stretch, pick.target, this.width, this.way, this.inLine, zone.id])
        : '';
    if (key === this.shownKey) return;
    this.shownKey = key;
    const lines = pick && zone && tool ? this.outlines(zone, pick) : [];
    const trial: Trial = {
      lines: lines.map((points) => ({ points, isClosed: true, style: 'main' })),
      points: [],
      circles: [],
    };
    this.app.setTrial(lines.length > 0 ? trial : null);
  }

  private outlines(zone: Zone, pick: EdgePick): readonly (readonly Position[])[] {
    const { plane } = this.app.session.derived.measured;
    if (this.tool?.task === 'offset') return offsetOutlines(zone, pick.stretch, this.width, this.way, plane);
    const [a, b] = pick.stretch;
    if (!a || !b || !pick.target) return [];
    return alignedZone(zone, [a, b], pick.target.edge, this.inLine)?.parts.flat() ?? [];
  }

  protected override render() {
    const { tool } = this;
    if (tool?.task === 'offset') return this.renderOffset();
    return tool?.task === 'align' ? this.renderAlign() : nothing;
  }

  private renderOffset() {
    const { pick } = this;
    const kind = this.kind ?? this.zone?.kind ?? 'turf';
    return html`
      <div class="row">
        <quantity-field label="Width" quantity="length" .system=${this.app.units} .value=${this.width} .min=${0}
          @quantity-change=${(event: CustomEvent<QuantityChange>) => {
            this.widthM = event.detail.valueSi;
          }}></quantity-field>
        ${selectField('It becomes', this.way, WAYS, WAY_WORDS, (way) => {
          this.way = way;
        })}
        ${
          this.way === 'strip'
            ? selectField('Of kind', kind, KINDS_TO_DRAW, KIND_WORDS, (next) => {
                this.kind = next;
              })
            : nothing
        }
        <button class="primary" ?disabled=${!pick} @click=${this.apply}>Apply</button>
      </div>
    `;
  }

  private renderAlign() {
    const { pick } = this;
    return html`
      <div class="row">
        <label class="check"><input type="checkbox" .checked=${this.inLine}
          @change=${(event: Event) => {
            this.inLine = isTicked(event);
          }} />Move onto its line too</label>
        <button ?disabled=${!pick} @click=${() => this.align(true)}>To true north</button>
        <button class="primary" ?disabled=${!pick?.target} @click=${this.apply}>Apply</button>
      </div>
    `;
  }

  private readonly apply = (): void => {
    if (this.tool?.task === 'align') this.align(false);
    else this.offset();
  };

  private offset(): void {
    const { zone, pick, app } = this;
    if (!zone || !pick) return;
    const { plane } = app.session.derived.measured;
    const made = this.way === 'strip' ? this.stripOf(zone) : null;
    const label = { strip: 'Make a strip', inward: 'Move side inward', outward: 'Move side outward' }[
      this.way
    ];
    const isDone = app.attempt(label, (yard) =>
      offsetEdge(yard, zone.id, pick.stretch, this.width, this.way, made, plane),
    );
    if (isDone) app.setView({ tool: { type: 'select' }, selectedZoneIds: [made?.id ?? zone.id] });
  }

  /** The new zone of a strip, as its neighbour was measured; its outline comes later. */
  private stripOf(zone: Zone): Zone {
    const kind = this.kind ?? zone.kind;
    const names = this.app.yard.zones.map((each) => each.name);
    const made = zoneFromRing(this.app, kind, [], 'typed');
    const isAlike = kind === zone.kind;
    return {
      ...made,
      name: freeName(`${KIND_WORDS[kind]} strip`, names),
      mowing: isAlike ? zone.mowing : made.mowing,
      material: isAlike ? zone.material : made.material,
      survey: zone.survey,
    };
  }

  private align(toNorth: boolean): void {
    const { zone, pick, app } = this;
    const [a, b] = pick?.stretch ?? [];
    const target = toNorth ? null : pick?.target?.edge;
    if (!zone || !a || !b || target === undefined) return;
    const { plane } = app.session.derived.measured;
    const inLine = !toNorth && this.inLine;
    if (app.attempt('Align zone', (yard) => alignZone(yard, zone.id, [a, b], target, inLine, plane)))
      app.setView({ tool: { type: 'select' } });
  }
}
