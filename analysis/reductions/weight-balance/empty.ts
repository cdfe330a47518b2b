/** The empty airplane: from a weighing with its corrections, or as the description states it. */
import type { Airplane } from '../../airplane/index.ts';
import { balanceOf, gasolineDensity, type LoadItem, type Weighed, type Wheel, weigh } from '../../models/index.ts';
import type { Measured } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { toSi } from '../../units/index.ts';
import type { WeighingPoint, WeightOptions, WeightPoint } from './input.ts';

export interface Empty {
  mass: Measured;
  arm: Measured;
  weighed: Weighed | null;
  wheels: Wheel[];
  flags: Flag[];
}

/** U95 where nothing is stated; each raises a flag. Common practice, no source. */
const ASSUMED = { scale: 0.5, gain: 0.001, arm: 0.003, level: toSi(0.2, 'deg'), height: 0.5, loneRun: 0.001 };

/**
 * The empty airplane from wheel readings.
 * @param points points of the card, SI inside, list
 * @param options what was stated about scales and level, object
 * @returns mass in kg and arm in m with U95 and parts, the wheels, and flags; null without wheel readings
 * @throws OutOfRange when readings do not add up to more than zero
 * @source methods of the project, weight and balance [faa-h-8083-1]; assumed doubts [practice]
 */
export function emptyFromWeighing(points: readonly WeightPoint[], options: WeightOptions): Empty | null {
  const readings = points.filter((point): point is WeighingPoint => point.role === 'weighing');
  if (readings.length === 0) return null;
  const flags: Flag[] = [];
  const armU95 = options.armU95?.si ?? assumed(flags, ASSUMED.arm, 'U95 of each wheel arm taken as 3 mm');
  const wheels = wheelsOf(readings, armU95);
  const scaleU95 = options.scaleU95?.si ?? assumed(flags, ASSUMED.scale, 'U95 of a scale taken as 0.5 kg');
  const shared = options.scales === 'one-moved' || options.gainU95 !== undefined;
  const gainU95 = shared
    ? (options.gainU95?.si ?? assumed(flags, ASSUMED.gain, 'gain of the scale taken as sure to 0.1 %'))
    : 0;
  const weighed = weigh(wheels, {
    scaleU95,
    gainU95,
    levelU95: options.levelU95?.si ?? assumed(flags, ASSUMED.level, 'level taken as sure to 0.2 degrees'),
    heightOfCg: options.heightOfCg?.si ?? ASSUMED.height,
    loneRun: ASSUMED.loneRun,
  });
  if (weighed.runs === 1) {
    flags.push(flag('assumed-repeatability', 'One run only: scatter taken as 0.1 % of the mass. Weigh three times.'));
  }
  if (new Set(readings.map((one) => one.run)).size > weighed.runs) {
    flags.push(flag('excluded', 'A run that lacks a wheel was left out.'));
  }
  return { ...corrected(weighed, points, options), weighed, wheels, flags };
}

/**
 * The empty airplane as the description states it.
 * @param airplane the description, object
 * @returns mass and arm with the U95 stated; null where the description has none
 */
export function emptyAsStated(airplane: Airplane | undefined): Empty | null {
  const empty = airplane?.loading.empty;
  if (!empty) return null;
  const flags: Flag[] = [];
  const part = (stated: { si: number; unit: string; u95?: number | undefined }, what: string): Measured => {
    if (stated.u95 === undefined)
      flags.push(
        flag(
          'assumed-calibration',
          `The description states no uncertainty of the empty ${what}; it is taken as exact.`,
        ),
      );
    const u95 = stated.u95 === undefined ? 0 : toSi(stated.u95, stated.unit) - toSi(0, stated.unit);
    return { value: stated.si, u95, parts: u95 > 0 ? { calibration: u95 } : {} };
  };
  return { mass: part(empty.mass, 'mass'), arm: part(empty.arm, 'arm'), weighed: null, wheels: [], flags };
}

/** Fuel density used where an item is given as a volume, kg/m3 with its U95. */
export function densityOf(options: WeightOptions): { value: number; u95: number } {
  return options.fuelDensity ? { value: options.fuelDensity.si, u95: 0 } : gasolineDensity();
}

function assumed(flags: Flag[], value: number, words: string): number {
  flags.push(flag('assumed-calibration', `${words}; state it to be sure.`));
  return value;
}

/** Readings of each wheel, run by run, tare taken off; the arm is the mean of those measured. */
function wheelsOf(readings: readonly WeighingPoint[], armU95: number): Wheel[] {
  const places = [...new Set(readings.map((one) => one.place))];
  const runs = [...new Set(readings.map((one) => one.run))].sort((a, b) => a - b);
  const complete = runs.filter((run) =>
    places.every((place) => readings.some((one) => one.run === run && one.place === place)),
  );
  return places.map((place) => {
    const mine = readings.filter((one) => one.place === place);
    const arms = mine.map((one) => one.arm.si);
    return {
      place,
      readings: complete.map((run) => {
        const one = mine.find((reading) => reading.run === run);
        return one ? one.reading.si - (one.tare?.si ?? 0) : 0;
      }),
      arm: arms.reduce((sum, arm) => sum + arm, 0) / arms.length,
      armU95,
    };
  });
}

/** What was aboard and does not belong is taken off, what belongs and was missing is added. */
function corrected(
  weighed: Weighed,
  points: readonly WeightPoint[],
  options: WeightOptions,
): { mass: Measured; arm: Measured } {
  const density = densityOf(options);
  const items = points.flatMap((point): LoadItem[] => {
    if (point.role !== 'aboard' && point.role !== 'missing') return [];
    const sign = point.role === 'aboard' ? -1 : 1;
    const volume = point.volume?.si;
    const mass = point.mass?.si ?? (volume === undefined ? 0 : volume * density.value);
    const massU95 = point.mass ? 0 : (volume ?? 0) * density.u95;
    return [{ name: point.name, mass: sign * mass, arm: point.arm.si, massU95 }];
  });
  if (items.length === 0) return { mass: weighed.mass, arm: weighed.arm };
  const whole = balanceOf([
    {
      name: 'as weighed',
      mass: weighed.mass.value,
      arm: weighed.arm.value,
      massU95: weighed.mass.u95,
      armU95: weighed.arm.u95,
    },
    ...items,
  ]);
  const added = (before: Measured, u95: number) => Math.sqrt(Math.max(0, u95 ** 2 - before.u95 ** 2));
  return {
    mass: {
      value: whole.mass,
      u95: whole.massU95,
      parts: { ...weighed.mass.parts, fit: added(weighed.mass, whole.massU95) },
    },
    arm: {
      value: whole.arm,
      u95: whole.armU95,
      parts: { ...weighed.arm.parts, fit: added(weighed.arm, whole.armU95) },
    },
  };
}
