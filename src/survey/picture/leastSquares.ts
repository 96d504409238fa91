/** A solved least-squares problem. */
export interface LeastSquares {
  readonly solution: readonly number[];
  /** (JᵀJ)⁻¹, row by row: covariance of the solution for rows of unit variance. */
  readonly cofactors: readonly (readonly number[])[];
}

/** A column this much shorter than it was before the others were taken off it counts as lost. */
const RANK_TOLERANCE = 1e-9;

/**
 * Solves min ‖J·x − r‖ by Householder's QR factorisation, columns scaled to one length first.
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., algorithm 5.2.1 and section 5.3.2.
 * @param rows of J, each with one number an unknown, already divided by the row's standard deviation
 * @param right r, likewise
 * @returns null when the rows do not determine every unknown
 * @throws RangeError when there are fewer rows than unknowns, or rows and right sides differ in number
 */
export function solveLeastSquares(
  rows: readonly (readonly number[])[],
  right: readonly number[],
): LeastSquares | null {
  const count = rows[0]?.length ?? 0;
  if (rows.length !== right.length || rows.length < count || count === 0) {
    throw new RangeError(`${rows.length} rows, ${right.length} right sides, ${count} unknowns.`);
  }
  const at = (m: readonly (readonly number[])[], i: number, j: number) => m[i]?.[j] ?? 0;
  const scale = Array.from({ length: count }, (_, j) => Math.hypot(...rows.map((row) => row[j] ?? 0)));
  if (scale.some((length) => !(length > 0 && Number.isFinite(length)))) return null;
  const q = rows.map((row) => row.map((value, j) => value / (scale[j] ?? 1)));
  const y = [...right];
  for (let k = 0; k < count; k++) {
    const below = Math.hypot(...q.slice(k).map((row) => row[k] ?? 0));
    if (!(below > RANK_TOLERANCE)) return null;
    const alpha = at(q, k, k) > 0 ? -below : below;
    const v = q.slice(k).map((row, i) => (row[k] ?? 0) - (i === 0 ? alpha : 0));
    const vv = v.reduce((sum, value) => sum + value * value, 0);
    for (let j = k; j < count; j++) {
      const dot = v.reduce((sum, value, i) => sum + value * at(q, k + i, j), 0);
      v.forEach((value, i) => {
        const row = q[k + i];
        if (row) row[j] = (row[j] ?? 0) - (2 * dot * value) / vv;
      });
    }
    const dot = v.reduce((sum, value, i) => sum + value * (y[k + i] ?? 0), 0);
    v.forEach((value, i) => {
      y[k + i] = (y[k + i] ?? 0) - (2 * dot * value) / vv;
    });
  }
  const inverse = invertUpper(q, count);
  const solution = inverse.map(
    (row, i) => row.reduce((sum, value, j) => sum + value * (y[j] ?? 0), 0) / (scale[i] ?? 1),
  );
  const cofactors = inverse.map((a, i) =>
    inverse.map(
      (b, j) =>
        a.reduce((sum, value, k) => sum + value * (b[k] ?? 0), 0) / ((scale[i] ?? 1) * (scale[j] ?? 1)),
    ),
  );
  return { solution, cofactors };
}

/** R⁻¹ of an upper triangle, by back substitution for each unit column. */
function invertUpper(r: readonly (readonly number[])[], count: number): number[][] {
  const inverse = Array.from({ length: count }, () => new Array<number>(count).fill(0));
  for (let column = 0; column < count; column++) {
    for (let i = column; i >= 0; i--) {
      let sum = i === column ? 1 : 0;
      for (let k = i + 1; k <= column; k++) sum -= (r[i]?.[k] ?? 0) * (inverse[k]?.[column] ?? 0);
      const row = inverse[i];
      if (row) row[column] = sum / (r[i]?.[i] ?? 1);
    }
  }
  return inverse;
}
