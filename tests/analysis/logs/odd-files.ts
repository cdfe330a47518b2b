/** Small odd and hostile files, each with what reading it must give. Invented, in the manner of many recorders. */
export interface OddFile {
  name: string;
  /** text, or bytes for what is no text */
  content: string | Uint8Array;
  accepted: 'yes' | 'no' | 'ask';
  /** quantity by column */
  quantities?: Record<string, string | null>;
  /** SI value of a quantity at a time */
  values?: { quantity: string; t: number; si: number }[];
  rows?: number;
  flags?: string[];
  channelFlags?: string[];
  problem?: string;
  question?: string;
  dialect?: Partial<{
    encoding: string;
    delimiter: string;
    decimal: string;
    headerLine: number | null;
    unitsLine: number | null;
  }>;
  duration?: number;
  start?: string | null;
  zone?: string;
}

const rows = (count: number, row: (i: number) => string) => Array.from({ length: count }, (_, i) => row(i)).join('\n');
const pad = (n: number) => String(n).padStart(2, '0');
const clock = (i: number, base = 36_000) =>
  `${pad(Math.floor((base + i) / 3600) % 24)}:${pad(Math.floor((base + i) / 60) % 60)}:${pad((base + i) % 60)}`;
const degF = (f: number) => ((f - 32) * 5) / 9 + ICE;
const ICE = 273.15;
const utf16 = (text: string, mark: boolean, big: boolean): Uint8Array => {
  const units = [...(mark ? '\ufeff' : ''), ...text].map((letter) => letter.charCodeAt(0));
  return Uint8Array.from(units.flatMap((unit) => (big ? [unit >> 8, unit & 255] : [unit & 255, unit >> 8])));
};
const latin = (text: string): Uint8Array => Uint8Array.from([...text].map((letter) => letter.charCodeAt(0)));
const plain = `Time (s),RPM,Coolant Temp (degC),Oil Temp (degC)\n${rows(60, (i) => `${i},2500,${(88 + i * 0.1).toFixed(1)},${(80 + i * 0.05).toFixed(2)}`)}\n`;
const COOLANT = { quantity: 'coolant-temperature', t: 10, si: 89 + ICE };

