import { describe, expect, it } from 'vitest';
import { coolingClimb } from '../../../../analysis/reductions/cooling-climb/index.ts';
import { toSi } from '../../../../analysis/units/index.ts';
import { PLAIN_CLIMB, simulateClimb } from '../../../blind/cooling-climb-flight.ts';
import { rowsNamed } from '../cooling-ground/table-rows.ts';
import { C, changed, climbed, kindsOf, ouzelFor, quantityIn } from './climbed.ts';

const segment = (fromSeconds: number, toSeconds: number, role = 'climb') => ({
  file: 'climb.csv',
  fromSeconds,
  toSeconds,
  role,
  reason: 'looked at',
});

describe('a climb that peaked', () => {
  const { result, truth } = climbed();
  const [row] = rowsNamed(result, 'peaks');

  it('gives peak, corrected peak and margin, the parts of their uncertainty, and where they stand in the log', () => {
    expect(result.status).toBe('reduced');
    expect(Math.abs(Number(row?.peak) - truth.peak)).toBeLessThanOrEqual(Number(row?.['peak-u95']));
    expect(Number(row?.margin)).toBeCloseTo(C(150) - Number(row?.corrected), 6);
    expect(Number(row?.corrected)).toBeCloseTo(Number(row?.peak) + Number(row?.correction), 6);
    expect(Number(row?.['least-margin'])).toBeLessThanOrEqual(Number(row?.margin) + 1e-9);
    const { parts, u95, conditions } = quantityIn(result, 'hot-day-margin');
    expect(Math.hypot(...Object.values(parts).map((one) => one ?? 0))).toBeCloseTo(u95 ?? 0, 6);
    expect(Object.keys(parts).sort()).toEqual(['calibration', 'fit', 'noise', 'repeatability']);
    expect(conditions.reference).toContain('23.1043');
    expect(Math.abs(Number(row?.['from-seconds']) - truth.fromSeconds)).toBeLessThan(15);
    expect(kindsOf(result)).toContain('assumed-repeatability');
  });

  it('keeps the margin to boiling at the pressure up there: less than at the field', () => {
    const boiling = quantityIn(result, 'boiling-margin');
    expect(boiling.value).not.toBeNull();
    const at = boiling.conditions['boiling-temperature'];
    // 50 % glycol under 1.1 bar boils at some 129 degC on the ground [coolant-boiling truth set], lower in thinner air
    if (typeof at !== 'object') throw new Error('no boiling temperature');
    expect(at.value).toBeLessThan(C(129));
    expect(at.value).toBeGreaterThan(C(115));
  });

  it('shows a negative correction and does not credit it', () => {
    const hot = climbed({ colder: [-6, -6] }).result;
    const [peak] = rowsNamed(hot, 'peaks');
    expect(Number(peak?.correction)).toBeLessThan(-4);
    expect(peak?.corrected).toBe(peak?.peak);
    expect(kindsOf(hot)).toContain('correction-not-credited');
    expect(quantityIn(hot, 'corrected-peak-temperature').parts.fit ?? 0).toBeLessThan(1);
  });

  it('is corrected to another or a hotter day as stated, and says which', () => {
    const cs22 = climbed({}, { options: { hotDay: 'cs22' } }).result;
    expect(String(quantityIn(cs22, 'hot-day-margin').conditions.reference)).toContain('CS 22');
    const stated = climbed(
      {},
      { options: { hotDayAir: { value: 45, unit: 'degC' }, hotDayHeight: { value: 0, unit: 'm' } } },
    );
    const [hotter] = rowsNamed(stated.result, 'peaks');
    // 45 degC instead of 100 degF at sea level, the same lapse
    expect(Number(hotter?.corrected) - Number(row?.corrected)).toBeCloseTo(C(45) - toSi(100, 'degF'), 6);
    expect(String(quantityIn(stated.result, 'hot-day-margin').conditions.reference)).toContain('45');
  });

  it('corrects barrels by seven tenths', () => {
    const heads = { part: 'cylinder-head-temperature#1' as const, thermostat: null };
    const [head] = rowsNamed(climbed(heads).result, 'peaks');
    const [barrel] = rowsNamed(climbed(heads, { options: { heads: 'barrels' } }).result, 'peaks');
    expect(Number(barrel?.correction) / Number(head?.correction)).toBeCloseTo(0.7, 9);
  });

  it('is exceeded where it lies beyond, and what was read over the limit is an event of its own', () => {
    const over = climbed({}, { airplane: ouzelFor(PLAIN_CLIMB, truth.peak - 8) }).result;
    expect(over.comparisons.filter((one) => one.outcome === 'exceeded').length).toBeGreaterThanOrEqual(2);
    expect(kindsOf(over)).toContain('limit-event');
    const shown = climbed({}, { airplane: ouzelFor(PLAIN_CLIMB, C(190)) }).result;
    expect(shown.comparisons.map((one) => one.outcome)).toEqual(['shown', 'shown']);
  });

  it('keeps recirculation as measured: inlet less outside air, and it does not change the correction', () => {
    const inlet = climbed({}, { added: { 'inlet-air-temperature': () => C(30) } });
    const [with_] = rowsNamed(inlet.result, 'peaks');
    expect(Number(with_?.recirculation)).toBeCloseTo(C(30) - Number(with_?.air), 6);
    expect(with_?.corrected).toBeCloseTo(Number(row?.corrected), 9);
  });

  it('takes its scatter from climbs flown alike', () => {
    const one = simulateClimb(PLAIN_CLIMB, 3).recording;
    const [table] = one.tables;
    if (!table) throw new Error('no table');
    const twice = (values: Float64Array, by = 0) => Float64Array.from([...values, ...values.map((v) => v + by)]);
    const seconds = twice(table.time.seconds, (table.time.durationSeconds ?? 0) + 10);
    const channels = table.channels.map((each) => ({ ...each, values: twice(each.values) }));
    const recording = changed(one, {});
    const [first] = recording.tables;
    if (!first) throw new Error('no table');
    first.time.seconds = seconds;
    const both = { ...one, tables: [{ ...table, time: { ...table.time, seconds }, channels }] };
    const doubled = coolingClimb.reduce({
      recording: { ...both, series: one.series.map((s, i) => ({ ...s, t: seconds, v: channels[i]?.values ?? s.v })) },
      airplane: ouzelFor(),
    });
    const repeatability = (r: typeof doubled) => quantityIn(r, 'hot-day-margin').parts.repeatability ?? 0;
    expect(rowsNamed(doubled, 'peaks')).toHaveLength(2);
    expect(repeatability(doubled)).toBeLessThan(repeatability(climbed().result));
  });
});

