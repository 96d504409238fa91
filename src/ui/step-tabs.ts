import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { STEPS, type Step } from './app';
import { AppPart } from './parts/app-part';
import { shared } from './parts/shared';

export const STEP_WORDS: Readonly<Record<Step, string>> = {
  measure: 'Measure',
  need: 'Need',
  shelf: 'Shelf',
  season: 'Season',
  visit: 'Visit',
  passes: 'Passes',
  buy: 'Buy',
  sheet: 'Sheet',
  yards: 'Yards',
};

/** What a finger can still scroll by before the end counts as reached, px. */
const END_PX = 2;

/**
 * The steps of the job as tabs in two rows over the panel; on a phone one row under the thumb that
 * scrolls sideways: the chosen tab is brought into view, and an edge beyond which there is more fades.
 */
@customElement('step-tabs')
export class StepTabs extends AppPart {
  static override styles = [
    shared,
    css`
      :host { display: block; }
      /* five over four, both rows full */
      ol { display: grid; grid-template-columns: repeat(20, minmax(0, 1fr)); margin: 0; padding: 0; list-style: none; }
      li { display: grid; grid-column: span 4; }
      li:nth-child(n + 6) { grid-column: span 5; }
      button { padding: 0.25rem 0.1rem; border: 0; border-radius: 0; border-right: 1px solid var(--line); background: var(--sheet-sunk); display: flex; gap: 0.3rem; line-height: 1.15; align-items: baseline; align-content: center; justify-content: center; flex-wrap: wrap; }
      li:is(:nth-child(5), :last-child) button { border-right: 0; }
      li:nth-child(n + 6) button { border-top: 1px solid var(--line); }
      .place { font-size: 0.75rem; color: var(--ink-soft); }
      button[aria-current='page'] { background: var(--sheet); font-weight: 650; box-shadow: inset 0 4px 0 var(--accent); }
      button:focus-visible { outline-offset: -3px; }
      @media (max-width: 820px) {
        /* five tabs and a half: the cut one tells that there are more */
        ol { display: flex; overflow: auto hidden; overscroll-behavior-x: contain; scrollbar-width: none; }
        ol::-webkit-scrollbar { display: none; }
        li { flex: 1 0 max(4rem, 100% / 5.5); }
        button { min-height: 3.5rem; flex-direction: column; gap: 0; align-items: center; }
        li:nth-child(n) button { border-top: 0; border-right: 1px solid var(--line); }
        nav { position: relative; }
        nav::before, nav::after { content: ''; position: absolute; z-index: 1; inset: 0 auto 0 0; width: 1.5rem; pointer-events: none; opacity: 0; background: linear-gradient(to right, var(--sheet-sunk), transparent); }
        nav::after { inset: 0 0 0 auto; background: linear-gradient(to left, var(--sheet-sunk), transparent); }
        nav.more-left::before, nav.more-right::after { opacity: 1; }
      }
    `,
  ];

  @state() private moreLeft = false;
  @state() private moreRight = false;
  private shownStep: Step | null = null;
  private readonly sizes = new ResizeObserver(() => {
    this.bringIntoView();
    this.readEnds();
  });

  protected override firstUpdated(): void {
    if (this.row) this.sizes.observe(this.row);
  }

  override disconnectedCallback(): void {
    this.sizes.disconnect();
    super.disconnectedCallback();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.row) this.sizes.observe(this.row);
  }

  protected override updated(): void {
    const { step } = this.app.view;
    if (step === this.shownStep) return;
    this.shownStep = step;
    this.bringIntoView();
  }

  protected override render() {
    const ends = { 'more-left': this.moreLeft, 'more-right': this.moreRight };
    return html`
      <nav aria-label="Steps of the job" class=${classMap(ends)}>
        <ol @scroll=${this.readEnds}>
          ${STEPS.map(
            (step, index) => html`<li>
              <button aria-current=${this.app.view.step === step ? 'page' : 'false'}
                @click=${() => this.choose(step)}>
                <span class="place" aria-hidden="true">${index + 1}</span><span>${STEP_WORDS[step]}</span>
              </button>
            </li>`,
          )}
        </ol>
      </nav>
    `;
  }

  private get row(): HTMLElement | null {
    return this.renderRoot?.querySelector('ol') ?? null;
  }

  /** Puts the chosen tab in the middle of a row that scrolls; the page itself stays where it is. */
  private bringIntoView(): void {
    const tab = this.renderRoot.querySelector<HTMLElement>("button[aria-current='page']");
    const { row } = this;
    if (!row || !tab || row.scrollWidth <= row.clientWidth) return;
    const offset = tab.getBoundingClientRect().left - row.getBoundingClientRect().left;
    row.scrollLeft += offset - (row.clientWidth - tab.clientWidth) / 2;
  }

  private readEnds(): void {
    const { row } = this;
    if (!row) return;
    this.moreLeft = row.scrollLeft > END_PX;
    this.moreRight = row.scrollLeft + row.clientWidth < row.scrollWidth - END_PX;
  }

  private choose(step: Step): void {
    this.app.setView({ step });
    this.dispatchEvent(new CustomEvent('step-chosen', { bubbles: true, composed: true }));
  }
}
