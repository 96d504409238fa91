/** Properties that hold a name, the surest first. */
const NAME_KEYS = ['name', 'title', 'label', 'zone', 'zonename', 'zone_name', 'id', 'no'];
const LONGEST = 120;

/** The name of a feature by its properties, on one line, without control characters; '' when it has none. */
export function nameOfFeature(properties: Readonly<Record<string, unknown>>): string {
  const byKey = new Map(Object.entries(properties).map(([key, value]) => [key.toLowerCase(), value]));
  for (const key of NAME_KEYS) {
    const value = byKey.get(key);
    if (typeof value !== 'string' && typeof value !== 'number') continue;
    const name = String(value)
      .replace(/[\p{Cc}\s]+/gu, ' ')
      .trim();
    if (name !== '') return name.slice(0, LONGEST);
  }
  return '';
}
