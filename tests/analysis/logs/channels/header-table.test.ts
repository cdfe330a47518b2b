/** Headers as recorders of many kinds write them: taken for what they are, left alone, or asked about. */
import { describe, expect, it } from 'vitest';
import { type ReadReport, readLogBytes, readReport } from '../../../../analysis/logs/index.ts';
import { HEADERS, type HeaderCase } from './header-table.ts';

const ROWS = 60;
const SHA = '0'.repeat(64);
const read = (text: string): ReadReport =>
  readReport(readLogBytes(new TextEncoder().encode(text), { file: 'x.csv', sha256: SHA }));

/** Seconds, an engine that runs, and the column in question going from its lowest value to its highest. */
function fileWith({ header, low, high, quantity }: HeaderCase): string {
  const decimals = high - low >= 20 ? 0 : high - low > 1 ? 1 : 3;
  const isSwitch = low === 0 && high === 1;
  const value = (i: number) =>
    isSwitch ? String(Math.floor(i / 15) % 2) : (low + ((high - low) * i) / (ROWS - 1)).toFixed(decimals);
  // Two columns of engine speed would be another question.
  const beside = quantity === 'engine-speed' ? 'Extra' : 'RPM';
  const rows = Array.from({ length: ROWS }, (_, i) => `${i},${2300 + (i % 7)},${value(i)}`);
  return `Time (s),${beside},"${header}"\n${rows.join('\n')}\n`;
}

describe.each(Object.entries(HEADERS))('headers %s', (_, cases) => {
  it.each(cases)('$header', (one) => {
    const { channels, questions } = read(fileWith(one));
    const channel = channels.find(({ column }) => column === one.header);
    const about = questions.filter(({ id }) => id.endsWith(`:${one.header}`));
    if (one.asked.length > 0) {
      expect(about).toHaveLength(1);
      expect(about[0]?.choices, channel?.why).toEqual(expect.arrayContaining(one.asked));
      expect(about[0]?.because.length).toBeGreaterThan(20);
      return;
    }
    expect(about, channel?.why).toEqual([]);
    expect(channel?.quantity ?? null, channel?.why).toBe(one.quantity);
    if (one.unit === null) return;
    expect(channel?.unit, channel?.why).toBe(one.unit);
    expect(channel?.confidence).toBeGreaterThanOrEqual(0.6);
    expect(channel?.why.length).toBeGreaterThan(20);
  });
});

it('at least four hundred of them', () => {
  expect(Object.values(HEADERS).flat().length).toBeGreaterThan(400);
});

/** An airplane that turns slowly, and what its recorders write. */
interface Moment {
  i: number;
  latitude: number;
  longitude: number;
  metresPerSecond: number;
  degrees: number;
  metres: number;
}

/** Metres of a degree of latitude, near enough for a made-up track (from memory). */
const DEGREE = 111_195;

function track(write: (moment: Moment) => string, count = 400): string {
  let latitude = 45.1;
  let longitude = 7.2;
  const rows = Array.from({ length: count }, (_, i) => {
    const degrees = (40 + i * 0.5) % 360;
    const metresPerSecond = 45 + 4 * Math.sin(i / 20);
    const course = (degrees * Math.PI) / 180;
    latitude += (metresPerSecond * Math.cos(course)) / DEGREE;
    longitude += (metresPerSecond * Math.sin(course)) / DEGREE / Math.cos((latitude * Math.PI) / 180);
    return write({ i, latitude, longitude, metresPerSecond, degrees, metres: 600 + i * 0.7 });
  });
  return `${rows.join('\n')}\n`;
}

const taken = ({ channels }: ReadReport) =>
  Object.fromEntries(channels.flatMap(({ column, quantity, unit }) => (quantity ? [[column, [quantity, unit]]] : [])));

