import type { CoveragePicture, WalkLayer } from '../map/types';
import type { CoverageState, Step } from './app';
import type { AppController } from './app-controller';
import type { CoverageDesk } from './passes/coverage-desk';
import type { PlayChoice } from './passes/play-speed';

/** Steps that show how a visit is walked. */
const WALK_STEPS: readonly Step[] = ['passes', 'sheet'];

/** What the Passes screen can leave off the drawing. */
export type HiddenLayer = WalkLayer | 'edges' | 'strips';

const NONE: CoverageState = { state: 'none' };
const NOTHING: ReadonlySet<HiddenLayer> = new Set();
/** Edges have their place on the step of the visit; here their numbers would cover the walk. */
const FIRST_HIDDEN: ReadonlySet<HiddenLayer> = new Set(['edges']);

/** The walks of the visit in hand. What lays them out is fetched with the first step that shows them. */
export class Walks {
  desk: CoverageDesk | null = null;
  /** how long the play of a whole walk takes. */
  play: PlayChoice = '30';
  /** puts the walker so many metres along the walk; null while no player is on the screen. */
  goTo: ((walkedM: number) => void) | null = null;
  private hidden = FIRST_HIDDEN;
  private isLoading = false;
  /** why what lays out could not be fetched; empty: it could, or was not tried. */
  private failure = '';

  constructor(private readonly app: AppController) {}

  private get isShown(): boolean {
    return WALK_STEPS.includes(this.app.view.step);
  }

  get state(): CoverageState {
    if (!this.isShown) return NONE;
    if (this.failure !== '') return { state: 'failed', message: this.failure };
    return this.desk?.state ?? NONE;
  }

  get picture(): CoveragePicture | null {
    return (this.app.view.step === 'passes' && this.desk?.pictureOf(this.app.view.doseId)) || null;
  }

  get hides(): ReadonlySet<HiddenLayer> {
    return this.app.view.step === 'passes' ? this.hidden : NOTHING;
  }

  setHidden(layer: HiddenLayer, isHidden: boolean): void {
    this.hidden = new Set([...this.hidden].filter((each) => each !== layer).concat(isHidden ? layer : []));
    this.app.notify();
  }

  setPlay(play: PlayChoice): void {
    this.play = play;
    this.app.notify();
  }

  /** Called before each showing: lays the walks out anew where what they hang on has changed. */
  look(): void {
    if (!this.isShown || this.app.beforeReshape !== null) return;
    if (this.desk) this.desk.look();
    else void this.load();
  }

  /** Tries again what failed: to fetch what lays out, or to lay out. */
  retry(): void {
    this.failure = '';
    this.desk?.retry();
    this.app.notify();
  }

  private async load(): Promise<void> {
    if (this.isLoading || this.failure !== '') return;
    this.isLoading = true;
    try {
      const { openCoverageDesk } = await import('./passes/coverage-desk');
      this.desk = openCoverageDesk(this.app);
    } catch {
      this.failure = 'what lays them out could not be loaded. Check the connection and try again.';
    }
    this.isLoading = false;
    this.app.notify();
  }
}
