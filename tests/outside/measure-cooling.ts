/** What the models of cooling give for the inputs of a published case. Read by the gates and the accuracy table. */
import { pressureAt } from '../../analysis/air/index.ts';
import {
  boilingTemperature,
  type CooledPart,
  correctToHotDay,
  hotDayAir,
  isStabilised,
  limitingAir,
} from '../../analysis/models/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import { siInputs, type TruthCase } from './truth-set.ts';

type Measured = Record<string, number | undefined>;

const PARTS: Record<string, CooledPart> = {
  coolant: 'coolant',
  oil: 'oil',
  'cylinder-head': 'cylinder-head',
  'cylinder-barrel': 'cylinder-barrel',
};

export function measureCooling(one: TruthCase): Measured {
  const given = siInputs(one.inputs);
  const get = (name: string) => given[name] ?? Number.NaN;
  const part = PARTS[String(one.inputs.part)] ?? 'coolant';
  switch (one.group) {
    case 'hot-day-14cfr23':
      return { hot_day_air: hotDayAir('14cfr23', get('pressure_altitude')) };
    case 'hot-day-cs22':
      return { hot_day_air: hotDayAir('cs22', get('pressure_altitude')) };
    case 'hot-day-correction': {
      const hot = hotDayAir('14cfr23', get('pressure_altitude'));
      return { corrected: correctToHotDay(get('measured'), part, get('air'), hot) };
    }
    case 'one-to-one':
      return { corrected: correctToHotDay(get('measured'), part, get('air'), get('hot')) };
    case 'limiting-air':
      return { limiting_air: limitingAir(get('limit'), get('measured'), get('air')) };
    case 'climb-long-enough':
      return { long_enough: pastItsPeak(get('after_peak_s')) ? 1 : 0 };
    case 'stabilised':
      return { stabilised: isStabilised(toSi(Number(one.inputs.rate_F_per_min), 'degF/min')) ? 1 : 0 };
    default:
      throw new Error(`no measure for group ${one.group}`);
  }
}

// A temperature that stays at its highest for so long after it is first reached, written every second.
function pastItsPeak(seconds: number): boolean {
  const n = Math.round(seconds) + 1;
  const points = Array.from({ length: n }, (_, i) => ({
    time: { value: i, unit: 's' },
    'oil-temperature': { value: 100 - (i > 0 ? 0.1 : 0), unit: 'degC' },
    'outside-air-temperature': { value: 20, unit: 'degC' },
    'pressure-altitude': { value: 1000 + 5 * i, unit: 'm' },
  }));
  const result = reductionOf('cooling-climb')?.reduce({ points: { kind: 'cooling-climb', points } });
  return result?.quantities.find((one) => one.name === 'peak-temperature')?.value != null;
}

export function measureBoiling(one: TruthCase): Measured {
  const given = siInputs(one.inputs);
  const outside = given.ambient ?? pressureAt(given.pressure_altitude ?? 0);
  const pressure = outside + (given.cap ?? 0);
  return { boiling: boilingTemperature({ glycol: 'ethylene', fraction: given.fraction ?? 0, pressure }) };
}
