/** What time does to a signal: wander with a memory, a sensor that lags, a display that rounds. */
import type { Random } from './random.ts';

/**
 * First-order wander (Gauss-Markov): the spectrum of a gust along the path, of air over a hot apron, of a hand.
 * @param random its stream
 * @param deviation standard deviation of the stationary signal
 * @param memorySeconds time in which its correlation falls to 1/e
 * @param stepSeconds time between two calls
 * @returns the next value at each call
 */
export function wander(random: Random, deviation: number, memorySeconds: number, stepSeconds: number): () => number {
  const keep = Math.exp(-stepSeconds / memorySeconds);
  const kick = deviation * Math.sqrt(1 - keep * keep);
  let value = deviation * random.normal();
  return () => {
    value = keep * value + kick * random.normal();
    return value;
  };
}

/**
 * A first-order lag.
 * @param lagSeconds time constant; 0 follows at once
 * @param stepSeconds time between two calls
 * @returns the lagged value at each call, starting at the first input
 */
export function lag(lagSeconds: number, stepSeconds: number): (input: number) => number {
  const share = lagSeconds > 0 ? 1 - Math.exp(-stepSeconds / lagSeconds) : 1;
  let value: number | null = null;
  return (input) => {
    value = value === null ? input : value + share * (input - value);
    return value;
  };
}

/**
 * A value as a display shows it: `rounded(93.26, 0.5)` is `93.5`. Steps are 1 or more, or divide a power of ten.
 * Written out because the samples hold a million numbers and `toFixed` is the slowest part of writing them.
 */
export function rounded(value: number, step: number): string {
  const steps = Math.round(value / step);
  if (step >= 1) return String(steps * step + 0);
  const decimals = Math.ceil(-Math.log10(step) - 1e-9);
  const scale = POWERS[decimals] ?? 10 ** decimals;
  const whole = Math.abs(Math.round(steps * step * scale));
  const fraction = String(whole % scale).padStart(decimals, '0');
  return `${steps < 0 ? '-' : ''}${Math.trunc(whole / scale)}.${fraction}`;
}

const POWERS = [1, 10, 100, 1000, 10_000, 100_000, 1_000_000];
