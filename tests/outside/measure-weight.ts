/** What the moments give for the inputs of a published case. Read by the gates and the accuracy table. */
import { armChangeByShift, balanceOf, ballastFor, shareOfChord, weigh } from '../../analysis/models/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import type { TruthCase } from './truth-set.ts';

const POUND = toSi(1, 'lb');
const INCH = toSi(1, 'in');

/** SI size of the units of expected keys, for keys the common list does not know. */
export const WEIGHT_UNITS: Record<string, number> = {
  total_weight_lb: POUND,
  empty_weight_lb: POUND,
  oil_lb: POUND,
  ballast_lb: POUND,
  total_moment_in_lb: POUND * INCH,
  moment_change_in_lb: POUND * INCH,
  cg_in: INCH,
  check_cg_in: INCH,
  new_cg_in: INCH,
  cg_change_in: INCH,
  cg_pct_mac: 0.01,
};

/** Values of a case in SI, by the expected key without its unit. */
export function measureWeight(one: TruthCase): Record<string, number> {
  const get = (name: string) => Number(one.inputs[name] ?? Number.NaN);
  const lb = (name: string) => toSi(get(name), 'lb');
  const inch = (name: string) => toSi(get(name), 'in');
  switch (one.group) {
    case 'loading': {
      const items = String(one.inputs.items_lb_at_in)
        .split(';')
        .map((text) => text.trim().split('@').map(Number))
        .map(([weight = 0, arm = 0]) => ({ name: 'item', mass: toSi(weight, 'lb'), arm: toSi(arm, 'in') }));
      const { mass, moment, arm } = balanceOf(items);
      return { total_weight_lb: mass, total_moment_in_lb: moment, cg_in: arm };
    }
    case 'fluid':
      return { oil_lb: toSi(get('oil_qt'), 'qt') * toSi(get('oil_lb_per_gal'), 'lb/gal') };
    case 'wheels':
      return wheels(one);
    case 'shift': {
      const change = armChangeByShift(lb('moved_lb'), lb('total_weight_lb'), inch('from_in'), inch('to_in'));
      return {
        moment_change_in_lb: change * lb('total_weight_lb'),
        cg_change_in: change,
        new_cg_in: inch('cg_in') + change,
      };
    }
    case 'chord': {
      const chord = { leadingEdge: inch('lemac_in'), length: inch('temac_in') - inch('lemac_in') };
      return { cg_pct_mac: shareOfChord(inch('cg_in'), chord) };
    }
    case 'ballast': {
      const [mass, arm, wanted, at] = [
        lb('derived_weight_lb'),
        inch('derived_cg_in'),
        inch('required_cg_in'),
        inch('ballast_arm_in'),
      ];
      const ballast = ballastFor(mass, arm, wanted, at, at);
      const check = balanceOf([
        { name: 'airplane', mass, arm },
        { name: 'ballast', mass: ballast, arm: at },
      ]);
      return { ballast_lb: ballast, check_cg_in: check.arm };
    }
    default:
      throw new Error(`no measure for group ${one.group}`);
  }

  function wheels(given: TruthCase): Record<string, number> {
    const single = ['nosewheel', 'tailwheel'].find((wheel) => `${wheel}_lb` in given.inputs);
    const readings = single
      ? [
          { at: inch(`${single}_arm_in`), mass: lb(`${single}_lb`) },
          { at: inch('main_arm_in'), mass: lb('total_lb') - lb(`${single}_lb`) },
        ]
      : [
          { at: inch('nose_arm_in'), mass: lb('nose_lb') },
          { at: inch('main_arm_in'), mass: lb('left_main_lb') },
          { at: inch('main_arm_in'), mass: lb('right_main_lb') },
        ];
    const weighed = weigh(
      readings.map(({ at, mass }, i) => ({ place: `wheel ${i}`, readings: [mass], arm: at, armU95: 0 })),
      { scaleU95: 0, gainU95: 0, levelU95: 0, heightOfCg: 0, loneRun: 0 },
    );
    return { empty_weight_lb: weighed.mass.value, cg_in: weighed.arm.value };
  }
}
