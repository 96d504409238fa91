import type { DrawLive, EdgeTask, Tool } from '../map/types';
import { KIND_WORDS, MARK_WORDS } from '../words/zoneWords';

const EDGE_WORDS: Readonly<Record<EdgeTask, string>> = {
  arc: 'Point at a side, or at the corners where the arc begins and ends.',
  smooth: 'Point at the first and the last corner to smooth; the same corner twice for the whole outline.',
  straighten: 'Point at a curve, or at two corners: one straight side takes the place of what lies between.',
  offset:
    'Point at a side, or at the first and last corner of a stretch; the same corner twice for the whole outline.',
  align: 'Point at a side of the zone.',
};

/** What a tool wants of the person, before anything is done with it. */
export function describeTool(tool: Exclude<Tool, { type: 'select' }>): string {
  switch (tool.type) {
    case 'reshape':
      return tool.sides
        ? 'Drag the bar on a side: the side moves in parallel.'
        : 'Drag a corner, or the round point of a curve; small dots add one. Select one to delete it.';
    case 'split':
      return 'Draw a line right across the zone, from outside to outside.';
    case 'edge':
      return EDGE_WORDS[tool.task];
    case 'band':
      return `${KIND_WORDS[tool.kind]} along a line: put the points of its middle line.`;
    case 'gauge':
      return 'Put the points to measure between. Nothing is added to the yard.';
    case 'pick':
      return tool.words;
    case 'shift-picture':
      return 'Drag the picture to where it belongs.';
    case 'mark':
      return `Put the ${MARK_WORDS[tool.kind].toLowerCase()} on the drawing.`;
    case 'draw': {
      const what = {
        zone: KIND_WORDS[tool.kind],
        hole: 'Hole',
        cut: `${KIND_WORDS[tool.kind]} cut out`,
        parcel: 'Outline of the property',
      }[tool.purpose];
      const how = {
        polygon: 'put the first corner, then the next, or type a side',
        rectangle: 'drag across it; or put the first corner, then two more, or type two sides',
        circle: 'drag from its middle; or put the middle, then the rim, or type a radius',
        freehand: 'press, go round it, let go',
      }[tool.shape];
      return `${what}: ${how}.`;
    }
  }
}

/** How far a drawing has come and how it goes on. */
export function countPoints(tool: Tool, { points, areaM2, edgePick }: DrawLive): string {
  const count = points.length;
  if (tool.type === 'edge')
    return edgeProgress(tool.task, edgePick !== null && edgePick !== undefined, edgePick?.target != null);
  if (tool.type !== 'draw') return `${count} ${count === 1 ? 'point' : 'points'} so far.`;
  if (tool.shape === 'circle') return 'Now the rim, or type the radius.';
  if (tool.shape === 'rectangle' && count === 1 && areaM2 !== null) return 'Let go at the opposite corner.';
  if (tool.shape === 'rectangle')
    return count === 1 ? 'Now the far end of one side, or type its length.' : 'Now the depth, or type it.';
  const done = `${count} ${count === 1 ? 'corner' : 'corners'} so far`;
  return count < 3 ? `${done}. Put the next, or type a side.` : `${done}. Finish, or put the next.`;
}

function edgeProgress(task: EdgeTask, hasStretch: boolean, hasTarget: boolean): string {
  if (!hasStretch) return 'Now the last corner of the stretch; or point at a side.';
  if (task === 'arc') return 'Now a place that the arc passes through, or type its height.';
  if (task === 'offset') return 'Set the width and what is done with it, then Apply.';
  return hasTarget
    ? 'Apply, or point at another edge.'
    : 'Now point at the edge of another zone, or take true north.';
}
