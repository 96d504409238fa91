import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { checkRing } from '../../measure/crossings';
import { areaOfRingsM2 } from '../../measure/geodesic';
import { ringFromCorners } from '../../measure/shapes';
import { formatArea } from '../../units/format';
import { KIND_WORDS } from '../../words/zoneWords';
import { addZone } from '../../yard/edits';
import type { Position, Ring } from '../../yard/types';
import { zoneFromRing } from '../map-events';
import { AppPart, fieldValue } from '../parts/app-part';
import { addNear, type FarAsk, farQuestion } from '../parts/far-place';
import { readCoordinates } from '../parts/read-coordinates';
import { shared } from '../parts/shared';

type Made = { readonly ok: true; readonly ring: Ring } | { readonly ok: false; readonly message: string };

/** A zone without the pointer, from the coordinates of its corners. */
@customElement('typed-zone-form')
export class TypedZoneForm extends AppPart {
  static override styles = [
    shared,
    css`
      form { display: grid; gap: 0.5rem; }
      p { margin: 0; }
      .fault { color: var(--danger); }
    `,
  ];

  @state() private cornersText = '';
  @state() private outcome: { readonly isFault: boolean; readonly words: string } | null = null;

  @state() private farAsk: FarAsk | null = null;

  protected override render() {
    const kind = KIND_WORDS[this.app.options.kind].toLowerCase();
    return html`
      <form @submit=${this.add}>
        <label>Corners, one a line: latitude, longitude<textarea rows="5" spellcheck="false" .value=${this.cornersText}
          @input=${(event: Event) => {
            this.cornersText = fieldValue(event);
            this.farAsk = null;
          }}></textarea></label>
        ${this.outcome ? html`<p class=${this.outcome.isFault ? 'fault' : ''} role=${this.outcome.isFault ? 'alert' : 'status'}>${this.outcome.words}</p>` : nothing}
        ${farQuestion(this.farAsk, this.app.units, () => {
          this.farAsk = null;
        })}
        <div class="row"><button class="primary">Add as ${kind}</button><button type="button" @click=${this.check}>Check first</button></div>
        <p class="quiet">The kind is the one chosen in the bar of the drawing.</p>
      </form>
    `;
  }

  private make(): Made {
    const corners: Position[] = [];
    for (const [index, line] of this.cornersText.split('\n').entries()) {
      if (line.trim() === '') continue;
      const read = readCoordinates(line);
      if (!read.ok) return { ok: false, message: `Line ${index + 1}: ${read.message}` };
      corners.push(read.position);
    }
    const ring = ringFromCorners(corners);
    if (ring.length < 4) return { ok: false, message: 'Write at least three corners, one a line.' };
    return { ok: true, ring };
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
          words: `Area ${formatArea(areaOfRingsM2([made.ring]), this.app.units)}.`,
        }
      : { isFault: true, words: made.message };
  }

  private add(event: Event): void {
    event.preventDefault();
    const made = this.makeChecked();
    this.check();
    if (!made.ok) return;
    const { app } = this;
    const zone = zoneFromRing(app, app.options.kind, made.ring, 'typed');
    this.farAsk = addNear(
      app.yard,
      made.ring,
      (yard) => addZone(yard, zone),
      (edit) => {
        app.dispatch(`Add ${KIND_WORDS[zone.kind].toLowerCase()}`, edit);
        app.setView({ way: null, selectedZoneIds: [zone.id] });
        app.fitSoon([zone.id]);
      },
    );
  }
}
