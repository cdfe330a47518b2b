/**
 * Story item 9: the aft tank pumped to the left wing tank in level flight while the engine burns from the left. The
 * pump gives nearly the same flow at any level, a little less as the head grows, until it draws air.
 */
import { fromSi, toSi } from '../../analysis/units/index.ts';
import { LOCAL_STAMP, logText } from './log-text.ts';
import { randomFrom } from './random.ts';
import { lag, wander } from './signals.ts';

export interface TransferTruth {
  seed: number;
  pumpOnSeconds: number;
  pumpOffSeconds: number;
  /** mean of the pumping until it draws air, m3/s, and its change with the level in the aft tank, 1/s */
  transferFlow: number;
  flowPerVolume: number;
  /** s from the first row when the pump first draws air, and what is left then and for good, m3 */
  drawsAirSeconds: number;
  volumeWhenAirDrawn: number;
  remainder: number;
  engineFlow: number;
  left: VolumeEnds;
  right: VolumeEnds;
  aft: VolumeEnds;
}

interface VolumeEnds {
  startVolume: number;
  endVolume: number;
}

const SEED = 9101;
const SECONDS = 1500;
const PUMP_ON = 180;
const PUMP_OFF = 1260;
const AIR_BELOW = toSi(1.6, 'L');
const UNUSABLE = toSi(1.0, 'L');
const FLOW_EMPTY = toSi(1.75, 'L/min');
const FLOW_PER_VOLUME = toSi(0.006, 'L/min') / toSi(1, 'L');
const ENGINE_FLOW = toSi(27, 'L/h');

/** The recorder's fuel page and what lies behind it. */
export function fuelTransfer(options: { seed?: number; noise?: number } = {}): { csv: string; truth: TransferTruth } {
  const seed = options.seed ?? SEED;
  const noise = options.noise ?? 1;
  const random = randomFrom(seed, 'transfer');
  const start = { left: toSi(21, 'L'), right: toSi(38, 'L'), aft: toSi(31, 'L') };
  const volume = { ...start };
  const senders = (['left', 'right', 'aft'] as const).map((tank) => sender(random.stream(tank), noise));
  const burn = wander(random.stream('burn'), 0.01 * noise, 30, 1);
  const shake = (size: number) => noise * size * random.normal();
  const columns = Array.from({ length: 8 }, () => new Float64Array(SECONDS));
  let drawsAirSeconds = Number.NaN;
  let volumeWhenAirDrawn = Number.NaN;
  let [moved, movingSeconds] = [0, 0];
  for (let t = 0; t < SECONDS; t += 1) {
    const on = t >= PUMP_ON && t < PUMP_OFF;
    const full = FLOW_EMPTY + FLOW_PER_VOLUME * volume.aft;
    const share = Math.min(1, Math.max(0, (volume.aft - UNUSABLE) / (AIR_BELOW - UNUSABLE)));
    const flow = on ? full * share : 0;
    const engine = ENGINE_FLOW * (1 + burn());
    const shown = [volume.left, volume.right, volume.aft].map((v, i) => senders[i]?.(v) ?? Number.NaN);
    const row = [
      ...shown.map((v) => fromSi(v, 'L')),
      fromSi(engine, 'L/h') + shake(0.1),
      on ? 1 : 0,
      Math.max(0, (on ? 3.1 - 0.9 * (1 - share) : 0) + shake(0.03)),
      3 + shake(0.01),
      14.1 - (on ? 0.05 : 0) + shake(0.03),
    ];
    row.forEach((value, i) => {
      const column = columns[i];
      if (column) column[t] = value;
    });
    if (on && share < 1 && Number.isNaN(drawsAirSeconds)) {
      drawsAirSeconds = t;
      volumeWhenAirDrawn = volume.aft;
    }
    if (on && share === 1) {
      moved += flow;
      movingSeconds += 1;
    }
    volume.aft -= flow;
    volume.left += flow - engine;
  }
  const names = [
    ['Fuel qty left [L]', 0.5],
    ['Fuel qty right [L]', 0.5],
    ['Fuel qty aft [L]', 0.5],
    ['Fuel flow [L/h]', 0.1],
    ['Transfer pump', 1],
    ['Pump amps [A]', 0.1],
    ['Fuel press [bar]', 0.01],
    ['Main bus volts [V]', 0.1],
  ] as const;
  const millis = Float64Array.from({ length: SECONDS }, (_, i) => Date.UTC(2031, 4, 21, 10, 35, 12) + 1000 * i);
  const csv = logText(
    ['# Engine monitor', '# Session 36, fuel page', '# Clock: local, set by hand'],
    LOCAL_STAMP,
    millis,
    names.map(([header, step], i) => ({ header, step, values: columns[i] ?? [] })),
  );
  const ends = (tank: keyof typeof volume): VolumeEnds => ({ startVolume: start[tank], endVolume: volume[tank] });
  return {
    csv,
    truth: {
      seed,
      pumpOnSeconds: PUMP_ON,
      pumpOffSeconds: PUMP_OFF,
      transferFlow: moved / movingSeconds,
      flowPerVolume: FLOW_PER_VOLUME,
      drawsAirSeconds,
      volumeWhenAirDrawn,
      remainder: volume.aft,
      engineFlow: ENGINE_FLOW,
      left: ends('left'),
      right: ends('right'),
      aft: ends('aft'),
    },
  };
}

/** A float that sloshes and is damped; good to about half a litre. */
function sender(random: ReturnType<typeof randomFrom>, noise: number): (volume: number) => number {
  const slosh = wander(random, toSi(0.5, 'L') * noise, 4, 1);
  const damped = lag(8, 1);
  return (volume) => Math.max(0, damped(volume + slosh()));
}
