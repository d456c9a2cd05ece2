/**
 * Factors a symmetric positive definite matrix (full square, row by row; only the lower half is read) in place: the
 * lower half becomes L with L L^T the matrix.
 */
export function factorise(m: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) {
    const rowJ = j * n;
    for (let i = j; i < n; i++) {
      const rowI = i * n;
      let sum = m[rowI + j] as number;
      for (let k = 0; k < j; k++) sum -= (m[rowI + k] as number) * (m[rowJ + k] as number);
      m[rowI + j] = i === j ? Math.sqrt(Math.max(sum, Number.MIN_VALUE)) : sum / (m[rowJ + j] as number);
    }
  }
}

/** Solves L L^T x = b in place. */
export function solve(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i] as number;
    for (let k = 0; k < i; k++) sum -= (l[i * n + k] as number) * (b[k] as number);
    b[i] = sum / (l[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i--) {
    const x = (b[i] as number) / (l[i * n + i] as number);
    b[i] = x;
    for (let k = 0; k < i; k++) b[k] = (b[k] as number) - (l[i * n + k] as number) * x;
  }
}
