import { html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { changeSettings } from '../../yard/edits';
import type { Position } from '../../yard/types';
import { AppPart, fieldValue } from '../parts/app-part';
import '../parts/number-field';
import type { NumberChange } from '../parts/number-field';
import { readCoordinates } from '../parts/read-coordinates';
import { shared } from '../parts/shared';
import { pictureStyles } from './picture-part';

/** Gives a local drawing its place on the Earth: all of it moves there, and it is local no more. */
@customElement('local-place-form')
export class LocalPlaceForm extends AppPart {
  static override styles = [shared, pictureStyles];

  @state() private text = '';
  @state() private headingDeg: number | null = 0;
  @state() private fault = '';
  @state() private isLocating = false;

  protected override render() {
    return html`<form class="step" @submit=${this.place}>
      <p><b>Give it a place</b></p>
      <label>Where what is now in the middle of the map lies: latitude, longitude
        <input autocomplete="off" placeholder="40.446, -79.982" .value=${this.text} aria-invalid=${this.fault ? 'true' : 'false'}
          @input=${(event: Event) => {
            this.text = fieldValue(event);
          }} /></label>
      <number-field label="Direction that the drawing’s up points to, from north" suffix="°" .value=${this.headingDeg} .min=${-360} .max=${360}
        @number-change=${(event: CustomEvent<NumberChange>) => {
          this.headingDeg = event.detail.value;
        }}></number-field>
      ${this.fault ? html`<p class="fault" role="alert">${this.fault}</p>` : nothing}
      <div class="row"><button class="primary">Put it there</button>
        <button type="button" ?disabled=${this.isLocating} @click=${this.locate}>${this.isLocating ? 'Looking…' : 'Where I am'}</button></div>
      <p class="quiet">Zones, marks and pictures move together; lengths and areas stay.</p>
    </form>`;
  }

  private locate(): void {
    if (!('geolocation' in navigator)) {
      this.fault = 'This device or browser tells no location.';
      return;
    }
    this.isLocating = true;
    this.fault = '';
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        this.isLocating = false;
        this.text = `${coords.latitude.toFixed(7)}, ${coords.longitude.toFixed(7)}`;
      },
      () => {
        this.isLocating = false;
        this.fault = 'No location was found, or the browser was not allowed to tell it.';
      },
      { enableHighAccuracy: true, timeout: 15_000 },
    );
  }

  private async place(event: Event): Promise<void> {
    event.preventDefault();
    const read = readCoordinates(this.text);
    this.fault = read.ok ? '' : read.message;
    if (!read.ok || this.headingDeg === null) return;
    if (Math.abs(read.position[1]) > 85) {
      this.fault = 'The map reaches to 85 degrees of latitude.';
      return;
    }
    const from: Position = this.app.map?.center() ?? [0, 0];
    const [to, turnDeg] = [read.position, this.headingDeg];
    try {
      const { moveYard } = await import('../../measure/moveYard');
      this.app.dispatch('Give the drawing a place', (yard) =>
        changeSettings(moveYard(yard, from, to, turnDeg), { isLocal: false }),
      );
      this.app.map?.goTo(to);
    } catch {
      this.fault = 'What moves the yard could not be loaded. Check the connection and try again.';
    }
  }
}
