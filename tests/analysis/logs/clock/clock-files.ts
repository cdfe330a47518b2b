/**
 * Small files, one way of telling the time each, with the time base reading must give. Dates are invented; what each
 * stamp means is worked out here by the published definition named beside it, never by the reader:
 *
 * - ISO 8601-1: calendar date and time of day, `T`, `Z`, `+hh:mm`, comma or point before a fraction (from memory).
 * - Unix time: POSIX.1-2017, 4.16: seconds since 1970-01-01T00:00:00Z, 86 400 a day (from memory).
 * - Satellite time: weeks and seconds since 1980-01-06T00:00:00Z without leap seconds (IS-GPS-200, 3.3.4 and 20.3.3.3;
 *   from memory); ahead of UTC by 18 s since 2017-01-01, 17 s since 2015-07-01, 16 s since 2012-07-01 (IERS
 *   Bulletin C; from memory).
 * - Spreadsheet days: day 1 is 1900-01-01 and 1900 is counted as a leap year that it was not, so that from March 1900
 *   on day n is n days after 1899-12-30 (ECMA-376 part 1, 18.17.4.1, "1900 date base"; from memory). Printed there
 *   and in every handbook: 36 526 is 2000-01-01, 43 831 is 2020-01-01, 45 000 is 2023-03-15 (from memory).
 */
export interface ClockFile {
  name: string;
  content: string;
  map?: Record<string, unknown>;
  accepted?: 'yes' | 'ask' | 'no';
  start: string | null;
  zone?: string;
  duration: number;
  /** rows a second */
  hertz?: number;
  /** all flags of the file, in any order */
  flags: string[];
  /** spans of the segments, s */
  segments?: [number, number][];
  question?: { id: string; choices: string[] };
}

const ROWS = 60;
const two = (n: number) => String(n).padStart(2, '0');
const hms = (s: number) => `${two(Math.floor(s / 3600) % 24)}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}`;
const file = (names: string, row: (i: number) => string, count = ROWS) =>
  `${names},RPM\n${Array.from({ length: count }, (_, i) => `${row(i)},${2500 + (i % 3)}`).join('\n')}\n`;
const TEN = 36_000;
/** 2031-05-04T10:00:00Z, s since 1970. */
const EPOCH = Date.UTC(2031, 4, 4, 10) / 1000;
const MS_OF_DAY = 86_400_000;

/** Week and seconds of the week, by the definition above. */
const satellite = (iso: string, ahead: number) => {
  const seconds = (Date.parse(iso) - Date.UTC(1980, 0, 6)) / 1000 + ahead;
  const week = Math.floor(seconds / 604_800);
  return { week, seconds: seconds - week * 604_800 };
};
const now = satellite('2031-05-04T10:00:00Z', 18);
const before = satellite('2016-05-04T10:00:00Z', 17);
/** Days of a spreadsheet, by the definition above. */
const serial = (iso: string) => (Date.parse(iso) - Date.UTC(1899, 11, 30)) / MS_OF_DAY;
const START = '2031-05-04T10:00:00Z';

const PARTS: ClockFile[] = [
  {
    name: 'year to second in columns of their own',
    content: file('Year,Month,Day,Hour,Minute,Second', (i) => `2031,5,4,10,0,${i}`),
    map: { time: { offset: 'UTC' } },
    start: START,
    zone: 'UTC',
    duration: 59,
    flags: [],
  },
  {
    name: 'parts named by letters, minutes called as the months are',
    content: file('YYYY,MM,DD,hh,mm,ss', (i) => `2031,5,4,10,${Math.floor(i / 30)},${(2 * i) % 60}`),
    start: null,
    zone: 'unknown',
    duration: 118,
    hertz: 0.5,
    flags: ['zone-unknown'],
  },
  {
    name: 'parts with thousandths in a column',
    content: file(
      'UTC Year,UTC Month,UTC Day,UTC Hour,UTC Minute,UTC Second,Millisecond',
      (i) => `31,5,4,10,0,${Math.floor(i / 5)},${(i % 5) * 200}`,
    ),
    start: START,
    zone: 'UTC',
    duration: 11.8,
    hertz: 5,
    flags: [],
  },
  {
    name: 'hour and minute and second without a date, over midnight',
    content: file('Hour,Min,Sec', (i) => {
      const s = 86_370 + i;
      return `${Math.floor(s / 3600) % 24},${Math.floor(s / 60) % 60},${s % 60}`;
    }),
    start: null,
    duration: 59,
    flags: ['no-date', 'zone-unknown', 'midnight'],
  },
  {
    name: 'morning and afternoon in a column of their own, over noon',
    content: file('Date,Time,AM/PM', (i) =>
      i < 30 ? `2031-05-04,11:59:${30 + i},AM` : `2031-05-04,12:00:${two(i - 30)},PM`,
    ),
    map: { time: { offset: 'Z' } },
    start: '2031-05-04T11:59:30Z',
    duration: 59,
    flags: [],
  },
  {
    name: 'half past midnight is twelve in the morning',
    content: file('Date,Time (UTC),AMPM', (i) => `2031-05-04,12:30:${two(i)},am`),
    start: '2031-05-04T00:30:00Z',
    zone: 'UTC',
    duration: 59,
    flags: [],
  },
  {
    name: 'hours and minutes alone, six rows a minute',
    content: file('Time UTC', (i) => hms(TEN + 60 * Math.floor(i / 6)).slice(0, 5)),
    start: null,
    duration: 590,
    flags: ['no-date', 'duplicate-timestamps'],
  },
];

