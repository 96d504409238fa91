import { formatDay } from '../units/formatDay';
import { ELEMENT_NAMES } from '../yard/elementNames';
import { type Issue, SOIL_NUTRIENTS, type SoilNutrient, type SoilTest } from '../yard/types';
import { tableOfTest } from './interpretSoil';
import { formatSoil } from './labUnits';
import { EXTRACTANT_WORDS } from './soilNames';
import { SOIL_TABLES } from './tables';

/** Soils of gardens and lawns lie inside; outside is a slip. Common practice, no source. */
const PH_RANGE = [3.5, 10] as const;

/**
 * Most that a lab draws out of soils of gardens and lawns, mg/kg, heavily manured, chalky and salty ones among
 * them; above it is a slip of figure or unit. Common practice, no source.
 */
const MOST_MG_PER_KG: Readonly<Record<SoilNutrient, number>> = {
  P: 1500,
  K: 3000,
  Ca: 30_000,
  Mg: 5000,
  S: 3000,
  Fe: 2000,
  Mn: 2000,
  Zn: 500,
  Cu: 500,
  B: 50,
  Na: 5000,
};

/** Above this pH a lab should use Olsen, at or below it Bray-1: Washington State Univ., Phosphorus and Home Lawns. */
const BRAY_OR_OLSEN_PH = 7;

/**
 * What is doubtful in a soil test, each as one plain sentence with the field in `place.path`. Nothing here
 * stops the test from being read.
 * @param today YYYY-MM-DD
 */
export function checkSoilTest(test: SoilTest, today: string): readonly Issue[] {
  const issues: Issue[] = [];
  const add = (code: string, severity: Issue['severity'], path: string, message: string) =>
    issues.push({ code, severity, message, place: { soilTestId: test.id, path } });
  const { zones, date, ph, bufferPh, extractant } = test;
  if (zones.classes.length === 0 && zones.include.length === 0) {
    add(
      'soil-no-ground',
      'warning',
      'zones',
      'Choose the ground the soil was taken from; without it the test counts for none.',
    );
  }
  if (date === null) {
    add(
      'soil-no-date',
      'warning',
      'date',
      'Without a day of sampling it counts as older than any other test.',
    );
  } else if (date > today) {
    add(
      'soil-date-ahead',
      'warning',
      'date',
      `The day of sampling, ${formatDay(date, true)}, is still to come.`,
    );
  }
  for (const [path, value] of [
    ['ph', ph],
    ['bufferPh', bufferPh],
  ] as const) {
    if (value !== null && (value < PH_RANGE[0] || value > PH_RANGE[1])) {
      const what = path === 'ph' ? 'A pH' : 'A buffer pH';
      add(
        'soil-ph-range',
        'warning',
        path,
        `${what} of ${value} is hardly met with in soil; look at the report again.`,
      );
    }
  }
  for (const nutrient of SOIL_NUTRIENTS) {
    const value = test.mgPerKg[nutrient];
    if (value !== undefined && value > MOST_MG_PER_KG[nutrient])
      add(
        'soil-figure-range',
        'warning',
        `mgPerKg.${nutrient}`,
        `${ELEMENT_NAMES[nutrient]} of ${formatSoil(value, test.labUnit)} is hardly met with in soil; look at the figure and its unit on the report again.`,
      );
  }
  const isMeasured = test.mgPerKg.P !== undefined && ph !== null;
  if (isMeasured && extractant === 'bray-1' && ph > BRAY_OR_OLSEN_PH) {
    add(
      'soil-bray-alkaline',
      'note',
      'extractant',
      'Bray-1 is meant for soils of pH 7 or lower; above that labs use Olsen for phosphorus (Washington State Univ.).',
    );
  }
  if (isMeasured && extractant === 'olsen' && ph <= BRAY_OR_OLSEN_PH) {
    add(
      'soil-olsen-acid',
      'note',
      'extractant',
      'Olsen is meant for soils above pH 7; at or below that labs use Bray-1 for phosphorus (Washington State Univ.).',
    );
  }
  const used = tableOfTest(test);
  if (test.tableId !== '' && used?.id !== test.tableId) {
    const chosen = SOIL_TABLES.find((table) => table.id === test.tableId);
    const why = chosen
      ? `“${chosen.name}” reads ${EXTRACTANT_WORDS[chosen.extractant]}, not ${EXTRACTANT_WORDS[extractant]}`
      : 'The table it names is not known here';
    add(
      'soil-table-other',
      'warning',
      'tableId',
      `${why}; ${used ? `“${used.name}” is used instead` : 'no table is used'}.`,
    );
  }
  return issues;
}
