import { chosenZones, zoneClass } from '../../yard/choose';
import { type Yard, ZONE_CLASSES, type ZoneChoice, type ZoneClass } from '../../yard/types';

/** The choice with a whole class in or out; single choices of its zones are forgotten. */
export function chooseClass(yard: Yard, choice: ZoneChoice, wanted: ZoneClass, isIn: boolean): ZoneChoice {
  const own = new Set(yard.zones.filter((zone) => zoneClass(zone) === wanted).map((zone) => zone.id));
  const others = choice.classes.filter((one) => one !== wanted);
  return {
    classes: isIn ? [...others, wanted] : others,
    include: choice.include.filter((id) => !own.has(id)),
    exclude: choice.exclude.filter((id) => !own.has(id)),
  };
}

/** The choice of just these zones: a class where they are all of it, else one by one. */
export function choiceOfZones(yard: Yard, zoneIds: readonly string[]): ZoneChoice {
  const none: ZoneChoice = { classes: [], include: [], exclude: [] };
  const byZone = yard.zones.reduce(
    (choice, { id }) => (zoneIds.includes(id) ? chooseZone(yard, choice, id, true) : choice),
    none,
  );
  return ZONE_CLASSES.reduce((choice, one) => {
    const own = yard.zones.filter((zone) => zoneClass(zone) === one);
    const isWhole = own.length > 0 && own.every((zone) => zoneIds.includes(zone.id));
    return isWhole ? chooseClass(yard, choice, one, true) : choice;
  }, byZone);
}

/** The choice with one zone in or out. */
export function chooseZone(yard: Yard, choice: ZoneChoice, zoneId: string, isIn: boolean): ZoneChoice {
  const include = choice.include.filter((id) => id !== zoneId);
  const exclude = choice.exclude.filter((id) => id !== zoneId);
  const bare = { classes: choice.classes, include, exclude };
  const isByClass = chosenZones(yard, bare).some((zone) => zone.id === zoneId);
  if (isIn === isByClass) return bare;
  return isIn ? { ...bare, include: [...include, zoneId] } : { ...bare, exclude: [...exclude, zoneId] };
}