const PACKED: ClockFile[] = [
  {
    name: 'packed date and packed time',
    content: file('Date,UTC', (i) => `20310504,1000${two(i)}`),
    start: START,
    zone: 'UTC',
    duration: 59,
    flags: [],
  },
  {
    name: 'packed time with hundredths, over the full minute and hour',
    content: file('UTC', (i) => (i < 30 ? `95959.${two(i + 70)}` : `100000.${two(i - 30)}`)),
    start: null,
    zone: 'UTC',
    duration: 0.59,
    hertz: 100,
    flags: ['no-date'],
  },
  {
    name: 'packed time in the morning, its zeros gone',
    content: file('Date,Time (hhmmss)', (i) => `20310504,${i < 60 ? Number(`3${two(i)}`) : 0}`),
    map: { time: { offset: 'Z' } },
    start: '2031-05-04T00:03:00Z',
    duration: 59,
    flags: [],
  },
  {
    name: 'date packed in six numbers: the 24th of 2031, or the 31st of 2024',
    content: file('Date,UTC', (i) => `240531,1000${two(i)}`),
    accepted: 'ask',
    start: null,
    duration: 59,
    flags: ['date-ambiguous'],
    question: { id: 'date-order', choices: ['day first', 'year first'] },
  },
  {
    name: 'date packed in six numbers, answered',
    content: file('Date,UTC', (i) => `240531,1000${two(i)}`),
    map: { time: { dayFirst: true } },
    start: '2031-05-24T10:00:00Z',
    duration: 59,
    flags: [],
  },
  {
    name: 'date packed in six numbers, undecidable',
    content: file('Date,UTC', (i) => `040531,1000${two(i)}`),
    accepted: 'ask',
    start: null,
    duration: 59,
    flags: ['date-ambiguous'],
    question: { id: 'date-order', choices: ['day first', 'month first', 'year first'] },
  },
  {
    name: 'date packed in six numbers, the header says how',
    content: file('Date (ddmmyy),UTC', (i) => `040531,1000${two(i)}`),
    start: START,
    duration: 59,
    flags: [],
  },
  {
    name: 'date packed in six numbers, the map says how',
    content: file('Date,UTC', (i) => `310504,1000${two(i)}`),
    map: { time: { format: 'yymmdd' } },
    start: START,
    duration: 59,
    flags: [],
  },
  {
    name: 'ISO basic form in one cell',
    content: file('Timestamp', (i) => `20310504T1000${two(i)}Z`),
    start: START,
    zone: 'UTC',
    duration: 59,
    flags: [],
  },
];

