import type { Amount, UnitSystem } from '../yard/types';
import {
  type AmountUnit,
  amountLadder,
  areaUnit,
  formatAreaOfPm,
  formatAtPlace,
  placeOf,
  placeOfPm,
} from './format';

/*
 * Columns of figures that belong together: one unit, one decimal place, and rounded so that what is
 * printed adds up to the sum that is printed.
 */

/** A column as text, row by row, with its sum. */
export interface ColumnText {
  readonly parts: readonly string[];
  /** null where the column has no sum. */
  readonly total: string | null;
}

/**
 * Whole steps for each part, together `total`: each is rounded down or up, the largest remainders up
 * (Hamilton's method of apportionment). Parts that do not make up the total are each rounded alone.
 */
function apportion(parts: readonly number[], total: number): readonly number[] {
  const exact = parts.reduce((sum, part) => sum + part, 0);
  const floors = parts.map(Math.floor);
  const missing = total - floors.reduce((sum, part) => sum + part, 0);
  if (Math.abs(total - exact) > 1.001 || missing < 0 || missing > parts.length) return parts.map(Math.round);
  const order = parts
    .map((part, index) => ({ index, rest: part - Math.floor(part) }))
    .sort((a, b) => b.rest - a.rest || a.index - b.index);
  const raised = new Set(order.slice(0, missing).map((each) => each.index));
  return floors.map((floor, index) => floor + (raised.has(index) ? 1 : 0));
}

/** Drops the last places while every number of the column ends in 0 there. */
function trimPlace(steps: readonly number[], place: number): number {
  const ends = (by: number) => steps.every((step) => step % 10 ** by === 0);
  let by = 0;
  while (by < place && ends(by + 1)) by++;
  return place - by;
}

function formatColumn(
  parts: readonly number[],
  total: number | null,
  place: number,
  label: string,
): ColumnText {
  const scale = 10 ** place;
  const totalSteps = total === null ? null : Math.round(total * scale);
  const scaled = parts.map((part) => part * scale);
  const steps = totalSteps === null ? scaled.map(Math.round) : apportion(scaled, totalSteps);
  const hidesOne = steps.some((step, index) => step === 0 && (parts[index] ?? 0) > 0);
  const shownPlace = hidesOne
    ? place
    : trimPlace(totalSteps === null ? steps : [...steps, totalSteps], place);
  const show = (step: number) => `${formatAtPlace(step / scale, shownPlace)}\u00a0${label}`;
  // what is there but rounds to nothing is not called nothing
  const showPart = (step: number, index: number) =>
    step === 0 && (parts[index] ?? 0) > 0 ? `under ${show(1)}` : show(step);
  return { parts: steps.map(showPart), total: totalSteps === null ? null : show(totalSteps) };
}

/**
 * Amounts of one product in one unit, three digits of the largest row and more decimals where a small
 * row would vanish; rows add up to the total as printed.
 * @param parts all in the measure of the total, L or kg, 0 or more
 * @param total their sum; null for rows that are not summed
 * @param bulk volumes as in `formatVolume`
 */
export function formatAmounts(
  parts: readonly Amount[],
  total: Amount | null,
  system: UnitSystem,
  bulk = false,
): ColumnText {
  const values = parts.map((part) => part.value);
  const largest = Math.max(0, ...values);
  const first = total?.unit ?? parts[0]?.unit ?? 'kg';
  const unit: AmountUnit = amountLadder(first, system, bulk, largest);
  const inUnit = values.map((value) => value / unit.si);
  const least = Math.min(...inUnit.filter((value) => value > 0), largest / unit.si);
  const place = placeOf(largest / unit.si, 3);
  const fine = Math.max(place, Math.min(place + 2, placeOf(least, 2)));
  return formatColumn(inUnit, total && total.value / unit.si, Math.max(0, fine), unit.label);
}

/**
 * Areas in one unit at one decimal place: that which the ± of the total asks for (see `formatAreaPm`), at
 * most four digits of the total. Rows add up to the total as printed.
 * @param totalSigmaM2 one standard deviation of the total, m²; 0 when not known
 */
export function formatAreas(
  partsM2: readonly number[],
  totalM2: number,
  totalSigmaM2: number,
  system: UnitSystem,
): ColumnText {
  const { unit, place } = columnOfAreas(totalM2, totalSigmaM2, system);
  const parts = partsM2.map((part) => part / unit.si);
  return formatColumn(parts, totalM2 / unit.si, place, unit.label);
}

/**
 * Areas of zones beside their sum, each at the place of its own ± as on the map and in lists (`formatAreaOfPm`),
 * the total as `formatAreas` has it.
 * @param parts areas and one standard deviation of each, m²; 0 when not known
 * @returns `isOff`: the rows as printed do not make up the total as printed
 */
export function formatZoneAreas(
  parts: readonly { readonly areaM2: number; readonly sigmaM2: number }[],
  totalM2: number,
  totalSigmaM2: number,
  system: UnitSystem,
): ColumnText & { readonly isOff: boolean } {
  const { unit, place } = columnOfAreas(totalM2, totalSigmaM2, system);
  const total = formatColumn([], totalM2 / unit.si, place, unit.label).total ?? '';
  const texts = parts.map(({ areaM2, sigmaM2 }) => formatAreaOfPm(areaM2, sigmaM2, system));
  const numberOf = (text: string) => Number(text.replace(/[^\d.].*$/, ''));
  const sum = texts.reduce((all, text) => all + numberOf(text.replaceAll(',', '')), 0);
  const isOneUnit = texts.every((text) => text.endsWith(`\u00a0${unit.label}`));
  const isOff = !isOneUnit || Math.abs(sum - numberOf(total.replaceAll(',', ''))) > 1e-6;
  return { parts: texts, total, isOff };
}

function columnOfAreas(totalM2: number, totalSigmaM2: number, system: UnitSystem) {
  const unit = areaUnit(totalM2, system);
  const finest = Math.max(0, placeOf(totalM2 / unit.si, 4));
  const place = totalSigmaM2 > 0 ? Math.min(placeOfPm(totalM2, totalSigmaM2, system), finest) : finest;
  return { unit, place };
}

/**
 * The account of a net area, "drawn less what cuts it", at the decimal place its ± gives the net area
 * (see `formatAreaPm`), so that drawn less cuts is the net area as printed.
 * @param cutsM2 together drawn less net
 */
export function formatCuts(
  grossM2: number,
  cutsM2: readonly number[],
  netM2: number,
  netSigmaM2: number,
  system: UnitSystem,
): { readonly gross: string; readonly cuts: readonly string[] } {
  const unit = areaUnit(netM2, system);
  const place = placeOfPm(netM2, netSigmaM2, system);
  const scale = 10 ** place;
  const gross = Math.round((grossM2 / unit.si) * scale);
  const net = Math.round((netM2 / unit.si) * scale);
  const column = formatColumn(
    cutsM2.map((cut) => cut / unit.si),
    (gross - net) / scale,
    place,
    unit.label,
  );
  return { gross: `${formatAtPlace(gross / scale, place)}\u00a0${unit.label}`, cuts: column.parts };
}
