/** From columns of figures to a table of quantities on one clock: meaning, time, quality, and what must be asked. */
import { flag, type Problem, problem } from '../remarks/index.ts';
import { buildTimeBase } from './clock/time-base.ts';
import { timeColumns } from './clock/time-columns.ts';
import { fileFlags } from './file-flags.ts';
import type { Gathered } from './gathered.ts';
import { makeChannels } from './make-channels.ts';
import { columnsQuestion, decimalQuestion, timeQuestion } from './open-questions.ts';
import { judgeQuality } from './quality/judge-quality.ts';
import type { ReadOutcome } from './read-outcome.ts';
import { shownName } from './shown-name.ts';
import type { LogTable } from './table.ts';
import { preambleFacts } from './text/preamble-facts.ts';

/**
 * The reading of a file whose rows are in.
 * @param gathered what reading the rows left, object
 * @returns whether the file can be used, its table, questions and remarks
 */
export function finishReading(gathered: Gathered): ReadOutcome {
  const { options, layout, store } = gathered;
  const { map } = options;
  const shown = shownName(options.file);
  const outcome = emptyOutcome(gathered, shown.name);
  if (shown.changed) {
    outcome.flags.push(flag('unsafe-name', `the name given was longer or held a path; it is shown as "${shown.name}"`));
  }
  const trouble = troubleOf(gathered, shown.name);
  if (trouble) {
    outcome.problems.push(trouble);
    return outcome;
  }
  if (!layout || !store) return outcome;
  outcome.rows = store.rows;
  outcome.rowsRejected = store.rejected;
  outcome.rowsRejectedCount = store.rejectedCount;
  const facts = preambleFacts(layout.preamble);
  const times = timeColumns(layout.columns, store.columns, map?.time);
  const { sampleRateHz: toldRate, ...told } = facts;
  const rate = options.sampleRateHz ?? toldRate;
  const built = buildTimeBase(store.rows, times, {
    map: { ...told, ...map?.time },
    ...(rate === undefined ? {} : { sampleRateHz: rate }),
    breaks: store.breaks,
  });
  outcome.timeNotes = built.notes;
  if (built.clockStart !== undefined) outcome.clockStart = built.clockStart;
  outcome.flags.push(...fileFlags(gathered), ...built.flags);
  outcome.questions.push(...built.questions);
  if (!built.time) {
    const asked = timeQuestion(layout, store);
    if (asked.length > 0) outcome.questions.push(...asked);
    else outcome.problems.push(...built.problems.map((one) => ({ ...one, where: { file: shown.name, ...one.where } })));
    outcome.accepted = asked.length > 0 ? 'ask' : 'no';
    return outcome;
  }
  const used = new Set(built.used);
  const left = layout.columns.flatMap((header, i) => {
    const column = store.columns[i];
    return column && !used.has(header.index) ? [{ header, store: column }] : [];
  });
  const { channels, screens, questions } = makeChannels(left, built.time, map);
  const table: LogTable = {
    file: shown.name,
    sha256: options.sha256,
    rows: store.rows,
    time: built.time,
    channels,
    flags: outcome.flags,
  };
  judgeQuality(table, screens);
  const { start, zone, durationSeconds, sampleRateHz, segments } = built.time;
  outcome.time = { start, zone, durationSeconds, sampleRateHz, segments };
  outcome.table = table;
  outcome.questions.push(...questions, ...columnsQuestion(layout, channels, questions.length, map));
  if (layout.decimalOpen && map?.decimal === undefined) outcome.questions.push(decimalQuestion());
  outcome.accepted = outcome.questions.length > 0 ? 'ask' : 'yes';
  return outcome;
}

/** Why the file cannot be used at all, or null. */
function troubleOf({ options, bytes, problem: met, layout, store }: Gathered, file: string): Problem | null {
  if (bytes === 0) return problem('empty-file', `${file} holds no bytes.`, { file });
  if (met) return { ...met, where: { file, ...met.where } };
  if (!layout || !store || store.rows === 0)
    return problem('no-rows', `${file}: no row of readings could be read.`, { file });
  const mapped = Object.keys(options.map?.columns ?? {});
  const strange = mapped.filter((name) => !layout.columns.some((one) => one.column === name));
  if (strange.length === 0 || strange.length < mapped.length) return null;
  const field = `columns.${strange[0]}`;
  return problem('bad-map', `The map names ${strange.join(', ')}, which this file does not have.`, { field });
}

function emptyOutcome({ options, encoding, layout, firstLines }: Gathered, file: string): ReadOutcome {
  const delimiter = layout?.delimiter === '\t' ? 'tab' : (layout?.delimiter ?? null);
  return {
    file,
    sha256: options.sha256,
    accepted: 'no',
    problems: [],
    questions: [],
    dialect: {
      encoding,
      delimiter,
      decimal: layout?.decimal ?? null,
      headerLine: layout?.headerLine ?? null,
      unitsLine: layout?.unitsLine ?? null,
      preamble: layout?.preamble ?? [],
    },
    rows: 0,
    rowsRejected: [],
    rowsRejectedCount: 0,
    time: { start: null, zone: 'unknown', durationSeconds: 0, sampleRateHz: 0, segments: [] },
    timeNotes: [],
    flags: [],
    firstLines: layout?.firstLines ?? firstLines,
    table: null,
  };
}
