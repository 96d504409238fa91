import type { Derived } from '../session/types';
import { formatArea, formatAreaPm } from '../units/format';
import { slopeWords, surfaceWords } from '../words/slopeWords';
import { KIND_WORDS, UNPLACED_WORDS, zoneKeys, zoneName, zoneWords } from '../words/zoneWords';
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
      zone.isPlaced ? zoneWords(zone) : `${zoneWords(zone)}; ${UNPLACED_WORDS}`,
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
    ...slopeBlocks(yard, derived),
    { type: 'heading', text: 'Totals by kind' },
    table(
      'Totals by kind',
      [column('Kind', 0.4), column('Zones', 0.2, 'right'), column('Net area', 0.4, 'right')],
      totals,
    ),
  ];
}

/** The ground along the slope of zones that have one, where the yard shows it. */
function slopeBlocks({ zones, settings }: Yard, { measured }: Derived): Block[] {
  if (!settings.showSurface) return [];
  const rows = zones.flatMap((zone) => {
    const own = measured.zones.get(zone.id);
    return own && zone.slope !== null
      ? [
          [
            zoneName(zone),
            slopeWords(zone.slope),
            surfaceWords(own.netM2, own.netSigmaM2, zone.slope, settings.units),
          ],
        ]
      : [];
  });
  if (rows.length === 0) return [];
  return [
    { type: 'heading', text: 'On slopes' },
    table(
      'On slopes',
      [column('Zone', 0.34), column('Slope', 0.2), column('Ground along the slope', 0.46, 'right')],
      rows,
    ),
  ];
}
