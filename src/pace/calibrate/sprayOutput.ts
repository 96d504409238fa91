import { M2_PER_ACRE } from '../../units/factors';

/*
 * What a sprayer lays on each m² of ground. All arguments more than 0.
 */

/**
 * 1/128 acre, m²: 340.3 sq ft, printed as 340. A gallon has 128 fl oz, so fl oz caught in the time it takes to
 * spray it are gallons an acre (NC State Extension; Albany County, Wyoming; Kansas State).
 */
export const SMALL_PLOT_M2 = M2_PER_ACRE / 128;

/** Length of a course of a known area at a width, m: 340 sq ft / width (NC State Extension: 6 ft give 57 ft). */
export function courseLength(areaM2: number, widthM: number): number {
  return areaM2 / widthM;
}

/**
 * The walk, m/s, that lays so much spray on each m², from what comes out and how far apart the passes are: the metre form
 * of GPA = 5940 · GPM / (mph · width in in) (Albany County, Wyoming) and of 495 · GPM / (mph · width in ft) (Mesa
 * County, Colorado), turned round.
 */
export function walkOfSpray(flowLPerS: number, rateLPerM2: number, widthM: number): number {
  return flowLPerS / (rateLPerM2 * widthM);
}

/** What was used or caught in the time of a course, per m² of it, L or kg (refill and 1,000 sq ft methods; UMass Extension for spreaders). */
export function rateOfCourse(amount: number, areaM2: number): number {
  return amount / areaM2;
}

/**
 * Product for one litre of finished spray, L or kg: its rate over the spray's (product per acre / GPA: NC State
 * Extension, 8 fl oz per acre at 7.5 GPA: 1.07 fl oz in a gallon, printed 1.06).
 */
export function productPerSpray(productPerM2: number, sprayLPerM2: number): number {
  return productPerM2 / sprayLPerM2;
}
