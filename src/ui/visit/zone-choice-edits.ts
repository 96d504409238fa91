import { chosenZones, zoneClass } from '../../yard/choose';
import type { Yard, ZoneChoice, ZoneClass } from '../../yard/types';

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

/** The choice with one zone in or out. */
export function chooseZone(yard: Yard, choice: ZoneChoice, zoneId: string, isIn: boolean): ZoneChoice {
  const include = choice.include.filter((id) => id !== zoneId);
  const exclude = choice.exclude.filter((id) => id !== zoneId);
  const bare = { classes: choice.classes, include, exclude };
  const isByClass = chosenZones(yard, bare).some((zone) => zone.id === zoneId);
  if (isIn === isByClass) return bare;
  return isIn ? { ...bare, include: [...include, zoneId] } : { ...bare, exclude: [...exclude, zoneId] };
}