export const ODD_FILES: readonly OddFile[] = [
  {
    name: 'plain',
    content: plain,
    accepted: 'yes',
    rows: 60,
    quantities: { RPM: 'engine-speed', 'Oil Temp (degC)': 'oil-temperature' },
    values: [COOLANT],
    dialect: { delimiter: ',', headerLine: 1, unitsLine: null },
  },
  {
    name: 'UTF-8 with a mark',
    content: latin('\u00ef\u00bb\u00bf' + plain),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
  },
  {
    name: 'UTF-16 little-endian with a mark',
    content: utf16(plain, true, false),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
    dialect: { encoding: 'utf-16le' },
  },
  {
    name: 'UTF-16 big-endian with a mark',
    content: utf16(plain, true, true),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
    dialect: { encoding: 'utf-16be' },
  },
  { name: 'UTF-16 without a mark', content: utf16(plain, false, false), accepted: 'yes', rows: 60, values: [COOLANT] },
  {
    name: 'Latin-1 degree sign',
    content: latin(plain.replaceAll('degC', '\u00b0C')),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
    dialect: { encoding: 'latin-1' },
  },
  { name: 'UTF-8 degree sign', content: plain.replaceAll('degC', '°C'), accepted: 'yes', values: [COOLANT] },
  {
    name: 'carriage return and line feed',
    content: plain.replaceAll('\n', '\r\n'),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
  },
  {
    name: 'carriage returns alone',
    content: plain.replaceAll('\n', '\r'),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
  },
  { name: 'no line end after the last row', content: plain.trimEnd(), accepted: 'yes', rows: 60, values: [COOLANT] },
  {
    name: 'semicolons',
    content: plain.replaceAll(',', ';'),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
    dialect: { delimiter: ';' },
  },
  {
    name: 'tabs',
    content: plain.replaceAll(',', '\t'),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
    dialect: { delimiter: 'tab' },
  },
  {
    name: 'pipes',
    content: plain.replaceAll(',', '|'),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
    dialect: { delimiter: '|' },
  },
  {
    name: 'semicolons and decimal commas',
    content: plain.replaceAll(',', ';').replaceAll('.', ','),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
    dialect: { delimiter: ';', decimal: ',' },
  },
  {
    name: 'every cell quoted',
    content: plain.replace(/[^,\n]+/g, '"$&"'),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
  },
  {
    name: 'preamble of ten lines',
    content: `${rows(10, (i) => `Recorder note ${i}`)}\n\n${plain}`,
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
    dialect: { headerLine: 12 },
  },
  {
    name: 'comment lines',
    content: `# made by a recorder\n# second note\n${plain}`,
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
  },
  {
    name: 'units row',
    content: `Time,RPM,Coolant Temp,Oil Temp\ns,rpm,degF,degF\n${rows(60, (i) => `${i},2500,${190 + i},${176}`)}\n`,
    accepted: 'yes',
    rows: 60,
    values: [{ quantity: 'coolant-temperature', t: 10, si: degF(200) }],
    dialect: { unitsLine: 2 },
  },
  { name: 'trailing delimiters', content: plain.replaceAll('\n', ',\n'), accepted: 'yes', rows: 60, values: [COOLANT] },
  {
    name: 'duplicate names',
    content: plain.replace('RPM', 'Extra').replace('Oil Temp (degC)', 'Extra'),
    accepted: 'yes',
    flags: ['duplicate-columns'],
    quantities: { Extra: null, 'Extra#2': null },
  },
  {
    name: 'ragged rows',
    content: plain.replace('\n20,2500,90.0,81.00', '\n20,2500,90.0'),
    accepted: 'yes',
    rows: 60,
    flags: ['ragged-rows'],
    channelFlags: ['missing-values'],
    values: [COOLANT],
  },
  {
    name: 'cut last line',
    content: plain.trimEnd().slice(0, -9),
    accepted: 'yes',
    rows: 59,
    flags: ['truncated-last-line'],
    values: [COOLANT],
  },
  {
    name: 'tail of empty bytes',
    content: latin(plain + '\0'.repeat(300)),
    accepted: 'yes',
    rows: 60,
    flags: ['nul-bytes'],
    values: [COOLANT],
  },
  {
    name: 'blank lines between rows',
    content: plain.replaceAll('\n', '\n\n'),
    accepted: 'yes',
    rows: 60,
    values: [COOLANT],
  },
  {
    name: 'repeated header after a power cycle',
    content: plain + plain,
    accepted: 'yes',
    rows: 120,
    flags: ['repeated-header', 'elapsed-reset', 'power-cycle'],
    duration: 119,
    values: [COOLANT],
  },
  {
    name: 'missing marks',
    content: plain.replace('90.0', '---').replace('90.1', 'N/A').replace('90.2', ''),
    accepted: 'yes',
    rows: 60,
    channelFlags: ['missing-values'],
    values: [COOLANT],
  },
  {
    name: 'text in a number column',
    content: plain.replace('90.0', 'warm'),
    accepted: 'yes',
    rows: 60,
    channelFlags: ['non-numeric', 'missing-values'],
    values: [COOLANT],
  },
  {
    name: 'formula text',
    content: plain.replace('90.0', '=1+1'),
    accepted: 'yes',
    rows: 60,
    flags: ['formula-text'],
    channelFlags: ['non-numeric', 'missing-values'],
    values: [COOLANT],
  },
  {
    name: 'thousands separators in quotes',
    content: plain.replaceAll(',2500,', ',"2,500",'),
    accepted: 'yes',
    rows: 60,
    values: [{ quantity: 'engine-speed', t: 10, si: 2500 / 60 }],
  },
  {
    name: 'ISO times in UTC',
    content: `Timestamp,RPM\n${rows(60, (i) => `2031-05-04T${clock(i)}Z,2500`)}\n`,
    accepted: 'yes',
    start: '2031-05-04T10:00:00Z',
    zone: 'UTC',
    duration: 59,
  },
  {
    name: 'ISO times with an offset',
    content: `Timestamp,RPM\n${rows(60, (i) => `2031-05-04T${clock(i)}+01:00,2500`)}\n`,
    accepted: 'yes',
    zone: '+01:00',
    duration: 59,
  },
  {
    name: 'date and time columns, zone unknown',
    content: `Date,Time,RPM\n${rows(60, (i) => `2031-05-04,${clock(i)},2500`)}\n`,
    accepted: 'yes',
    flags: ['zone-unknown'],
    duration: 59,
  },
  {
    name: 'time without a date',
    content: `Time,RPM\n${rows(60, (i) => `${clock(i)},2500`)}\n`,
    accepted: 'yes',
    duration: 59,
    start: null,
    flags: ['no-date', 'zone-unknown'],
  },
  {
    name: 'midnight',
    content: `Time,RPM\n${rows(60, (i) => `${clock(i, 86_370)},2500`)}\n`,
    accepted: 'yes',
    duration: 59,
    flags: ['midnight', 'no-date', 'zone-unknown'],
  },
  {
    name: 'twelve-hour clock',
    content:
      `Date,Time,RPM\n${rows(60, (i) => `05/24/2031,${pad(11 + Math.floor((i + 59 * 60) / 3600))}:${pad((59 + Math.floor(i / 60)) % 60)}:${pad(i % 60)} AM,2500`)}\n`.replaceAll(
        '12:',
        '11:',
      ),
    accepted: 'yes',
    duration: 59,
    flags: ['zone-unknown'],
  },
  {
    name: 'month first by a day past twelve',
    content: `Date,Time,RPM\n${rows(60, (i) => `05/24/2031,${clock(i)},2500`)}\n`,
    accepted: 'yes',
    duration: 59,
    flags: ['zone-unknown'],
  },
  {
    name: 'day and month undecidable',
    content: `Date,Time,RPM\n${rows(60, (i) => `05/04/2031,${clock(i)},2500`)}\n`,
    accepted: 'ask',
    question: 'date-order',
    duration: 59,
    flags: ['date-ambiguous', 'zone-unknown'],
  },
  {
    name: 'epoch seconds',
    content: `Epoch,RPM\n${rows(60, (i) => `${1_935_662_400 + i},2500`)}\n`,
    accepted: 'yes',
    duration: 59,
    zone: 'UTC',
  },
  {
    name: 'epoch milliseconds',
    content: `Unix time,RPM\n${rows(60, (i) => `${1_935_662_400_000 + i * 200},2500`)}\n`,
    accepted: 'yes',
    duration: 11.8,
    zone: 'UTC',
  },
  {
    name: 'elapsed milliseconds',
    content: `Elapsed (ms),RPM\n${rows(60, (i) => `${i * 200},2500`)}\n`,
    accepted: 'yes',
    duration: 11.8,
  },
  {
    name: 'whole-second stamps at 5 Hz',
    content: `Timestamp,RPM\n${rows(100, (i) => `2031-05-04T${clock(Math.floor(i / 5))}Z,2500`)}\n`,
    accepted: 'yes',
    flags: ['duplicate-timestamps'],
    duration: 19.8,
  },
  {
    name: 'a gap',
    content: `Time (s),RPM\n${rows(60, (i) => `${i < 30 ? i : i + 40},2500`)}\n`,
    accepted: 'yes',
    flags: ['gap'],
    duration: 99,
  },
  {
    name: 'elapsed starts again',
    content: `Elapsed (s),RPM\n${rows(60, (i) => `${i % 30},2500`)}\n`,
    accepted: 'yes',
    flags: ['elapsed-reset', 'power-cycle'],
    duration: 59,
  },
  {
    name: 'no time at all',
    content: `RPM,Coolant Temp (degC)\n${rows(60, (i) => `2500,${88 + i * 0.1}`)}\n`,
    accepted: 'no',
    problem: 'no-time',
  },
  {
    name: 'latitude in degrees and minutes',
    content: `Time (s),Lat,Lon\n${rows(60, (i) => `${i},N4512.${pad(i)}0,W00730.${pad(i)}0`)}\n`,
    accepted: 'yes',
    values: [{ quantity: 'latitude', t: 0, si: ((45 + 12 / 60) * Math.PI) / 180 }],
    channelFlags: ['unit-not-stated'],
    quantities: { Lat: 'latitude', Lon: 'longitude' },
    duration: 59,
  },
  {
    name: 'a fan that is on or off',
    content: `Time (s),Cooling Fan\n${rows(60, (i) => `${i},${i < 30 ? 'OFF' : 'ON'}`)}\n`,
    accepted: 'yes',
    values: [{ quantity: 'cooling-fan-state', t: 40, si: 1 }],
  },
  {
    name: 'several cylinders',
    content: `Time (s),CHT1 (F),CHT2 (F),CHT3 (F),CHT4 (F)\n${rows(60, (i) => `${i},350,352,349,${360 + i * 0.1}`)}\n`,
    accepted: 'yes',
    quantities: { 'CHT4 (F)': 'cylinder-head-temperature#4' },
    values: [{ quantity: 'cylinder-head-temperature#1', t: 5, si: degF(350) }],
  },
  {
    name: 'coolant at 5 K',
    content: plain.replace(/(\n\d+,2500,)[\d.]+/g, '$15').replaceAll('Coolant Temp (degC)', 'Coolant Temp (K)'),
    accepted: 'ask',
    question: 'unit:Coolant Temp (K)',
    channelFlags: ['implausible-unit'],
  },
  {
    name: 'Celsius labelled Fahrenheit',
    content: `Time (s),RPM,Coolant Temp (F)\n${rows(700, (i) => `${i},2500,${(88 + (i % 9) * 0.1).toFixed(1)}`)}\n`,
    accepted: 'ask',
    question: 'unit:Coolant Temp (F)',
    channelFlags: ['unit-contradictory'],
  },
  {
    name: 'unit not stated, values fit several',
    content: `Time (s),RPM,Fuel Flow\n${rows(60, (i) => `${i},2500,${20 + (i % 3)}`)}\n`,
    accepted: 'ask',
    question: 'unit:Fuel Flow',
    channelFlags: ['unit-not-stated'],
  },
  {
    name: 'a name that fits several quantities',
    content: `Time (s),Temp 1 (C)\n${rows(60, (i) => `${i},${80 + i * 0.1}`)}\n`,
    accepted: 'ask',
    question: 'quantity:Temp 1 (C)',
  },
  { name: 'empty file', content: '', accepted: 'no', problem: 'empty-file' },
  {
    name: 'a letter',
    content: 'Dear Ines,\n\nthe radiator came to-day.\nIt fits.\n',
    accepted: 'no',
    problem: 'not-a-log',
  },
  { name: 'header and nothing else', content: 'Time (s),RPM\n', accepted: 'no', problem: 'no-rows' },
  {
    name: 'a picture',
    content: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13),
    accepted: 'no',
    problem: 'not-a-log',
  },
  {
    name: 'an archive',
    content: Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0, 0, 0, 8, 0),
    accepted: 'no',
    problem: 'not-a-log',
  },
  {
    name: 'a web page',
    content: '<!DOCTYPE html><html><body>1,2,3</body></html>\n',
    accepted: 'no',
    problem: 'not-a-log',
  },
  { name: 'JSON', content: '[{"rpm": 2500}, {"rpm": 2510}]\n', accepted: 'no', problem: 'not-a-log' },
  {
    name: 'script in a header',
    content: plain.replace('RPM', '<script>alert(1)</script>'),
    accepted: 'yes',
    quantities: { '<script>alert(1)</script>': null },
  },
  {
    name: 'column named __proto__',
    content: plain.replace('RPM', '__proto__'),
    accepted: 'yes',
    quantities: { __proto__: null },
  },
  { name: 'a line without end', content: latin('1,'.repeat(800_000)), accepted: 'no', problem: 'line-too-long' },
  {
    name: 'too many columns',
    content: `${Array.from({ length: 5000 }, (_, i) => `c${i}`).join(',')}\n${'1,'.repeat(4999)}1\n${'1,'.repeat(4999)}2\n`,
    accepted: 'no',
    problem: 'too-many-columns',
  },
];
