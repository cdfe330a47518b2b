/** The channels of an airspeed calibration, and what stands in for a missing one. */
import { pressureAltitudeFromIndicated } from '../../air/index.ts';
import { type Recording, type Series, seriesOf } from '../../logs/index.ts';
import { type Flag, flag, type Refusal, refusal } from '../../remarks/index.ts';
import { besideFile } from '../../segments/index.ts';
import { fromSi } from '../../units/index.ts';
import type { AirspeedOptions } from './input.ts';
import { type GroundVelocity, groundVelocity } from './satellite.ts';

export interface AirspeedChannels {
  airspeed: Series;
  height: Series;
  /** probe temperature; a constant read by hand has no series */
  air: Series | number;
  ground: GroundVelocity;
  flaps?: Series | undefined;
  bank?: Series | undefined;
  flags: Flag[];
}

/**
 * Channels to calibrate from, or why not.
 * @param recording the aligned logs
 * @param options what a person stated
 * @returns channels with remarks, or a refusal that names the missing one
 */
export function airspeedChannels(recording: Recording, options: AirspeedOptions): AirspeedChannels | Refusal {
  const flags: Flag[] = [];
  const airspeed = seriesOf(recording, 'indicated-airspeed');
  if (!airspeed) return missing('indicated airspeed', 'indicated-airspeed');
  const height = heightOf(recording, airspeed.file, options);
  if (!height) {
    return missing(
      'pressure altitude (or indicated altitude with the altimeter setting as an option)',
      'pressure-altitude',
    );
  }
  const logged = besideFile(recording, airspeed.file, ['outside-air-temperature']);
  const air = logged ?? options.airTemperature?.si;
  if (air === undefined) {
    return refusal(
      'missing-channel',
      'no outside air temperature: true airspeed cannot be had without it (1 K is 0.17 % of true airspeed). Name its channel, or state the temperature as read by hand',
    );
  }
  if (typeof air === 'number')
    flags.push(flag('assumed-value', `outside air ${fromSi(air, 'degC').toFixed(1)} °C as read by hand, for all legs`));
  const ground = groundVelocity(recording);
  if (!ground) {
    const lacks = seriesOf(recording, 'ground-speed') ? 'true track' : 'ground speed';
    return missing(`${lacks} from a satellite receiver`, lacks === 'true track' ? 'track-true' : 'ground-speed');
  }
  if (ground.stuck) {
    return refusal(
      'stuck-channel',
      'ground speed shows one single value in the whole log: the receiver or its link stood still, so nothing can be said',
    );
  }
  for (const span of ground.frozen) flags.push(flag('channel-flagged', 'satellite fix frozen: left out', span));
  for (const series of new Set([airspeed, height, ...(logged ? [logged] : [])])) {
    const kinds = [...new Set(series.flags.map((one) => one.kind))];
    if (kinds.length > 0)
      flags.push(flag('channel-flagged', `${series.quantity} carries quality remarks: ${kinds.join(', ')}`));
  }
  return {
    airspeed,
    height,
    air,
    ground,
    flaps: seriesOf(recording, 'flap-position'),
    bank: seriesOf(recording, 'roll-angle'),
    flags,
  };
}

function heightOf(recording: Recording, file: string, options: AirspeedOptions): Series | undefined {
  const pressure = besideFile(recording, file, ['pressure-altitude']);
  if (pressure) return pressure;
  const indicated = besideFile(recording, file, ['indicated-altitude']);
  const setting = options.altimeterSetting?.si;
  if (!indicated || setting === undefined) return undefined;
  const shift = pressureAltitudeFromIndicated(0, setting);
  return { ...indicated, quantity: 'pressure-altitude', v: indicated.v.map((value) => value + shift) };
}

function missing(words: string, name: string): Refusal {
  return refusal('missing-channel', `an airspeed calibration needs ${words} (${name})`);
}
