/** Gates on published climb relations and worked numbers; each is named by its source. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { standardTemperature, tapelineRate } from '../../analysis/air/index.ts';
import {
  climbAngle,
  climbCorrectionFactor,
  excessPowerAtWeight,
  inducedDragChange,
  rateForGradient,
} from '../../analysis/models/index.ts';
import { bandOptimum } from '../../analysis/reductions/climb/optimum.ts';
import { differenceFromSi, fromSi, toSi } from '../../analysis/units/index.ts';

interface ClimbCase {
  id: string;
  source: string;
  inputs: Record<string, number & number[]>;
  expected: Record<string, number & number[]>;
}
const cases: ClimbCase[] = JSON.parse(readFileSync(join(import.meta.dirname, 'truth', 'climb.json'), 'utf8')).cases;

function named(id: string) {
  const found = cases.find((one) => one.id === id);
  if (!found) throw new Error(`no case ${id}`);
  const pick = (set: Record<string, number & number[]>) => (key: string) => {
    const value = set[key];
    if (value === undefined) throw new Error(`${id} lacks ${key}`);
    return value;
  };
  return { input: pick(found.inputs), expected: pick(found.expected), source: found.source };
}

const fpm = (si: number) => fromSi(si, 'ft/min');
const lbToNewton = (lb: number) => toSi(lb, 'lbf');

describe('tapeline rate from pressure rate', () => {
  it.each(cases.filter((one) => one.id.startsWith('climb-tapeline')).map((one) => one.id))('%s', (id) => {
    const { input, expected } = named(id);
    const H = toSi(input('pressure_altitude_mid_ft'), 'ft');
    const rate = tapelineRate(toSi(input('pressure_rate_of_climb_fpm'), 'ft/min'), toSi(input('oat_degC'), 'degC'), H);
    // tolerance: the last printed digit
    expect(Math.abs(fpm(rate) - expected('tapeline_rate_fpm'))).toBeLessThanOrEqual(0.2);
    expect(Math.abs(fromSi(standardTemperature(H), 'degC') - expected('std_temp_degC'))).toBeLessThanOrEqual(0.01);
  });
});

describe(named('climb-ccf').source, () => {
  it('climb correction factor', () => {
    const { input, expected } = named('climb-ccf');
    const V = toSi(input('true_airspeed_kt'), 'kt');
    const ccf = climbCorrectionFactor(V, toSi(input('tas_change_kt'), 'kt') / toSi(input('height_change_ft'), 'ft'));
    expect(Math.abs(ccf - expected('ccf'))).toBeLessThanOrEqual(1e-4);
    expect(Math.abs(input('specific_excess_power_fpm') * ccf - expected('rate_of_climb_fpm'))).toBeLessThanOrEqual(0.2);
  });

  it('induced drag at another weight, and the rate that follows', () => {
    const drag = named('climb-induced-drag-weight');
    const [Wt, Ws] = [lbToNewton(drag.input('test_weight_lb')), lbToNewton(drag.input('standard_weight_lb'))];
    const wing = {
      S: toSi(drag.input('wing_area_ft2'), 'ft2'),
      A: drag.input('aspect_ratio'),
      e: drag.input('oswald_e'),
    };
    const dD = inducedDragChange(Wt, Ws, toSi(drag.input('equivalent_airspeed_kt'), 'kt'), wing);
    // the printed density of 0.0023769 slug/ft3 is rounded: 0.02 lbf
    expect(Math.abs(fromSi(dD, 'lbf') - drag.expected('delta_drag_lbf'))).toBeLessThanOrEqual(0.02);

    const { input, expected } = named('climb-weight-correction');
    const rate = excessPowerAtWeight(
      toSi(input('test_rate_of_climb_fpm'), 'ft/min'),
      lbToNewton(input('test_weight_lb')),
      lbToNewton(input('standard_weight_lb')),
      toSi(input('true_airspeed_kt'), 'kt'),
      lbToNewton(input('delta_drag_lbf')),
    );
    expect(Math.abs(fpm(rate) - expected('standard_rate_of_climb_fpm'))).toBeLessThanOrEqual(0.3);
  });
});

describe('power, angle and gradient', () => {
  it(`${named('climb-excess-power-physics').source}: rate and angle from excess power`, () => {
    const { input, expected } = named('climb-excess-power-physics');
    const V = toSi(input('airspeed_kt'), 'kt');
    const rate = toSi(input('excess_power_hp'), 'hp') / lbToNewton(input('weight_lb'));
    expect(Math.abs(rate - expected('rate_of_climb_m_per_s'))).toBeLessThanOrEqual(0.05);
    expect(Math.abs(fromSi(climbAngle(rate, V), 'deg') - expected('climb_angle_deg'))).toBeLessThanOrEqual(0.1);
  });

  it(`${named('climb-angle-from-roc').source}`, () => {
    const { input, expected } = named('climb-angle-from-roc');
    const V = toSi(input('true_airspeed_kt') * input('ft_per_s_per_kt'), 'ft/s');
    const angle = fromSi(climbAngle(toSi(input('rate_of_climb_fpm'), 'ft/min'), V), 'deg');
    expect(Math.abs(angle - expected('climb_angle_deg'))).toBeLessThanOrEqual(0.02);
  });

  it(`${named('climb-gradient-requirement').source}: gradient as a rate`, () => {
    const { input, expected } = named('climb-gradient-requirement');
    const rate = rateForGradient(input('gradient_pct') / 100, toSi(input('true_airspeed_kt'), 'kt'));
    expect(Math.abs(fpm(rate) - expected('rate_of_climb_fpm'))).toBeLessThanOrEqual(0.3);
  });
});

describe(named('climb-vy-vx-quadratic').source, () => {
  it('best rate is the vertex, best angle the tangent from the origin', () => {
    const { input, expected } = named('climb-vy-vx-quadratic');
    const rates = input('rate_of_climb_fpm') as unknown as number[];
    const points = (input('true_airspeed_kt') as unknown as number[]).map((V, i) => ({
      V: toSi(V, 'kt'),
      rate: toSi(rates[i] ?? Number.NaN, 'ft/min'),
      runs: 2,
    }));
    const best = bandOptimum(points, false, 'printed example');
    expect(best.form).toBe('quadratic');
    // the points lie on an exact parabola: rounding is all that may differ
    expect(Math.abs(fromSi(best.Vy?.value ?? Number.NaN, 'kt') - expected('vy_kt'))).toBeLessThanOrEqual(0.05);
    expect(Math.abs(fpm(best.bestRate?.value ?? Number.NaN) - expected('max_rate_fpm'))).toBeLessThanOrEqual(0.1);
    expect(Math.abs(fromSi(best.Vx?.value ?? Number.NaN, 'kt') - expected('vx_kt'))).toBeLessThanOrEqual(0.05);
    expect(differenceFromSi(best.Vy?.repeatability ?? Number.NaN, 'kt')).toBeGreaterThan(0);
  });
});

describe('rules carried as references', () => {
  it('every published case is used above, or is a plausibility figure only', () => {
    const used = /climb-(tapeline|ccf|induced|weight|excess|angle|gradient|vy-vx)/;
    const rest = cases.filter((one) => !used.test(one.id)).map((one) => one.id);
    expect(rest).toEqual(['climb-thrust-from-power', 'climb-speed-floor', 'climb-density-alt-rule']);
  });

  it('thrust from power is the relation behind specific excess power', () => {
    const { input, expected } = named('climb-thrust-from-power');
    const thrust = toSi(input('power_hp'), 'hp') / toSi(input('airspeed_kt'), 'kt');
    // printed rounded to 50 N
    expect(Math.abs(thrust - expected('thrust_N'))).toBeLessThanOrEqual(50);
  });
});
