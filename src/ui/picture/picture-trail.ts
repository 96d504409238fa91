import { carryTraced, isPictureMoved, isTracedOn } from '../../survey/picture/carryTraced';
import type { OwnPicture } from '../../survey/picture/ownPicture';
import { isLockedZone } from '../../yard/locks';
import type { Yard, Zone } from '../../yard/types';

/** A zone as it was traced, and how the picture lay then. */
interface Traced {
  readonly parts: Zone['parts'];
  readonly picture: OwnPicture;
  /** how the picture lay when the person said that the zone is to stay; null: not said. */
  readonly stays: OwnPicture | null;
}

/** Zones that were traced over a picture which lies otherwise now. */
export interface Behind {
  readonly free: readonly Zone[];
  readonly locked: readonly Zone[];
}

/** Remembers, while the page is open, how pictures lay when zones were traced over them. Not in the document. */
export class PictureTrail {
  private readonly traced = new Map<string, Traced>();
  private seen: { readonly yard: Yard; readonly picture: OwnPicture } | null = null;

  /** Told of every state of the yard that is shown; a zone that moved together with the picture is not behind. */
  observe(yard: Yard, picture: OwnPicture | null): void {
    const { seen } = this;
    if (seen?.yard === yard) return;
    this.seen = picture && { yard, picture };
    if (!picture || !seen || seen.yard.id !== yard.id || seen.picture.id !== picture.id) return;
    if (!isPictureMoved(seen.picture, picture)) return;
    const before = new Map(seen.yard.zones.map((zone) => [zone.id, zone]));
    for (const zone of yard.zones) {
      const known = this.entryOf(zone, picture);
      const stood = before.get(zone.id)?.parts === zone.parts;
      if (!known && stood && isTracedOn(zone, picture))
        this.traced.set(zone.id, { parts: zone.parts, picture: seen.picture, stays: null });
    }
  }

  /** Zones left where they were when the picture moved. */
  behind(yard: Yard, picture: OwnPicture): Behind {
    const zones = yard.zones.filter((zone) => {
      const entry = this.entryOf(zone, picture);
      if (!entry || !isTracedOn(zone, picture) || !isPictureMoved(entry.picture, picture)) return false;
      return !entry.stays || isPictureMoved(entry.stays, picture);
    });
    return {
      free: zones.filter((zone) => !isLockedZone(zone)),
      locked: zones.filter(isLockedZone),
    };
  }

  /** The yard with the zones that are behind brought to where the picture lies; locked ones stay. */
  bringAlong(yard: Yard, picture: OwnPicture): Yard {
    const { free } = this.behind(yard, picture);
    const zones = yard.zones.map((zone) => {
      const entry = free.includes(zone) ? this.entryOf(zone, picture) : null;
      return (entry && carryTraced(zone, entry.picture, picture)) ?? zone;
    });
    return { ...yard, zones };
  }

  /** The person wants them where they are, as long as the picture lies as it does now. */
  leave(yard: Yard, picture: OwnPicture): void {
    const { free, locked } = this.behind(yard, picture);
    for (const { id } of [...free, ...locked]) {
      const entry = this.traced.get(id);
      if (entry) this.traced.set(id, { ...entry, stays: picture });
    }
  }

  private entryOf(zone: Zone, picture: OwnPicture): Traced | null {
    const entry = this.traced.get(zone.id);
    return entry?.picture.id === picture.id && entry.parts === zone.parts ? entry : null;
  }
}
