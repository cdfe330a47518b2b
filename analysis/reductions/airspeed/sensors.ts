/** Sensors whose calibration is doubtful, each with what a shift by its standard uncertainty does to the input. */
import { RECOVERY_UNKNOWN } from '../../air/index.ts';
import { type Accuracy, type Airplane, accuracyOf } from '../../airplane/index.ts';
import { toSi } from '../../units/index.ts';
import type { AirChain } from './air-chain.ts';
import type { Leg } from './leg.ts';

export interface Sensor {
  name: string;
  nu: number;
  /** what the doubt rests on */
  basis: string;
  assumed: boolean;
  chain(chain: AirChain): AirChain;
  legs(legs: readonly Leg[]): readonly Leg[];
}

/** Of an altimeter on a static source of its own: its error as a share of impact pressure, standard. */
const OTHER_STATIC = 0.015;
/** A dry day to a saturated one, taken about dry air: root mean square of an even spread. */
const HUMIDITY_SHARE = 1 / Math.sqrt(3);
const EVEN_SPREAD = Math.sqrt(3);

/**
 * Sensors in doubt for this airplane and these legs; one stated as exact is not among them.
 * @param airplane the description, or undefined
 * @param legs all legs
 * @param dewPointKnown humidity was written
 * @returns sensors, each shifting by its standard uncertainty
 */
export function sensorsInDoubt(airplane: Airplane | undefined, legs: readonly Leg[], dewPointKnown: boolean): Sensor[] {
  const speedOnly = legs.every((leg) => Number.isNaN(leg.ias));
  const satellites = legs.some((leg) => leg.lengthDoubt === null);
  return [
    ...(speedOnly ? [] : airSensors(airplane, dewPointKnown)),
    ...(satellites ? groundSensors(airplane, legs) : []),
    ...courseSensor(legs),
  ];
}

function airSensors(airplane: Airplane | undefined, dewPointKnown: boolean): Sensor[] {
  const speed = accuracyOf(airplane, 'indicated-airspeed');
  const height = accuracyOf(airplane, 'pressure-altitude');
  const air = accuracyOf(airplane, 'outside-air-temperature');
  const shifted = (change: Partial<AirChain['shift']>) => (chain: AirChain) => ({
    ...chain,
    shift: { ...chain.shift, ...change },
  });
  const recoveryKnown =
    airplane?.instruments.probeRecovery !== undefined || airplane?.instruments.airTemperatureIsStatic === true;
  return [
    ...sensor('indicated-airspeed', speed, speed.u, shifted({ ias: speed.u })),
    ...sensor('indicated-airspeed gain', speed, speed.gain, shifted({ iasGain: speed.gain })),
    ...sensor('pressure-altitude', height, height.u, shifted({ height: height.u })),
    ...sensor('pressure-altitude gain', height, height.gain, shifted({ heightGain: height.gain })),
    ...sensor('outside-air-temperature', air, air.u, shifted({ air: air.u })),
    ...(recoveryKnown
      ? []
      : sensor(
          'probe recovery',
          assumedFigure(`recovery factor ${RECOVERY_UNKNOWN.value} within ${RECOVERY_UNKNOWN.halfWidth} assumed`),
          RECOVERY_UNKNOWN.halfWidth / EVEN_SPREAD,
          (chain) => ({ ...chain, recovery: chain.recovery - RECOVERY_UNKNOWN.halfWidth / EVEN_SPREAD }),
        )),
    // A temperature stated as exact stands for the state of the air as a whole.
    ...(dewPointKnown || air.u === 0
      ? []
      : sensor(
          'humidity',
          assumedFigure('humidity not written: dry air taken, saturated air allowed for'),
          1,
          (chain) => ({
            ...chain,
            vapour: { relative: HUMIDITY_SHARE },
          }),
        )),
    ...(airplane?.instruments.commonStatic === false
      ? sensor(
          'altimeter static source',
          assumedFigure('its error taken as within 3 % of impact pressure'),
          OTHER_STATIC,
          (chain) => ({ ...chain, otherStatic: OTHER_STATIC }),
        )
      : []),
  ];
}

function groundSensors(airplane: Airplane | undefined, legs: readonly Leg[]): Sensor[] {
  const speed = accuracyOf(airplane, 'ground-speed');
  const track = accuracyOf(airplane, 'track-true');
  const speeds = legs.map((leg) => Math.hypot(leg.samples.north[0] ?? 0, leg.samples.east[0] ?? 0));
  const mean = speeds.reduce((sum, v) => sum + v / speeds.length, 0);
  // Where no figure is on record a track is as good as the speed across it.
  const angle = track.assumed ? toSi(0.1, 'm/s') / 2 / Math.max(mean, 1) : track.u;
  return [
    ...sensor('ground-speed', speed, speed.u, same, (leg) => stretched(leg, (v) => (v + speed.u) / v)),
    ...sensor('ground-speed gain', speed, speed.gain, same, (leg) => stretched(leg, () => 1 + speed.gain)),
    ...sensor(
      'track-true',
      track.assumed ? { ...track, basis: 'as well as 0.1 m/s across it, assumed; common practice, no source' } : track,
      angle,
      same,
      (leg) => turned(leg, angle),
    ),
  ];
}

// One course, one length: its error is common to all runs.
function courseSensor(legs: readonly Leg[]): Sensor[] {
  const doubts = legs.flatMap((leg) => leg.lengthDoubt ?? []);
  if (doubts.length === 0) return [];
  const words = `within ${(200 * Math.max(...doubts)).toFixed(1)} %: stated with the length, or assumed; common practice, no source`;
  return sensor('course length', assumedFigure(words), Math.max(...doubts), same, (leg) =>
    leg.lengthDoubt === null ? leg : scaledBy(leg, () => 1 + (leg.lengthDoubt ?? 0)),
  );
}

const same = (chain: AirChain) => chain;

function sensor(
  name: string,
  accuracy: Pick<Accuracy, 'nu' | 'basis' | 'assumed'>,
  u: number,
  chain: (chain: AirChain) => AirChain,
  leg: (leg: Leg) => Leg = (one) => one,
): Sensor[] {
  if (!(u > 0)) return [];
  const { nu, basis, assumed } = accuracy;
  return [{ name, nu, basis, assumed, chain, legs: (legs) => legs.map(leg) }];
}

function assumedFigure(basis: string): Pick<Accuracy, 'nu' | 'basis' | 'assumed'> {
  return { nu: Number.POSITIVE_INFINITY, basis, assumed: true };
}

function stretched(leg: Leg, factor: (speed: number) => number): Leg {
  return leg.lengthDoubt === null ? scaledBy(leg, factor) : leg;
}

function scaledBy(leg: Leg, factor: (speed: number) => number): Leg {
  const { north, east } = leg.samples;
  const by = north.map((n, k) => factor(Math.hypot(n, east[k] ?? 0)));
  return {
    ...leg,
    samples: {
      ...leg.samples,
      north: north.map((n, k) => n * (by[k] ?? 1)),
      east: east.map((e, k) => e * (by[k] ?? 1)),
    },
  };
}

function turned(leg: Leg, angle: number): Leg {
  if (leg.along) return leg;
  const { north, east } = leg.samples;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return {
    ...leg,
    samples: {
      ...leg.samples,
      north: north.map((n, k) => n * c - (east[k] ?? 0) * s),
      east: east.map((e, k) => (north[k] ?? 0) * s + e * c),
    },
  };
}
