import { walkNotes } from '../cover/marks/walkNotes';
import { formatLength } from '../units/format';
import { formatClock } from '../units/formatPace';
import { markLines, markSign, vesselWords } from '../words/markWords';
import { speedWords } from '../words/paceWords';
import { dryingWords, headingWords, walkIssues } from '../words/passWords';
import { zoneKeys, zoneName } from '../words/zoneWords';
import type { Yard } from '../yard/types';
import type { DoseWalk } from './doseWalks';
import type { Block } from './types';
import { column, table } from './visitBlocks';

/** Vessels listed beside the marks; of more the marks alone tell. */
const MOST_VESSELS = 6;
/** Where the yard has no equipment for a dose. */
const ASSUMED_WORDS =
  'Swath and walk are usual figures of the trade, not measured. Measure what you put it out with before you go by them.';

/** How each dose is walked: its zones in order, and where each vessel should stand, with a box to tick and room to write. */
export function passBlocks(yard: Yard, walks: readonly DoseWalk[]): Block[] {
  return walks.flatMap((walk) => [...orderBlocks(yard, walk), ...markBlocks(yard, walk)]);
}

function orderBlocks(yard: Yard, walk: DoseWalk): Block[] {
  const { dose, coats, swathM, seconds, name, equipment, pace, timeline } = walk;
  const { units } = yard.settings;
  const keys = zoneKeys(yard);
  const names = new Map(yard.zones.map((zone) => [zone.id, zoneName(zone)]));
  const rows = dose.walks.map(({ zoneId, coat, headingDeg, passes, lengthM }, i) => [
    String(i + 1),
    keys.get(zoneId) ?? '',
    `${names.get(zoneId) ?? ''}${coats === 2 ? `, ${coat === 1 ? 'first' : 'second'} coat` : ''}`,
    headingDeg === null ? 'laps alone' : headingWords(headingDeg),
    String(passes),
    formatLength(lengthM, units),
    formatClock(seconds[i] ?? 0),
  ]);
  const onZones = dose.walks.reduce((sum, each) => sum + each.lengthM, 0);
  const between = timeline.totalS - seconds.reduce((sum, each) => sum + each, 0);
  if (dose.lengthM - onZones > 0.5)
    rows.push([
      '',
      '',
      'Ways between, applicator shut',
      '',
      '',
      formatLength(dose.lengthM - onZones, units),
      formatClock(between),
    ]);
  const passes = dose.walks.reduce((sum, each) => sum + each.passes, 0);
  rows.push([
    '',
    '',
    'The whole walk',
    '',
    String(passes),
    formatLength(dose.lengthM, units),
    formatClock(timeline.totalS),
  ]);
  const speed = speedWords(pace, units);
  const facts = [
    equipment.name.trim(),
    `swath ${formatLength(swathM, units)}`,
    ...(coats === 2 ? ['two coats at half the rate each'] : []),
    ...(speed === null ? [] : [`walk ${speed}`]),
  ].filter((text) => text !== '');
  const { warnings, notes } = cautionsOf(yard, walk);
  const drying = dryingWords(dose);
  const blocks: Block[] = [
    { type: 'heading', text: `Passes: ${name}` },
    {
      type: 'text',
      strong: true,
      text: `${facts.join('; ').replace(/^./, (letter) => letter.toUpperCase())}.`,
    },
    ...warnings.map((text) => ({ type: 'text', strong: true, text: `Take care: ${text}` }) as const),
    table(
      `Zones in walking order: ${name}`,
      [
        column('No.', 0.07),
        column('Key', 0.07),
        column('Zone', 0.32),
        column('Heading', 0.19),
        column('Passes', 0.1, 'right'),
        column('Walk', 0.13, 'right'),
        column('Time', 0.12, 'right'),
      ],
      rows,
      true,
    ),
    {
      type: 'text',
      strong: false,
      text: `Times hold turns and refills${drying === '' ? '' : `, ${drying}`}. Straight passes go there and back along the heading; the numbers stand on the map of passes.`,
    },
  ];
  if (notes.length > 0) blocks.push({ type: 'list', ticks: false, items: notes });
  return blocks;
}

/** What speaks against the walk and its pace, the ground named; and figures that nobody measured. */
function cautionsOf(yard: Yard, { dose, pace, isAssumed }: DoseWalk) {
  const names = new Map(yard.zones.map((zone) => [zone.id, zone.name]));
  const issues = [...walkIssues(dose, names), ...pace.issues];
  const textsOf = (isNote: boolean) => [
    ...new Set(issues.filter(({ severity }) => (severity === 'note') === isNote).map((each) => each.message)),
  ];
  return {
    warnings: [...(isAssumed ? [ASSUMED_WORDS] : []), ...textsOf(false)],
    notes: textsOf(true),
  };
}

function markBlocks(yard: Yard, { dose, way, name, figures }: DoseWalk): Block[] {
  const { units } = yard.settings;
  if (dose.vessels.length === 0) return [];
  const names = new Map(yard.zones.map((zone) => [zone.id, zone.name]));
  const lines = markLines(walkNotes(dose, figures.zones), dose.vessels, names, way, units);
  const rows = lines.map(({ mark, after, where, what }) => [
    '☐',
    mark ? markSign(mark) : '',
    `${where}, ${after}`.replace(/^./, (letter) => letter.toUpperCase()),
    what,
    '',
  ]);
  const vessels = dose.vessels.length <= MOST_VESSELS ? dose.vessels : [];
  return [
    ...(vessels.length === 0
      ? []
      : [
          {
            type: 'list',
            ticks: false,
            items: vessels.map((each) =>
              vesselWords(each, way, units).replace(/^./, (letter) => letter.toUpperCase()),
            ),
          } as const,
        ]),
    table(
      `Run-out marks: ${name}`,
      [
        column('Done', 0.08),
        column('Mark', 0.1),
        column('Where', 0.38),
        column('Should be', 0.24),
        column('Really was', 0.2),
      ],
      rows,
    ),
    {
      type: 'text',
      strong: false,
      text: 'Less left than there should be: the walk is too slow, or too much comes out. More left: too fast. Do not go over ground twice to use up the rest.',
    },
  ];
}
