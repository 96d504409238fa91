/** The leg that is walked after so many metres. @param starts m at the start of each leg, and at the end of the last */
export function legAt(starts: readonly number[], walkedM: number): number {
  let [low, high] = [0, Math.max(0, starts.length - 2)];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= walkedM) low = middle;
    else high = middle - 1;
  }
  return low;
}
