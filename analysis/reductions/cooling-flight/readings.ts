/** What each temperature did in each hold: the end of it where the temperature had come to rest, and the means there. */

import { type Governing, type Regime, thermostatSpans } from '../../models/index.ts';
import { fitLine, meanWithin, quantisationStep, stepEffect } from '../../numbers/index.ts';
import type { Excluded } from '../../segments/index.ts';
import { fromSi, show, toSi } from '../../units/index.ts';
import type { AirReader } from './air-data.ts';
import type { HotPart } from './channels.ts';
import type { FlightGrid, HotSignal } from './flight-grid.ts';
import type { Hold } from './holds.ts';
import { channelWords, type Setting, type SteadyReading } from './point.ts';

/** Slower than this counts as steady: 1 °F a minute, common practice, no source; K/s. */
export const STEADY_RATE = toSi(1, 'degF/min');
/** The rate is seen over this, s, and must have stayed slow for as long. */
export const RATE_SECONDS = 60;
/** A temperature is the mean over this much of the end, s: before that it still carries what it came from. */
const LAST_SECONDS = 90;
/** Starts of a steady end are tried this far apart, s. */
const TRY_SECONDS = 5;
/** Least credible correlation time of a temperature, s. */
const FLOOR_SECONDS = 10;

export interface MeasureContext {
  flight: FlightGrid;
  reader: AirReader;
  /** outside air stated by hand, K */
  airStated: number | undefined;
  governing(part: HotPart): Governing;
}

/**
 * Readings of all temperatures in all holds.
 * @param context the flight and how it is read, object
 * @param holds steady flight, list
 * @returns readings in order of holds, and what was still moving, with the reason
 * @throws OutOfRange when a value lies outside the relations of air data
 */
export function steadyReadings(
  context: MeasureContext,
  holds: readonly Hold[],
): { readings: SteadyReading[]; excluded: Excluded[] } {
  const { flight } = context;
  const readings: SteadyReading[] = [];
  const excluded: Excluded[] = [];
  const regimes = flight.hot.map((hot) => regimesOf(hot, flight.grid.dt, context.governing(hot.part)));
  holds.forEach((hold, index) => {
    const [from, to] = samplesOf(hold, flight);
    const place = (k: number) => flight.grid.start + k * flight.grid.dt;
    flight.hot.forEach((hot, h) => {
      const label = hold.label ?? `point ${index + 1}`;
      const atRest = hold.byHand ? from : restFrom(flight, hot, from, to);
      if ((to - atRest) * flight.grid.dt < RATE_SECONDS) {
        const last = slopeIn(flight, hot, to - Math.round(RATE_SECONDS / flight.grid.dt), to);
        excluded.push({ fromSeconds: place(from), toSeconds: place(to), reason: movingWords(label, hot, last) });
        return;
      }
      const governed = openPart(regimes[h] ?? [], atRest, to, flight.grid.dt);
      const reading = measured(context, hot, { from: governed.from, to: governed.to, index, label, hold });
      if (reading) readings.push({ ...reading, regime: governed.regime });
    });
  });
  return { readings, excluded };
}

function movingWords(label: string, hot: HotSignal, rate: number): string {
  const said = Number.isNaN(rate) ? 'not seen' : `${fromSi(rate, 'K/min').toFixed(1)} K/min at the end`;
  const wanted = show(STEADY_RATE, 'K/min', { decimals: 2 }).text;
  return `${label}: ${channelWords(hot.quantity)} not within ${wanted} for ${RATE_SECONDS} s (${said})`;
}

function samplesOf(hold: Hold, { grid }: FlightGrid): [number, number] {
  const k = (seconds: number) => (seconds - grid.start) / grid.dt;
  return [
    Math.max(0, Math.ceil(k(hold.fromSeconds) - 1e-6)),
    Math.min(grid.n - 1, Math.floor(k(hold.toSeconds) + 1e-6)),
  ];
}

// The longest end of the hold over which the temperature moved slowly, and moved slowly in its first minute too: a rise
// that a later fall undoes is not at rest.
function restFrom(flight: FlightGrid, hot: HotSignal, from: number, to: number): number {
  const minute = Math.round(RATE_SECONDS / flight.grid.dt);
  const step = Math.max(1, Math.round(TRY_SECONDS / flight.grid.dt));
  for (let i = from; i <= to - minute; i += step) {
    const whole = slopeIn(flight, hot, i, to);
    const first = slopeIn(flight, hot, i, i + minute);
    if (Math.abs(whole) <= STEADY_RATE && Math.abs(first) <= STEADY_RATE) return i;
  }
  return to + 1;
}

