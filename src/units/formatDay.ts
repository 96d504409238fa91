const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
const WORDS = new Intl.DateTimeFormat('en-US', {
  weekday: 'short',
  month: 'short',
  day: 'numeric',
  timeZone: 'UTC',
});

/**
 * A day as every screen, sheet and message words it: "Wed, May 14", with the year "Wed, May 14, 2031".
 * @param date YYYY-MM-DD; what is no day comes back as it is
 * @param withYear where the year is not plain from what stands around it
 */
export function formatDay(date: string, withYear = false): string {
  const [, year = '', month = '', day = ''] = DAY.exec(date) ?? [];
  const at = new Date(0);
  at.setUTCFullYear(Number(year), Number(month) - 1, Number(day));
  if (year === '' || at.getUTCMonth() !== Number(month) - 1 || at.getUTCDate() !== Number(day)) return date;
  const words = WORDS.format(at).replace(/ (\d+)$/, '\u00a0$1');
  return withYear ? `${words}, ${year}` : words;
}
