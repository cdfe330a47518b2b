/** How large the slow part of the scatter about a curve is: what decides how well the curve is known. */
import { scatterWithin } from '../numbers/index.ts';

export interface NoisePower {
  /** variance of a mean over one second's worth of record, times its length: K2 s */
  power: number;
  /** standard deviation of a sample about the curve, freed of the fit's own unknowns, K */
  scatter: number;
  nu: number;
}

/** Least credible correlation time of a temperature, s. */
const CORRELATION_FLOOR = 10;
/** Blocks of this length wash out white noise, which otherwise hides how long gusts hang together, s. */
const BLOCK = 10;

/**
 * Noise power of residuals: the larger of what single samples and what blocks of 10 s show.
 * @param residuals evenly spaced, K
 * @param dt spacing, s
 * @param unknowns of the curve taken out, count
 * @param least variance of a sample below which a recorder's step does not let it appear, K2
 * @returns power, scatter and degrees of freedom
 * @source the within-segment rule with a floor of 10 s [simulation]
 */
export function noisePower(residuals: Float64Array, dt: number, unknowns: number, least: number): NoisePower {
  const single = scatterWithin(residuals, dt, CORRELATION_FLOOR, unknowns);
  const size = Math.max(1, Math.round(BLOCK / dt));
  const blocks = new Float64Array(Math.floor(residuals.length / size)).map((_, b) => {
    let sum = 0;
    for (let i = b * size; i < (b + 1) * size; i += 1) sum += residuals[i] ?? 0;
    return sum / size;
  });
  const slow = scatterWithin(blocks, size * dt, CORRELATION_FLOOR, unknowns);
  // Residuals of a fit are smaller than the errors, the more so the fewer independent ones there are.
  const freed = (part: { nEff: number }) => 1 / Math.max(0.4, 1 - unknowns / part.nEff);
  const ofSingle = Math.max(single.s ** 2 * freed(single), least) * single.inflation * dt;
  const ofBlocks = blocks.length > 2 * unknowns ? slow.s ** 2 * freed(slow) * slow.inflation * size * dt : 0;
  const scatter = Math.sqrt(Math.max(single.s ** 2 * freed(single), least));
  return ofBlocks > ofSingle ? { power: ofBlocks, scatter, nu: slow.nu } : { power: ofSingle, scatter, nu: single.nu };
}
