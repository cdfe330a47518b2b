/** From boxes to points: what is written on a card reduces to the truth it was written from. */
import { describe, expect, test } from 'vitest';
import {
  allFields,
  type BoxReading,
  type Card,
  entryFields,
  fillCard,
  KINDS_FROM_CARDS,
  pointsOfCard,
} from '../../../../analysis/cards/index.ts';
import { testOf } from '../../../../analysis/catalogue/index.ts';
import { reductionOf } from '../../../../analysis/reductions/index.ts';
import { demoAirplane } from '../../../print/demo-cards.ts';
import { CALM_DAY, cardPoints, columnIn, KNOT } from '../../reductions/airspeed/card.ts';

const ouzel = demoAirplane('ouzel');
const place = { outing: 'Flight 1', place: 'Flight 1', revision: 'rev 7', printed: '4 May 2031' };

function card(id: string): Card {
  const found = testOf(id);
  if (!found) throw new Error(`no test ${id}`);
  return fillCard({ test: found, airplane: ouzel, place });
}

const written = (boxes: Record<string, number | string>): BoxReading[] =>
  Object.entries(boxes).map(([key, one]) => ({
    key,
    text: String(one),
    value: typeof one === 'number' ? one : null,
    source: 'written by hand',
  }));

function reduced(
  kind: string,
  set: { points: { point: object }[] } | undefined,
  options: Record<string, unknown> = {},
  airplane = ouzel,
) {
  const reduction = reductionOf(kind);
  if (!reduction || !set) throw new Error(`nothing to reduce as ${kind}`);
  const points = { kind, points: set.points.map((one) => one.point) };
  return reduction.reduce({ points, airplane, options });
}

test('every box a maker reads is a box of the entry page', () => {
  for (const [id, kind] of [
    ['airspeed-calibration-full', 'airspeed'],
    ['climb-sawtooth', 'climb'],
    ['check-climb', 'climb'],
    ['ground-cooling-fan-hold', 'cooling-ground'],
    ['cooling-climb-first', 'cooling-climb'],
    ['cooling-cruise-door-map', 'cooling-flight'],
    ['weigh-empty-cg', 'weight-balance'],
  ] as const) {
    const one = card(id);
    const fields = allFields(entryFields(one));
    const all = written(
      Object.fromEntries(fields.map((field, i) => [field.key, field.input === 'number' ? 50 + i : 'on'])),
    );
    const keys = new Set(fields.map((field) => field.key));
    const sets = pointsOfCard(one, all, kind, ouzel, 1000);
    expect(sets.flatMap((set) => set.points).length, id).toBeGreaterThan(3);
    for (const set of sets)
      for (const point of set.points) for (const key of Object.values(point.from)) expect(keys).toContain(key);
  }
  expect(KINDS_FROM_CARDS).toEqual(expect.arrayContaining(['airspeed', 'climb', 'cooling-ground', 'weight-balance']));
});

