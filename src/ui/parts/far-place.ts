import { html, nothing, type TemplateResult } from 'lit';
import { bringYard, type FarPlace, findFarPlace } from '../../measure/farPlace';
import { createPlane } from '../../measure/plane';
import type { LocalPlane } from '../../measure/types';
import { formatNumber } from '../../units/format';
import type { Position, UnitSystem, Yard } from '../../yard/types';

const M_PER_MILE = 1609.344;

/** Adds the new ground to the yard. @param plane laid on the new ground */
export type AddGround = (yard: Yard, plane: LocalPlane) => Yard;

/** Ground that waits for the person's word, since it lies far from the rest of the yard. */
export interface FarAsk {
  readonly far: FarPlace;
  /** carries out the adding. @param edit one step for undo */
  run(edit: (yard: Yard) => Yard): void;
  readonly add: AddGround;
}

/**
 * Adds new ground at once when it lies near the yard, else asks first.
 * @returns what to ask, for `farQuestion`; null when it was added
 */
export function addNear(
  yard: Yard,
  corners: readonly Position[],
  add: AddGround,
  run: FarAsk['run'],
): FarAsk | null {
  const far = findFarPlace(yard, corners);
  if (far) return { far, run, add };
  run((now) => add(now, createPlane(corners[0] ?? [0, 0])));
  return null;
}

/** The question with its two answers; nothing while there is none. @param done clears the question; called before it is carried out */
export function farQuestion(
  ask: FarAsk | null,
  units: UnitSystem,
  done: () => void,
): TemplateResult | typeof nothing {
  if (!ask) return nothing;
  const { far, run, add } = ask;
  const answer = (edit: (yard: Yard) => Yard) => () => {
    done();
    run((yard) => add(edit(yard), createPlane(far.to)));
  };
  const [mine, them] =
    far.has === 'zones' ? ['your zones', 'my zones'] : ['the outline of the property', 'the outline'];
  return html`<div class="note warning" role="alert">
      <p>That place is ${farWords(far.distanceM, units)} from ${mine}. Nothing is added yet.</p>
      <div class="row">
        <button type="button" class="primary" @click=${answer((yard) => bringYard(yard, far))}>Bring ${them} there</button>
        <button type="button" @click=${answer((yard) => yard)}>Put it there all the same</button>
      </div>
    </div>`;
}

function farWords(lengthM: number, units: UnitSystem): string {
  return units === 'us'
    ? `${formatNumber(lengthM / M_PER_MILE, 2)}\u00a0miles`
    : `${formatNumber(lengthM / 1000, 2)}\u00a0km`;
}
