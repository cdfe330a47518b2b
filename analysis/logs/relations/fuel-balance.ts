/** Fuel flow against what went out of the tanks or was counted as used. */
import { toSi } from '../../units/index.ts';
import { type ScaledColumn, type ScaleEvidence, someRows } from './scale-evidence.ts';

const TOLERANCE = 0.25;
/** Steps of its own resolution that the volume must have changed by. */
const LEAST_STEPS = 8;

/**
 * What a volume of fuel says about the unit of a flow.
 * @param flow the flow, values as written
 * @param volume fuel used, or the quantity in one tank, whose unit is taken as known
 * @param t seconds of the rows, s
 * @returns evidence, or null where too little fuel went to tell
 */
export function flowFromVolume(flow: ScaledColumn, volume: ScaledColumn, t: Float64Array): ScaleEvidence | null {
  const { unit } = volume;
  if (unit === null) return null;
  let written = 0;
  let first = Number.NaN;
  let last = Number.NaN;
  let step = Number.POSITIVE_INFINITY;
  let before = 0;
  for (const i of someRows(t.length)) {
    const seconds = (t[i] ?? 0) - (t[before] ?? 0);
    before = i;
    const value = flow.numbers[i] ?? Number.NaN;
    const level = volume.numbers[i] ?? Number.NaN;
    if (!Number.isFinite(value) || !Number.isFinite(level) || seconds > 60) continue;
    if (Number.isNaN(first)) first = level;
    else {
      written += value * seconds;
      const change = Math.abs(level - last);
      if (change > 1e-9 && change < step) step = change;
    }
    last = level;
  }
  const used = Math.abs(last - first);
  if (!(used > LEAST_STEPS * step) || !(written > 0)) return null;
  return {
    place: flow.place,
    factor: (toSi(used, unit) - toSi(0, unit)) / written,
    tolerance: TOLERANCE,
    by: `the change of "${volume.column}"`,
  };
}
