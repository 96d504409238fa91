import type { UnitSystem } from '../yard/types';
import { L_PER_FLOZ, L_PER_GAL, M_PER_MILE } from './factors';
import { formatAtPlace, formatNumber } from './format';

/*
 * Speeds, flows and times of a walk to text: SI in, value and unit out. What is not finite gives a dash.
 */

const NB = '\u00a0';
const DASH = '–';

/** A walking speed, m/s: mph or km/h with one decimal, two under one. */
export function formatSpeed(speedMPerS: number, system: UnitSystem): string {
  if (!Number.isFinite(speedMPerS)) return DASH;
  const [value, label] =
    system === 'us' ? [(speedMPerS * 3600) / M_PER_MILE, 'mph'] : [speedMPerS * 3.6, 'km/h'];
  return `${formatAtPlace(value, Math.abs(value) < 0.995 ? 2 : 1)}${NB}${label}`;
}

/** What comes out of hose or nozzle, L/s: gal/min (fl oz/min under a quarter gallon) or L/min (mL/min under one litre). */
export function formatFlow(flowLPerS: number, system: UnitSystem): string {
  if (!Number.isFinite(flowLPerS)) return DASH;
  const perMinL = flowLPerS * 60;
  if (system === 'metric')
    return perMinL >= 0.9995 || perMinL === 0
      ? `${formatNumber(perMinL)}${NB}L/min`
      : `${formatNumber(perMinL * 1000)}${NB}mL/min`;
  return perMinL >= L_PER_GAL / 4 || perMinL === 0
    ? `${formatNumber(perMinL / L_PER_GAL)}${NB}gal/min`
    : `${formatNumber(perMinL / L_PER_FLOZ)}${NB}fl${NB}oz/min`;
}

/** A reading of a stopwatch: "17.4 s". */
export function formatReading(seconds: number): string {
  return Number.isFinite(seconds) ? `${formatAtPlace(seconds, 1)}${NB}s` : DASH;
}

/** A time of work: "8.5 s" under ten seconds, "48 s", "2 min 05 s", "1 h 12 min". */
export function formatClock(seconds: number): string {
  if (!Number.isFinite(seconds)) return DASH;
  if (seconds < 9.95) return `${formatAtPlace(seconds, 1)}${NB}s`;
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole}${NB}s`;
  const two = (value: number) => String(value).padStart(2, '0');
  if (whole < 3600) return `${Math.floor(whole / 60)}${NB}min ${two(whole % 60)}${NB}s`;
  const minutes = Math.round(seconds / 60);
  return `${Math.floor(minutes / 60)}${NB}h ${two(minutes % 60)}${NB}min`;
}
