/** A held condition as later runs need it: kept in the result's model, so that a prediction needs no raw data. */
import * as z from 'zod';
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { type Scatter, studentTQuantile } from '../../numbers/index.ts';
import type { Measured } from './measure.ts';

const keptSchema = z.object({
  tau: z.number().positive(),
  /** T_eq - T_air, K; T_eq itself where no air was logged */
  excess: z.number(),
  excessU: z.number().nonnegative(),
  start: z.number(),
  startPerExcess: z.number(),
  weight: z.number().positive(),
});

export const heldModelSchema = z.object({
  label: z.string(),
  file: z.string(),
  fromSeconds: z.number(),
  toSeconds: z.number(),
  quantity: z.string(),
  /** 1/s */
  engineSpeed: z.number(),
  exit: z.number().nullable(),
  fan: z.boolean().nullable(),
  /** mean air, K; null where none was logged */
  air: z.number().nullable(),
  /** temperature at start and end, K */
  start: z.number(),
  end: z.number(),
  tau: z.number().positive(),
  excess: z.number(),
  resolved: z.boolean(),
  /** what governs was not known */
  regimeKnown: z.boolean(),
  kept: z.array(keptSchema).min(1),
  nu: z.number().positive(),
  /** scatter between two runs, K, and its degrees of freedom */
  repeatU: z.number().nonnegative(),
  repeatNu: z.number().positive(),
  sensorU: z.number().nonnegative(),
  sensorNu: z.number().positive(),
  airU: z.number().nonnegative(),
  allowance: z.number().nonnegative(),
  lag: z.number().nonnegative(),
});

export type HeldModel = z.infer<typeof heldModelSchema>;

/** Lag of a temperature sensor nobody measured, s; common practice, no source. */
export const USUAL_LAG = 7;
/** Degrees of freedom that count as endless: JSON has no infinity. */
const ENDLESS = 1e6;
/** Curves weighing less than this do not change a 5 % quantile. */
const LEAST_WEIGHT = 1e-3;

/**
 * The model of a measured point.
 * @param measured a point with a fit, object
 * @param airplane the description, or undefined
 * @param file what its times count from, text
 * @param repeat scatter of one run, object
 * @returns the model, or null where the point has no fit
 * @throws OutOfRange never: degrees of freedom of a fit are above 0
 */
export function heldModel(
  measured: Measured,
  airplane: Airplane | undefined,
  file: string,
  repeat: Scatter,
): HeldModel | null {
  const { fit, point, hot } = measured;
  if (!fit) return null;
  const sensor = accuracyOf(airplane, hot.quantity);
  const air = accuracyOf(airplane, 'outside-air-temperature');
  return {
    label: point.label,
    file,
    fromSeconds: measured.fromSeconds,
    toSeconds: measured.toSeconds,
    quantity: hot.quantity,
    engineSpeed: point.hold.engineSpeed,
    exit: point.hold.exit,
    fan: point.hold.fan,
    air: measured.air,
    start: fit.start,
    end: measured.end,
    tau: fit.tau,
    excess: fit.excess,
    resolved: measured.equilibrium !== null,
    regimeKnown: measured.regime === 'fully-open',
    kept: keptCurves(measured),
    nu: Math.min(ENDLESS, fit.nu),
    // this run was one draw, the next is another
    repeatU: repeat.s * Math.SQRT2,
    repeatNu: Math.min(ENDLESS, repeat.nu),
    sensorU: sensor.u,
    sensorNu: Math.min(ENDLESS, sensor.nu),
    airU: air.u,
    allowance: measured.allowance,
    lag: measured.lag ?? USUAL_LAG,
  };
}

// Weight of a time constant: the t density of its best misfit, evenly over log tau. Its slowest end is what the data
// cannot rule out; that is wanted, for it is the hot end.
function keptCurves({ fit }: Measured): HeldModel['kept'] {
  if (!fit) return [];
  const { nu, profile } = fit;
  const most = studentTQuantile(0.9995, nu) ** 2;
  const weighed = profile
    .filter((one) => one.over <= most)
    .map((one) => ({
      tau: one.tau,
      excess: one.excess,
      excessU: Math.hypot(one.excessU, fit.stepBias),
      start: one.start,
      startPerExcess: one.startPerExcess,
      weight: (1 + one.over / nu) ** (-(nu + 1) / 2),
    }));
  const heaviest = weighed.reduce((top, one) => Math.max(top, one.weight), 0);
  return weighed.filter((one) => one.weight >= LEAST_WEIGHT * heaviest);
}
