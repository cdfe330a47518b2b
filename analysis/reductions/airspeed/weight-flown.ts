/** Mass of the airplane at a time of the log: what was stated at the start, less the fuel that was burnt. */
import type { Airplane } from '../../airplane/index.ts';
import { type Recording, seriesOf } from '../../logs/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { sampleAt } from '../../segments/index.ts';
import { toSi } from '../../units/index.ts';
import type { AirspeedOptions } from './input.ts';

export interface MassFlown {
  at: (seconds: number) => number | null;
  flags: Flag[];
}

/** Gasoline, common practice, no source; a per cent of it is a gram of a kilogram of airplane. */
const FUEL_DENSITY = toSi(0.72, 'kg/L');

/**
 * Mass over the log.
 * @param recording the aligned logs, or undefined
 * @param airplane the description, or undefined
 * @param options what a person stated
 * @returns mass at a time, kg, or null where nothing is known
 */
export function massFlown(
  recording: Recording | undefined,
  airplane: Airplane | undefined,
  options: AirspeedOptions,
): MassFlown {
  const start = options.startMass?.si ?? airplane?.limits.mass.maximum.si;
  if (start === undefined) {
    return {
      at: () => null,
      flags: [flag('method-note', 'mass not known: the curve holds for the mass flown and is not carried to another')],
    };
  }
  const flags = options.startMass
    ? []
    : [flag('assumed-value', 'mass at the start taken as the maximum; state it to carry the curve to other weights')];
  const burnt = recording ? fuelBurnt(recording, options.fuelDensity?.si ?? FUEL_DENSITY) : () => 0;
  return { at: (seconds) => start - burnt(seconds), flags };
}

function fuelBurnt(recording: Recording, density: number): (seconds: number) => number {
  const used = seriesOf(recording, 'fuel-used');
  if (used) {
    const first = used.v.find((value) => !Number.isNaN(value)) ?? 0;
    return (seconds) => density * ((sampleAt(used, [seconds])[0] || first) - first);
  }
  const flow = seriesOf(recording, 'fuel-flow');
  if (!flow) return () => 0;
  const total = new Float64Array(flow.t.length);
  for (let i = 1; i < flow.t.length; i += 1) {
    const step = (flow.t[i] ?? 0) - (flow.t[i - 1] ?? 0);
    const rate = flow.v[i] ?? Number.NaN;
    total[i] = (total[i - 1] ?? 0) + (Number.isNaN(rate) ? 0 : rate * step);
  }
  return (seconds) => {
    const after = flow.t.findIndex((t) => t >= seconds);
    return density * (total[after < 0 ? total.length - 1 : after] ?? 0);
  };
}
