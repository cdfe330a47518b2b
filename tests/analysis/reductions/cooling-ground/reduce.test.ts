import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Recording, recordingOf } from '../../../../analysis/logs/index.ts';
import { coolingGround } from '../../../../analysis/reductions/cooling-ground/index.ts';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import { type Result, resultSchema } from '../../../../analysis/results/index.ts';
import { fromSi, toSi } from '../../../../analysis/units/index.ts';
import { airplaneWith, SILENT_DAYS } from '../../../blind/cooling-days.ts';
import { type Day, type Step, simulateRun } from '../../../blind/cooling-run.ts';
import { rowsNamed } from './table-rows.ts';

const C = (degrees: number) => toSi(degrees, 'degC');
const ouzel = airplaneWith('ouzel');
const WARM: Step[] = [
  { rpm: 1400, seconds: 240, excess: 55, tau: 500 },
  { rpm: 1800, seconds: 420, excess: 65, tau: 400 },
];
const FAN_OFF: Step = { rpm: 2500, seconds: 900, excess: 78, tau: 280 };
const FAN_ON: Step = { rpm: 2500, seconds: 900, excess: 74, tau: 250, fan: true };
const DAY: Day = { steps: [...WARM, FAN_OFF, FAN_ON], air: C(21), thermostat: { start: C(80), open: C(92) } };

const reduce = (day: Partial<Day>, airplane: typeof ouzel | undefined = ouzel, more: object = {}): Result =>
  coolingGround.reduce({
    recording: simulateRun({ ...DAY, ...day }, 'fixed').recording,
    ...(airplane ? { airplane } : {}),
    ...more,
  });
const quantity = (result: Result, name: string) => result.quantities.find((one) => one.name === name);
const flagged = (result: Result, kind: string) => result.flags.filter((one) => one.kind === kind);

/** The same recording with one channel changed. */
function changed(recording: Recording, name: string, value: (v: number, i: number) => number): Recording {
  return recordingOf(
    recording.tables.map((table) => ({
      ...table,
      channels: table.channels.map((channel) =>
        channel.quantity === name ? { ...channel, values: channel.values.map(value) } : channel,
      ),
    })),
  );
}

describe('a result', () => {
  const result = reduce({});

  it('has the shape every result has, with the columns scripts rely on', () => {
    expect(resultSchema.safeParse(JSON.parse(JSON.stringify(result))).success).toBe(true);
    const names = result.tables[0]?.columns.map((column) => column.name);
    expect(names?.slice(0, 13)).toEqual([
      'engine-speed',
      'exit',
      'fan',
      'air',
      'equilibrium',
      'equilibrium-u95',
      'slow-node-allowance',
      'time-constant',
      'time-to-caution',
      'time-to-limit',
      'time-to-limit-early',
      'share-never',
      'regime',
    ]);
    expect(names).toContain('from-seconds');
    expect(names).toContain('to-seconds');
    expect(quantity(result, 'hot-day-margin')).toBeDefined();
  });

  it('lists the least margin first, with parts that add up and the slow part in its lower end', () => {
    const margins = result.quantities.filter((one) => one.name === 'hot-day-margin' && one.value !== null);
    expect(margins.length).toBe(2);
    expect(margins[0]?.value ?? 0).toBeLessThan(margins[1]?.value ?? 0);
    for (const one of margins) {
      const { noise = 0, calibration = 0, fit = 0, repeatability = 0 } = one.parts;
      const symmetric = Math.hypot(noise, calibration, fit, repeatability);
      const [low, high] = one.interval ?? [null, null];
      expect((high ?? 0) - (one.value ?? 0)).toBeCloseTo(symmetric, 9);
      expect((one.value ?? 0) - (low ?? 0)).toBeCloseTo(one.u95 ?? 0, 9);
    }
  });

  it('corrects to the hot day of the field: 100 F less 3.6 F per 1000 ft', () => {
    const [row] = rowsNamed(result, 'hot-day');
    const hot = toSi(100 - (3.6 * fromSi(226, 'ft')) / 1000, 'degF');
    expect(Number(row?.['hot-day-air'])).toBeCloseTo(hot, 6);
    const corrected = Number(row?.equilibrium) + hot - Number(row?.['outside-air-temperature']);
    expect(Number(row?.corrected)).toBeCloseTo(corrected, 9);
    expect(Number(row?.margin)).toBeCloseTo(C(112) - corrected, 9);
  });

  it('compares fan on with fan off, where the sensors cancel, and calls one run each not shown', () => {
    const [row] = rowsNamed(result, 'configuration-effects');
    expect(row?.what).toBe('fan');
    expect(Math.abs(Number(row?.change) + 4)).toBeLessThan(1);
    expect(row?.outcome).toBe('not shown');
  });

  it('does not hang on the order of the channels', () => {
    const { recording } = simulateRun(DAY, 'fixed');
    const turned = recordingOf(recording.tables.map((table) => ({ ...table, channels: table.channels.toReversed() })));
    expect(rowsNamed(coolingGround.reduce({ recording: turned, airplane: ouzel }), 'segments')).toEqual(
      rowsNamed(result, 'segments'),
    );
  });
});

