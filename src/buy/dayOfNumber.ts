/** The day (YYYY-MM-DD) so many days after 1970-01-01, as `dayNumber` counts them. */
export function dayOfNumber(number: number): string {
  return new Date(number * 86_400_000).toISOString().slice(0, 10);
}
