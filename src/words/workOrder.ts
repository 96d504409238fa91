import { equipmentOfDose } from '../plan/equipmentOfDose';
import { isStaining } from '../plan/isStaining';
import { isSprayed } from '../plan/sprayRate';
import type { DoseFigures } from '../plan/types';
import type { DerivedVisit } from '../session/types';
import { formatTemperature, formatVolumeLike } from '../units/format';
import type { Amount, Applicator, Equipment, Product, UnitSystem, Yard } from '../yard/types';
import { edgeWords, formatRinse, rinseTimeWords, sumRinse } from './edgeWords';
import { rainfastWords, waterInWords } from './labelWords';
import { amountRateWords, amountWords, dosedName, productName } from './productWords';
import { groundName, UNPLACED_WORDS } from './zoneWords';

/** How each applicator stands in a sentence. */
const WITH_WORDS: Readonly<Record<Applicator, string>> = {
  'hose-end': 'with the bottle on the hose',
  'tank-sprayer': 'with the sprayer',
  'broadcast-spreader': 'with the broadcast spreader',
  'drop-spreader': 'with the drop spreader',
  'by-hand': 'by hand',
};

/**
 * What is done in a visit, in order, one sentence or two a step. Common practice, no source; the label goes before.
 * @param yard whose equipment the doses go out with
 */
export function workOrder(visit: DerivedVisit, units: UnitSystem, yard: Yard): readonly string[] {
  const { doses } = visit.figures;
  if (doses.length === 0) return [];
  const steps = [
    `Read ${doses.length === 1 ? 'the label' : 'the labels'} once more. Put on what ${doses.length === 1 ? 'it asks' : 'they ask'} for.`,
    `Look at the weather: little wind, a dry leaf, no heavy rain due.${heatWords(doses, units)}`,
    'Walk the zones; check the map against the ground. Keep people and pets away.',
  ];
  if (visit.rinseEdges.some((edge) => !edge.near)) {
    steps.push('Lay out the hose with plain water before the first product goes out.');
  }
  if ([...visit.treated.values()].some((zone) => zone.strips.length > 0)) {
    steps.push('Mark the no-apply strips with flags, as on the map. Put nothing there.');
  }
  doses.forEach((dose, index) => {
    steps.push(...doseSteps(dose, units, equipmentOfDose(yard, dose.dose, dose.product).equipment));
    const next = doses[index + 1];
    if (dose.tank && next) {
      steps.push(
        'Rinse the tank before the next product; put the rinse water on ground just treated, as the label allows.',
      );
    }
  });
  const edges = visit.rinseEdges;
  const swept = edges.filter((edge) => edge.treatment === 'sweep-then-rinse').map((edge) => edge.number);
  if (swept.length > 0) steps.push(`Sweep or blow back onto the turf: ${edgeWords(swept)}.`);
  const rinsed = edges.filter((edge) => !edge.near).map((edge) => edge.number);
  if (rinsed.length > 0) {
    const { water } = sumRinse(edges);
    const takes = water
      ? ` About ${rinseTimeWords(water.seconds)} and ${formatRinse(water.litres, units)} in all.`
      : '';
    const staining = edges.filter((edge) => !edge.near && edge.stains).map((edge) => edge.number);
    const first =
      staining.length > 0 && staining.length < rinsed.length
        ? ` Those that stain first: ${edgeWords(staining)}.`
        : '';
    steps.push(`Rinse with plain water toward the turf: ${edgeWords(rinsed)}.${first}${takes}`);
  }
  const low = edges.filter((edge) => edge.downhill && !edge.near).map((edge) => edge.number);
  if (low.length > 0) {
    steps.push(`On the downhill side little water at a time, so that none runs off: ${edgeWords(low)}.`);
  }
  const near = edges.filter((edge) => edge.near).map((edge) => edge.number);
  if (near.length > 0) {
    steps.push(`Sweep or wipe up, no water toward the drain, well or water: ${edgeWords(near)}.`);
  }
  steps.push(...afterSteps(doses, units));
  steps.push(
    'Clean the tools where the label allows it. Keep people and pets off until the ground is dry. Write down what went out, where and when.',
  );
  return steps;
}