describe('what a file shows together', () => {
  it('a telephone that writes bare names is in metres and metres a second, and its battery is its own', () => {
    const rows = track(
      (m) =>
        `2031-05-04T10:${String(Math.floor(m.i / 60)).padStart(2, '0')}:${String(m.i % 60).padStart(2, '0')}Z,${m.latitude.toFixed(8)},${m.longitude.toFixed(8)},${m.metres.toFixed(1)},4.1,${m.degrees.toFixed(1)},${m.metresPerSecond.toFixed(2)},11,${83 - Math.floor(m.i / 60)}`,
    );
    const report = read(`time,lat,lon,elevation,accuracy,bearing,speed,satellites,battery\n${rows}`);
    expect(report.questions).toEqual([]);
    expect(taken(report)).toEqual({
      lat: ['latitude', 'deg'],
      lon: ['longitude', 'deg'],
      elevation: ['gps-altitude', 'm'],
      bearing: ['track-true', 'deg'],
      speed: ['ground-speed', 'm/s'],
      satellites: ['fix-quality', 'none'],
    });
  });

  it('dotted names of a small autopilot: parts of a word say nothing', () => {
    const rows = track(
      (m) =>
        `${5_000_000 + m.i * 1_000_000},${m.latitude.toFixed(7)},${m.longitude.toFixed(7)},${m.metresPerSecond.toFixed(2)},${m.degrees.toFixed(1)},${(3 * Math.sin(m.i / 9)).toFixed(2)},${(2 + Math.sin(m.i / 7)).toFixed(2)},${m.degrees.toFixed(1)},31.2,-9.81,0.01,15.6,8.1`,
    );
    const report = read(
      `timestamp_us,gps.lat,gps.lon,gps.spd,gps.cog,att.roll,att.pitch,att.yaw,baro.temp,imu.acc_z,imu.gyr_x,bat.volt,bat.curr\n${rows}`,
    );
    expect(report.questions).toEqual([]);
    expect(report.time.durationSeconds).toBe(399);
    expect(taken(report)).toEqual({
      'gps.lat': ['latitude', 'deg'],
      'gps.lon': ['longitude', 'deg'],
      'gps.spd': ['ground-speed', 'm/s'],
      'gps.cog': ['track-true', 'deg'],
      'att.roll': ['roll-angle', 'deg'],
      'att.pitch': ['pitch-angle', 'deg'],
      'bat.volt': ['bus-voltage#1', 'V'],
      'bat.curr': ['battery-current', 'A'],
    });
  });

  it.each([
    [1852 / 3600, 'kt', 'knots'],
    [1609.344 / 3600, 'mph', 'miles an hour'],
    [1 / 3.6, 'km/h', 'kilometres an hour'],
    [1, 'm/s', 'metres a second'],
  ])('a ground speed of %f m/s a unit is %s: the positions say so', (factor, unit) => {
    const rows = track(
      (m) => `${m.i},${m.latitude.toFixed(7)},${m.longitude.toFixed(7)},${(m.metresPerSecond / factor).toFixed(1)}`,
    );
    const report = read(`Time (s),Lat,Lon,GndSpd\n${rows}`);
    expect(report.questions).toEqual([]);
    expect(taken(report)).toMatchObject({ GndSpd: ['ground-speed', unit] });
  });

  it('a ground speed that says knots and goes in kilometres an hour is a question', () => {
    const rows = track(
      (m) => `${m.i},${m.latitude.toFixed(7)},${m.longitude.toFixed(7)},${(m.metresPerSecond * 3.6).toFixed(1)}`,
    );
    const { questions } = read(`Time (s),Lat,Lon,GndSpd (kt)\n${rows}`);
    expect(questions).toMatchObject([{ id: 'unit:GndSpd (kt)', choices: ['kt', 'km/h'] }]);
  });

  it('feet against metres: an altitude without a unit is told by one with it', () => {
    const rows = track((m) => `${m.i},${m.metres.toFixed(1)},${(m.metres / 0.3048 - 120).toFixed(0)}`);
    const report = read(`Time (s),GPS Alt (m),Press Alt\n${rows}`);
    expect(report.questions).toEqual([]);
    expect(taken(report)).toMatchObject({ 'Press Alt': ['pressure-altitude', 'ft'] });
    const wrong = read(`Time (s),GPS Alt (m),Press Alt (m)\n${rows}`);
    expect(wrong.questions.map(({ id }) => id)).toContain('unit:Press Alt (m)');
  });

  it.each([
    ['gal', 'gal/h', 8.4],
    ['L', 'L/h', 31.8],
  ])('a fuel flow without a unit is told by the %s used', (volume, unit, flow) => {
    const rows = Array.from({ length: 900 }, (_, i) => `${i},2400,${flow},${((flow * i) / 3600).toFixed(2)}`);
    const report = read(`Time (s),RPM,Fuel Flow,Fuel Used (${volume})\n${rows.join('\n')}\n`);
    expect(report.questions).toEqual([]);
    expect(taken(report)).toMatchObject({ 'Fuel Flow': ['fuel-flow', unit] });
    const wrong = unit === 'L/h' ? 'gal/h' : 'L/h';
    const stated = read(`Time (s),RPM,Fuel Flow (${wrong}),Fuel Used (${volume})\n${rows.join('\n')}\n`);
    expect(stated.questions.map(({ id }) => id)).toContain(`unit:Fuel Flow (${wrong})`);
  });

  it('the current of a pump is the gear’s in a file of gear, and no one’s in a file of fuel', () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${i},${i % 30 < 10 ? 34 : 0},${i % 30 < 10 ? 0 : 1},30`);
    const gear = read(`Time (s),Pump amps (A),Gear left down,Hyd press (bar)\n${rows.join('\n')}\n`);
    expect(taken(gear)).toMatchObject({ 'Pump amps (A)': ['gear-current', 'A'] });
    const fuel = read(`Time (s),Pump amps (A),Transfer valve,Fuel qty left (L)\n${rows.join('\n')}\n`);
    expect(fuel.questions).toEqual([]);
    expect(taken(fuel)).not.toHaveProperty('Pump amps (A)');
  });

  it('six switches of three legs are six gear positions, in their order', () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${i},0,1,0,1,0,1`);
    const names = [
      'Gear nose up',
      'Gear nose down',
      'Gear left up',
      'Gear left down',
      'Gear right up',
      'Gear right dn',
    ];
    const report = read(`Time (s),${names.join(',')}\n${rows.join('\n')}\n`);
    expect(report.questions).toEqual([]);
    expect(report.channels.map(({ quantity }) => quantity)).toEqual(names.map((_, i) => `gear-position#${i + 1}`));
  });

  it('a pressure that changes all the time is no altimeter setting', () => {
    const rows = Array.from({ length: 200 }, (_, i) => `${i},${(1012 - i * 0.4).toFixed(1)}`);
    const { questions } = read(`Time (s),Baro (hPa)\n${rows.join('\n')}\n`);
    expect(questions).toMatchObject([{ id: 'quantity:Baro (hPa)', choices: ['altimeter-setting', 'ignore'] }]);
  });
});

it('asks no unit of a column of words, and keeps it', () => {
  const row = (i: number) => `${i},${2300 + (i % 7)},${i < 30 ? 'UP' : 'DOWN'},${i < 30 ? 'CLOSED' : 'OPEN'}`;
  const rows = Array.from({ length: ROWS }, (_, i) => row(i));
  const { channels, questions } = read(`Time (s),RPM,Flaps,Cowl Exit\n${rows.join('\n')}\n`);
  expect(questions).toEqual([]);
  expect(channels.map(({ quantity }) => quantity)).toEqual(['engine-speed', null, 'cowl-exit-position']);
  expect(channels[1]?.why).toContain('words for two states');
});
