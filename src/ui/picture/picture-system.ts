import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { fieldValue } from '../parts/app-part';
import { shared } from '../parts/shared';
import { layByPosition } from './picture-edits';
import { PicturePart, pictureStyles } from './picture-part';

interface Named {
  readonly code: string;
  readonly name: string;
}

/** The file gives coordinates but not in which system: asks for it, and places the picture by it. */
@customElement('picture-system')
export class PictureSystem extends PicturePart {
  static override styles = [
    shared,
    pictureStyles,
    css`
      ul { list-style: none; margin: 0; padding: 0; display: grid; gap: 0.25rem; max-height: 16rem; overflow: auto; }
      li button { width: 100%; text-align: left; padding: 0.25rem 0.6rem; }
    `,
  ];

  @state() private query = '';
  @state() private found: readonly Named[] = [];
  @state() private guess: Named | null = null;
  @state() private fault = '';

  protected override firstUpdated(): void {
    void this.suggest();
  }

  protected override render() {
    const { picture } = this.work;
    const meta = picture && this.work.metaOf(picture.pictureId);
    if (!meta?.unplaced) return nothing;
    const isPlaced = picture?.fit === null;
    return html`<div class="step">
      <p>${isPlaced ? 'Another coordinate system can be chosen:' : meta.unplaced.message}</p>
      <form @submit=${this.take}>
        <label>Coordinate system: EPSG number or words, such as 32614 or Texas North Central
          <input autocomplete="off" .value=${this.query} aria-invalid=${this.fault ? 'true' : 'false'} @input=${(event: Event) => this.search(fieldValue(event))} /></label>
      </form>
      ${this.fault ? html`<p class="fault" role="alert">${this.fault}</p>` : nothing}
      ${
        this.query === '' && this.guess
          ? html`<p class="quiet">The zone of the place the map shows now:</p>${this.renderList([this.guess])}`
          : this.renderList(this.found)
      }
    </div>`;
  }

  private renderList(systems: readonly Named[]) {
    return html`<ul aria-label="Coordinate systems">${systems.map(
      ({ code, name }) =>
        html`<li><button @click=${() => this.place(code)}>${name} <span class="quiet">${code}</span></button></li>`,
    )}</ul>`;
  }

  private async suggest(): Promise<void> {
    const center = this.app.map?.center();
    if (!center) return;
    try {
      const { suggestUtmZone } = await import('../../picture/crs');
      this.guess = suggestUtmZone(center);
    } catch {
      this.guess = null;
    }
  }

  private async search(query: string): Promise<void> {
    this.query = query;
    this.fault = '';
    try {
      const { searchCrs } = await import('../../picture/crs');
      const found = await searchCrs(query);
      if (this.query === query) this.found = found;
    } catch {
      this.fault = 'The list of systems could not be loaded. Check the connection and try again.';
    }
  }

  private take(event: Event): void {
    event.preventDefault();
    void this.place(this.query);
  }

  private async place(spec: string): Promise<void> {
    const { work, app } = this;
    const { picture } = work;
    const unplaced = picture && work.metaOf(picture.pictureId)?.unplaced;
    if (!picture || !unplaced) return;
    this.fault = '';
    try {
      const [{ loadCrs }, { placeInCrs }] = await Promise.all([
        import('../../picture/crs'),
        import('../../picture/placeInCrs'),
      ]);
      const read = await loadCrs(spec);
      const placed = read.ok
        ? placeInCrs(unplaced.toProjected, picture.widthPx, picture.heightPx, read.crs)
        : read;
      if (!placed.ok) {
        this.fault = placed.issue.message;
        return;
      }
      work.edit('Place picture', (each) => layByPosition(each, placed.position));
      const { crsName, note } = placed.position;
      app.note('picture-placed', `Placed by ${crsName}. ${note}`.trim());
    } catch {
      this.fault = 'The list of systems could not be loaded. Check the connection and try again.';
    }
  }
}