describe('what withholds a margin', () => {
  it('a climb that ended before the peak: no value, and what the next half of it would have brought', () => {
    const day = { to: 1500, tau: 420, before: 0.5, thermostat: null };
    const { result } = climbed(day, { options: { thermostat: 'none' } });
    const peak = quantityIn(result, 'peak-temperature');
    expect(peak.value).toBeNull();
    expect(peak.flags.map((one) => one.kind)).toContain('not-peaked');
    expect(quantityIn(result, 'least-hot-day-margin').value).toBeNull();
    expect(result.comparisons.every((one) => one.outcome === 'not shown')).toBe(true);
    // the same flight taken on: its next half lies under the hot end
    const on = simulateClimb({ ...PLAIN_CLIMB, ...day, to: 2600 }, 3);
    const ahead = rowsNamed(result, 'ahead');
    const end = Number(rowsNamed(result, 'peaks')[0]?.['to-seconds']);
    const series = on.recording.series.find((one) => one.quantity === 'coolant-temperature');
    expect(ahead.length).toBeGreaterThan(3);
    for (const row of ahead) {
      const at = series?.t.findIndex((t) => t >= end + Number(row['seconds-after-the-end'])) ?? 0;
      expect(series?.v[at]).toBeLessThanOrEqual(Number(row['temperature-high']));
    }
  });

  it('a thermostat that regulates: what is still in hand instead', () => {
    const { result } = climbed({ excess: 60, thermostat: { start: C(80), open: C(110) } });
    expect(quantityIn(result, 'least-hot-day-margin').value).toBeNull();
    expect(quantityIn(result, 'least-hot-day-margin').flags.map((one) => one.kind)).toContain('regulated');
    const [authority] = rowsNamed(result, 'authority');
    expect(Number(authority?.['thermostat-left'])).toBeGreaterThan(0);
    expect(result.comparisons.every((one) => one.value === null)).toBe(true);
  });

  it('a door that sets itself', () => {
    const { result } = climbed({}, { added: { 'cowl-exit-position': (t) => 0.5 + 0.3 * Math.sin(t / 25) } });
    expect(quantityIn(result, 'least-hot-day-margin').value).toBeNull();
    expect(rowsNamed(result, 'authority')).toHaveLength(1);
  });

  it('a coolant of which nobody said where the thermostat opens: the peak, and no margin', () => {
    const { result } = climbed({}, { airplane: null });
    const [row] = rowsNamed(result, 'peaks');
    expect(row?.regime).toBe('unknown');
    expect(row?.corrected).not.toBeNull();
    expect(row?.margin).toBeNull();
    expect(kindsOf(result)).toEqual(expect.arrayContaining(['regime-unknown', 'limit-missing', 'assumed-calibration']));
  });

  it('readings missing beside the highest', () => {
    const { truth } = climbed();
    const hole = (t: number, value: number) => (Math.abs(t - truth.peakSeconds) < 60 ? Number.NaN : value);
    const { result } = climbed({}, { change: { 'coolant-temperature': hole } });
    expect(quantityIn(result, 'peak-temperature').value).toBeNull();
    expect(kindsOf(result)).toEqual(expect.arrayContaining(['gap', 'not-resolved']));
  });

  it('air not read near the peak', () => {
    const { truth } = climbed();
    const hole = (t: number, value: number) => (Math.abs(t - truth.peakSeconds) < 100 ? Number.NaN : value);
    const { result } = climbed({}, { change: { 'outside-air-temperature': hole } });
    expect(quantityIn(result, 'corrected-peak-temperature').value).toBeNull();
    expect(quantityIn(result, 'peak-temperature').value).not.toBeNull();
    expect(kindsOf(result)).toContain('not-resolved');
  });
});

