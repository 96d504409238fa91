import type { VisitCoverage } from '../../cover/passTypes';
import type { CoverageState } from '../app';

/** The walks that may be printed: none while they are laid anew, for marks from before do not go with amounts of now. */
export function printedCoverage(state: CoverageState): VisitCoverage | null {
  return state.state === 'ready' ? state.coverage : null;
}
