import type { RinseEdge } from '../../cover/types';

/** Rinse edges of one hardscape zone that are walked one after another. */
export interface RinseGroup {
  readonly hardscapeId: string;
  readonly hardscapeName: string;
  readonly material: RinseEdge['material'];
  readonly edges: readonly RinseEdge[];
  /** m, all edges of the group. */
  readonly lengthM: number;
}

/** Edges in walking order, those that follow one another on the same hardscape together. */
export function groupRinseEdges(edges: readonly RinseEdge[]): readonly RinseGroup[] {
  const groups: RinseEdge[][] = [];
  for (const edge of edges) {
    const last = groups.at(-1);
    if (last && last[0]?.hardscapeId === edge.hardscapeId) last.push(edge);
    else groups.push([edge]);
  }
  return groups.flatMap((group): RinseGroup | [] => {
    const [first] = group;
    if (!first) return [];
    const { hardscapeId, hardscapeName, material } = first;
    const lengthM = group.reduce((total, edge) => total + edge.lengthM, 0);
    return { hardscapeId, hardscapeName, material, edges: group, lengthM };
  });
}
