/** What the excess over air is explained by: which of power, dynamic pressure and door were varied, and by enough. */
import { equivalentAirspeed, pressureAt, rho0 } from '../../air/index.ts';
import { inverseOfProduct } from '../../numbers/index.ts';
import { type Flag, flag, OutOfRange } from '../../remarks/index.ts';
import { fromSi, show } from '../../units/index.ts';
import { POWER_WORDS, type PowerMeasure, type Setting, type SteadyReading } from './point.ts';

export type TermName = PowerMeasure | 'dynamic-pressure' | 'cowl-exit-position';

export interface Term {
  name: TermName;
  /** mean of the logarithm over the points: where the constant stands */
  centre: number;
}

export const TERM_WORDS: Readonly<Record<TermName, string>> = {
  ...POWER_WORDS,
  'dynamic-pressure': 'dynamic pressure',
  'cowl-exit-position': 'door',
};

/** Less than this between the ends is not a variation; logarithms, so shares: own choice, no source. */
const LEAST_SPREAD: Readonly<Record<TermName, number>> = {
  'fuel-flow': 0.1,
  'manifold-times-speed': 0.1,
  'dynamic-pressure': 0.2,
  'cowl-exit-position': 0.2,
};

/** A door nearer to shut than this has no logarithm worth the name: what leaks past it is not known. */
export const LEAST_DOOR = 0.05;
/** A term whose variance the others inflate by more than this did not vary apart from them. */
const MOST_INFLATION = 30;
const FLAGGED_INFLATION = 10;

/**
 * Dynamic pressure of a setting: that of equivalent airspeed, half sea-level density times its square.
 * @param cas calibrated airspeed, m/s
 * @param height pressure altitude, m, or null for sea level
 * @returns Pa
 * @throws OutOfRange outside the relations of air data
 * @source q = rho0 Ve^2 / 2 [rp-1046]
 */
export function dynamicPressure(cas: number, height: number | null): number {
  return (rho0 * equivalentAirspeed(cas, pressureAt(height ?? 0)) ** 2) / 2;
}

/** Logarithm of a variable at a setting; null where it is not known or has none. */
export function logOf(name: TermName, setting: Setting, castBy = 0, doorBy = 0): number | null {
  if (name === 'dynamic-pressure') {
    const { cas, height } = setting;
    return cas === null || cas + castBy <= 0 ? null : Math.log(dynamicPressure(cas + castBy, height));
  }
  if (name === 'cowl-exit-position') {
    const { door } = setting;
    return door === null || door < LEAST_DOOR ? null : Math.log(Math.max(LEAST_DOOR, door + doorBy));
  }
  const { power, measure } = setting;
  return measure !== name || power === null || power <= 0 ? null : Math.log(power);
}

/** The three variables of an airplane whose power was measured so; the door only where there is one. */
export function variablesOf(measure: PowerMeasure, hasDoor: boolean): TermName[] {
  return [measure, 'dynamic-pressure', ...(hasDoor ? (['cowl-exit-position'] as const) : [])];
}

/**
 * Terms that the points varied apart from each other.
 * @param readings points that enter a fit, list; every variable known at each
 * @param variables what may be a term, list
 * @param about whose fit it is, for the remarks, text
 * @returns terms, with a remark on each one dropped
 */
export function variedTerms(
  readings: readonly SteadyReading[],
  variables: readonly TermName[],
  about: string,
): { terms: Term[]; flags: Flag[] } {
  const flags: Flag[] = [];
  const say = (words: string) => flags.push(flag('not-resolved', `${about}: ${words}`));
  const terms: Term[] = [];
  for (const name of variables) {
    const logs = readings.map(({ setting }) => logOf(name, setting) ?? Number.NaN);
    const [least, most] = [Math.min(...logs), Math.max(...logs)];
    const term = { name, centre: logs.reduce((sum, one) => sum + one / logs.length, 0) };
    if (most - least < LEAST_SPREAD[name]) {
      say(
        `${TERM_WORDS[name]} was not varied (${spreadWords(least, most)}): it has no exponent, and nothing is said of other values`,
      );
      continue;
    }
    const inflation = inflationOf(readings, [...terms, term]);
    if (inflation > MOST_INFLATION) {
      const others = terms.map((one) => TERM_WORDS[one.name]).join(' and ');
      say(
        `${TERM_WORDS[name]} went with ${others} at every point: one exponent stands for both, along the points flown only`,
      );
      continue;
    }
    if (inflation > FLAGGED_INFLATION)
      say(`${TERM_WORDS[name]} hardly varied apart from the others: its exponent is poorly known`);
    terms.push(term);
  }
  return { terms, flags };
}

function spreadWords(least: number, most: number): string {
  return `${fromSi(Math.expm1(most - least), '%').toFixed(0)} % between the ends`;
}

// How much the other terms inflate the variance of the last one.
function inflationOf(readings: readonly SteadyReading[], terms: readonly Term[]): number {
  const last = terms.length - 1;
  const rows = readings.map(({ setting }) => [
    1,
    ...terms.map(({ name, centre }) => (logOf(name, setting) ?? centre) - centre),
  ]);
  const alone = rows.reduce((sum, row) => sum + (row[last + 1] ?? 0) ** 2, 0);
  try {
    return alone * (inverseOfProduct(rows)[last + 1]?.[last + 1] ?? Number.POSITIVE_INFINITY);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return Number.POSITIVE_INFINITY;
  }
}

/** A variable as a person reads it. */
export function shownVariable(name: TermName, value: number): string {
  if (name === 'fuel-flow') return show(value, 'L/h', { decimals: 1 }).text;
  if (name === 'cowl-exit-position') return show(value, '%', { decimals: 0 }).text;
  if (name === 'dynamic-pressure') return show(value, 'hPa', { decimals: 1 }).text;
  return `${value.toPrecision(3)} Pa/s`;
}
