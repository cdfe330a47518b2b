/** What governs a temperature at each sample of a climb: the heat balance, a thermostat, or a door that sets itself. */
import { type Governing, type Regime, type RegimeSpan, thermostatSpans } from '../../models/index.ts';
import { type SettingWords, steadyLevels } from '../../segments/index.ts';
import type { Climb } from './climbs.ts';
import type { HotTrace, Trace } from './trace.ts';

const DOOR: SettingWords = {
  tolerance: () => 0.03,
  wander: () => 0,
  wanderSeconds: 0,
  bridgeSeconds: 15,
  unrest: () => 0.06,
};
/** A door that stands for less than this has no setting, s. */
const SHORTEST_LEVEL = 45;

export interface DoorLevel {
  /** samples of the climb */
  from: number;
  to: number;
  /** 0..1 */
  exit: number;
}

/**
 * Positions in which the exit door stood during a climb.
 * @param trace the recording on its grid, object
 * @param climb which part, object
 * @returns lasting positions in order, by sample of the climb; null where the door was not logged
 */
export function doorLevels(trace: Trace, climb: Climb): DoorLevel[] | null {
  const part = trace.door?.subarray(climb.from, climb.to + 1);
  if (!part?.some((value) => !Number.isNaN(value))) return null;
  const { dt } = trace.grid;
  return steadyLevels(part, dt, DOOR)
    .filter((one) => (one.to - one.from + 1) * dt >= SHORTEST_LEVEL)
    .map((one) => ({ from: one.from, to: one.to, exit: one.level }));
}

/**
 * The regime at each sample of a climb.
 * @param trace the recording on its grid, object
 * @param climb which part, object
 * @param hot which temperature, object
 * @param governing its thermostat, `none`, or null where nobody knows
 * @param doors lasting positions of the exit door, or null where it was not logged
 * @returns one a sample of the climb
 */
export function regimesAlong(
  trace: Trace,
  climb: Climb,
  hot: HotTrace,
  governing: Governing,
  doors: readonly DoorLevel[] | null,
): Regime[] {
  const n = climb.to - climb.from + 1;
  const regimes = new Array<Regime>(n).fill(governing === 'none' ? 'fully-open' : 'unknown');
  if (governing !== null && governing !== 'none') {
    const spans = thermostatSpans(hot.steady, trace.grid.dt, governing);
    for (const { from, to, regime } of withoutCycling(spans, climb)) {
      regimes.fill(regime, Math.max(0, from - climb.from), Math.max(0, Math.min(n, to - climb.from + 1)));
    }
  }
  if (doors === null) return regimes;
  return regimes.map((regime, i) => (doors.some((one) => i >= one.from && i <= one.to) ? regime : 'regulated'));
}

// Opening once and closing again is a temperature that rose and fell. Opening twice is a thermostat at work.
function withoutCycling(spans: readonly RegimeSpan[], climb: Climb): RegimeSpan[] {
  const inside = spans.filter((span) => span.to >= climb.from && span.from <= climb.to);
  const openings = inside.filter((span) => span.regime === 'fully-open').length;
  return openings < 2 ? inside : [{ from: climb.from, to: climb.to, regime: 'regulated' }];
}
