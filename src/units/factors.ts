/**
 * Conversion factors, all exact by definition unless the comment says otherwise.
 * One home for each: no other file states a factor.
 * Source: NIST Handbook 44 (appendix C) and NIST SP 811 (appendix B); the international foot is the
 * only foot since 31 Dec 2022 (Federal Register notice 2020-21902).
 */

/** metres in one international foot (exact). */
export const M_PER_FT = 0.3048;
/** metres in one inch (exact). */
export const M_PER_IN = 0.0254;
/** metres in one yard (exact). */
export const M_PER_YD = 0.9144;
/** metres in one statute mile (exact). */
export const M_PER_MILE = 1609.344;
/** square metres in one square foot (exact). */
export const M2_PER_SQFT = M_PER_FT * M_PER_FT;
/** square metres in 1,000 square feet (exact). */
export const M2_PER_1000_SQFT = M2_PER_SQFT * 1000;
/** square metres in one acre of 43,560 square feet (exact). */
export const M2_PER_ACRE = M2_PER_SQFT * 43560;
/** square metres in one hectare (exact). */
export const M2_PER_HA = 10000;
/** kilograms in one avoirdupois pound (exact). */
export const KG_PER_LB = 0.45359237;
/** kg/m² in one pound per 1,000 square feet (exact). */
export const KG_PER_M2_OF_LB_PER_1000_SQFT = KG_PER_LB / M2_PER_1000_SQFT;
/** kilograms in one avoirdupois ounce (exact). */
export const KG_PER_OZ = KG_PER_LB / 16;
/** litres in one US liquid gallon of 231 cubic inches (exact). */
export const L_PER_GAL = 3.785411784;
/** litres in one US liquid quart (exact). */
export const L_PER_QT = L_PER_GAL / 4;
/** litres in one US liquid pint (exact). */
export const L_PER_PT = L_PER_GAL / 8;
/** litres in one US fluid ounce (exact). */
export const L_PER_FLOZ = L_PER_GAL / 128;
/** litres in one cubic foot (exact). */
export const L_PER_CUFT = 28.316846592;
/** litres in one cubic yard (exact). */
export const L_PER_CUYD = L_PER_CUFT * 27;
/** litres in one cubic metre (exact). */
export const L_PER_M3 = 1000;

/**
 * kilograms of elemental P in one kilogram of P2O5, from the standard atomic weights
 * P 30.973762, O 15.999: 2 P / (2 P + 5 O) = 0.43643.
 * Virginia Tech SPES-201NP, table 1, prints 0.4365.
 */
export const P_PER_P2O5 = (2 * 30.973762) / (2 * 30.973762 + 5 * 15.999);
/**
 * kilograms of elemental K in one kilogram of K2O, from K 39.0983, O 15.999: 0.83015.
 * Virginia Tech SPES-201NP, table 1, prints 0.8301.
 */
export const K_PER_K2O = (2 * 39.0983) / (2 * 39.0983 + 15.999);
