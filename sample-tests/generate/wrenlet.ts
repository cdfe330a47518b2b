/**
 * Wrenlet has no recorder: a telephone that logs satellite positions once a second, and a card with a pencil. Its
 * airspeed legs, climbs and ground run, with the truth behind them.
 */
import { fromSi, toSi } from '../../analysis/units/index.ts';
import { density, GRAVITY, pressureAt, SEA_LEVEL_DENSITY, standardTemperature, trueAirspeed } from './air.ts';
import { LOCAL_STAMP, logText, type Stamp } from './log-text.ts';
import { degrees, knots } from './manoeuvre.ts';
import { randomFrom } from './random.ts';
import { rounded, wander } from './signals.ts';

const SEED = 1201;
const EARTH_RADIUS = 6_371_000;
const WIND = { speed: knots(9), direction: degrees(210) };
const WARMER = 6;

/** Calibrated less indicated airspeed, m/s: 2.5 kt at 44 kt indicated, falling by 0.09 kt a knot. */
export const wrenletCorrection = (ias: number): number => knots(2.5) - 0.09 * (ias - knots(44));

const stated = (value: string, unit: string) => ({ value: Number(value), unit });

export interface WrenletLeg {
  fromSeconds: number;
  toSeconds: number;
  ias: number;
  cas: number;
  correction: number;
  tas: number;
  heading: number;
  windNorth: number;
  windEast: number;
}

/** The telephone's log of four speeds on three headings each, and what the pilot wrote beside it. */
export function wrenletAirspeed() {
  const random = randomFrom(SEED, 'wrenlet airspeed');
  const [north, east] = ['north', 'east'].map((name) => wander(random.stream(name), 0.25, 400, 1));
  const [gustNorth, gustEast] = ['gust north', 'gust east'].map((name) => wander(random.stream(name), 0.35, 12, 1));
  const hand = wander(random.stream('hand'), 0.35, 15, 1);
  const yaw = wander(random.stream('yaw'), degrees(1.2), 12, 1);
  const place = ['place north', 'place east', 'height'].map((name) => wander(random.stream(name), 2, 60, 1));
  const pressureAltitude = toSi(3000, 'ft');
  const pressure = pressureAt(pressureAltitude);
  const temperature = standardTemperature(pressureAltitude) + WARMER;
  const columns = Array.from({ length: 6 }, (): number[] => []);
  const legs: WrenletLeg[] = [];
  const points: unknown[] = [];
  let [latitude, longitude] = [degrees(45.1), degrees(-37)];
  let heading = degrees(60);
  let t = 0;
  const second = (ias: number, course: number) => {
    const turn = Math.atan2(Math.sin(course - heading), Math.cos(course - heading));
    heading += Math.max(-degrees(6), Math.min(degrees(6), turn));
    const nose = heading + yaw();
    const flown = ias + hand();
    const cas = flown + wrenletCorrection(flown);
    const tas = trueAirspeed(cas, pressure, temperature);
    const wind = {
      north: -WIND.speed * Math.cos(WIND.direction) + (north?.() ?? 0) + (gustNorth?.() ?? 0),
      east: -WIND.speed * Math.sin(WIND.direction) + (east?.() ?? 0) + (gustEast?.() ?? 0),
    };
    const ground = { north: tas * Math.cos(nose) + wind.north, east: tas * Math.sin(nose) + wind.east };
    latitude += ground.north / EARTH_RADIUS;
    longitude += ground.east / (EARTH_RADIUS * Math.cos(latitude));
    const seen = { north: ground.north + 0.1 * random.normal(), east: ground.east + 0.1 * random.normal() };
    const bearing = (fromSi(Math.atan2(seen.east, seen.north), 'deg') + 360) % 360;
    const row = [
      fromSi(latitude, 'deg') + (place[0]?.() ?? 0) / 111_200,
      fromSi(longitude, 'deg') + (place[1]?.() ?? 0) / 78_600,
      pressureAltitude + 42 + (place[2]?.() ?? 0),
      fromSi(Math.hypot(seen.north, seen.east), 'km/h'),
      bearing,
      4,
    ];
    row.forEach((value, i) => {
      columns[i]?.push(value);
    });
    t += 1;
    return { ias: flown, cas, tas, windNorth: wind.north, windEast: wind.east };
  };
  for (const speed of [48, 60, 72, 84]) {
    for (const course of [30, 150, 270]) {
      for (let k = 0; k < 38; k += 1) second(knots(speed), degrees(course));
      const fromSeconds = t;
      const seconds = Array.from({ length: 75 }, () => second(knots(speed), degrees(course)));
      const mean = (key: keyof (typeof seconds)[number]) =>
        seconds.reduce((sum, s) => sum + s[key], 0) / seconds.length;
      legs.push({
        fromSeconds,
        toSeconds: t - 1,
        ias: mean('ias'),
        cas: mean('cas'),
        correction: mean('cas') - mean('ias'),
        tas: mean('tas'),
        heading: degrees(course),
        windNorth: mean('windNorth'),
        windEast: mean('windEast'),
      });
      points.push({
        label: `${speed} kt, heading ${course}`,
        'indicated-airspeed': stated(rounded(fromSi(mean('ias'), 'kt') + 0.2 * random.normal(), 0.5), 'kt'),
        'pressure-altitude': stated(rounded(fromSi(pressureAltitude, 'ft') + 15 * random.normal(), 20), 'ft'),
        'outside-air-temperature': stated(rounded(fromSi(temperature, 'degC') + 0.3 * random.normal(), 0.5), 'degC'),
        'from-seconds': fromSeconds + 3,
        'to-seconds': t - 4,
      });
    }
  }
  const headers = [
    'Latitude [deg]',
    'Longitude [deg]',
    'GPS alt [m]',
    'GPS speed [km/h]',
    'GPS track [deg]',
    'Accuracy [m]',
  ];
  const steps = [0.000001, 0.000001, 1, 0.1, 0.1, 1];
  const start = Date.UTC(2031, 5, 7, 6, 31, 20);
  const millis = columns[0]?.map((_, i) => start + 1000 * i) ?? [];
  const stamp: Stamp = { headers: ['Time UTC'], text: (ms) => `${LOCAL_STAMP.text(ms).replace(',', 'T')}Z` };
  const csv = logText(
    [],
    stamp,
    millis,
    headers.map((header, i) => ({ header, step: steps[i] ?? 1, values: columns[i] ?? [] })),
  );
  const truth = {
    seed: SEED,
    wind: { speed: WIND.speed, direction: WIND.direction },
    legs,
    positionError: [44, 48, 60, 72, 84].map((ias) => ({
      ias: knots(ias),
      cas: knots(ias) + wrenletCorrection(knots(ias)),
      correction: wrenletCorrection(knots(ias)),
    })),
  };
  return { csv, points: { kind: 'airspeed', points }, truth };
}

