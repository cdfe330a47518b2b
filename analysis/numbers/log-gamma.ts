/** Logarithm of the gamma function, for the distributions beside it. */

// Lanczos, g = 7, nine terms.
const G = 7;
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/**
 * ln Gamma(x); relative error under 1e-13.
 * @param x argument, above 0, pure number
 * @returns ln Gamma(x), pure number
 * @source Lanczos approximation, coefficients from memory, checked against factorials and the half-integer values [memory]
 */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x); // reflection
  const y = x - 1;
  let sum: number = LANCZOS[0];
  for (let i = 1; i < LANCZOS.length; i += 1) sum += (LANCZOS[i] ?? 0) / (y + i);
  const t = y + G + 0.5;
  return 0.5 * Math.log(2 * Math.PI) + (y + 0.5) * Math.log(t) - t + Math.log(sum);
}
