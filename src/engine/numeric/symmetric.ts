/** Systems of a symmetric, positive matrix, by Cholesky's factors (Golub & Van Loan, Matrix Computations, 4.2). */

/** Factors of `n` rows, row by row; the lower half of `a` is read. Error for a matrix that is not positive. */
export function factorsOf(a: Float64Array, n: number): Float64Array {
  const l = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j]!
      for (let k = 0; k < j; k++) sum -= l[i * n + k]! * l[j * n + k]!
      if (i === j && !(sum > 0)) throw new Error(`row ${i} of the matrix is not positive`)
      l[i * n + j] = i === j ? Math.sqrt(sum) : sum / l[j * n + j]!
    }
  return l
}

/** The x of `a x = b` by the factors of `a`. */
export function solvedBy(l: Float64Array, b: Float64Array): Float64Array {
  const n = b.length
  const x = b.slice()
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = x[i]! - l[i * n + k]! * x[k]!
    x[i] = x[i]! / l[i * n + i]!
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = x[i]! - l[k * n + i]! * x[k]!
    x[i] = x[i]! / l[i * n + i]!
  }
  return x
}
