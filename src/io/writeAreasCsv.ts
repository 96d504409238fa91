import { surfaceFactor } from '../measure/slope';
import type { MeasuredYard } from '../measure/types';
import { M_PER_FT, M2_PER_SQFT } from '../units/factors';
import type { UnitSystem, Yard } from '../yard/types';
import { csvText, safeText } from './csvText';
import { classOf } from './exportShapes';

/**
 * The areas of zones as a table in the form of `csvText`, the units in the headings.
 * @param zoneIds null: all zones, those without a place on the ground too
 */
export function areasCsv(
  yard: Yard,
  measured: MeasuredYard,
  zoneIds: readonly string[] | null,
  units: UnitSystem,
): string {
  const isUs = units === 'us';
  const [areaUnit, lengthUnit] = isUs ? ['sq ft', 'ft'] : ['m²', 'm'];
  const area = (m2: number) => (m2 / (isUs ? M2_PER_SQFT : 1)).toFixed(isUs ? 1 : 2);
  const zones = yard.zones.filter((zone) => zoneIds === null || zoneIds.includes(zone.id));
  const hasSlope = zones.some((zone) => zone.slope !== null);
  const head = [
    'Zone',
    'Kind',
    'Class',
    `Gross area (${areaUnit})`,
    `Net area (${areaUnit})`,
    `Net area, two standard deviations (${areaUnit})`,
    `Net perimeter (${lengthUnit})`,
    ...(hasSlope ? ['Slope (%)', `Net surface area along the slope (${areaUnit})`] : []),
    `Corner error, one standard deviation (${lengthUnit})`,
    'Measured by',
    'Note',
  ];
  const rows = zones.map((zone) => {
    const own = measured.zones.get(zone.id);
    const surface = own && zone.slope !== null ? area(own.netM2 * surfaceFactor(zone.slope)) : '';
    return [
      safeText(zone.name),
      zone.kind,
      classOf(zone),
      own ? area(own.grossM2) : '',
      own ? area(own.netM2) : '',
      own ? area(2 * own.netSigmaM2) : '',
      own ? (own.netPerimeterM / (isUs ? M_PER_FT : 1)).toFixed(2) : '',
      ...(hasSlope ? [zone.slope === null ? '' : (100 * zone.slope).toFixed(2), surface] : []),
      (zone.survey.vertexSigmaM / (isUs ? M_PER_FT : 1)).toFixed(3),
      zone.survey.method,
      safeText(zone.note),
    ];
  });
  return csvText([head, ...rows]);
}
