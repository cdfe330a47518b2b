/** `proveout reduce`: one reduction of logs or written figures. */
import * as z from 'zod';
import type { Airplane } from '../../analysis/airplane/index.ts';
import { InputProblem, type Problem, problem } from '../../analysis/remarks/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import { checkedMap } from '../actions/confirm-map.ts';
import { type AskedQuestion, checkedSegments, reduceRecording, type ToReduce } from '../actions/reduce-recording.ts';
import { airplaneFrom } from './airplane-from.ts';
import { knownKind } from './known-kind.ts';
import { readLogFiles } from './log-files.ts';
import { number } from './read.ts';
import { readJson } from './read-json.ts';
import { resultFrom } from './result-from.ts';
import { complain, complainAll, type Io, printJson, printLines, readArguments, type Verb, WrongUsage } from './verb.ts';

const OPTIONS = {
  airplane: { type: 'string' },
  points: { type: 'string' },
  segments: { type: 'string' },
  calibration: { type: 'string' },
  map: { type: 'string' },
  options: { type: 'string' },
  shift: { type: 'string', multiple: true },
  rate: { type: 'string' },
} as const;

export const reduce: Verb = {
  help: `proveout reduce KIND LOG... [--airplane AIRPLANE.json] [--points POINTS.json] [--segments SEG.json]
  [--calibration CAL.json] [--map MAP.json] [--options OPTIONS.json] [--shift FILE=SECONDS] [--rate HZ] [--json]

One reduction. Several LOGs are aligned and merged; the first one sets the clock. --points takes figures written on a
card, with or without logs. --segments replaces the stretches found by those set by hand. --calibration is an airspeed
result. --map tells what the columns are. --shift sets a log's shift by hand where the alignment is in doubt. One of
the files may be "-", standard input.
`,
  run: async (argv, io) => {
    const { values, positionals } = readArguments(argv, OPTIONS);
    const [kind, ...logs] = positionals;
    if (kind === undefined) throw new WrongUsage('KIND is wanted.');
    await knownKind(kind);
    if (logs.length === 0 && values.points === undefined) throw new WrongUsage('a LOG or --points is wanted.');
    try {
      const given = await toReduce(kind, logs, values, io);
      const reduced = await reduceRecording(given);
      if (reduced.answer === 'questions') return askFirst(kind, reduced.questions, values.json, io);
      if (values.json) printJson(io, reduced.result);
      else printLines(io, await words(reduced.result, given.airplane));
      if (reduced.result.status === 'reduced') return 0;
      complain(io, [reduced.result.reason, reduced.result.mend].filter(Boolean).join(' '));
      return 1;
    } catch (error) {
      if (!(error instanceof InputProblem) || !values.json) throw error;
      complainAll(io, error.problems);
      printJson(io, { ...unreduced(kind, error.problems), problems: error.problems });
      return 1;
    }
  },
};

type Values = ReturnType<typeof readArguments<typeof OPTIONS>>['values'];

async function toReduce(kind: string, logs: string[], values: Values, io: Io): Promise<ToReduce> {
  const { airplane, points, segments, calibration, map, options, shift = [], rate } = values;
  const columns = map === undefined ? undefined : checkedMap(await readJson(map, 'bad-map', io));
  const shifts = shift.map((one) => shiftFrom(one));
  return {
    kind,
    outcomes: await readLogFiles(logs, io, columns, rate === undefined ? undefined : number('--rate', rate)),
    ...(airplane === undefined ? {} : { airplane: await airplaneFrom(airplane, io) }),
    ...(points === undefined ? {} : { points: await readJson(points, 'bad-points', io) }),
    ...(segments === undefined ? {} : { segments: checkedSegments(await readJson(segments, 'bad-segments', io)) }),
    ...(calibration === undefined ? {} : { calibration: await resultFrom(calibration, io) }),
    ...(options === undefined ? {} : { options: await optionsFrom(options, io) }),
    ...(shifts.length === 0 ? {} : { shifts: Object.fromEntries(shifts) }),
  };
}

/** Only that it is an object is checked here; the reduction knows its own options. */
async function optionsFrom(path: string, io: Io): Promise<Record<string, unknown>> {
  const read = z.record(z.string(), z.unknown()).safeParse(await readJson(path, 'bad-request', io));
  if (read.success) return read.data;
  throw new InputProblem([problem('bad-request', `${path}: an object of options was wanted.`, { file: path })]);
}

function shiftFrom(text: string): [file: string, seconds: number] {
  const at = text.lastIndexOf('=');
  if (at < 1) throw new WrongUsage(`--shift wants FILE=SECONDS, not "${text}".`);
  return [text.slice(0, at), number('--shift', text.slice(at + 1))];
}

function askFirst(kind: string, questions: readonly AskedQuestion[], json: boolean | undefined, io: Io): number {
  for (const { file, question, choices, because } of questions) {
    complain(io, `${file}: ${question}${choices.length > 0 ? ` (${choices.join(', ')})` : ''} ${because}`);
  }
  const reason = questions.map((one) => one.question).join(' ');
  if (json) printJson(io, { ...unreduced(kind, []), code: 'question-open', reason, questions });
  return 3;
}

/** The shape of a result for an input that could not be reduced, so that a script reads one shape only. */
function unreduced(kind: string, problems: readonly Problem[]) {
  return {
    kind,
    status: 'refused',
    reason: problems.map((one) => one.message).join(' '),
    ...(problems[0] ? { code: problems[0].code, mend: problems[0].mend } : {}),
    quantities: [],
    tables: [],
    segments: [],
    comparisons: [],
    flags: [],
    provenance: { files: [], configurationRevision: null, methodVersion: '' },
  };
}

/** The templates know the words; JSON does without them. */
async function words(result: Result, airplane: Airplane | undefined): Promise<string[]> {
  const { resultWords } = await import('./result-words.ts');
  return resultWords(result, airplane?.instruments.units);
}