describe('airspeed', () => {
  const calibration = card('airspeed-calibration-full');
  const speeds = [65, 80, 97, 114, 132, 150];
  const legs = speeds.flatMap((kias, s) =>
    [20, 110, 200, 290].map((heading, leg) => ({ ias: kias * KNOT, heading, minutes: s * 8 + leg * 2, s, leg })),
  );
  const truth = cardPoints(legs, CALM_DAY);
  const boxes: Record<string, number> = {};
  truth.points.forEach((point, i) => {
    const { s = 0, leg = 0 } = legs[i] ?? {};
    const key = `t1.speed-${s + 1}-${leg + 1}`;
    boxes[`${key}.airspeed`] = Math.round(point['indicated-airspeed'].value / KNOT);
    boxes[`${key}.pressure-altitude`] = Math.round(point['pressure-altitude'].value / 0.3048 / 10) * 10;
    boxes[`${key}.outside-air`] = Math.round((point['outside-air-temperature'].value - 273.15) * 2) / 2;
    boxes[`${key}.ground-speed`] = Math.round(point['ground-speed'].value / KNOT);
    boxes[`${key}.track`] = (Math.round(point['track-true'].value) + 360) % 360;
    if (leg === 0) boxes[`t1.speed-${s + 1}.minute`] = (50 + s * 8) % 60;
  });

  test('a full leg grid, read as a person reads it, gives the truth within U95', () => {
    const [set] = pointsOfCard(calibration, written(boxes), 'airspeed', ouzel);
    expect(set?.points).toHaveLength(24);
    // the hour is carried on from minute 58 to 06
    expect(set?.points.at(-1)?.point.clock).toEqual({ value: 46, unit: 'min' });
    // the truth gives static air; Ouzel's own probe would be warmed by its speed
    const airplane = { ...ouzel, instruments: { ...ouzel.instruments, airTemperatureIsStatic: true } };
    const result = reduced('airspeed', set, {}, airplane);
    expect(result.status).toBe('reduced');
    const [ias, correction, u95] = ['indicated-airspeed', 'correction', 'u95'].map((name) =>
      columnIn(result, 'position-error', name),
    );
    expect(ias).toHaveLength(6);
    ias?.forEach((one, i) => {
      expect(Math.abs((correction?.[i] ?? Number.NaN) - CALM_DAY.correction(one))).toBeLessThan(u95?.[i] ?? 0);
    });
  });

  test('a leg that lacks a figure is left out and said, a speed not flown is not', () => {
    const { 't1.speed-2-3.track': _, ...rest } = boxes;
    const [set] = pointsOfCard(calibration, written(rest), 'airspeed', ouzel);
    expect(set?.points).toHaveLength(23);
    expect(set?.remarks.filter((one) => one.includes('left out'))).toEqual([
      'clean, speed 2, leg 3 is left out: track not written.',
    ]);
  });

  test('flap settings are those of the airplane, by table', () => {
    const landing = Object.fromEntries(
      Object.entries(boxes).flatMap(([key, value]) =>
        /speed-[123]/.test(key) ? [[key.replace('t1', 't3'), value]] : [],
      ),
    );
    const [set] = pointsOfCard(calibration, written({ ...boxes, ...landing }), 'airspeed', ouzel);
    expect(new Set(set?.points.map((one) => one.point.flaps))).toEqual(new Set(['up', 'landing']));
  });

  test('without all minutes no clock is given, and what is no number is said', () => {
    const { 't1.speed-4.minute': _, ...rest } = boxes;
    const readings = written({ ...rest, 't1.speed-1-1.airspeed': 'about 65' });
    const [set] = pointsOfCard(calibration, readings, 'airspeed', ouzel);
    expect(set?.points.every((one) => one.point.clock === undefined)).toBe(true);
    expect(set?.remarks.join(' ')).toMatch(
      /minutes are not used[\s\S]*“about 65” in t1.speed-1-1.airspeed is not a number/,
    );
  });

  test('mass follows the fuel read at each speed', () => {
    const fuel = { 't4.1-1.fuel-aboard': 100, 't4.2-2.fuel-aboard': 90 };
    const first = card('airspeed-calibration-first');
    const [set] = pointsOfCard(
      first,
      written({ ...boxes, 't3.1-1.fuel-aboard': 100, 't3.2-2.fuel-aboard': 90, ...fuel }),
      'airspeed',
      ouzel,
      1000,
    );
    const masses = set?.points.map((one) => one.point.mass);
    expect(masses?.[0]).toEqual({ value: 1000, unit: 'kg' });
    // 10 L of fuel weigh about 7.2 kg
    const second = masses?.[4];
    expect(second).toMatchObject({ unit: 'kg' });
    expect(JSON.stringify(second)).toMatch(/"value":99[23]/);
  });
});

