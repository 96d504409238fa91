import type { Derived } from '../session/types';
import { formatArea, formatAreaPm } from '../units/format';
import { KIND_WORDS, zoneKeys, zoneName, zoneWords } from '../words/zoneWords';
import type { Yard, ZoneKind } from '../yard/types';
import type { Block } from './types';
import { column, table } from './visitBlocks';

/** Areas of every zone and totals by kind: the sheet of a yard without a visit. */
export function yardBlocks(yard: Yard, derived: Derived): Block[] {
  const { units } = yard.settings;
  const keys = zoneKeys(yard);
  const rows = yard.zones.map((zone) => {
    const own = derived.measured.zones.get(zone.id);
    return [
      keys.get(zone.id) ?? '',
      zoneName(zone),
      zoneWords(zone),
      own ? formatArea(own.grossM2, units) : '—',
      own ? formatAreaPm(own.netM2, own.netSigmaM2, units) : 'not measured',
    ];
  });
  const totals = derived.measured.totals.map((total) => [
    KIND_WORDS[total.kind as ZoneKind],
    String(total.count),
    formatAreaPm(total.netM2, total.netSigmaM2, units),
  ]);
  return [
    { type: 'heading', text: 'Zones' },
    table(
      'Zones',
      [
        column('Key', 0.07),
        column('Zone', 0.31),
        column('Class', 0.22),
        column('As drawn', 0.16, 'right'),
        column('Net area', 0.24, 'right'),
      ],
      rows,
    ),
    { type: 'text', strong: false, text: 'Net area: what other zones do not take. The ± holds at 95 %.' },
    { type: 'heading', text: 'Totals by kind' },
    table(
      'Totals by kind',
      [column('Kind', 0.4), column('Zones', 0.2, 'right'), column('Net area', 0.4, 'right')],
      totals,
    ),
  ];
}
