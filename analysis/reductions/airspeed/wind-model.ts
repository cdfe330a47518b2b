/** What the wind may do between legs: one for all, or drifting with time, or changing with height, or one an outing. */
import { type Leg, meanOf, middleOf } from './leg.ts';

export interface WindModel {
  /** unit vectors the wind is solved along: north and east, or the course where only that was flown */
  axes: { north: number; east: number }[];
  /** terms of each leg that multiply the unknowns of an axis, one row a leg */
  basis: number[][];
  terms: string[];
  /** legs in one outing share a wind; those after a long pause have another */
  epochOf: number[];
  epochs: number;
  drift: boolean;
  withHeight: boolean;
  /** middle in time of each outing, s, and mean height, m: where its wind is quoted */
  middles: number[];
  height: number;
}

/** A pause longer than this between legs starts a wind of its own, s. */
const PAUSE = 30 * 60;
/** Drift is a thousandth of a second's change in this time, s: keeps the unknowns of one size. */
const DRIFT_TIME = 1000;
const HEIGHT_SCALE = 100;
/** Legs must reach over this height to tell a change of wind with height, m. */
const HEIGHT_SPAN = 150;
/** Degrees of freedom that must be left over for a drift, and for a change with height as well. */
export const DRIFT_FROM = 4;
export const HEIGHT_FROM = 6;

/**
 * The richest wind the legs can carry.
 * @param legs all legs
 * @param speeds unknowns of speed beside the wind, count
 * @returns the model
 */
export function windModel(legs: readonly Leg[], speeds: number): WindModel {
  const axes = axesOf(legs);
  const { epochOf, epochs } = epochsOf(legs);
  const spare = (terms: number) => legs.length - speeds - axes.length * terms;
  const timed = legs.some((leg) => middleOf(leg) !== middleOf(legs[0] ?? leg));
  const drift = timed && spare(epochs + 1) >= DRIFT_FROM;
  const heights = legs.map((leg) => meanOf(leg.samples.height));
  const known = heights.filter((h) => !Number.isNaN(h));
  const withHeight =
    axes.length === 2 &&
    Math.max(...known) - Math.min(...known) >= HEIGHT_SPAN &&
    spare(epochs + (drift ? 1 : 0) + 1) >= HEIGHT_FROM;
  return assemble(legs, { axes, epochOf, epochs, drift, withHeight });
}

/**
 * Plainer winds to fall back on, the richer first: without the change with height, then held constant in an outing.
 * @param legs all legs
 * @param model the richest wind
 * @returns it and the plainer ones, each once
 */
export function plainerWinds(legs: readonly Leg[], model: WindModel): WindModel[] {
  return [
    model,
    ...(model.drift && model.withHeight ? [assemble(legs, { ...model, withHeight: false })] : []),
    ...(model.drift || model.withHeight ? [assemble(legs, { ...model, drift: false, withHeight: false })] : []),
  ];
}

function assemble(
  legs: readonly Leg[],
  plan: Pick<WindModel, 'axes' | 'epochOf' | 'epochs' | 'drift' | 'withHeight'>,
): WindModel {
  const middles = Array.from({ length: plan.epochs }, (_, e) =>
    meanOf(legs.filter((_, i) => plan.epochOf[i] === e).map(middleOf)),
  );
  const height = meanOf(legs.map((leg) => meanOf(leg.samples.height)));
  const model: WindModel = {
    ...plan,
    basis: [],
    terms: [
      ...Array.from({ length: plan.epochs }, (_, e) => (plan.epochs > 1 ? `outing ${e + 1}` : 'mean')),
      ...(plan.drift ? ['drift'] : []),
      ...(plan.withHeight ? ['height'] : []),
    ],
    middles,
    height,
  };
  model.basis = legs.map((leg, i) => basisAt(model, plan.epochOf[i] ?? 0, middleOf(leg), meanOf(leg.samples.height)));
  return model;
}

/**
 * Terms that multiply the unknowns of an axis at a time and height.
 * @param model the wind
 * @param epoch which outing, from 0
 * @param seconds time, s
 * @param height pressure altitude, m
 * @returns one term an unknown of an axis
 */
export function basisAt(model: WindModel, epoch: number, seconds: number, height: number): number[] {
  return [
    ...Array.from({ length: model.epochs }, (_, e) => (e === epoch ? 1 : 0)),
    ...(model.drift ? [(seconds - (model.middles[epoch] ?? 0)) / DRIFT_TIME] : []),
    ...(model.withHeight ? [(height - model.height) / HEIGHT_SCALE] : []),
  ];
}

// Runs to and fro on one course tell the wind along it and nothing across.
function axesOf(legs: readonly Leg[]): WindModel['axes'] {
  const first = legs[0]?.along;
  const oneCourse =
    first && legs.every(({ along }) => along && Math.abs(along.north * first.east - along.east * first.north) < 0.05);
  if (first && oneCourse) return [first];
  return [
    { north: 1, east: 0 },
    { north: 0, east: 1 },
  ];
}

function epochsOf(legs: readonly Leg[]): { epochOf: number[]; epochs: number } {
  const order = legs.map((_, i) => i).sort((a, b) => middleOf(legs[a] as Leg) - middleOf(legs[b] as Leg));
  const epochOf = legs.map(() => 0);
  let epoch = 0;
  order.forEach((i, k) => {
    const before = order[k - 1];
    const from = legs[i]?.fromSeconds ?? 0;
    const last = before === undefined ? from : (legs[before]?.toSeconds ?? from);
    if (from - last > PAUSE) epoch += 1;
    epochOf[i] = epoch;
  });
  return { epochOf, epochs: epoch + 1 };
}
