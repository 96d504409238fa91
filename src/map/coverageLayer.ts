import type L from 'leaflet';
import type { Leg } from '../cover/passTypes';
import type { XY } from '../measure/types';
import { toLatLng } from './coords';
import './coverage/coverage.css';
import type { Box } from '../draft/placeTags';
import { walkGroundOf } from './coverage/ground';
import { legAt } from './coverage/legAt';
import { LineLayer } from './coverage/lineLayer';
import { SignLayer } from './coverage/signLayer';
import { TintLayer } from './coverage/tintLayer';
import { WalkerLayer } from './coverage/walkerLayer';
import type { MapPicture } from './types';

/** Panes of a walk, between those of the map: tints over the zones, lines over strips and edges, what is done over them, the walker over labels. */
const PANES = { 'yard-tints': 405, 'yard-walk': 425, 'yard-walk-done': 428, 'yard-walker': 620 } as const;

/**
 * The walk of one dose over the zones. Fetched with the first walk that is shown. A picture that differs by
 * the walker's place alone redraws the walker and what is done, nothing else.
 */
export class CoverageLayer {
  private readonly tints: TintLayer;
  private readonly lines: LineLayer;
  private readonly signs: SignLayer;
  private readonly walker: WalkerLayer;
  private shownFor: readonly unknown[] = [];
  private tintedFor: readonly unknown[] = [];
  private starts: readonly number[] = [];
  private startsOf: readonly Leg[] = [];

  constructor(private readonly map: L.Map) {
    for (const [name, zIndex] of Object.entries(PANES)) map.createPane(name).style.zIndex = String(zIndex);
    this.tints = new TintLayer(map, 'yard-tints');
    this.lines = new LineLayer(map, 'yard-walk');
    this.signs = new SignLayer(map, 'yard-walk');
    this.walker = new WalkerLayer(map, 'yard-walk-done', 'yard-walker');
  }

  /** @returns whether anything but the walker changed, so that labels are to be placed again (see `placeFirm`). */
  show(picture: MapPicture): boolean {
    const walk = picture.coverage ?? null;
    const coat = walk && this.coatOf(walk.dose.legs, walk.walkedM);
    const hides = walk?.hides ?? [];
    const ground = walkGroundOf(picture);
    const now = [
      walk?.dose,
      walk?.swathM,
      coat,
      walk?.walkedM === null,
      JSON.stringify([walk?.hose, hides]),
      ground.ground,
      walk && picture.measured,
      picture.units,
    ];
    const isSame = now.length === this.shownFor.length && now.every((each, i) => each === this.shownFor[i]);
    if (!isSame) {
      this.shownFor = now;
      const { toLonLat } = picture.measured.plane;
      const place = (at: XY) => toLatLng(toLonLat(at));
      const coats = coat === null ? ([1, 2] as const) : [coat];
      const legs = walk ? walk.dose.legs.filter((leg) => coats.some((each) => each === leg.coat)) : [];
      const hasPasses = !hides.includes('passes');
      this.showTints(picture, coat);
      const look = walk && hasPasses ? { ground, swathM: walk.swathM, isFaint: walk.walkedM !== null } : null;
      this.lines.show(legs, place, look, this.metresPerPx());
      this.signs.show(
        walk && {
          dose: walk.dose,
          coats,
          swathM: walk.swathM,
          hose: walk.hose,
          hasPasses,
          hasMarks: !hides.includes('marks'),
          units: picture.units,
          ground,
          toLatLng: place,
        },
      );
      this.walker.setWalk(walk?.dose.legs ?? [], walk?.swathM ?? 0, place, ground);
      this.map.getContainer().classList.toggle('has-walk', walk !== null);
    }
    this.walker.show(walk?.walkedM ?? null);
    return !isSame;
  }

  /** The ground of each vessel is worked out anew only when it is another: a walk that begins to play keeps it. */
  private showTints(picture: MapPicture, coat: 1 | 2 | null): void {
    const walk = (!picture.coverage?.hides?.includes('tints') && picture.coverage) || null;
    const ground = walkGroundOf(picture);
    const now = [walk?.dose, walk?.swathM, coat, ground.ground, walk && picture.measured];
    if (now.length === this.tintedFor.length && now.every((each, i) => each === this.tintedFor[i])) return;
    this.tintedFor = now;
    this.tints.show(walk, coat, picture.measured, ground);
  }

  /** Draws what hangs on the scale. */
  zoomed(): void {
    this.lines.drawScaled(this.metresPerPx());
  }

  placeFirm(taken: readonly Box[]): readonly Box[] {
    this.signs.placeFirm(taken, this.metresPerPx());
    return this.signs.firmBoxes();
  }

  placeRest(taken: readonly Box[]): void {
    this.signs.placeRest(taken, this.metresPerPx());
  }

  /** The coat that is drawn: the only one, or the one under way; null: both, without tints, for they lie on each other. */
  private coatOf(legs: readonly Leg[], walkedM: number | null): 1 | 2 | null {
    if (legs !== this.startsOf) {
      this.startsOf = legs;
      const starts = [0];
      for (const { lengthM } of legs) starts.push((starts.at(-1) as number) + lengthM);
      this.starts = starts;
    }
    if (legs.every(({ coat }) => coat === 1)) return 1;
    return walkedM === null ? null : (legs[legAt(this.starts, walkedM)]?.coat ?? 1);
  }

  private metresPerPx(): number {
    const middle = this.map.getSize().divideBy(2);
    const across = this.map.containerPointToLatLng(middle.add([100, 0]));
    return this.map.containerPointToLatLng(middle).distanceTo(across) / 100;
  }
}
