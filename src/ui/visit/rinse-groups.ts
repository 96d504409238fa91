import type { RinseEdge } from '../../cover/types';

/** Rinse edges of one hardscape zone, in the order numbered. */
export interface RinseGroup {
  readonly hardscapeId: string;
  readonly hardscapeName: string;
  readonly material: RinseEdge['material'];
  readonly edges: readonly RinseEdge[];
  /** m, all edges of the group. */
  readonly lengthM: number;
}

/** Edges by hardscape zone, in the order in which each first appears. */
export function groupRinseEdges(edges: readonly RinseEdge[]): readonly RinseGroup[] {
  const groups = new Map<string, RinseEdge[]>();
  for (const edge of edges) {
    const group = groups.get(edge.hardscapeId);
    if (group) group.push(edge);
    else groups.set(edge.hardscapeId, [edge]);
  }
  return [...groups.values()].flatMap((group): RinseGroup[] => {
    const [first] = group;
    if (!first) return [];
    const { hardscapeId, hardscapeName, material } = first;
    return [{ hardscapeId, hardscapeName, material, edges: group, lengthM: sumLengths(group) }];
  });
}

/** @returns metres. */
export function sumLengths(edges: readonly RinseEdge[]): number {
  return edges.reduce((total, edge) => total + edge.lengthM, 0);
}