describe('climb', () => {
  test('bands timed both ways: heights and power of the altitude, air and fuel of the pair, headings reciprocal', () => {
    const boxes: Record<string, number> = {
      't1.1-first.pressure-altitude-bottom': 3000,
      't1.1-first.pressure-altitude-top': 4000,
      't1.1-first.engine-speed': 4600,
      't1.1-first.heading-way-1': 350,
    };
    [75, 80, 85, 90, 95, 100, 105].forEach((kias, s) => {
      const key = `t2.speed-${s + 1}`;
      boxes[`${key}-1.outside-air`] = 12;
      boxes[`${key}-1.fuel-aboard`] = 100 - 3 * s;
      [1, 2].forEach((way) => {
        boxes[`${key}-${way}.airspeed`] = kias;
        // best at 90: 800 ft/min, falling off as a parabola
        boxes[`${key}-${way}.time-through-band`] = Math.round(60_000 / (800 - 0.6 * (kias - 90) ** 2));
      });
    });
    const sets = pointsOfCard(card('climb-sawtooth'), written(boxes), 'climb', ouzel, 1050);
    expect(sets.map((set) => [set.title, set.points.length])).toEqual([['up', 14]]);
    const points = sets[0]?.points.map((one) => one.point) ?? [];
    expect(points[0]).toMatchObject({
      bottom: { value: 3000, unit: 'ft' },
      'engine-speed': { value: 4600, unit: 'rpm' },
    });
    expect(points.slice(0, 2).map((one) => one['heading-magnetic'])).toEqual([
      { value: 350, unit: 'deg' },
      { value: 170, unit: 'deg' },
    ]);
    // the box of the pair serves both ways
    expect(points[1]?.['outside-air-temperature']).toEqual({ value: 12, unit: 'degC' });
    const result = reduced('climb', sets[0]);
    expect(result.status).toBe('reduced');
    const rates = columnIn(result, 'climbs', 'rate-observed');
    const at90 = points.findIndex((one) => JSON.stringify(one['indicated-airspeed']).includes('90'));
    // tapeline at 12 °C less what 90 kt warm the probe by, standard 8.07 °C at 3500 ft: 800 ft/min x T/T_std; the
    // stopwatch reads whole seconds of 75
    const expected = (800 * 0.3048 * 284.5) / 281.22 / 60;
    expect(Math.abs((rates[at90] ?? 0) - expected) / expected).toBeLessThan(0.5 / 75 + 0.003);
  });

  test('a check climb goes from level to level; the first only starts the clock', () => {
    const one = card('check-climb');
    const rows = one.tables[0]?.rows.map((row) => row.key) ?? [];
    const boxes = Object.fromEntries(
      rows.flatMap((row, i) => [
        [`t1.${row}.time-per-step-of-height`, 70 + 5 * i],
        [`t1.${row}.airspeed`, 95],
        [`t1.${row}.outside-air`, 13 - 2 * i],
      ]),
    );
    const [set] = pointsOfCard(one, written(boxes), 'climb', ouzel);
    expect(set?.points).toHaveLength(rows.length - 1);
    expect(set?.points[0]?.point).toMatchObject({
      bottom: { value: 1000, unit: 'ft' },
      top: { value: 2000, unit: 'ft' },
    });
    expect(set?.remarks.join(' ')).toMatch(/starts the clock[\s\S]*1013/);
    expect(reduced('climb', set).status).toBe('reduced');
  });
});

describe('ground cooling', () => {
  const hold = card('ground-cooling-fan-hold');
  /** a run at constant power: first order to 98 °C from 93, time constant 5 min, in air of 18 °C */
  const at = (minute: number) => 98 - 5 * Math.exp(-minute / 5);

  test('each minute table is a run, with fan, door, engine speed and air as the card holds them', () => {
    const boxes: Record<string, number | string> = {
      'engine-speed-held': 2500,
      'outside-air-start': 18,
      'outside-air-end': 20,
    };
    for (const row of hold.tables[0]?.rows ?? [])
      boxes[`t1.${row.key}.coolant-out`] = Number(at(Number(row.key.split('-')[1])).toFixed(1));
    for (const row of hold.tables[1]?.rows ?? []) boxes[`t2.${row.key}.coolant-out`] = 97;
    const [set] = pointsOfCard(hold, written(boxes), 'cooling-ground', ouzel);
    expect(set?.points).toHaveLength(17);
    expect(set?.points[0]?.point).toMatchObject({
      time: { value: 0, unit: 'min' },
      run: 'fan on',
      'cooling-fan-state': 'on',
      'cowl-exit-position': { value: 100, unit: '%' },
      'engine-speed': { value: 2500, unit: 'rpm' },
      'outside-air-temperature': { value: 18, unit: 'degC' },
    });
    expect(set?.points.at(-1)?.point).toMatchObject({
      'cooling-fan-state': 'off',
      'outside-air-temperature': { value: 20, unit: 'degC' },
    });
    const result = reduced('cooling-ground', set);
    expect(result.status, result.reason).toBe('reduced');
    expect(columnIn(result, 'segments', 'fan').length).toBeGreaterThanOrEqual(1);
  });

  test('what is not written is said, not guessed', () => {
    const [set] = pointsOfCard(hold, written({ 't1.1-0.coolant-out': 93 }), 'cooling-ground', ouzel);
    expect(set?.remarks.join(' ')).toMatch(/Engine speed held is not written[\s\S]*Outside air is not written/);
    expect(set?.points[0]?.point['engine-speed']).toBeUndefined();
  });
});

