import { RELATIVE_SLACK } from '../../plan/containers';
import type { Vessel } from '../passTypes';

/**
 * Which containers each fill of a hopper or jar comes out of, both in the order in which they are used up.
 * @param fills and @param containers of one dose (see `vesselsOf`, `containerVessels`), in one unit
 * @returns for each fill the indexes of its containers; empty for tank loads, which are not of product alone
 */
export function packsOfFills(
  fills: readonly Vessel[],
  containers: readonly Vessel[],
): readonly (readonly number[])[] {
  const total = containers.reduce((sum, { taken }) => sum + taken.value, 0);
  const slack = RELATIVE_SLACK * total;
  let from = 0;
  return fills.map(({ kind, taken }) => {
    if (kind !== 'hopper-fill' || containers.some((each) => each.taken.unit !== taken.unit)) return [];
    const to = from + taken.value;
    const own: number[] = [];
    let sum = 0;
    containers.forEach((each, index) => {
      const [first, last] = [sum, sum + each.taken.value];
      if (first < to - slack && last > from + slack) own.push(index);
      sum = last;
    });
    from = to;
    return own;
  });
}
