import type { TemplateResult } from 'lit';
import { turnClockwise } from '../../measure/turnClockwise';
import type { XY } from '../../measure/types';
import type { DimensionLine, Dimensions, TapeOutline } from '../../survey/tape/types';
import { formatLength } from '../../units/format';
import type { UnitSystem } from '../../yard/types';
import { drawSketch } from '../parts/sketch-drawing';

/** More offsets than this are drawn without words. */
const MOST_LABELS = 9;

/** A shape by its dimensions: to scale and north up once they are typed, before that a model with their letters. */
export function sketchOfShape(
  outline: TapeOutline,
  typed: Dimensions | null,
  headingDeg: number,
  units: UnitSystem,
): TemplateResult {
  const words = (key: string) => {
    const value = typed?.[key];
    if (value === undefined) return key;
    return `${key} ${key === 't' ? `${Number(value.toPrecision(6))}°` : formatLength(value, units)}`;
  };
  const turn = turnClockwise(typed ? headingDeg - 90 : 0);
  const lines = outline.lines.map((line) => ({ ...carried(line, turn), words: words(line.key) }));
  const spoken = lines.map((line) => line.words).join(', ');
  return drawSketch(
    { rings: [outline.ring.map(turn)], lines, hasNorth: typed !== null },
    typed ? `Sketch to scale: ${spoken}` : `What to measure: ${spoken}`,
  );
}

/** The outline of a table of offsets to scale, north up, the offsets with their lengths while there is room. */
export function sketchOfOffsets(outline: TapeOutline, headingDeg: number, units: UnitSystem): TemplateResult {
  const turn = turnClockwise(headingDeg - 90);
  const isFull = outline.lines.length > MOST_LABELS + 1;
  const lengthOf = ({ from, to }: DimensionLine) => Math.hypot(to[0] - from[0], to[1] - from[1]);
  // where words have no room beside each other the longest offset keeps its own
  const longestFirst = [...outline.lines].sort((a, b) => lengthOf(b) - lengthOf(a));
  const lines = longestFirst.map((line) => {
    const lengthM = lengthOf(line);
    const isBase = line.key === '';
    return {
      ...carried(line, turn),
      role: isBase ? line.role : ('tip' as const),
      words: isBase || isFull || lengthM === 0 ? '' : formatLength(lengthM, units),
    };
  });
  return drawSketch(
    { rings: [outline.ring.map(turn)], lines, hasNorth: true },
    `Sketch to scale: the outline and ${lines.length - 1} offsets along the base line`,
  );
}

function carried(line: DimensionLine, turn: (p: XY) => XY): Pick<DimensionLine, 'from' | 'to' | 'role'> {
  return { from: turn(line.from), to: turn(line.to), role: line.role };
}
