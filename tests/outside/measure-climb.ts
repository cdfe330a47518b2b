/** What the code makes of each published climb value, by the key of the source and in its unit. */
import { standardTemperature, tapelineRate } from '../../analysis/air/index.ts';
import {
  climbAngle,
  climbCorrectionFactor,
  excessPowerAtWeight,
  inducedDragChange,
} from '../../analysis/models/index.ts';
import { bandOptimum } from '../../analysis/reductions/climb/optimum.ts';
import { fromSi, toSi } from '../../analysis/units/index.ts';
import type { TruthCase } from './truth-set.ts';

const fpm = (si: number) => fromSi(si, 'ft/min');

export function measureClimb({ id, inputs }: TruthCase): Record<string, number | undefined> {
  const of = (key: string, unit: string) => toSi(Number(inputs[key]), unit);
  const list = (key: string, unit: string) => [inputs[key]].flat().map((one) => toSi(Number(one), unit));
  if (id.startsWith('climb-tapeline')) {
    const H = of('pressure_altitude_mid_ft', 'ft');
    const rate = tapelineRate(of('pressure_rate_of_climb_fpm', 'ft/min'), of('oat_degC', 'degC'), H);
    return { tapeline_rate_fpm: fpm(rate), std_temp_degC: fromSi(standardTemperature(H), 'degC') };
  }
  switch (id) {
    case 'climb-ccf': {
      const gradient = of('tas_change_kt', 'kt') / of('height_change_ft', 'ft');
      const ccf = climbCorrectionFactor(of('true_airspeed_kt', 'kt'), gradient);
      return { ccf, rate_of_climb_fpm: Number(inputs.specific_excess_power_fpm) * ccf };
    }
    case 'climb-induced-drag-weight': {
      const wing = { S: of('wing_area_ft2', 'ft2'), A: Number(inputs.aspect_ratio), e: Number(inputs.oswald_e) };
      const [Wt, Ws] = [of('test_weight_lb', 'lbf'), of('standard_weight_lb', 'lbf')];
      return { delta_drag_lbf: fromSi(inducedDragChange(Wt, Ws, of('equivalent_airspeed_kt', 'kt'), wing), 'lbf') };
    }
    case 'climb-weight-correction': {
      const [Wt, Ws] = [of('test_weight_lb', 'lbf'), of('standard_weight_lb', 'lbf')];
      const V = of('true_airspeed_kt', 'kt');
      const rate = excessPowerAtWeight(of('test_rate_of_climb_fpm', 'ft/min'), Wt, Ws, V, of('delta_drag_lbf', 'lbf'));
      return { standard_rate_of_climb_fpm: fpm(rate) };
    }
    case 'climb-angle-from-roc': {
      const V = toSi(Number(inputs.true_airspeed_kt) * Number(inputs.ft_per_s_per_kt), 'ft/s');
      return { climb_angle_deg: fromSi(climbAngle(of('rate_of_climb_fpm', 'ft/min'), V), 'deg') };
    }
    case 'climb-vy-vx-quadratic': {
      const rates = list('rate_of_climb_fpm', 'ft/min');
      const points = list('true_airspeed_kt', 'kt').map((V, i) => ({ V, rate: rates[i] ?? Number.NaN, runs: 2 }));
      const best = bandOptimum(points, false, 'printed example');
      // Speeds end in `_kt`, a unit every subject knows: they go back in SI.
      return {
        vy: best.Vy?.value,
        vx: best.Vx?.value,
        max_rate_fpm: fpm(best.bestRate?.value ?? Number.NaN),
      };
    }
    default:
      return {};
  }
}
