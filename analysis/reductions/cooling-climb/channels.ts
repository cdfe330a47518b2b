/** The channels of a cooling climb: what is to be kept cool, the air, height and speed, and what was set. */
import type { Airplane } from '../../airplane/index.ts';
import { allSeriesOf, evidentRangeOf, type Recording, type Series, seriesOf } from '../../logs/index.ts';
import type { CooledPart } from '../../models/index.ts';
import { type Flag, flag, type Refusal, refusal } from '../../remarks/index.ts';
import type { CoolingClimbOptions } from './input.ts';

export interface HotChannel {
  series: Series;
  part: CooledPart;
}

export interface CoolingChannels {
  hot: HotChannel[];
  height: Series;
  /** null where only air stated by hand is there */
  outside: Series | null;
  inlet: Series | null;
  airspeed: Series | null;
  speed: Series | null;
  manifold: Series | null;
  fuelFlow: Series | null;
  door: Series | null;
  fan: Series | null;
  gear: Series | null;
  flap: Series | null;
  flags: Flag[];
}

/**
 * Channels to reduce from.
 * @param recording aligned logs, object
 * @param airplane the description, or undefined
 * @param options what a person stated, object
 * @returns channels with remarks, or a refusal that names what is missing
 */
export function coolingChannels(
  recording: Recording,
  airplane: Airplane | undefined,
  options: CoolingClimbOptions,
): CoolingChannels | Refusal {
  const flags: Flag[] = [];
  const usable = (name: string) => usableSeries(seriesOf(recording, name), flags);
  const hot = hotChannels(recording, airplane, options, flags);
  if (hot.length === 0) return missing(recording, 'coolant, oil or cylinder head temperature');
  const height = heightOf(usable, flags);
  if (!height) return missing(recording, 'altitude, so neither a climb nor the hot day at its height can be found');
  const outside = usable('outside-air-temperature');
  const inlet = usable('inlet-air-temperature');
  if (!outside && !inlet && !options.airByHeight) {
    return refusal(
      'missing-channel',
      `${namesOf(recording)}: no outside air temperature, and a peak means nothing without the air it was reached in. Name its column, or state the air as read by hand at one height or more (option airByHeight)`,
    );
  }
  if (!outside && inlet && !options.airByHeight) {
    flags.push(
      flag(
        'air-temperature-source',
        'no outside air was logged: the radiator’s inlet air stands for it. Where it is warmer (recirculation, ram rise) the correction comes out too small by as much',
      ),
    );
  }
  return {
    hot,
    height,
    outside: options.airByHeight ? null : (outside ?? inlet),
    inlet,
    airspeed: usable('indicated-airspeed') ?? usable('calibrated-airspeed'),
    speed: usable('engine-speed') ?? usable('propeller-speed'),
    manifold: usable('manifold-pressure'),
    fuelFlow: usable('fuel-flow'),
    door: usable('cowl-exit-position'),
    fan: usable('cooling-fan-state'),
    gear: usable('gear-position'),
    flap: usable('flap-position'),
    flags,
  };
}

// Every temperature the airplane has: an air-cooled one's coolant channel is a stray column, and the other way round
// head sensors of a liquid-cooled engine are kept, for they have limits of their own.
function hotChannels(
  recording: Recording,
  airplane: Airplane | undefined,
  options: CoolingClimbOptions,
  flags: Flag[],
): HotChannel[] {
  const coolant = airplane?.cooling.kind === 'air' ? [] : [seriesOf(recording, 'coolant-temperature')];
  const head: CooledPart = options.heads === 'barrels' ? 'cylinder-barrel' : 'cylinder-head';
  const found = [
    ...coolant.map((series) => ({ series, part: 'coolant' as const })),
    { series: seriesOf(recording, 'oil-temperature'), part: 'oil' as const },
    ...allSeriesOf(recording, 'cylinder-head-temperature').map((series) => ({ series, part: head })),
  ];
  return found.flatMap(({ series, part }) => {
    const one = usableSeries(series, flags);
    return one ? [{ series: one, part }] : [];
  });
}

function heightOf(usable: (name: string) => Series | null, flags: Flag[]): Series | null {
  const pressure = usable('pressure-altitude') ?? usable('reported-altitude');
  if (pressure) return pressure;
  const indicated = usable('indicated-altitude');
  const other = indicated ?? usable('gps-altitude');
  if (!other) return null;
  const words = indicated
    ? 'only indicated altitude is logged: it is taken as pressure altitude. 30 hPa of altimeter setting away from standard are 250 m, 1.6 K of hot-day air'
    : 'only satellite height is logged: it is taken as pressure altitude. A day 15 K warmer than standard and 30 hPa are some 350 m at 2000 m, 2.3 K of hot-day air';
  flags.push(flag('assumed-value', words));
  return other;
}

/** Share of readings no light airplane shows from which the unit, not the sensor, is at fault. */
const MOSTLY = 0.5;

function usableSeries(series: Series | undefined, flags: Flag[]): Series | null {
  if (!series) return null;
  const [low, high] = evidentRangeOf(series);
  let [there, outside] = [0, 0];
  for (const value of series.v) {
    if (Number.isNaN(value)) continue;
    there += 1;
    if (value < low || value > high) outside += 1;
  }
  if (there === 0) return null;
  if (outside < MOSTLY * there) return series;
  flags.push(
    flag(
      'implausible-unit',
      `${series.file}: most readings of "${series.column}" are outside what a ${series.quantity} can be: the unit is probably another; it was left out`,
    ),
  );
  return null;
}

function missing(recording: Recording, what: string): Refusal {
  const columns = recording.tables.flatMap((table) => table.channels.map((channel) => channel.column));
  const listed = columns.slice(0, 30).join(', ') + (columns.length > 30 ? ', ...' : '');
  return refusal(
    'missing-channel',
    `${namesOf(recording)}: no ${what} among its columns (${listed}). Name its column in the channel map if it is there under another name, or write the readings as points`,
  );
}

function namesOf(recording: Recording): string {
  return recording.tables.map((table) => table.file).join(', ');
}
