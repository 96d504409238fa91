/*
 * The marks that a bar is held against, in px: the cap hangs into it from above, the need stands into it from
 * below, so that both are seen where they lie at one place.
 */

/** Path of the cap: a bar on top with a line down to the middle. */
export function capMark(x: number, barTop: number, barHeight: number): string {
  return `M${x} ${barTop - 5}V${barTop + barHeight / 2}M${x - 5} ${barTop - 5}H${x + 5}`;
}

/** The need: a line from the middle down, and the middle of the ring at its foot. */
export function needMark(
  x: number,
  barTop: number,
  barHeight: number,
): { readonly line: string; readonly ringY: number } {
  const foot = barTop + barHeight + 2;
  return { line: `M${x} ${barTop + barHeight / 2}V${foot}`, ringY: foot + 2.5 };
}
