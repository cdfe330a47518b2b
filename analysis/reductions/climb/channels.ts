/** The channels of a climb: which series serve, and what stands in for a missing one. */
import { RECOVERY_UNKNOWN } from '../../air/index.ts';
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { type Recording, type Series, seriesOf, valuesAt } from '../../logs/index.ts';
import { type Flag, flag, type Refusal, refusal } from '../../remarks/index.ts';
import { besideFile, meanBetween } from '../../segments/index.ts';
import type { ClimbSamples } from './measure-run.ts';

export interface ClimbChannels {
  altitude: Series;
  airspeed: Series;
  /** true where the airspeed channel is calibrated already */
  calibrated: boolean;
  air: Series;
  flags: Flag[];
}

/**
 * Channels a climb is measured by, or why not.
 * @param recording the aligned logs
 * @returns the series, or a refusal that names the missing one
 */
export function climbChannels(recording: Recording): ClimbChannels | Refusal {
  const flags: Flag[] = [];
  const indicated = seriesOf(recording, 'indicated-airspeed');
  const airspeed = indicated ?? seriesOf(recording, 'calibrated-airspeed');
  // Beside the airspeed's recorder first: it shares its clock, and often its static port.
  let altitude = besideFile(recording, airspeed?.file ?? '', ['pressure-altitude', 'reported-altitude']);
  if (!altitude) {
    altitude = seriesOf(recording, 'indicated-altitude');
    if (altitude)
      flags.push(
        flag(
          'assumed-value',
          'only indicated altitude is logged: it is taken as pressure altitude, which shifts density altitude by the altimeter setting; rates hardly change',
        ),
      );
  }
  const air = seriesOf(recording, 'outside-air-temperature');
  if (!altitude) return missing('pressure altitude', 'pressure-altitude');
  if (!airspeed) return missing('airspeed', 'indicated-airspeed');
  if (!air) return missing('outside air temperature', 'outside-air-temperature');
  return { altitude, airspeed, calibrated: !indicated, air, flags };
}

function missing(words: string, name: string): Refusal {
  return refusal('missing-channel', `a climb cannot be reduced without ${words} (${name})`);
}

/**
 * Samples of a time span on the altimeter's own times.
 * @param channels the series
 * @param from first second, s
 * @param to last second, s
 * @returns the samples
 */
export function samplesBetween(channels: ClimbChannels, from: number, to: number): ClimbSamples {
  const { t, v, holdSeconds } = channels.altitude;
  const inside: number[] = [];
  t.forEach((time, i) => {
    if (time >= from && time <= to) inside.push(i);
  });
  const times = Float64Array.from(inside, (i) => t[i] ?? Number.NaN);
  return {
    t: times,
    Hp: Float64Array.from(inside, (i) => v[i] ?? Number.NaN),
    ias: valuesAt(channels.airspeed, times),
    airTemperature: valuesAt(channels.air, times),
    hold: holdSeconds,
  };
}

/**
 * Longest stretch without a sample inside a span.
 * @param samples of one climb
 * @returns seconds
 */
export function longestGap(samples: ClimbSamples): number {
  let longest = 0;
  let last: number | null = null;
  samples.t.forEach((time, i) => {
    if (!Number.isFinite(samples.Hp[i]) || !Number.isFinite(samples.ias[i])) return;
    if (last !== null) longest = Math.max(longest, time - last);
    last = time;
  });
  return longest;
}

/**
 * Direction of the nose, or of the track where no heading is logged, over a span.
 * @param recording the aligned logs
 * @param airplane for the variation of its field
 * @param from first second, s
 * @param to last second, s
 * @returns direction, rad from true north, or null
 */
export function headingBetween(
  recording: Recording,
  airplane: Airplane | undefined,
  from: number,
  to: number,
): number | null {
  const heading = seriesOf(recording, 'heading-magnetic');
  const nose = heading && meanBetween(heading, from, to);
  if (nose) return nose.mean + (airplane?.place.variation?.si ?? 0);
  const track = seriesOf(recording, 'track-true');
  return (track && meanBetween(track, from, to)?.mean) ?? null;
}

/** Doubt of a rate from its sensors: gain of the altimeter, air temperature, both common to all runs. */
export interface RateCalibration {
  gain: number;
  uT: number;
  /** of the probe's recovery factor; 0 where it is stated */
  uRecovery: number;
  nu: number;
  flags: Flag[];
}

/**
 * How well the altimeter's gain and the air temperature are known.
 * @param airplane the description, or undefined
 * @returns standard uncertainties and flags for what was assumed
 */
export function rateCalibration(airplane: Airplane | undefined): RateCalibration {
  const altitude = accuracyOf(airplane, 'pressure-altitude');
  const air = accuracyOf(airplane, 'outside-air-temperature');
  const flags: Flag[] = [];
  if (altitude.assumed) flags.push(flag('assumed-calibration', `altimeter: ${altitude.basis}`));
  if (air.assumed) flags.push(flag('assumed-calibration', `outside air temperature: ${air.basis}`));
  const instruments = airplane?.instruments;
  const known = instruments?.airTemperatureIsStatic === true || instruments?.probeRecovery !== undefined;
  const { value, halfWidth } = RECOVERY_UNKNOWN;
  if (!known)
    flags.push(
      flag('assumed-value', `recovery factor of the air probe not stated: ${value} within ${halfWidth} assumed`),
    );
  return {
    gain: altitude.gain,
    uT: air.u,
    uRecovery: known ? 0 : halfWidth / Math.sqrt(3),
    nu: Math.min(altitude.nu, air.nu),
    flags,
  };
}
