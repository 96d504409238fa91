import type { DerivedVisit } from '../session/types';
import { formatArea, formatLength } from '../units/format';
import {
  DOWNHILL_KEY_WORDS,
  DRAIN_WORDS,
  downhillWords,
  EDGE_WORK_WORDS,
  edgeKey,
  formatRinse,
  NO_FLOW_WORDS,
  nearWords,
  rinseTimeWords,
  rinseWaterWords,
  STAIN_WORDS,
  sumRinse,
} from '../words/edgeWords';
import { MATERIAL_WORDS, zoneKeys, zoneName } from '../words/zoneWords';
import type { Yard } from '../yard/types';
import type { Block, Column } from './types';

const COLUMNS: readonly Column[] = [
  { head: 'Done', share: 0.08, align: 'left' },
  { head: 'No.', share: 0.06, align: 'left' },
  { head: 'Where, in walking order', share: 0.22, align: 'left' },
  { head: 'Length', share: 0.11, align: 'right' },
  { head: 'Splash band', share: 0.12, align: 'right' },
  { head: 'Time, water', share: 0.11, align: 'right' },
  { head: 'What to do', share: 0.3, align: 'left' },
];

/** The edges to rinse or sweep in walking order, in bold where a product stains, with their totals. */
export function rinseBlocks(yard: Yard, visit: DerivedVisit): Block[] {
  const { units } = yard.settings;
  const keys = zoneKeys(yard);
  const { rinseEdges: edges } = visit;
  if (edges.length === 0) return [];
  const allStain = edges.every((edge) => edge.stains);
  const rows = edges.map((edge) => {
    const near = nearWords(edge, units);
    const what = [near ?? EDGE_WORK_WORDS[edge.treatment], downhillWords(edge, units) ?? ''];
    const beside = edge.zoneIds.map((id) => keys.get(id) ?? '').join(', ');
    const material = edge.material ? `, ${MATERIAL_WORDS[edge.material].toLowerCase()}` : '';
    return [
      '☐',
      edgeKey(edge),
      `${zoneName({ name: edge.hardscapeName, kind: 'hardscape' })}${material}, by zone ${beside}`,
      formatLength(edge.lengthM, units),
      formatArea(edge.bandM2, units),
      near ? 'no water' : (rinseWaterWords(edge, units) ?? '—'),
      `${edge.stains && !allStain ? 'It stains: at once. ' : ''}${what.join(' ').trim()}`,
    ];
  });
  const strong = rows.filter((_, i) => edges[i]?.stains);
  const { lengthM, bandM2, water } = sumRinse(edges);
  const takes = water ? `${rinseTimeWords(water.seconds)}, ${formatRinse(water.litres, units)}` : '';
  rows.push(['', '', 'All edges', formatLength(lengthM, units), formatArea(bandM2, units), takes, '']);
  const isFlowMissing = water === null && edges.some((edge) => !edge.near);
  const walk: Block = {
    type: 'table',
    caption: 'Edges to rinse',
    columns: COLUMNS,
    rows,
    strong,
    sum: true,
    plain: true,
    continued: false,
  };
  const text = (words: string, isStrong = false): Block => ({ type: 'text', strong: isStrong, text: words });
  return [
    { type: 'heading', text: 'Edges to rinse' },
    ...(strong.length > 0 ? [text(STAIN_WORDS, true)] : []),
    walk,
    ...(isFlowMissing ? [text(NO_FLOW_WORDS)] : []),
    ...(edges.some(({ downhill }) => downhill) ? [text(DOWNHILL_KEY_WORDS)] : []),
    text(DRAIN_WORDS),
  ];
}
