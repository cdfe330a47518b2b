/** What governs the temperature in a hold of a ground run: nothing but the heat balance, a thermostat, a stopped engine. */
import {
  type Governing,
  OVER_OPEN,
  type Regime,
  type RegimeSpan,
  type Thermostat,
  thermostatSpans,
} from '../../models/index.ts';
import type { Hold } from './settings.ts';
import type { HotTrace, Trace } from './trace.ts';

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
  const spans = spansOf(trace, hot, hold, governing);
  // a hold that begins hot has not opened inside it: its first half minute only waits for the wax
  const startsHot = (hot.steady[hold.from] ?? Number.NaN) > governing.open + OVER_OPEN;
  return cycles(startsHot && spans[0]?.regime === 'regulated' ? spans.slice(1) : spans) ? whole('regulated') : spans;
}

function spansOf(trace: Trace, hot: HotTrace, hold: Hold, governing: Thermostat): RegimeSpan[] {
  const steady = hot.steady.subarray(hold.from, hold.to + 1);
  const spans = thermostatSpans(steady, trace.grid.dt, governing, hot.steady[hold.from - 1]);
  return spans.map((span) => ({ ...span, from: hold.from + span.from, to: hold.from + span.to }));
}

// Under one set of conditions a heat balance goes one way. Opening and closing again is a thermostat at work.
function cycles(spans: readonly RegimeSpan[]): boolean {
  const opened = spans.findIndex((span, i) => i > 0 && span.regime === 'fully-open');
  return opened > 0 && spans.slice(opened + 1).some((span) => span.regime === 'regulated');
}
