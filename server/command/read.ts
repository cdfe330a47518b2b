/** `proveout read`: what a log is. Reads, changes nothing. */
import { type ReadReport, readReport } from '../../analysis/logs/read-report.ts';
import { checkedMap } from '../actions/confirm-map.ts';
import { readLogFiles } from './log-files.ts';
import { readJson } from './read-json.ts';
import { complain, printJson, printLines, readArguments, type Verb, WrongUsage } from './verb.ts';

/** The worst answer decides: a file that cannot be used before one with a question. */
const EXIT = { yes: 0, no: 1, ask: 3 };

export const read: Verb = {
  help: `proveout read LOG... [--map MAP.json] [--sample T1,T2,...] [--rate HZ] [--json]

What a log is: dialect, channels, time base, quality. Reads, changes nothing. "-" is standard input. --sample prints
each channel's value at these seconds from the first record. --rate is for a file that carries no time.
With --json one LOG gives one object, several give a list.
`,
  run: async (argv, io) => {
    const { values, positionals } = readArguments(argv, {
      map: { type: 'string' },
      sample: { type: 'string' },
      rate: { type: 'string' },
    });
    if (positionals.length === 0) throw new WrongUsage('at least one LOG is wanted.');
    const times =
      values.sample === undefined ? undefined : values.sample.split(',').map((one) => number('--sample', one));
    const rate = values.rate === undefined ? undefined : number('--rate', values.rate);
    const map = values.map === undefined ? undefined : checkedMap(await readJson(values.map, 'bad-map', io));
    const outcomes = await readLogFiles(positionals, io, map, rate);
    const reports = outcomes.map((outcome) => readReport(outcome, times));
    if (values.json) printJson(io, reports.length === 1 ? reports[0] : reports);
    else printLines(io, reports.flatMap(inWords));
    for (const report of reports) {
      for (const one of report.problems) complain(io, `${report.file}: ${one.message}`);
      for (const one of report.questions) complain(io, `${report.file}: ${one.question} (${one.choices.join(', ')})`);
    }
    const worst = reports.map((report) => report.accepted);
    return EXIT[worst.includes('no') ? 'no' : worst.includes('ask') ? 'ask' : 'yes'];
  },
};

/** @throws WrongUsage */
export function number(option: string, text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw new WrongUsage(`${option} wants a number, not "${text}".`);
  return value;
}

function inWords(report: ReadReport): string[] {
  const { start, zone, durationSeconds, sampleRateHz } = report.time;
  return [
    `${report.file}: accepted ${report.accepted}, ${report.rows} rows, ${report.rowsRejected.length} left out`,
    `  time: ${start ?? 'no date'}, zone ${zone}, ${durationSeconds.toFixed(1)} s at ${sampleRateHz} a second`,
    ...report.channels.map(
      (one) =>
        `  ${one.column}: ${one.quantity ?? 'not known'}${one.unit ? ` in ${one.unit}` : ''}, ` +
        `confidence ${one.confidence.toFixed(2)}: ${one.why}` +
        one.flags.map((flag) => `\n    ${flag.kind}: ${flag.message}`).join(''),
    ),
    ...report.flags.map((flag) => `  ${flag.kind}: ${flag.message}`),
  ];
}
