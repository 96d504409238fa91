import { isLiquid } from '../plan/rate';
import type { DoseFigures } from '../plan/types';
import type { DerivedVisit } from '../session/types';
import { formatTemperature, formatVolume } from '../units/format';
import type { UnitSystem } from '../yard/types';
import { edgeWords } from './edgeWords';
import { amountWords, productName } from './productWords';
import { groundName, UNPLACED_WORDS } from './zoneWords';

/** What is done in a visit, in order, one sentence or two a step. Common practice, no source; the label goes before. */
export function workOrder(visit: DerivedVisit, units: UnitSystem): readonly string[] {
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
    steps.push(...doseSteps(dose, units));
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
  if (rinsed.length > 0) steps.push(`Rinse with plain water toward the turf: ${edgeWords(rinsed)}.`);
  const near = edges.filter((edge) => edge.near).map((edge) => edge.number);
  if (near.length > 0) {
    steps.push(`Sweep or wipe up, no water toward the drain, well or water: ${edgeWords(near)}.`);
  }
  const watered = doses.filter((dose) => dose.product.waterIn).map((dose) => productName(dose.product));
  if (watered.length > 0)
    steps.push(`Water in ${watered.join(', ')}, as much as the label says and no run-off.`);
  steps.push(
    'Clean the tools where the label allows it. Keep people and pets off until the ground is dry. Write down what went out, where and when.',
  );
  return steps;
}

function doseSteps(dose: DoseFigures, units: UnitSystem): readonly string[] {
  const { product, tank } = dose;
  const zones = dose.zones
    .filter((zone) => zone.areaM2 > 0)
    .map(
      (zone) =>
        `${groundName(zone.name)}${zone.isPlaced === false ? ` (${UNPLACED_WORDS})` : ''} ${amountWords(product, zone.amount, units)}`,
    );
  if (zones.length === 0) return [];
  const mix = tank?.full ?? tank?.last;
  const loads = mix
    ? [
        `Fill the tank half with water, add ${productName(product)} (${amountWords(product, mix.product, units)} to ${formatVolume(mix.waterL, units)} of water${
          tank?.full && tank.last
            ? `; last load ${amountWords(product, tank.last.product, units)} to ${formatVolume(tank.last.waterL, units)}`
            : ''
        }), then the rest of the water.`,
      ]
    : [];
  const verb = isLiquid(product) || dose.carrierL !== null ? 'Spray' : 'Spread';
  const stains = product.stainsHardscape ? ' It stains: rinse hardscape at once.' : '';
  return [...loads, `${verb} ${productName(product)}: ${zones.join('; ')}.${stains}`];
}

function heatWords(doses: readonly DoseFigures[], units: UnitSystem): string {
  const limits = doses.flatMap((dose) => dose.product.limits.maxAirTempC ?? []);
  return limits.length === 0
    ? ''
    : ` Not in air warmer than ${formatTemperature(Math.min(...limits), units)}.`;
}
