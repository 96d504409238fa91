import { deriveYard } from '../../session/derive';
import type { Derived } from '../../session/types';
import { newDose, newVisit } from '../../yard/defaults';
import type { ZoneChoice } from '../../yard/types';

/**
 * The ground a choice would treat, net of what other zones take and of the strips left untreated, m²: that of
 * a visit made for the question alone.
 * @param derived figures of the yard; zones that are measured already are taken over
 */
export function groundOfChoice(derived: Derived, zones: ZoneChoice): number {
  const visit = newVisit('compared', { zones, doses: [newDose('compared', '')] });
  const visited = deriveYard({ ...derived.yard, visits: [visit] }, derived).visit(visit.id);
  return [...(visited?.asked.values() ?? [])].reduce((sum, zone) => sum + zone.areaM2, 0);
}