const COUNTED: ClockFile[] = [
  ...(
    [
      ['thousandths', 500n],
      ['millionths', 500_000n],
      ['thousand-millionths', 500_000_000n],
    ] as const
  ).map(
    ([name, half]): ClockFile => ({
      name: `${name} of a second since 1970`,
      content: file('Unix time', (i) => String(BigInt(EPOCH * 2 + i) * half)),
      start: START,
      zone: 'UTC',
      duration: 29.5,
      hertz: 2,
      flags: [],
    }),
  ),
  {
    name: 'whole seconds since 1970',
    content: file('Epoch', (i) => String(EPOCH + i)),
    start: START,
    zone: 'UTC',
    duration: 59,
    flags: [],
  },
  {
    name: 'satellite week and seconds of the week',
    content: file('GPS Week,GPS Seconds', (i) => `${now.week},${(now.seconds + i / 5).toFixed(1)}`),
    start: START,
    zone: 'UTC',
    duration: 11.8,
    hertz: 5,
    flags: [],
  },
  {
    name: 'satellite week with thousandths of the week',
    content: file('Week,iTOW (ms)', (i) => `${now.week},${(now.seconds + i / 5) * 1000}`),
    start: START,
    zone: 'UTC',
    duration: 11.8,
    flags: [],
  },
  {
    name: 'satellite week in 2016, when 17 leap seconds stood between',
    content: file('GPS Week,TOW', (i) => `${before.week},${before.seconds + i}`),
    start: '2016-05-04T10:00:00Z',
    zone: 'UTC',
    duration: 59,
    flags: [],
  },
  {
    name: 'satellite week that ends within the file',
    content: file('GPS Week,TOW (s)', (i) => (i < 30 ? `${now.week},${604_770 + i}` : `${now.week + 1},${i - 30}`)),
    start: new Date(Date.UTC(1980, 0, 6) + ((now.week + 1) * 604_800 - 30 - 18) * 1000)
      .toISOString()
      .replace('.000', ''),
    duration: 59,
    flags: [],
  },
  {
    name: 'days of a spreadsheet',
    content: file('Timestamp', (i) => (serial('2031-05-04T10:00:00Z') + i / 86_400).toFixed(9)),
    map: { time: { offset: 'UTC' } },
    start: START,
    duration: 59,
    flags: [],
  },
  {
    name: 'days of a spreadsheet: 45000 is 15 March 2023',
    content: file('Date Time', (i) => (45_000 + 0.5 + i / 86_400).toFixed(9)),
    map: { time: { offset: 'UTC' } },
    start: '2023-03-15T12:00:00Z',
    duration: 59,
    flags: [],
  },
  {
    name: 'day of a spreadsheet beside a share of the day',
    content: file('Date,Time', (i) => `47972,${((TEN + i) / 86_400).toFixed(9)}`),
    map: { time: { offset: 'UTC' } },
    start: '2031-05-04T10:00:00Z',
    duration: 59,
    flags: [],
  },
  {
    name: 'share of the day alone',
    content: file('Time', (i) => ((TEN + i) / 86_400).toFixed(9)),
    start: null,
    duration: 59,
    flags: ['no-date', 'zone-unknown'],
  },
  {
    name: 'minutes and seconds with a fraction, past the hour',
    content: file('Time', (i) => `${Math.floor((3570 + i) / 60)}:${two((3570 + i) % 60)}.0`),
    start: null,
    zone: 'unknown',
    duration: ROWS - 1,
    hertz: 1,
    flags: ['no-date', 'zone-unknown'],
  },
  {
    name: 'elapsed past a day',
    content: file('Elapsed', (i) => `${23 + Math.floor((3570 + i) / 3600)}:${hms(3570 + i).slice(3)}`),
    start: null,
    duration: 59,
    flags: [],
  },
  {
    name: 'elapsed millionths of a second',
    content: file('time_us', (i) => String(7_000_000 + i * 40_000)),
    start: null,
    duration: 2.36,
    hertz: 25,
    flags: [],
  },
];

const TOLD: ClockFile[] = [
  {
    name: 'comma before the fraction of a second',
    content: file('UTC;X', (i) => `2031-05-04T10:00:${two(Math.floor(i / 5))},${(i % 5) * 2}Z;1`)
      .replaceAll(',RPM', ';RPM')
      .replace(/,(\d{4})$/gm, ';$1'),
    start: START,
    duration: 11.8,
    flags: [],
  },
  {
    name: 'offset in a column, hours and minutes',
    content: file('Lcl Date,Lcl Time,UTC Offset', (i) => `2031-05-04,${hms(TEN + i)},+02:00`),
    start: '2031-05-04T10:00:00+02:00',
    zone: '+02:00',
    duration: 59,
    flags: [],
  },
  {
    name: 'offset in a column, whole hours west',
    content: file('Date,Time,TZ', (i) => `2031-05-04,${hms(TEN + i)},-7`),
    start: '2031-05-04T10:00:00-07:00',
    zone: '-07:00',
    duration: 59,
    flags: [],
  },
  {
    name: 'offset in a column, minutes',
    content: file('Date,Time,UTC offset (min)', (i) => `2031-05-04,${hms(TEN + i)},-210`),
    start: '2031-05-04T10:00:00-03:30',
    zone: '-03:30',
    duration: 59,
    flags: [],
  },
  {
    name: 'day and month undecidable',
    content: file('Date,UTC', (i) => `04/05/2031,${hms(TEN + i)}`),
    accepted: 'ask',
    start: null,
    duration: 59,
    flags: ['date-ambiguous'],
    question: { id: 'date-order', choices: ['day first', 'month first'] },
  },
  {
    name: 'day and month undecidable, answered',
    content: file('Date,UTC', (i) => `04/05/2031,${hms(TEN + i)}`),
    map: { time: { dayFirst: true } },
    start: START,
    duration: 59,
    flags: [],
  },
  {
    name: 'columns chosen by hand',
    content: file('Stamp A,Stamp B', (i) => `${i * 3},${i * 250}`),
    map: { time: { columns: ['Stamp B'], format: 'ms' } },
    start: null,
    duration: 14.75,
    hertz: 4,
    flags: [],
  },
  {
    name: 'the better of two clocks is left for the chosen one',
    content: file('UTC,Elapsed (s)', (i) => `2031-05-04T${hms(TEN + 2 * i)}Z,${i}`),
    map: { time: { columns: ['Elapsed (s)'] } },
    start: null,
    duration: 59,
    flags: [],
  },
  {
    name: 'date and offset given by hand',
    content: file('Time', (i) => hms(TEN + i)),
    map: { time: { date: '2031-05-04', offset: '+01:00' } },
    start: '2031-05-04T10:00:00+01:00',
    zone: '+01:00',
    duration: 59,
    flags: [],
  },
  {
    name: 'midnight without a date',
    content: file('Time UTC', (i) => hms(86_370 + i)),
    start: null,
    duration: 59,
    flags: ['no-date', 'midnight'],
  },
  {
    name: 'midnight while the date is a row late',
    content: file('Date,UTC', (i) => `2031-05-${i < 32 ? '04' : '05'},${hms(86_370 + i)}`),
    start: '2031-05-04T23:59:30Z',
    duration: 59,
    flags: ['midnight'],
  },
];

