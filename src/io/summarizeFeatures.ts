import type { DeskOverview } from './deskTypes';
import type { Candidate, Outcome, SourceFeature } from './importTypes';

/** Layers named in the overview at most. */
const MOST_LAYERS = 200;

/** What the features of a file come to, taken together. */
export type FeatureSummary = Pick<
  DeskOverview,
  'features' | 'byOutcome' | 'layers' | 'swapCount' | 'hasCrossings' | 'asksCrs'
>;

/** Counts outcomes and layers, and finds what the person must be asked. @param candidates by the same numbers as `sources` */
export function summarizeFeatures(
  sources: readonly SourceFeature[],
  candidates: readonly Candidate[],
): FeatureSummary {
  const byOutcome: Record<Outcome, number> = { zone: 0, parcel: 0, mark: 0, offered: 0, kept: 0, refused: 0 };
  const layers = new Map<string, number>();
  let swapCount = 0;
  let asksCrs: string | null = null;
  let hasCrossings = false;
  candidates.forEach((candidate, index) => {
    byOutcome[candidate.outcome] += 1;
    const layer = sources[index]?.layer ?? '';
    layers.set(layer, (layers.get(layer) ?? 0) + 1);
    for (const { code, message } of candidate.notes) {
      if (code === 'swapped-order') swapCount += 1;
      if (code === 'self-crossing') hasCrossings = true;
      if (code === 'projected') asksCrs ??= message;
    }
  });
  const named = [...layers].map(([name, count]) => ({ name, count })).sort((a, b) => b.count - a.count);
  return {
    features: sources.length,
    byOutcome,
    layers: named.length > 1 ? named.slice(0, MOST_LAYERS) : [],
    swapCount,
    hasCrossings,
    asksCrs,
  };
}