function doseSteps(dose: DoseFigures, units: UnitSystem, equipment: Equipment): readonly string[] {
  const { product, tank } = dose;
  const zones = dose.zones
    .filter((zone) => zone.areaM2 > 0)
    .map(
      (zone) =>
        `${groundName(zone.name)}${zone.isPlaced === false ? ` (${UNPLACED_WORDS})` : ''} ${amountWords(product, zone.amount, units)}`,
    );
  if (zones.length === 0) return [];
  const mix = tank?.full ?? tank?.last;
  const water = (litres: number) => formatVolumeLike(litres, dose.carrierL ?? litres, units);
  const loads = mix
    ? [
        `Fill the tank half with water, add ${productName(product)} (${amountWords(product, mix.product, units)} to ${water(mix.waterL)} of water${
          tank?.full && tank.last
            ? `; last load ${amountWords(product, tank.last.product, units)} to ${water(tank.last.waterL)}`
            : ''
        }), then the rest of the water.`,
      ]
    : [];
  const verb = isSprayed(product) || dose.carrierL !== null ? 'Spray' : 'Spread';
  const stains = isStaining(product) ? ' It stains: rinse hardscape at once.' : '';
  const coats = dose.dose.passes.coats === 2 ? ` ${coatsWords(dose, equipment, units)}` : '';
  const guard = guardWords(dose, equipment);
  return [
    ...loads,
    `${verb} ${dosedName(product)}${byWords(product)}: ${zones.join('; ')}.${coats}${guard === null ? '' : ` ${guard}.`}${stains}`,
  ];
}

/** "Edge guard down along the edges", where the dose's edges are told with the guard; null elsewhere. */
export function guardWords(
  { dose }: Pick<DoseFigures, 'dose'>,
  { hasEdgeGuard }: Pick<Equipment, 'hasEdgeGuard'>,
): string | null {
  return dose.passes.isGuarded && hasEdgeGuard ? 'Edge guard down along the edges' : null;
}

/** "Two coats at half the rate, the second across the first: 7.5 kg in each, the spreader set for 1 kg per 100 m²." */
export function coatsWords(
  { product, amount, rate }: Pick<DoseFigures, 'product' | 'amount' | 'rate'>,
  { applicator }: Pick<Equipment, 'applicator'>,
  units: UnitSystem,
): string {
  const half = (whole: Amount): Amount => ({ ...whole, value: whole.value / 2 });
  const each = amountRateWords(product, half(rate.perM2), units);
  const isSpreader = applicator === 'broadcast-spreader' || applicator === 'drop-spreader';
  return `Two coats at half the rate, the second across the first: ${amountWords(product, half(amount), units)} in each, ${isSpreader ? 'the spreader set for ' : ''}${each}.`;
}

/** Watering in and keeping rain off, each product once, by what its label says. */
function afterSteps(doses: readonly DoseFigures[], units: UnitSystem): readonly string[] {
  const steps = doses.flatMap(({ product }) => {
    const name = dosedName(product);
    if (product.waterIn && product.waterInDepthM)
      return `${name}: ${waterInWords(product, units)}, no run-off.`;
    if (product.waterIn) return `Water in ${name}, as much as the label says and no run-off.`;
    const dry = rainfastWords(product);
    return dry === '' ? [] : `${name}: ${dry}, and no watering.`;
  });
  return [...new Set(steps)];
}

/** " with the broadcast spreader"; nothing where the label does not say, or the name of the use says it. */
function byWords({ applicator, otherUses }: Product): string {
  return applicator === null || otherUses.length > 0 ? '' : ` ${WITH_WORDS[applicator]}`;
}

function heatWords(doses: readonly DoseFigures[], units: UnitSystem): string {
  const limits = doses.flatMap((dose) => dose.product.limits.maxAirTempC ?? []);
  return limits.length === 0
    ? ''
    : ` Not in air warmer than ${formatTemperature(Math.min(...limits), units)}.`;
}
