import { phosphorusGate } from '../../soil/phosphorusGate';
import { chosenZones } from '../../yard/choose';
import type { Yard, ZoneChoice } from '../../yard/types';
import { zoneNames } from '../../yard/zoneNames';

/**
 * What the soil tests of chosen ground say against a product that carries phosphorus.
 * @returns one sentence; null where every zone's test allows it
 */
export function phosphorusWords(
  yard: Yard,
  choice: ZoneChoice,
): { isRefused: boolean; words: string } | null {
  const gates = chosenZones(yard, choice).map((zone) => ({ zone, ...phosphorusGate(yard, zone) }));
  const refused = gates.filter((gate) => gate.verdict === 'refused');
  const [first] = refused;
  if (first) {
    const names = zoneNames(
      yard,
      refused.map(({ zone }) => zone.id),
    );
    return { isRefused: true, words: `The soil test refuses its phosphorus on ${names}: ${first.reason}.` };
  }
  return gates.some((gate) => gate.verdict === 'no-test')
    ? { isRefused: false, words: 'It carries phosphorus, and not all of the ground has a soil test for it.' }
    : null;
}