const MASS = 520;

/** Rate of climb of a fixed-pitch propeller that pulls less the faster it flies, still air, constant TAS, m/s. */
function wrenletRate(tas: number, rho: number): number {
  const [area, aspectRatio, efficiency, parasite] = [14.2, 7.18, 0.75, 0.042];
  const thrust = (1500 - 17 * tas) * (rho / SEA_LEVEL_DENSITY) ** 1.1;
  const dynamic = 0.5 * rho * tas ** 2;
  const lift = (MASS * GRAVITY) / (dynamic * area);
  const drag = dynamic * area * (parasite + lift ** 2 / (Math.PI * aspectRatio * efficiency));
  return ((thrust - drag) * tas) / (MASS * GRAVITY);
}

/** Climbs timed with a stopwatch through 300 m, both ways, and the truth behind the pencilled figures. */
export function wrenletClimb() {
  const random = randomFrom(SEED, 'wrenlet climb');
  const [bottom, top] = [toSi(2000, 'ft'), toSi(3000, 'ft')];
  const middle = (bottom + top) / 2;
  const pressure = pressureAt(middle);
  const temperature = standardTemperature(middle) + WARMER;
  const rho = density(pressure, temperature);
  const at = (cas: number) => wrenletRate(trueAirspeed(cas, pressure, temperature), rho);
  const points = [44, 49, 54, 60, 66].flatMap((speed) =>
    [70, 250].map((heading) => {
      const ias = knots(speed) + 0.2 * random.normal();
      const rate = at(ias + wrenletCorrection(ias)) + 0.12 * random.normal();
      // Altimeter feet are standard feet: on a warm day the band is taller than it reads.
      const time = ((top - bottom) * temperature) / standardTemperature(middle) / rate;
      return {
        label: `${speed} kt, heading ${heading}`,
        'indicated-airspeed': stated(rounded(fromSi(ias, 'kt'), 0.5), 'kt'),
        bottom: stated('2000', 'ft'),
        top: stated('3000', 'ft'),
        time: stated(rounded(time + 0.3 * random.normal(), 0.5), 's'),
        'outside-air-temperature': stated(rounded(fromSi(temperature, 'degC'), 0.5), 'degC'),
        'heading-magnetic': stated(String(heading), 'deg'),
        mass: stated(String(MASS), 'kg'),
      };
    }),
  );
  const speeds = Array.from({ length: 601 }, (_, i) => knots(40 + 0.05 * i));
  const best = speeds.reduce((a, b) => (at(b) > at(a) ? b : a));
  const truth = {
    seed: SEED,
    mass: MASS,
    pressureAltitude: middle,
    temperature,
    bestRateSpeed: best,
    bestRate: at(best),
    runs: [44, 49, 54, 60, 66].map((speed) => {
      const cas = knots(speed) + wrenletCorrection(knots(speed));
      return { ias: knots(speed), cas, specificExcessPower: at(cas) };
    }),
  };
  return { points: { kind: 'climb', points }, truth };
}
