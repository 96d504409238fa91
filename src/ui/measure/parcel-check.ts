import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { OutsidePiece, ParcelCheck, UnassignedPiece } from '../../measure/parcel';
import { givePiece, zoneFromPiece } from '../../measure/parcelEdits';
import { createPlane } from '../../measure/plane';
import { boxOf, middleOfBox } from '../../measure/planeBox';
import { zoomOfPixel } from '../../measure/tilePixel';
import { formatAreas } from '../../units/columns';
import { formatArea, formatAreaPm } from '../../units/format';
import { freeName, KIND_WORDS, KINDS_TO_DRAW, zoneName } from '../../words/zoneWords';
import { newZone } from '../../yard/defaults';
import type { Rings, ZoneKind } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';

/** A piece takes about so much of the screen's lesser side when it is shown. */
const SHOWN_SHARE = 0.45;

/** The account of the property: every bit of ground by kind, and what is left to do. */
@customElement('parcel-check')
export class ParcelCheckView extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      tfoot td, tfoot th { border-top: 2px solid var(--line-strong); font-weight: 650; color: var(--ink); }
      table { margin-bottom: 0.75rem; }
      h3 { margin-top: 0.75rem; }
      tr.open td { background: var(--warn-ground); }
      ul { list-style: none; margin: 0 0 0.75rem; padding: 0; }
      li { display: flex; flex-wrap: wrap; align-items: center; gap: 0.5rem; padding: 0.5rem 0; border-bottom: 1px solid var(--line); }
      li p { flex: 1 1 100%; margin: 0; }
      .make { display: flex; }
      .make select { width: auto; border-left-width: 0; }
    `,
  ];

  @property({ attribute: false }) check!: ParcelCheck;
  @state() private kinds: Readonly<Record<string, ZoneKind>> = {};

  protected override render() {
    const { unassigned, outside, overlapsM2 } = this.check;
    const { units } = this.app;
    return html`
      ${this.renderTable()}
      ${
        unassigned.length === 0
          ? html`<p>Every bit of ground inside the outline is in a zone.</p>`
          : html`<h3>In no zone</h3>
              <ul>${unassigned.map((piece) => this.renderPiece(piece))}</ul>`
      }
      ${
        outside.length === 0
          ? nothing
          : html`<h3>Beyond the outline</h3>
              <ul>${outside.map((piece) => this.renderOutside(piece))}</ul>`
      }
      ${
        overlapsM2 > 0
          ? html`<p class="note warning">${formatArea(overlapsM2, units)} inside the outline is claimed by two zones of one kind; it counts once here.
              The list of overlaps beside the zones mends it.</p>`
          : nothing
      }
    `;
  }

  private renderTable() {
    const { kinds, parcelM2, sigmaM2, unassignedM2, unassignedSigmaM2, unassigned } = this.check;
    const order = KINDS_TO_DRAW.flatMap((kind) => kinds.find((one) => one.kind === kind) ?? []);
    const hasRest = unassigned.length > 0;
    const column = formatAreas(
      [...order.map((one) => one.areaM2), ...(hasRest ? [unassignedM2] : [])],
      parcelM2,
      sigmaM2,
      this.app.units,
    );
    return html`
      <table>
        <caption class="visually-hidden">Ground inside the outline by kind</caption>
        <thead><tr><th scope="col">Inside the outline</th><th scope="col" class="num">Zones</th><th scope="col" class="num">Ground</th></tr></thead>
        <tbody>
          ${order.map((one, i) => html`<tr><td>${KIND_WORDS[one.kind]}</td><td class="num">${one.count}</td><td class="num">${column.parts[i]}</td></tr>`)}
          ${hasRest ? html`<tr class="open"><td>In no zone</td><td class="num"></td><td class="num">${column.parts.at(-1)}</td></tr>` : nothing}
        </tbody>
        <tfoot><tr><th scope="row">Property</th><td class="num"></td><td class="num">${column.total}</td></tr></tfoot>
      </table>
      ${
        hasRest && unassignedM2 < 2 * unassignedSigmaM2
          ? html`<p class="quiet">What is in no zone, ${formatAreaPm(unassignedM2, unassignedSigmaM2, this.app.units)}, is no more than the error of the corners.</p>`
          : nothing
      }
    `;
  }

  private renderPiece(piece: UnassignedPiece) {
    const { zones } = this.app.yard;
    const names = piece.neighbourIds.flatMap((id) => {
      const zone = zones.find((each) => each.id === id);
      return zone ? zoneName(zone) : [];
    });
    const along =
      names.length === 0
        ? ''
        : ` along ${names.slice(0, 3).join(', ')}${names.length > 3 ? ' and others' : ''}`;
    const kind = this.kinds[piece.id] ?? 'turf';
    return html`<li>
      <p><b>${formatArea(piece.areaM2, this.app.units)}</b>${along}.${piece.isSliver ? ' So narrow that it is likely a slip of drawing.' : ''}</p>
      <button @click=${() => this.show(piece.parts)}>Show</button>
      ${names.length > 0 ? html`<button class=${piece.isSliver ? 'primary' : ''} @click=${() => this.give(piece)}>Give it to ${names[0]}</button>` : nothing}
      <span class="make">
        <button @click=${() => this.make(piece, kind)}>Make it a zone:</button>
        <select aria-label="Kind of the new zone" @change=${(event: Event) => {
          this.kinds = { ...this.kinds, [piece.id]: fieldValue(event) as ZoneKind };
        }}>${KINDS_TO_DRAW.map((each) => html`<option value=${each} .selected=${each === kind}>${KIND_WORDS[each].toLowerCase()}</option>`)}</select>
      </span>
    </li>`;
  }

  private renderOutside(piece: OutsidePiece) {
    const zone = this.app.yard.zones.find((each) => each.id === piece.zoneId);
    return html`<li>
      <p><b>${formatArea(piece.areaM2, this.app.units)}</b> of ${zone ? zoneName(zone) : 'a zone'}.</p>
      <button @click=${() => this.show(piece.parts)}>Show</button>
      <button @click=${() => this.app.setView({ way: null, selectedZoneIds: [piece.zoneId] })}>Open the zone</button>
    </li>`;
  }

  private show(parts: readonly Rings[]): void {
    const first = parts[0]?.[0]?.[0];
    if (!first) return;
    const plane = createPlane(first);
    const box = boxOf(parts.map((rings) => rings.map((ring) => ring.map((p) => plane.toPlane(p)))));
    const sizeM = Math.max(1, box.maxX - box.minX, box.maxY - box.minY);
    const roomPx = SHOWN_SHARE * Math.min(window.innerWidth, window.innerHeight);
    const zoom = Math.floor(2 * zoomOfPixel(first[1], sizeM / roomPx)) / 2;
    this.app.map?.goTo(plane.toLonLat(middleOfBox(box)), Math.min(22, zoom));
  }

  private give(piece: UnassignedPiece): void {
    const { plane } = this.app.session.derived.measured;
    this.app.attempt('Give ground to a neighbour', (yard) => givePiece(yard, piece, plane));
  }

  /** Told to be measured as the looser of what bounds it; how well, the making reckons. */
  private make(piece: UnassignedPiece, kind: ZoneKind): void {
    const { app } = this;
    const { plane } = app.session.derived.measured;
    const { zones, parcel } = app.yard;
    const neighbours = zones.filter((zone) => piece.neighbourIds.includes(zone.id));
    const surveys = [...(parcel ? [parcel.survey] : []), ...neighbours.map((zone) => zone.survey)];
    const survey = surveys.reduce((a, b) => (b.vertexSigmaM > a.vertexSigmaM ? b : a));
    const name = freeName(
      KIND_WORDS[kind],
      zones.map((zone) => zone.name),
    );
    const zone = newZone(app.newId('zone'), kind, [], { name, survey });
    app.attempt(`Add ${KIND_WORDS[kind].toLowerCase()}`, (yard) =>
      zoneFromPiece(yard, piece.parts, zone, plane),
    );
  }
}
