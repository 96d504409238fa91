import { html, type TemplateResult } from 'lit';
import type { UnitSystem } from '../../yard/types';
import './walk-limits';
import type { WalkSettings } from './walk-limits';
import type { WalkRecorder } from './walk-recorder';

/** What the screens of a walk share. */

/** The fold with the limits by which positions are judged; empty without a walk. */
export function limitsFold(
  { draft }: WalkRecorder,
  units: UnitSystem,
  change: (settings: WalkSettings) => void,
): TemplateResult | null {
  if (!draft) return null;
  const { limits, toleranceM, standS, mode } = draft;
  return html`<details class="fold"><summary>What counts as a good position</summary>
    <walk-limits .system=${units} .settings=${{ limits, toleranceM, standS }} .mode=${mode}
      @walk-settings=${(event: CustomEvent<WalkSettings>) => change(event.detail)}></walk-limits></details>`;
}

/** Throwing a walk away asks once. @param isSure it has been asked */
export function dropButtons(
  recorder: WalkRecorder,
  isSure: boolean,
  setSure: (isSure: boolean) => void,
): TemplateResult {
  return isSure
    ? html`<button class="danger" @click=${() => void recorder.drop()}>Yes, throw this walk away</button><button @click=${() => setSure(false)}>Keep it</button>`
    : html`<button class="plain" @click=${() => setSure(true)}>Throw this walk away…</button>`;
}
