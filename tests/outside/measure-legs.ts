/** What the airspeed reduction gives for published legs and runs to and fro, and what the published shortcuts give. */
import {
  altitudeCorrection,
  components,
  directionOf,
  impactPressure,
  speedOf,
  windFrom,
} from '../../analysis/air/index.ts';
import { circleThrough } from '../../analysis/reductions/airspeed/circle.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import { fromSi, toSi, unitOf } from '../../analysis/units/index.ts';
import type { TruthCase } from './truth-set.ts';

type Measured = Record<string, number | undefined>;

/** Height per speed has no unit of its own in the units room. */
export const LEG_SPECIAL: Record<string, number> = {
  dH_dV_ft_per_kt: unitOf('ft').factor / unitOf('kt').factor,
};

const deg = (radians: number) => fromSi(radians, 'deg');

interface GroundLeg {
  /** kt, degrees true */
  speed: number;
  track: number;
}

/** Numbered inputs of a case: `ground_speed_1_kt`, `ground_speed_2_kt`, ... */
export function numbered(one: TruthCase, base: string, unit: string): number[] {
  const list: number[] = [];
  for (let i = 1; typeof one.inputs[`${base}_${i}_${unit}`] === 'number'; i += 1)
    list.push(Number(one.inputs[`${base}_${i}_${unit}`]));
  return list;
}

export function given(one: TruthCase, key: string): number {
  const value = one.inputs[key];
  if (typeof value !== 'number') throw new Error(`the case ${one.id} lacks ${key}`);
  return value;
}

/** Legs as a person would write them on a card, through the whole reduction. */
export function reduceLegs(legs: readonly GroundLeg[]): Result {
  const airspeed = reductionOf('airspeed');
  if (!airspeed) throw new Error('no airspeed reduction');
  return airspeed.reduce({
    points: {
      kind: 'airspeed',
      points: legs.map(({ speed, track }) => ({
        'ground-speed': { value: speed, unit: 'kt' },
        'track-true': { value: track, unit: 'deg' },
      })),
    },
  });
}

/** Runs along a course on its heading, by the speed along it, through the whole reduction. */
export function reduceCourse(runs: readonly { speed: number; heading: number }[], unit: string): Result {
  const airspeed = reductionOf('airspeed');
  if (!airspeed) throw new Error('no airspeed reduction');
  return airspeed.reduce({
    points: {
      kind: 'airspeed',
      points: runs.map(({ speed, heading }) => ({
        'course-true': { value: heading, unit: 'deg' },
        'ground-speed': { value: speed, unit },
      })),
    },
  });
}

export function quantityIn(result: Result, name: string): number | undefined {
  return result.quantities.find((one) => one.name === name)?.value ?? undefined;
}

/** Speed over the ground when a heading is held, by the wind triangle. */
export function triangle(tas: number, wind: { speed: number; from: number }, heading: number): GroundLeg {
  const nose = components(tas, toSi(heading, 'deg'));
  const air = components(wind.speed, toSi(wind.from + 180, 'deg'));
  const over = { north: nose.north + air.north, east: nose.east + air.east };
  return { speed: speedOf(over), track: deg(directionOf(over)) };
}

export function measureLegs(one: TruthCase): Measured {
  const headings = numbered(one, 'heading', 'deg');
  const legs =
    headings.length > 0
      ? headings.map((heading) =>
          triangle(
            given(one, 'tas_kt'),
            { speed: given(one, 'wind_speed_kt'), from: given(one, 'wind_dir_from_deg') },
            heading,
          ),
        )
      : numbered(one, 'ground_speed', 'kt').map((speed, i) => ({
          speed,
          track: numbered(one, 'track_true', 'deg')[i] ?? Number.NaN,
        }));
  const kt = (value: number) => toSi(value, 'kt');
  const mean = legs.reduce((sum, leg) => sum + leg.speed / legs.length, 0);
  const shortcuts: Measured = {
    average_ground_speed: kt(mean),
    rms_ground_speed: kt(Math.sqrt(legs.reduce((sum, leg) => sum + leg.speed ** 2 / legs.length, 0))),
    ...Object.fromEntries(legs.map((leg, i) => [`ground_speed_${i + 1}`, kt(leg.speed)])),
  };
  if (one.expected.tas_std_dev_kt !== undefined) return { ...shortcuts, ...leaveOneOut(legs) };
  const result = reduceLegs(legs);
  const direction = quantityIn(result, 'wind-direction');
  const table = result.tables.find((each) => each.name === 'legs');
  const at = table?.columns.findIndex((column) => column.name === 'heading-true') ?? -1;
  return {
    ...shortcuts,
    tas: quantityIn(result, 'true-airspeed'),
    wind_speed: quantityIn(result, 'wind-speed'),
    wind_dir_from_deg: direction === undefined ? undefined : deg(direction),
    ...Object.fromEntries((table?.rows ?? []).map((row, i) => [`heading_${i + 1}_deg`, deg(Number(row[at]))])),
  };
}

// The report's own estimator: mean and standard deviation (n - 1) of the three-leg answers of consecutive legs.
function leaveOneOut(legs: readonly GroundLeg[]): Measured {
  const vectors = legs.map((leg) => components(toSi(leg.speed, 'kt'), toSi(leg.track, 'deg')));
  const answers = legs.map((_, i) => circleThrough([0, 1, 2].flatMap((k) => vectors[(i + k) % vectors.length] ?? [])));
  const mean = answers.reduce((sum, one) => sum + one.tas / answers.length, 0);
  return {
    tas: mean,
    tas_std_dev: Math.sqrt(answers.reduce((sum, one) => sum + (one.tas - mean) ** 2, 0) / (answers.length - 1)),
    ...Object.fromEntries(answers.map((one, i) => [`wind_speed_${i + 1}`, speedOf(one.wind)])),
    ...Object.fromEntries(answers.map((one, i) => [`wind_dir_from_${i + 1}_deg`, deg(windFrom(one.wind))])),
  };
}

export function measureCourse(one: TruthCase): Measured {
  if (one.group === 'altimeter-airspeed-relation') {
    const cas = toSi(given(one, 'cas_kt'), 'kt');
    const step = 0.1;
    const dp = impactPressure(cas + step) - impactPressure(cas - step);
    return { dH_dV_ft_per: altitudeCorrection(dp, toSi(given(one, 'pressure_altitude_ft'), 'ft')) / (2 * step) };
  }
  if (one.group === 'timed-course') {
    const [tas, wind] = [given(one, 'tas_mph'), given(one, 'tailwind_out_mph')];
    return { time_out_over_time_back: (tas - wind) / (tas + wind) };
  }
  return measureLegs(one);
}
