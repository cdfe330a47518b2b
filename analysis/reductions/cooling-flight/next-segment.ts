/** What one more steady point would bring: each corner of what was varied tried, and the doubt that would be left. */
import { coverageFactor } from '../../numbers/index.ts';
import { fromSi } from '../../units/index.ts';
import type { ChannelAnswer } from './channel-fit.ts';
import { dot, excessAt, rowOf } from './fit.ts';
import { logOf, shownVariable, TERM_WORDS, type TermName } from './terms.ts';

export interface NextSegment {
  quantity: string;
  /** values of the variables at the point, SI */
  setting: { name: TermName; value: number }[];
  /** largest U95 of a prediction over the points flown, before and after, K */
  before: number;
  after: number;
}

/**
 * The points worth flying next for one temperature.
 * @param answer with a fit, object
 * @returns candidates, the best first; none without a fit or a varied term
 */
export function nextSegments({ fit, fitted, quantity, variables }: ChannelAnswer): NextSegment[] {
  if (!fit || fit.terms.length === 0) return [];
  const rows = fitted.map(({ setting }) => rowOf(setting, fit.terms));
  const { s, nu } = fit.scatter;
  const widest = (inverse: readonly (readonly number[])[], freedom: number) =>
    coverageFactor(freedom) *
    Math.max(
      ...rows.map((row) => {
        const { u } = excessAt({ beta: fit.beta, inverse: inverse.map((one) => [...one]), scatter: { s } }, row);
        return Math.hypot(u, s);
      }),
    );
  const before = widest(fit.inverse, nu);
  const ends = fit.terms.map(({ name, centre }) => {
    const logs = fitted.map(({ setting }) => (logOf(name, setting) ?? centre) - centre);
    return [Math.min(...logs), Math.max(...logs)];
  });
  const found = corners(ends).map((corner): NextSegment => {
    const row = [1, ...corner];
    const weight = Math.exp(dot(row, fit.beta));
    const setting = variables.map((name) => {
      const k = fit.terms.findIndex((one) => one.name === name);
      const logs = fitted.map((one) => logOf(name, one.setting) ?? Number.NaN);
      const log = k < 0 ? (Math.min(...logs) + Math.max(...logs)) / 2 : (fit.terms[k]?.centre ?? 0) + (corner[k] ?? 0);
      return { name, value: Math.exp(log) };
    });
    return { quantity, setting, before, after: widest(withRow(fit.inverse, row, weight), nu + 1) };
  });
  return found.sort((a, b) => a.after - b.after);
}

function corners(ends: readonly number[][]): number[][] {
  return ends.reduce<number[][]>((list, pair) => list.flatMap((one) => pair.map((end) => [...one, end])), [[]]);
}

// (A + w^2 x x')^-1 from A^-1, by the rank-one formula of Sherman and Morrison.
function withRow(inverse: readonly (readonly number[])[], row: readonly number[], weight: number): number[][] {
  const side = inverse.map((one) => weight * dot(one, row));
  const below = 1 + weight * dot(side, row);
  return inverse.map((one, i) => one.map((value, j) => value - ((side[i] ?? 0) * (side[j] ?? 0)) / below));
}

/** The gain in words: `widest prediction ±4.1 K; one more point at fuel flow 24.0 L/h, door 20 % leaves ±3.6 K`. */
export function gainWords({ before, after, setting }: NextSegment): string {
  const at = setting.map(({ name, value }) => `${TERM_WORDS[name]} ${shownVariable(name, value)}`).join(', ');
  const half = (K: number) => `±${fromSi(K, 'dK').toFixed(1)} K`;
  return `widest prediction ${half(before)}; one more point at ${at} leaves ${half(after)}`;
}
