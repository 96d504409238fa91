import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { checkRing } from '../measure/crossings';
import { areaOfRingsM2 } from '../measure/geodesic';
import { closureOfSides, ringFromCorners, ringFromSides } from '../measure/shapes';
import { formatArea, formatLength } from '../units/format';
import { KIND_WORDS } from '../words/zoneWords';
import { addZone } from '../yard/edits';
import type { Position, Ring } from '../yard/types';
import { AppPart, fieldValue } from './app-part';
import { zoneFromRing } from './map-events';
import { readCoordinates } from './read-coordinates';
import { readSides } from './read-sides';
import { shared } from './shared';

type Way = 'corners' | 'sides';
const WAY_WORDS: Readonly<Record<Way, string>> = {
  corners: 'Corners by coordinates',
  sides: 'Sides one after another',
};

/** sides that end this near their start are said to close, m. */
const CLOSED_M = 0.005;

type Made =
  | { readonly ok: true; readonly ring: Ring; readonly note: string }
  | { readonly ok: false; readonly message: string };

/** A zone without the pointer: from corner coordinates, or sides with directions. */
@customElement('typed-zone-form')
export class TypedZoneForm extends AppPart {
  static override styles = [
    shared,
    css`
      form { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-items: start; }
      .whole { grid-column: 1 / -1; margin: 0; }
      .forms { padding-left: 1.1rem; }
      .fault { color: var(--danger); }
    `,
  ];

  @state() private way: Way = 'corners';
  @state() private sidesText = '';
  @state() private cornersText = '';
  @state() private startText = '';
  @state() private outcome: { readonly isFault: boolean; readonly words: string } | null = null;

  protected override render() {
    const kind = KIND_WORDS[this.app.options.kind].toLowerCase();
    return html`
      <form @submit=${this.add}>
        <label class="whole">How<select @change=${(event: Event) => {
          this.way = fieldValue(event) as Way;
          this.outcome = null;
        }}>
          ${(Object.keys(WAY_WORDS) as Way[]).map((way) => html`<option value=${way} .selected=${way === this.way}>${WAY_WORDS[way]}</option>`)}</select></label>
        ${this.renderWay()}
        ${
          this.way === 'corners'
            ? nothing
            : html`<label class="whole">First corner: latitude, longitude (empty: middle of the drawing)
                <input autocomplete="off" .value=${this.startText} @input=${(event: Event) => {
                  this.startText = fieldValue(event);
                }} /></label>`
        }
        ${this.outcome ? html`<p class="whole ${this.outcome.isFault ? 'fault' : ''}" role=${this.outcome.isFault ? 'alert' : 'status'}>${this.outcome.words}</p>` : nothing}
        <div class="row whole"><button class="primary">Add as ${kind}</button><button type="button" @click=${this.check}>Check first</button></div>
        <p class="quiet whole">The kind is the one chosen in the bar of the drawing.</p>
      </form>
    `;
  }

  private renderWay() {
    switch (this.way) {
      case 'sides':
        return html`<label class="whole">Sides, one a line: length, direction<textarea rows="5" spellcheck="false" .value=${this.sidesText}
            placeholder="40 ft, N&#10;12' 6&quot;, right&#10;40 ft, right" @input=${(event: Event) => {
              this.sidesText = fieldValue(event);
            }}></textarea></label>
          <p class="quiet whole">A line such as <b>40 ft, N</b> or <b>40 N</b>: a comma or a space stands between length and direction. A direction may be</p>
          <ul class="quiet whole forms"><li>a letter: N, NE, E</li><li>a bearing in degrees from north: 90</li><li>a quadrant: N 45 E</li><li>a turn: right, left, left 30</li></ul>
          <p class="quiet whole">A length alone turns right by 90°. The last side back to the start is drawn by itself.</p>`;
      case 'corners':
        return html`<label class="whole">Corners, one a line: latitude, longitude<textarea rows="5" spellcheck="false" .value=${this.cornersText}
          @input=${(event: Event) => {
            this.cornersText = fieldValue(event);
          }}></textarea></label>`;
    }
  }

  private start(): Position | string {
    if (this.startText.trim() === '')
      return this.app.map?.center() ?? this.app.session.derived.measured.plane.origin;
    const read = readCoordinates(this.startText);
    return read.ok ? read.position : read.message;
  }

  private make(): Made {
    const fail = (message: string): Made => ({ ok: false, message });
    const start = this.start();
    if (this.way === 'corners') return this.makeFromCorners();
    if (typeof start === 'string') return fail(start);
    const read = readSides(this.sidesText, this.app.units);
    if (!read.ok) return fail(read.message);
    const { gapM } = closureOfSides(read.sides);
    const note =
      gapM > CLOSED_M
        ? ` The side back to the start is ${formatLength(gapM, this.app.units)}.`
        : ' The sides close.';
    return { ok: true, ring: ringFromSides(start, read.sides), note };
  }

  private makeFromCorners(): Made {
    const corners: Position[] = [];
    for (const [index, line] of this.cornersText.split('\n').entries()) {
      if (line.trim() === '') continue;
      const read = readCoordinates(line);
      if (!read.ok) return { ok: false, message: `Line ${index + 1}: ${read.message}` };
      corners.push(read.position);
    }
    const ring = ringFromCorners(corners);
    if (ring.length < 4) return { ok: false, message: 'Write at least three corners, one a line.' };
    return { ok: true, ring, note: '' };
  }

  private makeChecked(): Made {
    const made = this.make();
    if (!made.ok) return made;
    const issue = checkRing(made.ring).find((each) => each.severity === 'error');
    return issue ? { ok: false, message: issue.message } : made;
  }

  private check(): void {
    const made = this.makeChecked();
    this.outcome = made.ok
      ? {
          isFault: false,
          words: `Area ${formatArea(areaOfRingsM2([made.ring]), this.app.units)}.${made.note}`,
        }
      : { isFault: true, words: made.message };
  }

  private add(event: Event): void {
    event.preventDefault();
    const made = this.makeChecked();
    this.check();
    if (!made.ok) return;
    const zone = zoneFromRing(this.app, this.app.options.kind, made.ring, 'typed');
    this.app.dispatch(`Add ${KIND_WORDS[zone.kind].toLowerCase()}`, (yard) => addZone(yard, zone));
    this.app.setView({ selectedZoneIds: [zone.id] });
    this.app.fitSoon([zone.id]);
  }
}
