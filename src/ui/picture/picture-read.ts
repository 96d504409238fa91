import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { OwnPicture } from '../../survey/picture/ownPicture';
import { shared } from '../parts/shared';
import { PicturePart, pictureStyles } from './picture-part';
import { pictureReadingOf } from './picture-reading';

const ACCEPT = 'image/*,.tif,.tiff,.tfw,.tfwx,.tifw,.pgw,.pngw,.jgw,.jpgw,.wpw,.webpw,.wld,.prj';

/** Chooses picture files, or takes in those dropped on it. */
@customElement('picture-read')
export class PictureRead extends PicturePart {
  static override styles = [
    shared,
    pictureStyles,
    css`
      .drop { border: 2px dashed var(--line-strong); padding: 0.75rem; display: grid; gap: 0.5rem; }
      .drop.over { background: var(--sheet-sunk); border-style: solid; }
      .drop p { margin: 0; }
      input[type='file'] { padding: 0; }
      ::file-selector-button { min-height: 42px; margin-right: 0.75rem; padding: 0 0.75rem; font: inherit; color: var(--ink); background: var(--sheet-sunk); border: 0; border-right: 1px solid var(--line-strong); }
    `,
  ];

  /** a picture whose file is missing: what is chosen takes its place. */
  @property({ attribute: false }) lost: OwnPicture | null = null;
  /** without the words about what can be read. */
  @property({ type: Boolean }) brief = false;
  @state() private isOver = false;

  private get reading() {
    return pictureReadingOf(this.app);
  }

  protected override render() {
    // one file after the other; the form shows how far that one is
    return this.reading.state ? nothing : this.renderChoice();
  }

  private renderChoice() {
    return html`<div class="drop ${this.isOver ? 'over' : ''}" @dragover=${this.onDrag} @dragleave=${() => {
      this.isOver = false;
    }} @drop=${this.onDrop}>
      <label>${this.lost ? 'Its file, with the files beside it' : 'Picture from this device'}
        <input type="file" multiple accept=${ACCEPT} @change=${this.onChoose} /></label>
      ${
        this.brief || this.lost
          ? nothing
          : html`<p class="quiet">A drone photo, a screenshot or a scan: PNG, JPEG, WebP, TIFF or GeoTIFF. Choose its world file
              (.tfw, .pgw, .jgw) and .prj file along with it. Files can also be dropped here. The picture stays in this browser.</p>`
      }
    </div>`;
  }

  private onDrag(event: DragEvent): void {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    this.isOver = true;
  }

  private onDrop(event: DragEvent): void {
    const files = [...(event.dataTransfer?.files ?? [])];
    this.isOver = false;
    if (files.length === 0) return;
    event.preventDefault();
    // not for the page, which would sort out what was dropped
    event.stopPropagation();
    void this.reading.read(files, this.lost);
  }

  private onChoose(event: Event): void {
    const input = event.target as HTMLInputElement;
    const files = [...(input.files ?? [])];
    input.value = '';
    void this.reading.read(files, this.lost);
  }
}