describe('weighing', () => {
  test('readings by wheel and run, arms as the mean of two people', () => {
    const boxes: Record<string, number> = {};
    const mass: Record<string, number> = { '1-nose': 180, '2-left': 281, '3-right': 281 };
    const arms: Record<string, [number, number]> = {
      '1-nose': [0.9, 0.902],
      '2-left': [2.8, 2.798],
      '3-right': [2.801, 2.799],
    };
    for (const [wheel, kg] of Object.entries(mass)) {
      for (const run of [1, 2, 3]) boxes[`t1.${wheel}.scale-reading-run-${run}`] = kg;
      boxes[`t2.${wheel}.wheel-arm-first`] = arms[wheel]?.[0] ?? 0;
      boxes[`t2.${wheel}.wheel-arm-second`] = arms[wheel]?.[1] ?? 0;
    }
    const [set] = pointsOfCard(card('weigh-empty-cg'), written(boxes), 'weight-balance', ouzel);
    expect(set?.points).toHaveLength(9);
    const result = reduced('weight-balance', set);
    const quantity = (name: string) => result.quantities.find((one) => one.name === name)?.value ?? Number.NaN;
    expect(result.status).toBe('reduced');
    expect(quantity('empty-mass')).toBeCloseTo(742, 6);
    // (180 x 0.901 + 281 x 2.799 + 281 x 2.8) / 742, by hand
    expect(quantity('empty-arm')).toBeCloseTo((180 * 0.901 + 281 * 2.799 + 281 * 2.8) / 742, 6);
  });
});

describe('cooling in flight', () => {
  test('a climb by levels: time, height at the head, air and speed; the door from the list of climbs', () => {
    const one = card('cooling-climb-first');
    const rows = one.tables[0]?.rows ?? [];
    // rises to 96 °C half way and falls again
    const boxes: Record<string, number> = { 't3.1-1.door': 80 };
    rows.forEach((row, i) => {
      boxes[`t1.${row.key}.time-from-start`] = 60 * i;
      boxes[`t1.${row.key}.coolant-out`] = 96 - 0.25 * (i - 6) ** 2;
      boxes[`t1.${row.key}.oil-temperature`] = 88 - 0.2 * (i - 7) ** 2;
      boxes[`t1.${row.key}.airspeed`] = 105;
      boxes[`t1.${row.key}.outside-air`] = 20 - i;
    });
    const [set] = pointsOfCard(one, written(boxes), 'cooling-climb', ouzel);
    expect(set?.points).toHaveLength(rows.length);
    expect(set?.points[2]?.point).toMatchObject({
      run: 'first climb, faster',
      'pressure-altitude': { value: 2000, unit: 'ft' },
      'cowl-exit-position': { value: 80, unit: '%' },
    });
    const result = reduced('cooling-climb', set);
    expect(result.status, result.reason).toBe('reduced');
    const peak = columnIn(result, 'peaks', 'peak')[0] ?? Number.NaN;
    expect(Math.abs(peak - (96 + 273.15))).toBeLessThan(0.6);
    const { [`t1.${rows[3]?.key}.time-from-start`]: _, ...rest } = boxes;
    expect(pointsOfCard(one, written(rest), 'cooling-climb', ouzel)[0]?.remarks.join(' ')).toMatch(
      /time is not written/,
    );
  });

  test('a door map: door at the head of the row, height and engine speed once', () => {
    const one = card('cooling-cruise-door-map');
    const boxes: Record<string, number> = { 'pressure-altitude': 4500, 'engine-speed': 4200 };
    one.tables[0]?.rows.forEach((row, i) => {
      const power = Number(row.group?.slice(1) ?? 0);
      const door = (4 - (i % 5)) / 4;
      // excess over air goes with power and shuts off with the door
      boxes[`t1.${row.key}.coolant-out`] = Math.round(15 + 70 * (1 + 0.12 * power) * (1 + 0.2 * (1 - door)));
      boxes[`t1.${row.key}.airspeed`] = 110 + 12 * power;
      boxes[`t1.${row.key}.outside-air`] = 15;
      boxes[`t1.${row.key}.manifold-pressure`] = 20 + 2.5 * power;
    });
    const [set] = pointsOfCard(one, written(boxes), 'cooling-flight', ouzel);
    expect(set?.points).toHaveLength(15);
    expect(set?.points[1]?.point).toMatchObject({
      'cowl-exit-position': { value: 75, unit: '%' },
      'pressure-altitude': { value: 4500, unit: 'ft' },
      label: '55 %, door 75 %',
    });
    const result = reduced('cooling-flight', set);
    expect(result.status, result.reason).toBe('reduced');
  });
});