function slopeIn({ times }: FlightGrid, hot: HotSignal, from: number, to: number): number {
  const [t, v] = [times.subarray(from, to + 1), hot.values.subarray(from, to + 1)];
  return v.filter((value) => !Number.isNaN(value)).length < 3 ? Number.NaN : fitLine(t, v).slope;
}

function regimesOf(hot: HotSignal, dt: number, governing: Governing): Regime[] {
  const n = hot.values.length;
  if (governing === 'none') return new Array<Regime>(n).fill('fully-open');
  if (governing === null) return new Array<Regime>(n).fill('unknown');
  const list = new Array<Regime>(n).fill('unknown');
  for (const { from, to, regime } of thermostatSpans(hot.steady, dt, governing)) list.fill(regime, from, to + 1);
  return list;
}

// Fully open samples if they last, else whatever governed at the end; a mixture is never averaged as open.
function openPart(regimes: readonly Regime[], from: number, to: number, dt: number) {
  let start = to + 1;
  while (start > from && regimes[start - 1] === 'fully-open') start -= 1;
  if ((to - start) * dt >= RATE_SECONDS) return { from: start, to, regime: 'fully-open' as Regime };
  const last = regimes[to] ?? 'unknown';
  const regime: Regime = last === 'fully-open' ? 'regulated' : last;
  return { from, to, regime };
}

/** Fewer readings than this are no mean. */
const LEAST_READINGS = 10;

interface Place {
  from: number;
  to: number;
  index: number;
  label: string;
  hold: Hold;
}

function measured(context: MeasureContext, hot: HotSignal, place: Place): SteadyReading | null {
  const { flight, reader } = context;
  const { to } = place;
  const dt = flight.grid.dt;
  // the rate is that of all the rest, the level that of its end; by hand all of it is meant
  const from = place.hold.byHand ? place.from : Math.max(place.from, to - Math.round(LAST_SECONDS / dt));
  const inside = (values: Float64Array | null) =>
    values ? values.subarray(from, to + 1).filter((value) => !Number.isNaN(value)) : new Float64Array();
  const T = inside(hot.values);
  if (T.length < LEAST_READINGS) return null;
  const times = flight.times.subarray(from, to + 1);
  const rest = [flight.times, hot.values].map((one) => one.subarray(place.from, to + 1));
  const line = fitLine(rest[0] ?? [], rest[1] ?? [], { correlated: { dt, floor: FLOOR_SECONDS } });
  const within = meanWithin(T, dt, FLOOR_SECONDS);
  const step = quantisationStep(hot.readings);
  const effect = stepEffect(within.s, step);
  const noise = Math.hypot(within.u, effect.bias);
  const setting = settingOf(flight, reader, inside);
  const indicated = mean(inside(flight.air));
  const air = context.airStated ?? (indicated === null ? null : reader.air(indicated, setting.cas, setting.height));
  if (air === null) return null;
  return {
    point: place.index,
    label: place.label,
    file: flight.file,
    fromSeconds: times[0] ?? 0,
    toSeconds: times[times.length - 1] ?? 0,
    byHand: place.hold.byHand,
    written: false,
    quantity: hot.quantity,
    part: hot.part,
    setting,
    temperature: within.mean,
    air,
    excess: within.mean - air,
    noise: { u: noise, nu: within.nu },
    rate: line.slope,
    uRate: line.uSlope,
    regime: 'unknown',
    thermostatLeft: thermostatLeft(context.governing(hot.part), within.mean),
  };
}

/** Share of the thermostat's range still shut at a temperature; null where nothing regulates or it is not known. */
export function thermostatLeft(governing: Governing, T: number): number | null {
  if (governing === null || governing === 'none') return null;
  const { start, open } = governing;
  return T <= start ? 1 : T >= open ? 0 : (open - T) / (open - start);
}

function settingOf(
  flight: FlightGrid,
  reader: AirReader,
  inside: (values: Float64Array | null) => Float64Array,
): Setting {
  const ias = mean(inside(flight.ias));
  const speed = ias === null ? null : reader.cas(ias);
  return {
    power: mean(inside(flight.power)),
    measure: flight.measure,
    ias,
    cas: speed?.cas ?? null,
    uCas: speed?.u ?? 0,
    height: mean(inside(flight.height)),
    door: mean(inside(flight.door)),
  };
}

function mean(values: Float64Array): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value / values.length, 0);
}
