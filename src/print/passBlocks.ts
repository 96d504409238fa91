import { walkNotes } from '../cover/marks/walkNotes';
import { factorOf, speedIssues } from '../cover/marks/zoneSpeeds';
import { paceFigures } from '../pace/paceFigures';
import { formatLength } from '../units/format';
import { formatClock, formatSpeed } from '../units/formatPace';
import { markLines, markSign, vesselWords } from '../words/markWords';
import { lotWords, passPaceWords, speedWords, stepWords, usualPassM } from '../words/paceWords';
import { dryingWords, headingWords, walkIssues } from '../words/passWords';
import { countLaps, countWords, formatWalk } from '../words/walkWords';
import { coatsWords, guardWords } from '../words/workOrder';
import { zoneKeys, zoneName } from '../words/zoneWords';
import type { Yard } from '../yard/types';
import type { DoseWalk } from './doseWalks';
import type { Block } from './types';
import { column, table } from './visitBlocks';

/** Vessels listed beside the marks; of more the marks tell. */
const MOST_VESSELS = 6;
/** Where the yard has no equipment for a dose. */
const ASSUMED_WORDS =
  'Swath and walk are usual figures of the trade, not measured. Measure what you put it out with before you go by them.';

/** How each dose is walked: its zones in order, and where each vessel should stand, with a box to tick and room to write. */
export function passBlocks(yard: Yard, walks: readonly DoseWalk[]): Block[] {
  return walks.flatMap((walk) => [...orderBlocks(yard, walk), ...markBlocks(yard, walk)]);
}

function orderBlocks(yard: Yard, walk: DoseWalk): Block[] {
  const { dose, coats, swathM, seconds, name, equipment, pace, timeline, figures } = walk;
  const { units } = yard.settings;
  const keys = zoneKeys(yard);
  const names = new Map(yard.zones.map((zone) => [zone.id, zoneName(zone)]));
  const { speedMPerS } = pace;
  const laps = dose.walks.map((each) => countLaps(each, dose.legs));
  const rows = dose.walks.map(({ zoneId, coat, headingDeg, passes, lengthM }, i) => [
    String(i + 1),
    keys.get(zoneId) ?? '',
    `${names.get(zoneId) ?? ''}${coats === 2 ? `, ${coat === 1 ? 'first' : 'second'} coat` : ''}`,
    headingDeg === null ? 'laps alone' : headingWords(headingDeg),
    countWords(passes, laps[i] ?? 0),
    formatWalk(lengthM, units),
    formatClock(seconds[i] ?? 0),
    ...(speedMPerS === null
      ? []
      : [formatSpeed(speedMPerS * factorOf(timeline.speeds, { zoneId, coat }), units)]),
  ]);
  const noPace = speedMPerS === null ? [] : [''];
  const onZones = dose.walks.reduce((sum, each) => sum + each.lengthM, 0);
  const between = timeline.totalS - seconds.reduce((sum, each) => sum + each, 0);
  if (dose.lengthM - onZones > 0.5)
    rows.push([
      '',
      '',
      'Ways between, applicator shut',
      '',
      '',
      formatWalk(dose.lengthM - onZones, units),
      formatClock(between),
      ...noPace,
    ]);
  const passes = dose.walks.reduce((sum, each) => sum + each.passes, 0);
  rows.push([
    '',
    '',
    'The whole walk',
    '',
    countWords(
      passes,
      laps.reduce((sum, each) => sum + each, 0),
    ),
    formatWalk(dose.lengthM, units),
    formatClock(timeline.totalS),
    ...noPace,
  ]);
  const speed = speedWords(pace, units);
  const facts = [
    equipment.name.trim(),
    `swath ${formatLength(swathM, units)}`,
    guardWords(figures, equipment)?.replace(/^./, (letter) => letter.toLowerCase()) ?? '',
    ...(speed === null ? [] : [`walk ${speed}`]),
  ].filter((text) => text !== '');
  const byHeart = walkByWords(yard, walk);
  const { warnings, notes } = cautionsOf(yard, walk);
  const drying = dryingWords(dose);
  const blocks: Block[] = [
    { type: 'heading', text: `Passes: ${name}`, runs: true },
    {
      type: 'text',
      strong: true,
      text: `${facts.join('; ').replace(/^./, (letter) => letter.toUpperCase())}.${coats === 2 ? ` ${coatsWords(figures, equipment, units)}` : ''}`,
    },
    ...(byHeart === null ? [] : [{ type: 'text', strong: true, text: byHeart } as const]),
    ...warnings.map((text) => ({ type: 'text', strong: true, text: `Take care: ${text}` }) as const),
    table(
      `Zones in walking order: ${name}`,
      [
        column('No.', 0.06),
        column('Key', 0.06),
        column('Zone', speedMPerS === null ? 0.31 : 0.23),
        column('Heading', 0.19),
        column('Passes, laps', 0.13, 'right'),
        column('Walk', speedMPerS === null ? 0.13 : 0.11, 'right'),
        column('Time', 0.12, 'right'),
        ...(speedMPerS === null ? [] : [column('Pace', 0.1, 'right')]),
      ],
      rows,
      true,
    ),
    {
      type: 'text',
      strong: false,
      text: `Times hold turns and refills${drying === '' ? '' : `, ${drying}`}. Straight passes go there and back along the heading; the numbers stand on the map of passes, keys in brackets behind the names.${speedMPerS === null ? '' : ' Pace so that just the zone’s own amount goes out: where passes lie closer, a little faster.'}`,
    },
  ];
  if (notes.length > 0) blocks.push({ type: 'list', ticks: false, items: notes });
  return blocks;
}

/** "To walk by, each coat: 52 s per 1,000 sq ft; 120 steps a minute, each 2.5 ft; a pass of 48 ft: 14 s, 19 steps."; null where no pace is known. */
function walkByWords(yard: Yard, { dose, figures, equipment, pace, coats }: DoseWalk): string | null {
  const { units } = yard.settings;
  const own = paceFigures(pace, figures, equipment);
  const passM = usualPassM(dose.legs);
  const words = [
    lotWords(own, units),
    stepWords(own, units),
    passM === null ? null : passPaceWords(pace, passM, units)?.replace(/^a pass/, 'a usual pass'),
  ].filter((each) => each !== null && each !== undefined);
  if (words.length === 0) return null;
  return `To walk by${coats === 2 ? ', each coat' : ''}: ${words.join('; ')}.`;
}

/** What speaks against the walk and its pace, the ground named; and figures that nobody measured. */
function cautionsOf(yard: Yard, { dose, pace, isAssumed, timeline }: DoseWalk) {
  const names = new Map(yard.zones.map((zone) => [zone.id, zone.name]));
  const issues = [
    ...walkIssues(dose, names),
    ...pace.issues,
    ...speedIssues(timeline.speeds, names, pace.speedMPerS, yard.settings.units),
  ];
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
  // of many only those that do not begin full are told: their levels would be read off wrongly
  const vessels = dose.vessels.filter(
    ({ start, full }) => dose.vessels.length <= MOST_VESSELS || start.value < full.value,
  );
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
