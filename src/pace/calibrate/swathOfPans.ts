/** What a row of pans across the path tells. */
export interface PanSwath {
  /** null: an outer pan still holds more than half of the middle one, or the middle holds nothing. */
  readonly swathM: number | null;
  /** from the middle to where half is reached, m; null where no pan is so low. */
  readonly leftM: number | null;
  readonly rightM: number | null;
}

/**
 * Effective swath of a broadcast spreader: the distance between the places left and right that get half of what
 * the middle gets (Landschoot, Penn State, 2016: pans 1 ft apart, three passes the same way). Between two pans
 * the amount is taken to fall evenly.
 * @param pans what each holds, from left to right, by weight or by height in a tube, any one measure; an odd
 * number, 3 or more, the middle one under the path
 * @param apartM from the middle of one pan to that of the next, more than 0
 */
export function swathOfPans(pans: readonly number[], apartM: number): PanSwath {
  const middle = (pans.length - 1) / 2;
  const half = (pans[middle] ?? 0) / 2;
  if (!(half > 0)) return { swathM: null, leftM: null, rightM: null };
  const reach = (side: readonly number[]): number | null => {
    const at = side.findIndex((held, i) => i > 0 && held <= half);
    if (at < 0) return null;
    const [inner, outer] = [side[at - 1] ?? 0, side[at] ?? 0];
    return (at - 1 + (inner - half) / (inner - outer)) * apartM;
  };
  const leftM = reach(pans.slice(0, middle + 1).toReversed());
  const rightM = reach(pans.slice(middle));
  return { swathM: leftM === null || rightM === null ? null : leftM + rightM, leftM, rightM };
}
