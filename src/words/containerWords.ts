import type { ContainerCount } from '../plan/types';
import { formatPercent } from '../units/format';
import type { Product, UnitSystem } from '../yard/types';
import { amountWords } from './productWords';

/** How full the last opened pack stays: "the last one stays 44 % full", or that all are used up. */
export function lastWords(count: ContainerCount): string {
  if (count.open === 0) return 'nothing to open';
  // less than half a percent left is an empty pack to anybody who pours
  if (count.lastLeft < 0.005) return count.open === 1 ? 'used up' : 'the last one is used up';
  const full = formatPercent(count.lastLeft);
  return count.open === 1 ? `it stays ${full} full` : `the last one stays ${full} full`;
}

/** "2, 3 if the ground is 1.4 % larger", or null when the area's error does not change the count. */
export function changeWords(count: ContainerCount): string | null {
  const at = count.changesAt;
  if (at === null) return null;
  const next = at >= 0 ? count.open + 1 : count.open - 1;
  // a count that stands right on its edge
  if (Math.abs(at) < 0.0005)
    return `${count.open}, ${next} if the ground is even a little ${at >= 0 ? 'larger' : 'smaller'}`;
  return `${count.open}, ${next} if the ground is ${formatPercent(Math.abs(at))} ${at >= 0 ? 'larger' : 'smaller'}`;
}

/** "2 packs of 32 fl oz". */
export function countWords(product: Product, count: ContainerCount, units: UnitSystem): string {
  return `${count.open === 1 ? 'pack' : 'packs'} of ${amountWords(product, count.packContent, units)}`;
}
