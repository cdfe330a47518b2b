/** The channels of flight cooling: what is to be kept cool, the air, and what was set. Or why they will not do. */
import type { Airplane } from '../../airplane/index.ts';
import { allSeriesOf, plausibleRangeOf, type Recording, type Series, seriesOf } from '../../logs/index.ts';
import type { CooledPart } from '../../models/index.ts';
import { type Flag, flag, type Refusal, refusal } from '../../remarks/index.ts';
import { besideFile } from '../../segments/index.ts';

export type HotPart = Exclude<CooledPart, 'cylinder-barrel'>;

export interface FlightChannels {
  hot: { series: Series; part: HotPart }[];
  air: Series | null;
  airspeed: Series | null;
  /** true where the airspeed channel is calibrated already */
  calibrated: boolean;
  height: Series | null;
  fuelFlow: Series | null;
  manifold: Series | null;
  engineSpeed: Series | null;
  door: Series | null;
  flags: Flag[];
}

/**
 * Channels to reduce from.
 * @param recording aligned logs, object
 * @param airplane the description, or undefined
 * @param airStated true where outside air was stated by hand, boolean
 * @returns channels with remarks, or a refusal that names what is missing
 */
export function flightChannels(
  recording: Recording,
  airplane: Airplane | undefined,
  airStated: boolean,
): FlightChannels | Refusal {
  const flags: Flag[] = [];
  const coolant = seriesOf(recording, 'coolant-temperature');
  const heads = allSeriesOf(recording, 'cylinder-head-temperature');
  const oil = seriesOf(recording, 'oil-temperature');
  const liquid = airplane ? airplane.cooling.kind === 'liquid' : coolant !== undefined;
  const hot: { series: Series; part: HotPart }[] = [
    ...(coolant ? [{ series: coolant, part: 'coolant' as const }] : []),
    ...heads.map((series) => ({ series, part: 'cylinder-head' as const })),
    ...(oil ? [{ series: oil, part: 'oil' as const }] : []),
  ].filter(({ series }) => isPlausible(series, flags));
  const main = hot.filter(({ part }) => (liquid ? part === 'coolant' : part === 'cylinder-head'));
  if (hot.length === 0) return missing(recording, liquid ? 'coolant temperature' : 'cylinder head temperature');
  if (main.length === 0) {
    const words = liquid ? 'coolant temperature' : 'cylinder head temperature';
    flags.push(flag('limit-missing', `no ${words} was logged: nothing is said of it`));
  }
  const indicated = seriesOf(recording, 'indicated-airspeed');
  const airspeed = indicated ?? seriesOf(recording, 'calibrated-airspeed') ?? null;
  // the probe beside the airspeed is the one whose recovery the description states
  const air = besideFile(recording, airspeed?.file ?? '', ['outside-air-temperature']);
  if (!air && !airStated) return missing(recording, 'outside air temperature');
  if (seriesOf(recording, 'inlet-air-temperature'))
    flags.push(
      flag(
        'air-temperature-source',
        'temperatures are taken over outside air, static; the inlet air logged is not used',
      ),
    );
  return {
    hot,
    air: air ?? null,
    airspeed,
    calibrated: !indicated,
    height:
      seriesOf(recording, 'pressure-altitude') ??
      seriesOf(recording, 'reported-altitude') ??
      seriesOf(recording, 'indicated-altitude') ??
      null,
    fuelFlow: seriesOf(recording, 'fuel-flow') ?? null,
    manifold: seriesOf(recording, 'manifold-pressure') ?? null,
    engineSpeed: seriesOf(recording, 'engine-speed') ?? null,
    door: seriesOf(recording, 'cowl-exit-position') ?? null,
    flags,
  };
}

/** A channel most of whose readings no light airplane can show has the wrong unit, not a hot engine. */
const MOSTLY = 0.5;

function isPlausible(series: Series, flags: Flag[]): boolean {
  const [low, high] = plausibleRangeOf(series);
  const there = series.v.filter((value) => !Number.isNaN(value));
  const within = there.filter((value) => value >= low && value <= high);
  if (there.length > 0 && within.length >= MOSTLY * there.length) return true;
  if (there.length > 0)
    flags.push(
      flag(
        'implausible-unit',
        `${series.file}, column "${series.column}": its readings do not fit the unit stated; it was left out`,
      ),
    );
  return false;
}

function missing(recording: Recording, words: string): Refusal {
  const files = recording.tables.map((table) => table.file).join(', ');
  return refusal(
    'missing-channel',
    `${files}: no ${words}. Name its column in the channel map if it is there under another name, or write the steady readings as points`,
  );
}
