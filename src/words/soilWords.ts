import { inLabUnit } from '../soil/labUnits';
import { LAB_UNIT_WORDS, LEVEL_WORDS } from '../soil/soilNames';
import type { Band, NutrientReading, PhosphorusGate, SoilTable, SourceState } from '../soil/types';
import { formatNumber } from '../units/format';
import type { SoilTest } from '../yard/types';

export {
  EXTRACTANT_WORDS,
  LAB_UNIT_WORDS,
  LEVEL_WORDS,
  soilTestName,
} from '../soil/soilNames';

/** How far a table can be trusted to be as printed. */
export const STATE_WORDS: Readonly<Record<SourceState, string>> = {
  read: 'read in the publication',
  copy: 'read in a copy',
  'from memory': 'from memory, not opened: hold it against the publication before you go by it',
};

/** "Lawns; Rutgers NJAES …, 2014-05; read in the publication." */
export function tableSourceWords(table: SoilTable): string {
  const use = table.use === 'turf' ? 'For turf' : 'For crops in general';
  const date = table.date === '' ? 'not dated' : table.date;
  return `${use}. ${table.source}; ${date}; ${STATE_WORDS[table.state]}.`;
}

/** The bounds of the levels in the lab's unit: "low below 12.5, high to 25, very high above 25 ppm". */
export function bandsWords(bandsMgPerKg: readonly Band[], unit: SoilTest['labUnit']): string {
  if (bandsMgPerKg.length === 0) return '';
  const parts = bandsMgPerKg.map(({ level, upTo, isUpToIncluded }, i) => {
    const before = bandsMgPerKg[i - 1]?.upTo ?? null;
    const name = LEVEL_WORDS[level];
    if (upTo !== null)
      return `${name} ${isUpToIncluded ? 'to' : 'below'} ${formatNumber(inLabUnit(upTo, unit), 5)}`;
    return before === null ? name : `${name} above that`;
  });
  return `${parts.join(', ')} (${LAB_UNIT_WORDS[unit]})`;
}

/** Figure of a reading in the lab's unit, without the unit; a dash where only the lab's word is known. */
export function figureWords(reading: NutrientReading, unit: SoilTest['labUnit']): string {
  return reading.mgPerKg === null ? '–' : formatNumber(inLabUnit(reading.mgPerKg, unit), 4);
}

/** What the gate means for products that carry phosphorus, and where lab and table disagree. */
export function gateWords({ verdict, reason, disagreement }: PhosphorusGate): string {
  const more = disagreement === null ? '' : ` ${disagreement}`;
  switch (verdict) {
    case 'refused':
      return `${reason}: no phosphorus is called for. Products that carry it are refused on this ground.${more}`;
    case 'allowed':
      return `${reason}: the soil test does not speak against phosphorus. Local rules may.${more}`;
    case 'no-test':
      return `${reason.charAt(0).toUpperCase()}${reason.slice(1)}: phosphorus is let through as a fallback only.`;
  }
}
