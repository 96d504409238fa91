/**
 * Solves N·u = g for a symmetric positive definite matrix by Cholesky's method.
 * Source: any textbook of numerical linear algebra (Golub & Van Loan, "Matrix Computations").
 * @param matrix rows of N; only the lower triangle is read; not changed
 * @returns u; null when N is not positive definite
 */
export function createSymmetricSolver(
  matrix: readonly (readonly number[])[],
): ((right: readonly number[]) => number[]) | null {
  const size = matrix.length;
  const lower: Float64Array[] = [];
  for (let i = 0; i < size; i++) {
    const row = new Float64Array(i + 1);
    lower.push(row);
    for (let j = 0; j <= i; j++) {
      const other = lower[j] as Float64Array;
      let sum = matrix[i]?.[j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (row[k] as number) * (other[k] as number);
      if (j < i) row[j] = sum / (other[j] as number);
      else if (sum > 0) row[i] = Math.sqrt(sum);
      else return null;
    }
  }
  return (right) => {
    const u = right.slice();
    for (let i = 0; i < size; i++) {
      const row = lower[i] as Float64Array;
      let sum = u[i] as number;
      for (let k = 0; k < i; k++) sum -= (row[k] as number) * (u[k] as number);
      u[i] = sum / (row[i] as number);
    }
    for (let i = size - 1; i >= 0; i--) {
      let sum = u[i] as number;
      for (let k = i + 1; k < size; k++) sum -= (lower[k]?.[i] as number) * (u[k] as number);
      u[i] = sum / (lower[i]?.[i] as number);
    }
    return u;
  };
}
