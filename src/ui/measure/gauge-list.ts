import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { bearingDeg, distanceM, innerAngleDeg, lengthOfLineM } from '../../measure/geodesic';
import { formatLength } from '../../units/format';
import type { Position, UnitSystem } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { shared } from '../parts/shared';

/** One line of words for each side of a measured line, and their sum. */
export function gaugeLines(points: readonly Position[], units: UnitSystem): string[] {
  const lines = points.slice(1).map((to, i) => {
    const from = points[i] ?? to;
    const before = points[i - 1];
    const angle = before ? `, angle ${innerAngleDeg(before, from, to).toFixed(1)}°` : '';
    return `Side ${i + 1}: ${formatLength(distanceM(from, to), units)}, bearing ${bearingDeg(from, to).toFixed(1)}°${angle}`;
  });
  return lines.length > 1 ? [...lines, `In all: ${formatLength(lengthOfLineM(points), units)}`] : lines;
}

/** Sides of the line being measured, to be read and copied. */
@customElement('gauge-list')
export class GaugeList extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      .box { display: flex; gap: 0.5rem; align-items: start; justify-content: space-between; }
      ol { margin: 0; padding: 0; list-style: none; max-height: 6.2rem; overflow: auto; font-size: var(--text-small); user-select: text; flex: 1; }
      li:last-child { font-weight: 650; }
    `,
  ];

  protected override render() {
    const lines = gaugeLines(this.app.live?.points ?? [], this.app.units);
    if (lines.length === 0) return nothing;
    return html`<div class="box">
      <ol tabindex="0" aria-label="Measured sides">${lines.map((line) => html`<li>${line}</li>`)}</ol>
      <button @click=${() => this.copy(lines)}>Copy</button>
    </div>`;
  }

  private async copy(lines: readonly string[]): Promise<void> {
    try {
      // plain spaces: the text goes to other programs
      await navigator.clipboard.writeText(lines.join('\n').replaceAll('\u00a0', ' '));
      this.app.note('copied', 'The measured sides are copied as text.');
    } catch {
      const range = document.createRange();
      range.selectNodeContents(this.renderRoot.querySelector('ol') as Node);
      getSelection()?.removeAllRanges();
      getSelection()?.addRange(range);
      this.app.note(
        'not-copied',
        'The browser does not let this page copy. The lines are selected: copy them by hand.',
      );
    }
  }
}
