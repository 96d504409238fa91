import type { DeskContext, DeskFilter } from './deskTypes';
import type { Box, Candidate, SourceFeature } from './importTypes';

/** Metres in a degree of latitude, about. */
const M_PER_DEG = 111_000;

/**
 * A test by a filter of the list.
 * @param isTicked by the feature's number
 */
export function createFilter(
  filter: DeskFilter,
  context: Pick<DeskContext, 'yardBox' | 'view'>,
  isTicked: (index: number) => boolean,
): (source: SourceFeature, candidate: Candidate, index: number) => boolean {
  const text = filter.text.trim().toLowerCase();
  const { near } = filter;
  const { view, yardBox } = context;
  const around: Box | null =
    near === null ? null : near.of === 'yard' ? yardBox : view && [view[0], view[1], view[0], view[1]];
  return (source, candidate, index) => {
    if (filter.layer !== null && source.layer !== filter.layer) return false;
    if (
      text !== '' &&
      !candidate.name.toLowerCase().includes(text) &&
      !source.layer.toLowerCase().includes(text)
    )
      return false;
    switch (filter.show) {
      case 'usable':
        if (candidate.outcome === 'refused' || candidate.outcome === 'kept') return false;
        break;
      case 'refused':
        if (candidate.outcome !== 'refused' && candidate.outcome !== 'kept') return false;
        break;
      case 'ticked':
        if (!isTicked(index)) return false;
        break;
    }
    if (near === null || around === null) return near === null;
    return candidate.box !== null && reaches(candidate.box, around, near.withinM);
  };
}

/** Whether two boxes come within a distance, by latitude and longitude apart. */
function reaches(box: Box, around: Box, withinM: number): boolean {
  const lat = withinM / M_PER_DEG;
  const lon = lat / Math.max(0.01, Math.cos((around[1] * Math.PI) / 180));
  const shift = 360 * Math.round((around[0] - box[0]) / 360);
  return (
    box[0] + shift <= around[2] + lon &&
    box[2] + shift >= around[0] - lon &&
    box[1] <= around[3] + lat &&
    box[3] >= around[1] - lat
  );
}
