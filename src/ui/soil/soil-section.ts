import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { checkSoilTest } from '../../soil/checkSoilTest';
import { groundOfNewTest } from '../../soil/groundOfNewTest';
import { newSoilTest, USUAL_DEPTH_M } from '../../soil/newSoilTest';
import { phosphorusGate } from '../../soil/phosphorusGate';
import { depthShown } from '../../soil/sampleDepth';
import { isTestOld, testOfZone, zonesWithoutTest } from '../../soil/testOfZone';
import { formatDay } from '../../units/formatDay';
import { gateWords, soilTestName } from '../../words/soilWords';
import { freeName, zoneName } from '../../words/zoneWords';
import { chosenZones } from '../../yard/choose';
import { addEntry, removeEntry, replaceEntry } from '../../yard/edits';
import type { SoilTest, Zone } from '../../yard/types';
import { AppPart } from '../parts/app-part';
import { entryList } from '../parts/entry-list';
import { issueNotes } from '../parts/issue-notes';
import { shared } from '../parts/shared';
import './override-list';
import './soil-amendments';
import type { SoilChange } from './soil-change';
import './soil-form';
import './soil-scale';
import { undoStep } from '../parts/undo-step';

/** Soil tests of the yard: what each says, the ground without one, and the refusals set aside. */
@customElement('soil-section')
export class SoilSection extends AppPart {
  static override styles = [
    shared,
    entryList,
    css`
      :host { display: block; }
      .acts { margin: 0.25rem 0 0.75rem; }
    `,
  ];

  @state() private openId: string | null = null;
  /** a test was just added: its name is to be typed first. */
  private isNew = false;

  protected override updated(): void {
    const form = this.isNew ? this.renderRoot.querySelector('soil-form') : null;
    if (!form) return;
    this.isNew = false;
    form.focusName();
  }

  protected override render() {
    const { app } = this;
    const { soilTests } = app.yard;
    const without = zonesWithoutTest(app.yard);
    return html`
      <h3>Soil tests</h3>
      <p class="quiet">Typed as the laboratory reports it. It says where phosphorus may go; nitrogen goes by the grass.</p>
      ${soilTests.length === 0 ? nothing : html`<ul>${soilTests.map((test) => this.renderTest(test))}</ul>`}
      ${
        without.length === 0
          ? nothing
          : html`<p class="note"><b>Without a soil test: </b>${without.map(zoneName).join(', ')}. Have the soil tested before phosphorus goes on; until then such a dose stands as a fallback only.</p>`
      }
      <button class=${soilTests.length === 0 ? 'primary' : ''} @click=${this.add}>Add a soil test</button>
      <override-list .app=${app} .rev=${this.rev}></override-list>
    `;
  }

  private renderTest(test: SoilTest) {
    const { app } = this;
    const isOpen = this.openId === test.id;
    const zones = chosenZones(app.yard, test.zones);
    // a zone may go by a newer test
    const own = zones.filter((zone) => testOfZone(app.yard, zone)?.id === test.id);
    const [first] = own;
    const isOld = isTestOld(test, app.today());
    return html`
      <li class=${isOpen ? 'chosen' : ''}>
        <button class="open" aria-expanded=${isOpen ? 'true' : 'false'} @click=${() => this.open(isOpen ? null : test.id)}>
          <b>${soilTestName(test)}</b><span>${test.date === null ? 'no day yet' : formatDay(test.date, true)}</span>
          <span class="words">${zones.length === 0 ? 'No ground chosen yet' : zones.map(zoneName).join(', ')}${
            zones.length > 0 && own.length === 0 ? '; a newer test counts for all of it from its day on' : ''
          }${isOld ? '; more than three years old' : ''}</span>
        </button>
        ${
          isOpen
            ? html`
              <div class="row acts">
                <button @click=${() => this.copy(test)}>Copy</button>
                <button class="danger" @click=${() => this.removeTest(test)}>Remove</button>
                <button @click=${() => this.open(null)}>Close</button>
              </div>
              ${isOld ? html`<p class="note warning"><b>Check: </b>This test is more than three years old; have the soil tested anew. Some places count a test for three years only.</p>` : nothing}
              ${issueNotes(checkSoilTest(test, app.today()))}
              <soil-scale .app=${app} .rev=${this.rev} .test=${test}></soil-scale>
              ${first ? this.renderGate(first) : nothing}
              <soil-amendments .app=${app} .rev=${this.rev} .test=${test}></soil-amendments>
              <soil-form .app=${app} .rev=${this.rev} .test=${test}
                @soil-change=${(event: CustomEvent<SoilChange>) => this.change(test, event.detail)}></soil-form>`
            : nothing
        }
      </li>
    `;
  }

  private renderGate(zone: Zone) {
    const gate = phosphorusGate(this.app.yard, zone);
    return html`<p class=${`note ${gate.verdict === 'allowed' && gate.disagreement === null ? '' : 'warning'}`}>${gateWords(gate)}</p>`;
  }

  private open(id: string | null): void {
    this.openId = id;
  }

  private add(): void {
    const { app } = this;
    const taken = app.yard.soilTests.map((test) => test.name);
    const test = newSoilTest(app.newId('soil'), {
      name: freeName('Soil test', taken),
      date: app.today(),
      zones: groundOfNewTest(app.yard),
      depthM: depthShown(USUAL_DEPTH_M, app.units),
    });
    app.dispatch('Add soil test', (yard) => addEntry(yard, 'soilTests', test));
    this.open(test.id);
    this.isNew = true;
  }

  private copy(test: SoilTest): void {
    const { app } = this;
    const taken = app.yard.soilTests.map((one) => one.name);
    // the same ground sampled again, or other ground of the same report: the figures are kept to be typed over
    const copy = {
      ...test,
      id: app.newId('soil'),
      name: freeName(`${soilTestName(test)}, copy`, taken),
    };
    app.dispatch('Copy soil test', (yard) => addEntry(yard, 'soilTests', copy));
    this.open(copy.id);
    this.isNew = true;
  }

  private removeTest(test: SoilTest): void {
    const { app } = this;
    app.dispatch('Remove soil test', (yard) => removeEntry(yard, 'soilTests', test.id));
    this.open(null);
    app.note('soil-test-removed', `“${soilTestName(test)}” is removed.`, undoStep(app));
  }

  private change({ id }: SoilTest, { field, change }: SoilChange): void {
    this.app.dispatch(
      'Change soil test',
      (yard) => {
        const now = yard.soilTests.find((test) => test.id === id);
        return now ? replaceEntry(yard, 'soilTests', { ...now, ...change }) : yard;
      },
      `soil ${id} ${field}`,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'soil-section': SoilSection;
  }
}
