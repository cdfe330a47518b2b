/** Legs written on a card: speed and track of a satellite receiver, or runs along a measured course. */
import { components, pressureAltitudeFromIndicated } from '../../air/index.ts';
import type { Recording } from '../../logs/index.ts';
import { type Refusal, refusal } from '../../remarks/index.ts';
import { meanBetween, sampleAt } from '../../segments/index.ts';
import { differenceToSi } from '../../units/index.ts';
import type { AirspeedOptions, AirspeedPoint } from './input.ts';
import { type Leg, meanOf } from './leg.ts';
import { groundVelocity } from './satellite.ts';

/**
 * Legs of written points. What a point does not say is taken from the log over its stretch, where one is named.
 * @param points as parsed
 * @param options what a person stated for all
 * @param recording logs beside the card, if any
 * @param flaps flap setting where a point names none
 * @returns one leg a point, or a refusal that names what a point lacks
 */
export function legsFromPoints(
  points: readonly AirspeedPoint[],
  options: AirspeedOptions,
  recording: Recording | undefined,
  flaps: string,
): Leg[] | Refusal {
  const legs: Leg[] = [];
  // Speed over the ground alone gives true airspeed and wind: then no point may name an airspeed.
  const speedOnly = points.every((one) => !one['indicated-airspeed'] && one['from-seconds'] === undefined);
  for (const [index, point] of points.entries()) {
    const leg = legOf(point, index, options, recording, flaps, speedOnly);
    if ('code' in leg) return leg;
    legs.push(leg);
  }
  return legs;
}

function legOf(
  point: AirspeedPoint,
  index: number,
  options: AirspeedOptions,
  recording: Recording | undefined,
  flaps: string,
  speedOnly: boolean,
): Leg | Refusal {
  const lacks = (what: string) => refusal('missing-channel', `written leg ${index + 1} has no ${what}`);
  const span = spanOf(point);
  const at = point.clock?.si ?? (span ? (span.from + span.to) / 2 : 0);
  const over = overGround(point, recording);
  if (!over) return lacks('ground speed and track, nor do the logs over its stretch');
  const logged = (quantity: string): number | undefined => {
    const series = span && recording?.series.find((one) => one.quantity === quantity);
    return series ? meanBetween(series, span.from, span.to)?.mean : undefined;
  };
  const ias = point['indicated-airspeed']?.si ?? logged('indicated-airspeed');
  const setting = options.altimeterSetting?.si;
  const indicated = point['indicated-altitude']?.si ?? logged('indicated-altitude');
  const height =
    point['pressure-altitude']?.si ??
    logged('pressure-altitude') ??
    (indicated !== undefined && setting !== undefined ? pressureAltitudeFromIndicated(indicated, setting) : undefined);
  const air = point['outside-air-temperature']?.si ?? logged('outside-air-temperature') ?? options.airTemperature?.si;
  if (!speedOnly) {
    if (ias === undefined) return lacks('indicated airspeed');
    if (height === undefined) return lacks('pressure altitude (or indicated altitude with the altimeter setting)');
    if (air === undefined) return lacks('outside air temperature');
  }
  const one = (value: number | undefined) => Float64Array.of(value ?? Number.NaN);
  return {
    role: over.along ? 'course' : 'leg',
    run: index,
    label: point.label ?? '',
    flaps: point.flaps ?? flaps,
    fromSeconds: span?.from ?? at,
    toSeconds: span?.to ?? at,
    written: true,
    samples: {
      ias: one(ias),
      height: one(height),
      air: one(air),
      north: Float64Array.of(over.north),
      east: Float64Array.of(over.east),
    },
    dt: 1,
    covered: 1,
    mass: point.mass?.si ?? null,
    loadFactor: 1,
    along: over.along,
    lengthDoubt: over.timed ? lengthDoubtOf(point) : null,
    ias: ias ?? Number.NaN,
    stepBias: 0,
  };
}

function spanOf(point: AirspeedPoint): { from: number; to: number } | null {
  const [from, to] = [point['from-seconds'], point['to-seconds']];
  return from !== undefined && to !== undefined ? { from, to } : null;
}

interface OverGround {
  north: number;
  east: number;
  along: { north: number; east: number } | null;
  /** by a clock over a measured length */
  timed: boolean;
}

/** A course measured on a map or by paces, half-width 0.5 % of it; common practice, no source. */
const COURSE_LENGTH = 0.005;

function lengthDoubtOf(point: AirspeedPoint): number {
  const length = point['course-length'];
  const stated = length?.u95 !== undefined ? differenceToSi(length.u95, length.unit) / length.si : COURSE_LENGTH;
  return stated / 2;
}

function overGround(point: AirspeedPoint, recording: Recording | undefined): OverGround | null {
  const course = point['course-true']?.si;
  const speed = point['ground-speed']?.si;
  if (course !== undefined) {
    const [length, time] = [point['course-length']?.si, point['course-time']?.si];
    const along = speed ?? (length !== undefined && time !== undefined ? length / time : undefined);
    return along === undefined
      ? null
      : { ...components(along, course), along: components(1, course), timed: speed === undefined };
  }
  const track = point['track-true']?.si;
  if (speed !== undefined && track !== undefined) return { ...components(speed, track), along: null, timed: false };
  const span = spanOf(point);
  const ground = recording && groundVelocity(recording);
  if (!span || !ground) return null;
  const times = ground.north.t.filter((t) => t >= span.from && t <= span.to);
  const north = meanOf(sampleAt(ground.north, times));
  const east = meanOf(sampleAt(ground.east, times));
  return Number.isNaN(north) || Number.isNaN(east) ? null : { north, east, along: null, timed: false };
}
