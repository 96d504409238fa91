import { READY_LAYERS } from '../map/sources';
import type { MapPicture } from '../map/types';
import type { DerivedVisit } from '../session/types';
import type { BaseLayer, Yard } from '../yard/types';
import type { Step } from './app';
import type { AppController } from './app-controller';

/** Steps whose drawing shows what a visit treats, spares and rinses. */
const VISIT_STEPS: readonly Step[] = ['visit', 'passes', 'sheet'];

/** Makes the map's picture of the document; parts that came from the same objects are the same, so the map draws them once. */
export class PictureMaker {
  private resolved: { readonly from: BaseLayer; readonly to: BaseLayer } | null = null;
  private visit: {
    readonly from: readonly unknown[];
    readonly to: NonNullable<MapPicture['visit']>;
  } | null = null;

  constructor(private readonly app: AppController) {}

  /** @param slips as they are to be drawn */
  make(slips: MapPicture['slips']): MapPicture {
    const { app } = this;
    const { yard, derived } = app.session;
    const visit = VISIT_STEPS.includes(app.view.step) ? app.visit : null;
    return {
      yard,
      measured: derived.measured,
      selectedZoneIds: app.view.selectedZoneIds,
      slips,
      visit: visit && this.visitOf(visit),
      coverage: app.walks.picture,
      units: app.units,
      baseLayer: this.shownBaseLayer(yard.settings.baseLayer),
      underLayer: this.underLayer(yard),
      trial: app.trial,
      dark: app.theme === 'dark',
    };
  }

  private visitOf(visit: DerivedVisit): NonNullable<MapPicture['visit']> {
    const { hides } = this.app.walks;
    if (this.visit?.from[0] === visit && this.visit.from[1] === hides) return this.visit.to;
    const to = {
      zoneIds: [...visit.treated.values()].filter(({ areaM2 }) => areaM2 > 0).map(({ zoneId }) => zoneId),
      strips: hides.has('strips') ? [] : [...visit.treated.values()].flatMap((zone) => zone.strips),
      rinseEdges: hides.has('edges') ? [] : visit.rinseEdges,
    };
    this.visit = { from: [visit, hides], to };
    return to;
  }

  private underLayer({ settings: { baseLayer, ownLayers } }: Yard): BaseLayer | null {
    if (baseLayer.kind !== 'own-picture' || baseLayer.underId === undefined) return null;
    const { underId } = baseLayer;
    const layer = [...READY_LAYERS, ...ownLayers].find((each) => 'id' in each && each.id === underId);
    return layer && 'url' in layer ? this.shownBaseLayer(layer) : null;
  }

  private shownBaseLayer(layer: BaseLayer): BaseLayer {
    if (!('url' in layer)) return layer;
    if (this.resolved?.from !== layer) {
      this.resolved = { from: layer, to: { ...layer, url: this.app.services.resolveUrl(layer.url) } };
    }
    return this.resolved.to;
  }
}