describe('how it was flown', () => {
  it('says that nothing had settled, or that nobody knows', () => {
    expect(kindsOf(climbed({ beforeSeconds: 20 }).result)).toContain('not-stabilised');
    const warming = climbed({}, { change: { 'coolant-temperature': (t, v) => (t < 235 ? v - (235 - t) / 10 : v) } });
    expect(kindsOf(warming.result)).toContain('not-stabilised');
    expect(kindsOf(climbed().result)).not.toContain('not-stabilised');
  });

  it('says that power was not held, by engine speed or by manifold pressure', () => {
    const slower = (t: number, value: number) => (t > 500 ? 0.9 * value : value);
    expect(kindsOf(climbed({}, { change: { 'engine-speed': slower } }).result)).toContain('power-not-constant');
    const closed = { 'manifold-pressure': (t: number) => (t > 500 ? 60_000 : 95_000) };
    expect(kindsOf(climbed({}, { added: closed }).result)).toContain('power-not-constant');
    const boosted = { 'manifold-pressure': () => 120_000 };
    expect(kindsOf(climbed({}, { added: boosted }).result)).not.toContain('power-not-constant');
  });

  it('says that door or flaps moved inside it', () => {
    const moved = climbed({}, { added: { 'cowl-exit-position': (t) => (t > 330 ? 1 : 0.4) } }).result;
    expect(moved.flags.some((one) => one.message.includes('exit door stood at 40 %'))).toBe(true);
    const flaps = climbed({}, { added: { 'flap-position': (t) => (t > 330 ? 0.5 : 0) } }).result;
    expect(flaps.flags.some((one) => one.message.includes('flaps moved'))).toBe(true);
  });

  it('says that the airspeed was not held in a climb set by hand; a climb found is at one speed', () => {
    const faster = (t: number, value: number) => (t > 500 ? value + toSi(30, 'kt') : value);
    const byHand = climbed({}, { change: { 'indicated-airspeed': faster }, segments: [segment(242, 800)] }).result;
    expect(kindsOf(byHand)).toEqual(expect.arrayContaining(['speed-not-held', 'set-by-hand']));
    const found = climbed({}, { change: { 'indicated-airspeed': faster } }).result;
    expect(kindsOf(found)).not.toContain('speed-not-held');
    expect(found.segments.every((one) => one.toSeconds - one.fromSeconds < 330)).toBe(true);
  });

  it('keeps what was dropped or too short by hand, with its reason', () => {
    const { result } = climbed({}, { segments: [segment(242, 800), segment(100, 130), segment(50, 60, 'dropped')] });
    expect(result.segments).toHaveLength(1);
    expect(result.flags.filter((one) => one.kind === 'excluded')).toHaveLength(2);
  });

  it('takes the ram rise off a probe that reads it, and says where the airspeed for it came from', () => {
    const [static_] = rowsNamed(climbed({}, {}).result, 'peaks');
    const { result } = climbed({ without: ['indicated-airspeed'] });
    expect(kindsOf(result)).toEqual(expect.arrayContaining(['assumed-value', 'speed-not-held']));
    expect(Math.abs(Number(rowsNamed(result, 'peaks')[0]?.air) - Number(static_?.air))).toBeLessThan(1);
  });
});

