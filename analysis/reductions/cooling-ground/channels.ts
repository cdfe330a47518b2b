/** The channels of a ground run: what is to be kept cool, the air, and what was set. Or why they will not do. */
import type { Airplane } from '../../airplane/index.ts';
import { allSeriesOf, plausibleRangeOf, type Recording, type Series, seriesOf } from '../../logs/index.ts';
import type { CooledPart } from '../../models/index.ts';
import { type Flag, flag, type Refusal, refusal } from '../../remarks/index.ts';
import { quantityOf, show } from '../../units/index.ts';

export interface HotChannel {
  series: Series;
  part: Exclude<CooledPart, 'cylinder-barrel'>;
}

export interface GroundChannels {
  /** coolant, or every head: what the result is about */
  main: HotChannel[];
  /** oil beside it */
  oil: HotChannel | null;
  /** what cools: radiator inlet air, else outside air */
  air: Series | null;
  /** what the hot day is about: outside air, else inlet air */
  outside: Series | null;
  speed: Series;
  /** propeller speed times this is engine speed */
  speedFactor: number;
  door: Series | null;
  fan: Series | null;
  manifold: Series | null;
  height: Series | null;
  flags: Flag[];
}

/**
 * Channels to reduce from.
 * @param recording aligned logs, object
 * @param airplane the description, or undefined
 * @returns channels with remarks, or a refusal that names what is missing or cannot be right
 */
export function groundChannels(recording: Recording, airplane: Airplane | undefined): GroundChannels | Refusal {
  const flags: Flag[] = [];
  const usable = (name: string) => plausible(seriesOf(recording, name), flags);
  const coolant = seriesOf(recording, 'coolant-temperature');
  const heads = allSeriesOf(recording, 'cylinder-head-temperature');
  const liquid = airplane ? airplane.cooling.kind === 'liquid' : coolant !== undefined || heads.length === 0;
  const wanted = liquid ? (coolant ? [coolant] : []) : heads;
  if (wanted.length === 0) return missing(recording, liquid);
  const main = wanted.filter((series) => !wrongUnit(series) && series.v.some((value) => !Number.isNaN(value)));
  const first = wanted[0];
  if (main.length === 0 && first) return wrongUnit(first) ?? missing(recording, liquid);
  const speed = usable('engine-speed') ?? usable('propeller-speed');
  if (!speed) {
    return refusal(
      'missing-channel',
      `${namesOf(recording)}: no engine speed, so nothing says when power was held. Name its column in the channel map, or write the readings as points with the engine speed of each`,
    );
  }
  const oil = usable('oil-temperature');
  const outside = usable('outside-air-temperature');
  const inlet = usable('inlet-air-temperature');
  return {
    main: main.map((series) => ({ series, part: liquid ? 'coolant' : 'cylinder-head' })),
    oil: oil ? { series: oil, part: 'oil' } : null,
    air: inlet ?? outside,
    outside: outside ?? inlet,
    speed,
    speedFactor: speed.quantity.startsWith('propeller') ? (airplane?.engine.reductionRatio ?? 1) : 1,
    door: usable('cowl-exit-position'),
    fan: usable('cooling-fan-state'),
    manifold: usable('manifold-pressure'),
    height: usable('pressure-altitude'),
    flags,
  };
}

function missing(recording: Recording, liquid: boolean): Refusal {
  const wanted = liquid ? 'coolant temperature' : 'cylinder head temperature';
  const columns = recording.tables.flatMap((table) => table.channels.map((channel) => channel.column));
  const listed = columns.slice(0, 30).join(', ') + (columns.length > 30 ? ', ...' : '');
  return refusal(
    'missing-channel',
    `${namesOf(recording)}: no ${wanted} among its columns (${listed}). Name its column in the channel map if it is there under another name, or write the readings as points`,
  );
}

function namesOf(recording: Recording): string {
  return recording.tables.map((table) => table.file).join(', ');
}

/** Share of readings outside what any light airplane shows from which the unit, not the sensor, is at fault. */
const MOSTLY = 0.5;

function wrongUnit(series: Series): Refusal | null {
  const [low, high] = plausibleRangeOf(series);
  let [there, outside, least, most] = [0, 0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of series.v) {
    if (Number.isNaN(value)) continue;
    there += 1;
    if (value >= low && value <= high) continue;
    outside += 1;
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  if (there === 0 || outside < MOSTLY * there) return null;
  const unit = quantityOf(series.quantity)?.tradeUnits[0] ?? '';
  const words = (si: number) => show(si, unit, { decimals: 0 }).text;
  return refusal(
    'implausible-values',
    `${series.file}, column "${series.column}": reads ${words(least)} to ${words(most)} with the unit stated, where ${words(low)} to ${words(high)} can be. Correct the unit of this column in the channel map`,
  );
}

function plausible(series: Series | undefined, flags: Flag[]): Series | null {
  if (!series || series.v.every((value) => Number.isNaN(value))) return null;
  const wrong = wrongUnit(series);
  if (!wrong) return series;
  flags.push(flag('implausible-unit', `${wrong.message}; it was left out`));
  return null;
}
