/**
 * Wind and speed unknowns of all legs together by least squares: | Vg - W | = TAS on every leg, unit weights, because
 * what differs between legs (wind, air, hands) outweighs the noise within them.
 */
import { type LeastSquaresFit, leastSquares } from '../../numbers/index.ts';
import { startingWind } from './circle.ts';
import type { Leg } from './leg.ts';
import type { LinearLeg } from './linear-legs.ts';
import type { WindModel } from './wind-model.ts';

/** How the correction of a leg follows from unknowns: one a speed, or the coefficients of a curve. */
export interface SpeedModel {
  start: number[];
  /** correction of a leg, m/s */
  correction(leg: number, unknowns: readonly number[]): number;
  /** its change with each unknown */
  gradient(leg: number, unknowns: readonly number[]): readonly number[];
}

export interface LegFit extends LeastSquaresFit {
  /** unknowns of the wind, axis by axis */
  wind: number[];
  speeds: number[];
  /** wind of each leg, m/s */
  windOf: { north: number; east: number }[];
}

/**
 * Solve the legs.
 * @param legs all legs
 * @param linear true airspeed of each near its trial correction
 * @param wind what the wind may do
 * @param model what the correction may do
 * @returns unknowns with (J'J)^-1 in the order wind, speeds; residuals |Vg - W| - TAS, m/s, one a leg
 * @throws OutOfRange when there are fewer legs than unknowns or the legs do not separate them
 * @source joint solution over legs after Gray 1998, by Levenberg and Marquardt [gray-1998]
 */
export function fitLegs(
  legs: readonly Leg[],
  linear: readonly LinearLeg[],
  wind: WindModel,
  model: SpeedModel,
): LegFit {
  const windUnknowns = wind.axes.length * wind.terms.length;
  const start = [...startUnknowns(legs, linear, wind, model), ...model.start];
  const split = (x: readonly number[]) => ({ w: x.slice(0, windUnknowns), c: x.slice(windUnknowns) });
  const fit = leastSquares({
    start,
    scale: start.map((_, j) => (j < windUnknowns ? 1 : Math.max(1e-3, Math.abs(start[j] ?? 0)))),
    residuals: (x) => {
      const { w, c } = split(x);
      return legs.map((leg, i) => airspeedOver(leg, windOfLeg(wind, w, i)).speed - tasOf(linear, model, i, c));
    },
    jacobian: (x) => {
      const { w, c } = split(x);
      return legs.map((leg, i) => {
        const { north, east } = airspeedOver(leg, windOfLeg(wind, w, i));
        const basis = wind.basis[i] ?? [];
        const slope = linear[i]?.slope ?? 1;
        return [
          ...wind.axes.flatMap((axis) => basis.map((term) => -(north * axis.north + east * axis.east) * term)),
          ...model.gradient(i, c).map((change) => -slope * change),
        ];
      });
    },
  });
  const { w, c } = split(fit.parameters);
  return { ...fit, wind: w, speeds: c, windOf: legs.map((_, i) => windOfLeg(wind, w, i)) };
}

/**
 * Residual of each sample of a leg, |Vg - W| - TAS at the fitted correction.
 * @param leg the leg
 * @param linear its true airspeeds
 * @param correction fitted correction at the leg's mean airspeed, m/s
 * @param windThere its wind, m/s
 * @returns m/s, one a sample
 */
export function sampleResiduals(
  leg: Leg,
  linear: LinearLeg,
  correction: number,
  windThere: { north: number; east: number },
): Float64Array {
  const more = linear.slope * (correction - linear.trial);
  return leg.samples.north.map((north, k) => {
    const east = leg.samples.east[k] ?? Number.NaN;
    return overGround(leg, north, east, windThere) - (linear.each[k] ?? 0) - more;
  });
}

/** Mean speed through the air that the satellites and a wind imply, and the mean unit vector it points along. */
function airspeedOver(leg: Leg, w: { north: number; east: number }): { speed: number; north: number; east: number } {
  const { samples, along } = leg;
  const n = samples.north.length;
  let [speed, north, east] = [0, 0, 0];
  for (let k = 0; k < n; k += 1) {
    const [vn, ve] = [samples.north[k] ?? 0, samples.east[k] ?? 0];
    const v = overGround(leg, vn, ve, w);
    speed += v / n;
    north += (along ? along.north : (vn - w.north) / v) / n;
    east += (along ? along.east : (ve - w.east) / v) / n;
  }
  return { speed, north, east };
}

// On a course flown on its heading only the component along it counts; drift does not.
function overGround(leg: Leg, north: number, east: number, w: { north: number; east: number }): number {
  const { along } = leg;
  if (along) return (north - w.north) * along.north + (east - w.east) * along.east;
  return Math.hypot(north - w.north, east - w.east);
}

function tasOf(linear: readonly LinearLeg[], model: SpeedModel, i: number, unknowns: readonly number[]): number {
  const one = linear[i];
  return one ? one.tas + one.slope * (model.correction(i, unknowns) - one.trial) : Number.NaN;
}

/**
 * Wind of a leg from the unknowns of the wind.
 * @param wind the model
 * @param unknowns axis by axis
 * @param basis terms at the leg
 * @returns where the air moves to, m/s
 */
export function windFromUnknowns(
  wind: WindModel,
  unknowns: readonly number[],
  basis: readonly number[],
): { north: number; east: number } {
  const size = wind.terms.length;
  let [north, east] = [0, 0];
  wind.axes.forEach((axis, a) => {
    const along = basis.reduce((sum, term, k) => sum + term * (unknowns[a * size + k] ?? 0), 0);
    north += along * axis.north;
    east += along * axis.east;
  });
  return { north, east };
}

function windOfLeg(wind: WindModel, unknowns: readonly number[], i: number): { north: number; east: number } {
  return windFromUnknowns(wind, unknowns, wind.basis[i] ?? []);
}

function startUnknowns(
  legs: readonly Leg[],
  linear: readonly LinearLeg[],
  wind: WindModel,
  model: SpeedModel,
): number[] {
  const guess = startingWind(
    legs.map((leg, i) => ({
      north: meanOfSamples(leg.samples.north),
      east: meanOfSamples(leg.samples.east),
      along: leg.along !== null,
      tas: tasOf(linear, model, i, model.start),
    })),
  );
  return wind.axes.flatMap((axis) =>
    wind.terms.map((_, k) => (k < wind.epochs ? guess.north * axis.north + guess.east * axis.east : 0)),
  );
}

function meanOfSamples(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value / values.length, 0);
}
