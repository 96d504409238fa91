import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { AppPart, fieldValue } from '../parts/app-part';
import '../picture/local-place-form';
import { readCoordinates } from '../parts/read-coordinates';
import { shared } from '../parts/shared';

/** The device's place, typed coordinates, or the whole yard. */
@customElement('place-finder')
export class PlaceFinder extends AppPart {
  static override styles = [
    shared,
    css`
      form { display: grid; grid-template-columns: 1fr auto; gap: 0.35rem; align-items: end; margin-bottom: 0.5rem; }
      .fault { color: var(--danger); }
    `,
  ];

  @state() private text = '';
  @state() private fault = '';
  @state() private isLocating = false;

  protected override render() {
    if (this.app.yard.settings.isLocal) return this.renderLocal();
    return html`
      <form @submit=${this.find}>
        <label>Latitude and longitude
          <input .value=${this.text} autocomplete="off" aria-invalid=${this.fault ? 'true' : 'false'} aria-describedby="help"
            placeholder="40.446, -79.982" @input=${(event: Event) => {
              this.text = fieldValue(event);
            }} /></label>
        <button>Go there</button>
      </form>
      <p id="help" class=${this.fault ? 'fault' : 'quiet'} role=${this.fault ? 'alert' : nothing}>
        ${this.fault || 'Degrees, or degrees with minutes and seconds: 40°26\'46"N 79°58\'56"W.'}</p>
      <div class="row">
        <button ?disabled=${this.isLocating} @click=${this.locate}>${this.isLocating ? 'Looking…' : 'Where I am'}</button>
        <button @click=${() => this.app.map?.fit()}>The whole yard</button>
      </div>
      <p class="quiet">“Where I am” asks your device only; nothing is sent away.</p>
    `;
  }

  /** A drawing without a place: coordinates would mean nothing in it. */
  private renderLocal() {
    return html`
      <p>This yard is a local drawing: it has no place on the Earth yet, so coordinates and the device’s location have no meaning in it.</p>
      <p><button @click=${() => this.app.map?.fit()}>The whole yard</button></p>
      <local-place-form .app=${this.app} .rev=${this.rev}></local-place-form>`;
  }

  private find(event: Event): void {
    event.preventDefault();
    const read = readCoordinates(this.text);
    this.fault = read.ok ? '' : read.message;
    if (read.ok) this.app.map?.goTo(read.position, 20);
  }

  private async locate(): Promise<void> {
    this.isLocating = true;
    const issue = await this.app.map?.locate();
    this.isLocating = false;
    if (issue) this.app.tell(issue);
  }
}
