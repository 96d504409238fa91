import { expect, it } from 'vitest';
import type { DosePace } from '../../pace/types';
import type { DoseFigures } from '../../plan/types';
import { newDose, newEquipment } from '../../yard/defaults';
import { paceLinesOf } from './pace-lines';

it('says of ground without a place that the walk leaves it out', () => {
  const pace = { speedMPerS: 1, source: 'measured', stepsPerM: null, productPerS: null, issues: [] };
  const zones = [
    { zoneId: 'a', name: 'Back lawn', areaM2: 40, isPlaced: true },
    { zoneId: 'b', name: 'Verge', areaM2: 20, isPlaced: false },
  ];
  const figures = { zones, areaM2: 60, dose: newDose('d', 'p') } as unknown as DoseFigures;
  const lines = paceLinesOf(pace as unknown as DosePace, figures, newEquipment('e', 'hose-end'), 'metric');
  const labels = lines.map(({ label }) => label);
  expect(labels).toContain('Back lawn');
  expect(labels).toContain('Verge (no place on the map: not in the walk)');
});