describe('what is refused', () => {
  it.each([
    ['outside air', 'outside-air-temperature', 'missing-channel'],
    ['height', 'pressure-altitude', 'missing-channel'],
    ['any temperature', 'coolant-temperature', 'missing-channel'],
  ])('no %s', (_, channel, code) => {
    const { result } = climbed({ without: [channel] });
    expect(result).toMatchObject({ status: 'refused', code });
    expect(result.reason).toBeTruthy();
  });

  it('no climb', () => {
    expect(climbed({ to: 480 }).result).toMatchObject({ status: 'refused', code: 'no-segments' });
  });

  it('nothing at all', () => {
    expect(coolingClimb.reduce({})).toMatchObject({ status: 'refused', code: 'too-few-points' });
  });

  it('not where the air was read by hand at some heights', () => {
    const airByHeight = [400, 2600].map((H) => ({
      'pressure-altitude': { value: H, unit: 'm' },
      'outside-air-temperature': { value: 20 - 0.0065 * H, unit: 'degC' },
    }));
    const { result } = climbed({ without: ['outside-air-temperature'] }, { options: { airByHeight } });
    const [row] = rowsNamed(result, 'peaks');
    expect(Number(row?.air)).toBeCloseTo(C(20 - 0.0065 * Number(row?.['pressure-altitude'])), 6);
    expect(kindsOf(result)).toContain('assumed-value');
    const alone = climbed(
      { without: ['outside-air-temperature'] },
      { options: { airByHeight: airByHeight.slice(0, 1) } },
    );
    expect(rowsNamed(alone.result, 'peaks')[0]?.air).toBeCloseTo(Number(row?.air), 6);
  });

  it('not where only the radiator’s inlet air was logged: it stands in, and what that does is said', () => {
    const inlet = climbed(
      { without: ['outside-air-temperature'] },
      { added: { 'inlet-air-temperature': () => C(20) } },
    );
    expect(inlet.result.status).toBe('reduced');
    expect(kindsOf(inlet.result)).toContain('air-temperature-source');
  });
});
