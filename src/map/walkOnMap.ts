import type L from 'leaflet';
import type { CoverageLayer } from './coverageLayer';
import type { LabelPlan } from './labelPlan';
import type { MapEvents, MapPicture } from './types';

/** Shows walks, and the labels of the map around them; what draws a walk is fetched with the first one. */
export class WalkOnMap {
  private layer: CoverageLayer | null = null;
  private picture: MapPicture | null = null;
  private isFetching = false;
  /** the walk for which the layer could not be fetched; tried again with another one. */
  private failedFor: unknown = null;

  constructor(
    private readonly map: L.Map,
    private readonly labels: LabelPlan,
    private readonly events: Pick<MapEvents, 'message'>,
  ) {}

  show(picture: MapPicture): void {
    this.picture = picture;
    const { coverage } = picture;
    if (!this.layer && coverage && coverage.dose !== this.failedFor) void this.fetch();
    const isNew = this.layer?.show(picture) ?? false;
    this.labels.show(picture, this.layer, isNew);
  }

  private async fetch(): Promise<void> {
    if (this.isFetching) return;
    this.isFetching = true;
    const found = await import('./coverageLayer').catch(() => null);
    this.isFetching = false;
    if (!found) {
      this.failedFor = this.picture?.coverage?.dose;
      const message =
        'What draws the passes could not be loaded. Check the connection and open the step again.';
      this.events.message({ code: 'walk-not-loaded', severity: 'error', message, place: {} });
      return;
    }
    this.layer = new found.CoverageLayer(this.map);
    if (this.picture) this.show(this.picture);
  }
}

const KEYS = [
  'yard',
  'measured',
  'selectedZoneIds',
  'visit',
  'units',
  'baseLayer',
  'underLayer',
  'trial',
  'dark',
] as const satisfies readonly (keyof MapPicture)[];

/** Whether two pictures are the same but for the walk: then zones, edges and paper stay as they are. */
export function differsByWalkAlone(a: MapPicture, b: MapPicture): boolean {
  const isEmptied = a.slips.length === 0 && b.slips.length === 0;
  return (isEmptied || a.slips === b.slips) && KEYS.every((key) => a[key] === b[key]);
}
