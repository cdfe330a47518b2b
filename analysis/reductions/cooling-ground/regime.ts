/** What governs the temperature at each sample: nothing but the heat balance, a thermostat, or a stopped engine. */
import type { Airplane } from '../../airplane/index.ts';
import type { CoolingOptions } from './input.ts';
import type { Hold } from './settings.ts';
import type { HotTrace, Trace } from './trace.ts';

/** `unknown`: nobody said where the thermostat opens. */
export type Regime = 'fully-open' | 'regulated' | 'warming' | 'cooling' | 'unknown';

export interface Thermostat {
  start: number;
  open: number;
  /** the start was not stated and is taken from the opening */
  startAssumed: boolean;
}

/** `none`: nothing regulates (air-cooled, or no thermostat); null: not known. */
export type Governing = Thermostat | 'none' | null;

/** A thermostat commonly opens over this range; common practice, no source; K. */
const USUAL_RANGE = 12;

/**
 * What is known of the thermostat.
 * @param airplane the description, or undefined
 * @param options what a person stated, object
 * @param part what is cooled, name
 * @returns its temperatures, `none`, or null where not known
 */
export function governingOf(
  airplane: Airplane | undefined,
  options: CoolingOptions,
  part: HotTrace['part'],
): Governing {
  if (part === 'cylinder-head') return 'none';
  if (part === 'oil') return null;
  if (options.thermostat === 'none') return 'none';
  const start = options.thermostat?.start.si ?? airplane?.cooling.thermostatStart?.si;
  const open = options.thermostat?.open.si ?? airplane?.cooling.thermostatOpen?.si;
  if (open === undefined) return null;
  return { start: start ?? open - USUAL_RANGE, open, startAssumed: start === undefined };
}

export interface RegimeSpan {
  from: number;
  to: number;
  regime: Regime;
}

/** Fully open counts from this far over the opening, held for this long: the wax lags. Common practice, no source. */
const OVER_OPEN = 2;
const WAX_SECONDS = 30;
/** Once open it counts as open down to this far over the opening, K. */
const STILL_OPEN = 1;

/**
 * A hold cut by regime.
 * @param trace the run, object
 * @param hot the temperature, object
 * @param hold the hold, object
 * @param governing the thermostat, `none` or null
 * @returns spans in order; neighbours differ in regime
 */
export function regimesIn(trace: Trace, hot: HotTrace, hold: Hold, governing: Governing): RegimeSpan[] {
  const whole = (regime: Regime): RegimeSpan[] => [{ from: hold.from, to: hold.to, regime }];
  if (hold.engineSpeed === 0) return whole('cooling');
  if (hold.doorMoving) return whole('regulated');
  if (governing === 'none') return whole('fully-open');
  if (governing === null) return whole('unknown');
  const spans = cutByThermostat(trace, hot, hold, governing);
  // a hold that begins hot has not opened inside it: its first half minute only waits for the wax
  const startsHot = (hot.steady[hold.from] ?? Number.NaN) > governing.open + OVER_OPEN;
  return cycles(startsHot && spans[0]?.regime === 'regulated' ? spans.slice(1) : spans) ? whole('regulated') : spans;
}

function cutByThermostat(trace: Trace, hot: HotTrace, hold: Hold, { start, open }: Thermostat): RegimeSpan[] {
  const { dt } = trace.grid;
  const steady = hot.steady.subarray(hold.from, hold.to + 1);
  const before = hot.steady[hold.from - 1] ?? Number.NaN;
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
    if (span?.regime === last) span.to = hold.from + i;
    else spans.push({ from: hold.from + i, to: hold.from + i, regime: last });
  }
  return spans;
}

// Under one set of conditions a heat balance goes one way. Opening and closing again is a thermostat at work.
function cycles(spans: readonly RegimeSpan[]): boolean {
  const opened = spans.findIndex((span, i) => i > 0 && span.regime === 'fully-open');
  return opened > 0 && spans.slice(opened + 1).some((span) => span.regime === 'regulated');
}
