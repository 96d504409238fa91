import type { CoverDose, CoverInput, DoseCoverage, VisitCoverage } from '../../cover/passTypes';
import type { CoveragePicture, WalkLayer } from '../../map/types';
import { WALK_LAYERS } from '../../map/types';
import { lay } from '../../session/coverClient';
import { coverInput } from '../../session/coverInput';
import type { Derived } from '../../session/types';
import type { Yard } from '../../yard/types';
import type { CoverageState } from '../app';
import type { AppController } from '../app-controller';

/** How walks are laid out: what they hang on, and the work itself, which comes back later. */
export interface CoverageTools {
  inputOf(yard: Yard, derived: Derived, visitId: string): CoverInput | null;
  lay(input: CoverInput): Promise<VisitCoverage>;
}

/** What the desk needs of the screen. */
export type DeskHost = Pick<AppController, 'session' | 'view' | 'notify' | 'redrawMap'> & {
  readonly walks: { readonly hides: ReadonlySet<string> };
};

/** A dose as it was laid out, with what it was laid out from. */
export interface LaidWalk {
  readonly dose: DoseCoverage;
  readonly from: CoverDose;
  readonly hose: CoverInput['hose'];
}

interface Laid {
  readonly coverage: VisitCoverage;
  readonly input: CoverInput;
}

/**
 * Keeps the walks of the visit in hand up to date: asks for them anew when what they hang on is another, keeps
 * them while it is the same, and drops answers that come too late.
 */
export class CoverageDesk {
  state: CoverageState = { state: 'none' };
  private from: readonly unknown[] = [];
  private yardId = '';
  /** what was asked for last, as text; empty: nothing. */
  private key = '';
  private asked = 0;
  private laid: Laid | null = null;
  private walked: { readonly doseId: string; readonly atM: number } | null = null;
  private drawn: { readonly from: readonly unknown[]; readonly to: CoveragePicture } | null = null;

  constructor(
    private readonly host: DeskHost,
    private readonly tools: CoverageTools,
  ) {}

  /** Lays the walks out anew where what they hang on has changed. Calls `notify` when the answer is there. */
  look(): void {
    const { session, view } = this.host;
    const { yard, derived } = session;
    const { visitId } = view;
    const derivedVisit = visitId === null ? null : derived.visit(visitId);
    const from = [
      yard.id,
      visitId,
      derivedVisit,
      yard.parcel,
      yard.zones,
      yard.visits,
      yard.marks,
      yard.products,
      yard.equipment,
      yard.settings,
    ];
    if (from.every((each, i) => each === this.from[i])) return;
    this.from = from;
    if (yard.id !== this.yardId) this.end();
    this.yardId = yard.id;
    const input =
      visitId === null || derivedVisit === null ? null : this.tools.inputOf(yard, derived, visitId);
    const key = input === null ? '' : JSON.stringify(input);
    if (key === this.key) return;
    this.key = key;
    if (input === null) this.end();
    else void this.ask(input);
  }

  /** Asks once more at the next look, though nothing has changed. */
  retry(): void {
    this.from = [];
    this.key = '';
  }

  private end(): void {
    this.asked += 1;
    this.key = '';
    this.laid = null;
    this.walked = null;
    this.state = { state: 'none' };
  }

  private async ask(input: CoverInput): Promise<void> {
    this.asked += 1;
    const turn = this.asked;
    const before = this.laid?.coverage.visitId === input.visitId ? this.laid.coverage : null;
    if (before === null) this.laid = null;
    this.walked = null;
    this.state = { state: 'working', before };
    try {
      const coverage = await this.tools.lay(input);
      if (turn !== this.asked) return;
      this.laid = { coverage, input };
      this.state = { state: 'ready', coverage };
    } catch (error) {
      if (turn !== this.asked) return;
      this.laid = null;
      this.state = { state: 'failed', message: error instanceof Error ? error.message : String(error) };
    }
    this.host.notify();
  }

  /** @returns null: it is not laid out (yet) */
  walkOf(doseId: string): LaidWalk | null {
    const dose = this.laid?.coverage.doses.find((each) => each.doseId === doseId);
    const from = this.laid?.input.doses.find((each) => each.doseId === dose?.doseId);
    return dose && from ? { dose, from, hose: this.laid?.input.hose ?? null } : null;
  }

  /** Puts the walker so many metres along the walk; null: takes it away. Only the map is drawn again. */
  setWalked(doseId: string, atM: number | null): void {
    this.walked = atM === null ? null : { doseId, atM };
    this.host.redrawMap();
  }

  /**
   * What the map draws of a dose; the same object while nothing in it has changed.
   * @param doseId one that the visit does not have (any more), or null: its first
   */
  pictureOf(doseId: string | null): CoveragePicture | null {
    const { visits } = this.host.session.yard;
    const doses = visits.find((each) => each.id === this.host.view.visitId)?.doses ?? [];
    const shown = doses.find((dose) => dose.id === doseId) ?? doses[0];
    const walk = shown ? this.walkOf(shown.id) : null;
    if (!walk) return null;
    const { session, walks } = this.host;
    const { plane } = session.derived.measured;
    const walkedM = this.walked?.doseId === walk.dose.doseId ? this.walked.atM : null;
    const from = [walk.dose, walkedM, plane, walks.hides];
    if (this.drawn && from.every((each, i) => each === this.drawn?.from[i])) return this.drawn.to;
    const bibs = walk.dose.hose === null ? [] : (walk.hose?.bibs ?? []);
    const to: CoveragePicture = {
      dose: walk.dose,
      swathM: walk.from.swathM,
      walkedM,
      hose: bibs.map((bib) => ({ at: plane.toLonLat(bib), lengthM: walk.hose?.lengthM ?? 0 })),
      hides: WALK_LAYERS.filter((layer: WalkLayer) => walks.hides.has(layer)),
    };
    this.drawn = { from, to };
    return to;
  }
}

/** The desk of the program, which lays out in a worker. */
export function openCoverageDesk(app: AppController): CoverageDesk {
  return new CoverageDesk(app, { inputOf: coverInput, lay });
}
