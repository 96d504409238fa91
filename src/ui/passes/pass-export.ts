import { html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { RunOutMark } from '../../cover/passTypes';
import type { PassesExport } from '../../io/writePasses';
import { equipmentOfDose } from '../../plan/equipmentOfDose';
import { standWords } from '../../words/markWords';
import type { Issue } from '../../yard/types';
import { AppPart, isTicked } from '../parts/app-part';
import { issueNotes } from '../parts/issue-notes';
import { saveFile } from '../parts/save-file';
import { shared } from '../parts/shared';
import { doseInHand } from './dose-in-hand';

type Format = 'geojson' | 'gpx';

/** The passes as a file, for other programs and for a receiver carried along. */
@customElement('pass-export')
export class PassExport extends AppPart {
  static override styles = [shared];

  @state() private isWhole = false;
  @state() private outcome = '';
  @state() private issues: readonly Issue[] = [];

  protected override render() {
    const count = this.app.visit?.figures.doses.length ?? 0;
    return html`
      ${
        count > 1
          ? html`<label class="check"><input type="checkbox" .checked=${this.isWhole} @change=${(
              event: Event,
            ) => {
              this.isWhole = isTicked(event);
            }} />Every product of the visit</label>`
          : nothing
      }
      <div class="row">
        <button @click=${() => this.save('geojson')}>Passes as GeoJSON</button>
        <button @click=${() => this.save('gpx')}>Passes as GPX</button>
      </div>
      <p class="quiet" role="status">${this.outcome || 'Lines in walking order; run-out marks as points.'}</p>
      ${issueNotes(this.issues)}`;
  }

  private async save(format: Format): Promise<void> {
    const { coverage, visit, yard, session } = this.app;
    const hand = doseInHand(this.app);
    if (coverage.state !== 'ready' || !visit || !hand) {
      this.outcome = 'The passes are still being laid. Try again in a moment.';
      return;
    }
    const input: PassesExport = {
      yard,
      plane: session.derived.measured.plane,
      visit: visit.figures,
      coverage: coverage.coverage,
      doseId: this.isWhole ? null : hand.dose.id,
      markName: (doseId, mark) => this.nameOf(doseId, mark),
    };
    try {
      const file =
        format === 'gpx'
          ? (await import('../../io/writePassesGpx')).passesGpx(input)
          : (await import('../../io/writePassesGeoJson')).passesGeoJson(input);
      saveFile(file.name, file.mediaType, file.content);
      this.issues = file.issues;
      this.outcome = `Saved as ${file.name}.`;
    } catch {
      this.issues = [];
      this.outcome = 'The file could not be written. Check the connection and try again.';
    }
  }

  private nameOf(doseId: string, mark: RunOutMark): string {
    const figures = this.app.visit?.figures.doses.find((each) => each.dose.id === doseId);
    if (!figures) return '';
    const { equipment } = equipmentOfDose(this.app.yard, figures.dose, figures.product);
    return standWords(mark, mark.left, { product: figures.product, applicator: equipment.applicator });
  }
}
