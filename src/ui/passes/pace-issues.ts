import type { Issue } from '../../yard/types';

/** Whether an issue says that the pace cannot be walked: told beside the figures of the walk, not with the rest of the pace. */
export function isUnwalkable({ code }: Pick<Issue, 'code'>): boolean {
  return code === 'pace-too-slow' || code === 'pace-too-fast';
}
