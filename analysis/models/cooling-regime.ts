/** What governs a temperature at each sample: the heat balance alone, a thermostat, or a stopped engine. */
import type { Airplane } from '../airplane/index.ts';
import type { CooledPart } from './hot-day.ts';

/** `unknown`: nobody said where the thermostat opens. */
export type Regime = 'fully-open' | 'regulated' | 'warming' | 'cooling' | 'unknown';

export interface Thermostat {
  /** begins to open, K */
  start: number;
  /** fully open, K */
  open: number;
  /** the start was not stated and is taken from the opening */
  startAssumed: boolean;
}

/** `none`: nothing regulates (air-cooled, or no thermostat); null: not known. */
export type Governing = Thermostat | 'none' | null;

/** What a person states in place of the airplane's own figures. */
export type StatedThermostat = 'none' | { start: { si: number }; open: { si: number } };

/** A thermostat commonly opens over this range; common practice, no source; K. */
const USUAL_RANGE = 12;

/**
 * What is known of the thermostat.
 * @param airplane the description, or undefined
 * @param stated what a person stated in its place, or undefined
 * @param part what is cooled, name
 * @returns its temperatures, `none`, or null where not known
 * @source a range of 12 K where only the opening is stated [practice]
 */
export function governingOf(
  airplane: Airplane | undefined,
  stated: StatedThermostat | undefined,
  part: CooledPart,
): Governing {
  if (part === 'cylinder-head' || part === 'cylinder-barrel') return 'none';
  if (part === 'oil') return null;
  if (stated === 'none') return 'none';
  const start = stated?.start.si ?? airplane?.cooling.thermostatStart?.si;
  const open = stated?.open.si ?? airplane?.cooling.thermostatOpen?.si;
  if (open === undefined) return null;
  return { start: start ?? open - USUAL_RANGE, open, startAssumed: start === undefined };
}

/** Samples from..to, both included, under one regime. */
export interface RegimeSpan {
  from: number;
  to: number;
  regime: Regime;
}

/** Fully open counts from this far over the opening, held for this long: the wax lags. Common practice, no source. */
export const OVER_OPEN = 2;
const WAX_SECONDS = 30;
/** Once open it counts as open down to this far over the opening, K. */
const STILL_OPEN = 1;

/**
 * A record cut by what the thermostat does: warming below its start, regulated until it has been 2 K over fully open
 * for half a minute, then fully open down to 1 K over.
 * @param steady temperature, smoothed, evenly spaced, K, NaN where missing
 * @param dt spacing, s
 * @param thermostat where it starts to open and is fully open, object
 * @param before temperature just before the record, K; NaN where nobody knows, and the record then begins not open
 * @returns spans in order over the whole record; neighbours differ in regime
 * @source 2 K over fully open for 30 s, wax lag [practice]
 */
export function thermostatSpans(
  steady: ArrayLike<number>,
  dt: number,
  thermostat: Thermostat,
  before: number = Number.NaN,
): RegimeSpan[] {
  const { start, open } = thermostat;
  let isOpen = before > open + OVER_OPEN && (steady[0] ?? before) > open + OVER_OPEN;
  let overSince = isOpen ? 0 : -1;
  const spans: RegimeSpan[] = [];
  let last: Regime = 'warming';
  for (let i = 0; i < steady.length; i += 1) {
    const T = steady[i] ?? Number.NaN;
    if (!Number.isNaN(T)) {
      overSince = T > open + OVER_OPEN ? (overSince < 0 ? i : overSince) : -1;
      if (isOpen) isOpen = T > open + STILL_OPEN;
      else isOpen = overSince >= 0 && (i - overSince) * dt >= WAX_SECONDS;
      last = isOpen ? 'fully-open' : T < start ? 'warming' : 'regulated';
    }
    const span = spans[spans.length - 1];
    if (span?.regime === last) span.to = i;
    else spans.push({ from: i, to: i, regime: last });
  }
  return spans;
}