describe('a log that cannot be reduced says what, where and how to mend it', () => {
  it('no coolant channel: names the columns that are there', () => {
    const result = reduce({ without: ['coolant-temperature'] });
    expect(result).toMatchObject({ status: 'refused', code: 'missing-channel' });
    expect(result.reason).toMatch(/run\.csv: no coolant temperature among its columns \(engine-speed, outside-air/);
    expect(result.mend).toMatch(/channel table/);
  });

  it('coolant at 5 K: names the column, what it reads and what can be', () => {
    const { recording } = simulateRun(DAY, 'fixed');
    const cold = changed(recording, 'coolant-temperature', () => 5);
    const result = coolingGround.reduce({ recording: cold, airplane: ouzel });
    expect(result).toMatchObject({ status: 'refused', code: 'implausible-values' });
    expect(result.reason).toMatch(/run\.csv, column "coolant-temperature": reads −268 °C to −268 °C/);
    expect(result.reason).toMatch(/unit/);
  });

  it('no engine speed', () => {
    expect(reduce({ without: ['engine-speed'] })).toMatchObject({ status: 'refused', code: 'missing-channel' });
  });

  it('nothing held still', () => {
    const { recording } = simulateRun({ ...DAY, rpmStep: 1 }, 'fixed');
    const taxi = changed(recording, 'engine-speed', (_, i) => 30 + 12 * Math.sin(i / 9));
    expect(coolingGround.reduce({ recording: taxi, airplane: ouzel })).toMatchObject({
      status: 'refused',
      code: 'no-segments',
    });
  });

  it('neither log nor figures', () => {
    expect(coolingGround.reduce({ airplane: ouzel })).toMatchObject({ status: 'refused', code: 'too-few-points' });
  });

  it('options and points that do not fit their schema throw with the field', () => {
    const wrong = () => reduce({}, ouzel, { options: { hotDay: 'tropical' } });
    expect(wrong).toThrow(InputProblem);
    expect(wrong).toThrow(/hotDay/);
    const points = { kind: 'cooling-ground', points: [{ 'coolant-temperature': { value: 80, unit: 'm' } }] };
    expect(() => coolingGround.reduce({ points, airplane: ouzel })).toThrow(/coolant-temperature/);
  });
});

describe('what the airplane does not say', () => {
  it('a limit: the equilibrium stands, margin and times are withheld, the field is named', () => {
    const bare = airplaneWith('ouzel', (json) => {
      if (json.limits) json.limits.coolant = {};
    });
    const result = reduce({}, bare);
    expect(result.status).toBe('reduced');
    expect(rowsNamed(result, 'segments').some((row) => row.equilibrium !== null)).toBe(true);
    expect(quantity(result, 'hot-day-margin')).toMatchObject({ value: null, u95: null });
    expect(
      flagged(result, 'limit-missing')
        .map((one) => one.message)
        .join(),
    ).toMatch(/limits\.coolant\.limit/);
    for (const row of rowsNamed(result, 'segments')) expect(row['time-to-limit-early']).toBeNull();
    expect(result.comparisons).toEqual([]);
  });

  it('the thermostat: figures stand, regime and margin are withheld, and it is asked for', () => {
    const bare = airplaneWith('ouzel', (json) => {
      delete json.cooling?.thermostatStart;
      delete json.cooling?.thermostatOpen;
    });
    const result = reduce({}, bare);
    expect(quantity(result, 'hot-day-margin')?.value).toBeNull();
    expect(flagged(result, 'regime-unknown').length).toBeGreaterThan(0);
    for (const row of rowsNamed(result, 'segments')) expect([null, 'cooling']).toContain(row.regime);
    expect(result.comparisons.every((one) => one.outcome === 'not shown')).toBe(true);
    const said = reduce({}, bare, { options: { thermostat: 'none' } });
    expect(quantity(said, 'hot-day-margin')?.value).not.toBeNull();
  });

  it('no airplane at all', () => {
    const result = coolingGround.reduce({ recording: simulateRun(DAY, 'fixed').recording });
    expect(result.status).toBe('reduced');
    expect(flagged(result, 'limit-missing')[0]?.message).toMatch(/no airplane was given/);
    expect(flagged(result, 'assumed-calibration').length).toBe(2);
  });

  it('no air temperature: nothing is carried to another day, until it is read by hand', () => {
    const result = reduce({ without: ['outside-air-temperature'] });
    for (const row of rowsNamed(result, 'segments')) expect(row.air).toBeNull();
    expect(quantity(result, 'hot-day-margin')?.value).toBeNull();
    const said = reduce({ without: ['outside-air-temperature'] }, ouzel, {
      options: { airTemperature: { value: 21, unit: 'degC' } },
    });
    expect(quantity(said, 'hot-day-margin')?.value).not.toBeNull();
  });
});

describe('the day was hotter than the hot day', () => {
  it('shows the negative correction and does not credit it', () => {
    const result = reduce({ air: C(41), steps: [...WARM, { ...FAN_OFF, excess: 60 }] });
    const [row] = rowsNamed(result, 'hot-day');
    expect(row?.corrected).toBe(row?.equilibrium);
    expect(flagged(result, 'correction-not-credited')[0]?.message).toMatch(
      /correction of −5\.0 K is shown and not credited/,
    );
  });
});

describe('segments set by hand', () => {
  const { recording, truth } = simulateRun(DAY, 'fixed');
  const held = truth[3];
  const edit = { file: 'run.csv', fromSeconds: held?.fromSeconds ?? 0, toSeconds: held?.toSeconds ?? 0, role: 'hold' };
  const byHand = (segments: object[]) =>
    coolingGround.reduce({ recording, airplane: ouzel, segments: segments as never });

  it('replace those found, keep their reason, and still drop the settling', () => {
    const result = byHand([{ ...edit, label: 'fan on', reason: 'as on the card' }]);
    const rows = rowsNamed(result, 'segments');
    expect(rows.length).toBe(1);
    expect(rows[0]).toMatchObject({ label: 'fan on', regime: 'fully-open' });
    expect(Number(rows[0]?.['from-seconds'])).toBeGreaterThanOrEqual(edit.fromSeconds + 18);
    expect(Number(rows[0]?.['to-seconds'])).toBeLessThanOrEqual(edit.toSeconds);
    expect(flagged(result, 'set-by-hand')[0]?.message).toBe('fan on: as on the card');
    expect(Math.abs(Number(rows[0]?.equilibrium) - (held?.equilibrium ?? 0))).toBeLessThan(
      Number(rows[0]?.['equilibrium-u95']),
    );
  });

  it('split an unlogged fan change where a person saw it', () => {
    const silent = SILENT_DAYS.find((one) => one.name.includes('not logged'));
    if (!silent) throw new Error('no such day');
    const run = simulateRun(silent.day, 'by hand');
    const before = coolingGround.reduce({ recording: run.recording, airplane: silent.airplane });
    expect(flagged(before, 'not-resolved').length).toBe(1);
    const late = run.truth[3];
    const after = coolingGround.reduce({
      recording: run.recording,
      airplane: silent.airplane,
      segments: [
        {
          file: 'run.csv',
          fromSeconds: (late?.fromSeconds ?? 0) + 20,
          toSeconds: late?.toSeconds ?? 0,
          role: 'hold',
          reason: 'fan came on',
        },
      ],
    });
    const [row] = rowsNamed(after, 'segments');
    expect(Math.abs(Number(row?.equilibrium) - (late?.equilibrium ?? 0))).toBeLessThan(
      Number(row?.['equilibrium-u95']),
    );
  });

  it('count what was dropped, and refuse a file that is not there', () => {
    const result = byHand([edit, { ...edit, role: 'dropped', reason: 'gusts' }]);
    expect(flagged(result, 'excluded').some((one) => one.message.includes('gusts'))).toBe(true);
    expect(() => byHand([{ ...edit, file: 'other.csv' }])).toThrow(InputProblem);
  });
});

/** A recording with channels added, made from one that is there. */
function joined(
  recording: Recording,
  from: string,
  added: Record<string, (v: number, i: number) => number>,
): Recording {
  return recordingOf(
    recording.tables.map((table) => {
      const source = table.channels.find((channel) => channel.quantity === from);
      const more = Object.entries(added).flatMap(([quantity, value]) =>
        source ? [{ ...source, quantity, column: quantity, values: source.values.map(value) }] : [],
      );
      return { ...table, channels: [...table.channels, ...more] };
    }),
  );
}

describe('several temperatures', () => {
  it('of heads: the hottest is named, every one is watched for its limit', () => {
    const heads: Day = {
      ...DAY,
      part: 'cylinder-head-temperature#1',
      thermostat: null,
      air: C(17),
      steps: [{ rpm: 1700, seconds: 900, excess: 166, tau: 240 }],
    };
    const { recording } = simulateRun(heads, 'heads');
    const four = joined(recording, 'cylinder-head-temperature#1', {
      'cylinder-head-temperature#2': (v) => v + 9,
      'cylinder-head-temperature#3': (v, i) => (i >= 500 && i < 505 ? C(235) : v - 4),
    });
    const result = coolingGround.reduce({ recording: four, airplane: airplaneWith('wrenlet') });
    const [row] = rowsNamed(result, 'segments');
    expect(row?.channel).toBe('cylinder-head-temperature#2');
    expect(row?.regime).toBe('fully-open');
    expect(flagged(result, 'limit-event')[0]?.message).toMatch(/cylinder-head-temperature#3 read over its limit/);
  });

  it('of air: the inlet cools, the outside counts for the hot day, what is drawn in twice is kept', () => {
    const { recording } = simulateRun(DAY, 'fixed');
    const both = joined(recording, 'outside-air-temperature', { 'inlet-air-temperature': (v) => v + 6 });
    const [plain] = rowsNamed(coolingGround.reduce({ recording, airplane: ouzel }), 'segments').slice(-1);
    const result = coolingGround.reduce({ recording: both, airplane: ouzel });
    const [row] = rowsNamed(result, 'segments').slice(-1);
    expect(Number(row?.air)).toBeCloseTo(Number(plain?.air) + 6, 6);
    expect(Number(row?.equilibrium)).toBeCloseTo(Number(plain?.equilibrium), 3);
    const [hot] = rowsNamed(result, 'hot-day').slice(-1);
    expect(Number(hot?.['outside-air-temperature'])).toBeCloseTo(Number(plain?.air), 6);
  });

  it('of oil: rows of its own, and steady oil and coolant leave nothing to allow for', () => {
    const { recording } = simulateRun({ ...DAY, steps: [...WARM, FAN_OFF, { ...FAN_ON, seconds: 1800 }] }, 'fixed');
    const oil = joined(recording, 'coolant-temperature', { 'oil-temperature': (v) => v - 8 });
    const result = coolingGround.reduce({ recording: oil, airplane: ouzel });
    expect(rowsNamed(result, 'segments').at(-1)?.['slow-node-allowance']).toBe(0);
    expect(rowsNamed(result, 'segments-oil').at(-1)?.equilibrium).not.toBeNull();
    expect(rowsNamed(reduce({}), 'segments').at(-1)?.['slow-node-allowance']).toBe(3);
  });
});

describe('readings over a limit', () => {
  it('are an event that no fit overrules, three running and not one or two', () => {
    const { recording } = simulateRun(DAY, 'fixed');
    const at = (n: number) =>
      changed(recording, 'coolant-temperature', (v, i) => (i >= 1200 && i < 1200 + n ? C(113) : v));
    const three = coolingGround.reduce({ recording: at(3), airplane: ouzel });
    expect(three.comparisons[0]).toMatchObject({ outcome: 'exceeded', value: C(113), limit: C(112) });
    expect(flagged(three, 'limit-event').length).toBe(1);
    const two = coolingGround.reduce({ recording: at(2), airplane: ouzel });
    expect(flagged(two, 'limit-event').length).toBe(0);
    const broken = changed(recording, 'coolant-temperature', (v, i) => (i >= 1200 && i < 1260 ? C(800) : v));
    const left = coolingGround.reduce({ recording: broken, airplane: ouzel });
    expect(flagged(left, 'limit-event').length).toBe(0);
    expect(flagged(left, 'excluded').length).toBeGreaterThan(0);
  });
});

describe('a limit the run passed', () => {
  const hot: Step = { rpm: 2500, seconds: 800, excess: 94, tau: 280 };
  const { recording, truth } = simulateRun({ ...DAY, steps: [...WARM, hot], sensorU95: 0 }, 'over');
  const row = rowsNamed(coolingGround.reduce({ recording, airplane: ouzel }), 'segments').at(-1);

  it('is timed as seen, while the operating figure for the next run is earlier', () => {
    const held = truth.at(-1);
    const from = Math.round(Number(row?.['from-seconds']) - (held?.fromSeconds ?? 0));
    const passed = (held?.temperatures.findIndex((T) => T >= C(112)) ?? 0) - from;
    // the sensor lags by 6 s, gusts of 0.2 K at 0.6 K a minute move a crossing by up to a minute
    expect(Math.abs(Number(row?.['time-to-limit']) - passed)).toBeLessThan(60);
    expect(Number(row?.['time-to-limit-early'])).toBeLessThan(0.8 * passed);
    expect(Number(row?.['time-to-caution'])).toBeLessThan(Number(row?.['time-to-limit']));
    expect(Number(row?.['share-never'])).toBeLessThan(0.3);
  });
});

describe('a shutdown', () => {
  const cool: Step = { rpm: 0, seconds: 900, excess: 2, tau: 900 };
  it('that is watched too briefly gives bounds', () => {
    const result = reduce({ steps: [...WARM, { ...FAN_OFF, excess: 84 }, { ...cool, seconds: 120 }] });
    expect(quantity(result, 'time-to-restart-temperature')).toMatchObject({ value: null, u95: null });
    expect(quantity(result, 'time-to-restart-temperature')?.flags[0]?.kind).toBe('bound-only');
  });

  it('that is watched long gives peak and time, and a cooling row', () => {
    const result = reduce({ steps: [...WARM, { ...FAN_OFF, excess: 84 }, cool] });
    const peak = quantity(result, 'peak-after-shutdown');
    expect(Math.abs((peak?.value ?? 0) - C(104.6))).toBeLessThan(2);
    expect(quantity(result, 'time-to-restart-temperature')?.value ?? 0).toBeGreaterThan(60);
    expect(rowsNamed(result, 'segments').at(-1)?.regime).toBe('cooling');
  });
});

describe('figures written on a card', () => {
  const wrenlet = airplaneWith('wrenlet');
  const points = JSON.parse(readFileSync('sample-tests/wrenlet/points/cooling-ground.json', 'utf8'));
  const truth = JSON.parse(readFileSync('sample-tests/wrenlet/truth.json', 'utf8')).points['cooling-ground.json'];

  it('give the hold that lasted, within its U95, and bounds for the short ones', () => {
    const result = coolingGround.reduce({ points, airplane: wrenlet });
    const rows = rowsNamed(result, 'segments');
    expect(rows.length).toBe(3);
    const long = rows[1];
    const true1700 = truth.segments[1].equilibrium.value;
    expect(Math.abs(Number(long?.equilibrium) - true1700)).toBeLessThan(Number(long?.['equilibrium-u95']));
    expect(rows[0]?.equilibrium).toBeNull();
    expect(long).toMatchObject({ regime: 'fully-open', channel: 'cylinder-head-temperature' });
  });

  it('of two days tell how the equilibrium follows the air', () => {
    const other = points.points.map((point: Record<string, { value: number; unit: string }>) => ({
      ...point,
      run: 'second day',
      'cylinder-head-temperature': { value: (point['cylinder-head-temperature']?.value ?? 0) + 12, unit: 'degC' },
      'outside-air-temperature': { value: (point['outside-air-temperature']?.value ?? 0) + 12, unit: 'degC' },
    }));
    const both = { ...points, points: [...points.points, ...other] };
    const result = coolingGround.reduce({ points: both, airplane: wrenlet });
    expect(rowsNamed(result, 'segments').length).toBe(6);
    const [row] = rowsNamed(result, 'air-dependence');
    expect(Number(row?.slope)).toBeCloseTo(1, 2);
  });

  it('know on and off, and refuse what is no reading, naming it', () => {
    const one = { time: { value: 0, unit: 'min' }, 'cooling-fan-state': 'on' };
    const parse = (point: object) => coolingGround.pointsSchema.safeParse({ kind: 'cooling-ground', points: [point] });
    expect(parse(one).success).toBe(true);
    expect(parse({ ...one, 'fuel-quantity': { value: 1, unit: 'L' } }).success).toBe(false);
    expect(parse({ 'cooling-fan-state': 'on' }).error?.issues[0]?.message).toMatch(/time/);
  });
});
