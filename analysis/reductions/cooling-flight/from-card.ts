/** Steady points written on a card. */
import type { Governing, Regime } from '../../models/index.ts';
import { OVER_OPEN } from '../../models/index.ts';
import { toSi } from '../../units/index.ts';
import type { AirReader } from './air-data.ts';
import type { HotPart } from './channels.ts';
import { hotReadings, type WrittenPoint } from './input.ts';
import type { Setting, SteadyReading } from './point.ts';
import { thermostatLeft } from './readings.ts';

/** Reading a needle or a changing figure, U95 half-width; common practice, no source. */
const READING = toSi(1, 'dK');
const READING_NU = 50;

/**
 * Readings of written points.
 * @param points as written, SI, list
 * @param reader how airspeed and air are read, object
 * @param governing thermostat of a part, function
 * @param airStated outside air for points that do not give it, K, or undefined
 * @param first number of the first point, from 0, count
 * @returns readings; a point without outside air gives none
 * @throws OutOfRange when a value lies outside the relations of air data
 */
export function readingsWritten(
  points: readonly WrittenPoint[],
  reader: AirReader,
  governing: (part: HotPart) => Governing,
  airStated: number | undefined,
  first: number,
): { readings: SteadyReading[]; withoutAir: number } {
  const readings: SteadyReading[] = [];
  let withoutAir = 0;
  points.forEach((point, i) => {
    const setting = settingWritten(point, reader);
    const probe = point['outside-air-temperature']?.si;
    const air = probe === undefined ? airStated : reader.air(probe, setting.cas, setting.height);
    if (air === undefined) {
      withoutAir += 1;
      return;
    }
    for (const [quantity, temperature] of hotReadings(point)) {
      const part = partOf(quantity);
      readings.push({
        point: first + i,
        label: point.label ?? `point ${first + i + 1}`,
        file: 'card',
        fromSeconds: 0,
        toSeconds: 0,
        byHand: true,
        written: true,
        quantity,
        part,
        setting,
        temperature,
        air,
        excess: temperature - air,
        noise: { u: READING / 2, nu: READING_NU },
        rate: null,
        uRate: 0,
        regime: regimeWritten(governing(part), temperature),
        thermostatLeft: thermostatLeft(governing(part), temperature),
      });
    }
  });
  return { readings, withoutAir };
}

function settingWritten(point: WrittenPoint, reader: AirReader): Setting {
  const ias = point['indicated-airspeed']?.si ?? null;
  const own = point['calibrated-airspeed']?.si ?? null;
  const read = ias === null ? null : reader.cas(ias);
  const flow = point['fuel-flow']?.si;
  const [manifold, speed] = [point['manifold-pressure']?.si, point['engine-speed']?.si];
  const product = manifold === undefined || speed === undefined ? null : manifold * speed;
  return {
    power: flow ?? product,
    measure: flow === undefined && product !== null ? 'manifold-times-speed' : 'fuel-flow',
    ias: ias ?? own,
    cas: own ?? read?.cas ?? null,
    uCas: read?.u ?? 0,
    height: point['pressure-altitude']?.si ?? null,
    door: point['cowl-exit-position']?.si ?? null,
  };
}

function partOf(quantity: string): HotPart {
  if (quantity.startsWith('cylinder')) return 'cylinder-head';
  return quantity.startsWith('oil') ? 'oil' : 'coolant';
}

// A single figure cannot show that it stood over the opening for half a minute: the writer says that it was steady.
function regimeWritten(governing: Governing, T: number): Regime {
  if (governing === 'none') return 'fully-open';
  if (governing === null) return 'unknown';
  if (T > governing.open + OVER_OPEN) return 'fully-open';
  return T < governing.start ? 'warming' : 'regulated';
}