const BROKEN: ClockFile[] = [
  {
    name: 'one wild stamp far ahead',
    content: file('UTC', (i) => (i === 30 ? '2079-01-01T00:00:00Z' : `2031-05-04T${hms(TEN + i)}Z`)),
    start: START,
    duration: 59,
    flags: ['clock-jump'],
    segments: [[0, 59]],
  },
  {
    name: 'one wild stamp far back',
    content: file('UTC', (i) => (i === 30 ? '1980-01-06T00:00:00Z' : `2031-05-04T${hms(TEN + i)}Z`)),
    start: START,
    duration: 59,
    flags: ['clock-jump'],
    segments: [[0, 59]],
  },
  {
    name: 'a first stamp that is wild',
    content: file('UTC', (i) => (i === 0 ? '1980-01-06T00:00:00Z' : `2031-05-04T${hms(TEN + i)}Z`)),
    start: START,
    duration: 59,
    flags: ['clock-jump'],
  },
  {
    name: 'a wild elapsed stamp',
    content: file('Elapsed (s)', (i) => (i === 30 ? '4294967' : String(i))),
    start: null,
    duration: 59,
    flags: ['clock-jump'],
  },
  {
    name: 'the clock set by a satellite fix',
    content: file('UTC', (i) => (i < 20 ? `1980-01-06T${hms(i)}Z` : `2031-05-04T${hms(TEN + i)}Z`)),
    start: START,
    duration: 59,
    flags: ['clock-jump'],
    segments: [
      [0, 19],
      [20, 59],
    ],
  },
  {
    name: 'a day and more between two flights in one file',
    content: file('Date,UTC', (i) => (i < 20 ? `2031-05-03,${hms(20_000 + i)}` : `2031-05-04,${hms(TEN + i)}`)),
    start: '2031-05-03T05:33:20Z',
    duration: 102_459,
    flags: ['gap'],
  },
  {
    name: 'summer time ends: an hour is lived twice',
    content: file('Date,Time', (i) => `2031-10-26,${hms(i < 30 ? 10_770 + i : 7_170 + i)}`),
    start: null,
    duration: 59,
    flags: ['clock-jump', 'zone-unknown'],
  },
  {
    name: 'elapsed starts again',
    content: file('Elapsed (s)', (i) => String(i < 40 ? i : i - 40)),
    start: null,
    duration: 59,
    flags: ['elapsed-reset', 'power-cycle'],
    segments: [
      [0, 39],
      [40, 59],
    ],
  },
  {
    name: 'the rate changes for good',
    content: file('Time (s)', (i) => String(i < 30 ? i : 29 + (i - 29) * 0.2)),
    start: null,
    duration: 35,
    flags: ['rate-change'],
  },
  {
    name: 'whole seconds at 8 rows a second, met in the middle',
    content: file('UTC', (i) => `2031-05-04T${hms(TEN + Math.floor((i + 5) / 8))}Z`, 163),
    start: '2031-05-04T10:00:00.625Z',
    duration: 20.25,
    hertz: 8,
    flags: ['duplicate-timestamps'],
  },
  {
    name: 'whole seconds at a rate that is no whole number',
    content: file('UTC', (i) => `2031-05-04T${hms(TEN + Math.floor(i / 1.25))}Z`, 250),
    start: START,
    duration: 199.2,
    flags: ['duplicate-timestamps'],
  },
  {
    name: 'a gap in whole seconds at 5 rows a second is not spread over',
    content: file('UTC', (i) => `2031-05-04T${hms(TEN + Math.floor(i / 5) + (i < 50 ? 0 : 40))}Z`, 100),
    start: START,
    duration: 59.8,
    hertz: 5,
    flags: ['duplicate-timestamps', 'gap'],
  },
];

export const CLOCK_FILES = { PARTS, PACKED, COUNTED, TOLD, BROKEN };
