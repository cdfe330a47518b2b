/** From columns of figures to a table of quantities on one clock: meaning, time, quality, and what must be asked. */
import { type Flag, flag, problem } from '../remarks/index.ts';
import { quantityOf, unitOf } from '../units/index.ts';
import { recogniseColumns } from './channels/recognise.ts';
import { readClockCell } from './clock/clock-cell.ts';
import { buildTimeBase, type TimeBuilt, type TimeColumn } from './clock/time-base.ts';
import { timeRole } from './clock/time-names.ts';
import type { Gathered } from './open-reader.ts';
import { judgeQuality } from './quality/judge-quality.ts';
import type { ReadOutcome, ReadQuestion } from './read-outcome.ts';
import { type ColumnStore, unpackDegrees } from './rows/column-store.ts';
import { shownName } from './shown-name.ts';
import type { LogChannel, LogTable } from './table.ts';
import type { HeaderColumn, Layout } from './text/layout.ts';

/**
 * The reading of a file whose rows are in.
 * @param gathered what reading the rows left
 * @returns whether the file can be used, its table, questions and remarks
 */
export function finishReading(gathered: Gathered): ReadOutcome {
  const { options, layout, rows } = gathered;
  const shown = shownName(options.file);
  const outcome = emptyOutcome(gathered, shown.name);
  if (shown.changed)
    outcome.flags.push(flag('unsafe-name', `the name given was longer or held a path; it is shown as "${shown.name}"`));
  if (gathered.bytes === 0)
    return refused(outcome, problem('empty-file', `${shown.name} holds no bytes.`, { file: shown.name }));
  if (gathered.problem)
    return refused(outcome, { ...gathered.problem, where: { file: shown.name, ...gathered.problem.where } });
  if (!layout || !rows || rows.counts.rows === 0) {
    return refused(
      outcome,
      problem('no-rows', `${shown.name}: no row of readings could be read.`, { file: shown.name }),
    );
  }
  const { counts } = rows;
  const strange = Object.keys(options.map?.columns ?? {}).filter(
    (name) => !layout.columns.some((one) => one.column === name),
  );
  if (strange.length > 0 && strange.length === Object.keys(options.map?.columns ?? {}).length) {
    return refused(
      outcome,
      problem('bad-map', `The map names ${strange.join(', ')}, which this file does not have.`, {
        field: `columns.${strange[0]}`,
      }),
    );
  }
  outcome.rows = counts.rows;
  outcome.rowsRejected = counts.rejected;
  outcome.rowsRejectedCount = counts.rejectedCount;
  const times = timeColumns(layout, gathered.columns);
  const built = buildTimeBase(counts.rows, times, {
    ...(options.map?.time ? { map: options.map.time } : {}),
    ...(options.sampleRateHz ? { sampleRateHz: options.sampleRateHz } : {}),
    breaks: counts.breaks,
  });
  outcome.timeNotes = built.notes;
  outcome.questions.push(...built.questions);
  outcome.flags.push(...fileFlags(gathered, layout), ...built.flags);
  if (!built.time) {
    outcome.problems.push(
      ...(built.problems.length > 0
        ? built.problems
        : [problem('no-time', `${shown.name}: no column tells the time.`)]),
    );
    outcome.accepted = 'no';
    return outcome;
  }
  const table = tableOf(gathered, layout, built, shown.name, outcome.questions);
  judgeQuality(table);
  table.flags = outcome.flags;
  const { start, zone, durationSeconds, sampleRateHz, segments } = built.time;
  outcome.time = { start, zone, durationSeconds, sampleRateHz, segments };
  outcome.table = table;
  if (layout.decimalOpen && options.map?.decimal === undefined) outcome.questions.push(decimalQuestion());
  outcome.accepted = outcome.questions.length > 0 ? 'ask' : 'yes';
  return outcome;
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

function refused(outcome: ReadOutcome, why: ReadOutcome['problems'][number]): ReadOutcome {
  outcome.problems.push(why);
  outcome.accepted = 'no';
  return outcome;
}

function timeColumns(layout: Layout, columns: readonly ColumnStore[]): TimeColumn[] {
  return layout.columns.flatMap((header, i) => {
    const store = columns[i];
    if (!store || (timeRole(header.name) === null && !looksLikeClock(store))) return [];
    return [
      {
        column: header.column,
        index: header.index,
        name: header.name,
        unitText: header.unitText,
        texts: store.texts,
        numbers: store.texts ? null : store.numbers,
      },
    ];
  });
}

function looksLikeClock(store: ColumnStore): boolean {
  const first = store.texts?.find((text) => text !== '');
  return first !== undefined && readClockCell(first) !== null;
}

function tableOf(
  gathered: Gathered,
  layout: Layout,
  built: TimeBuilt,
  file: string,
  questions: ReadQuestion[],
): LogTable {
  const used = new Set(built.used);
  const channels = layout.columns
    .map((header, i) => ({ header, store: gathered.columns[i] }))
    .filter(
      (one): one is { header: HeaderColumn; store: ColumnStore } =>
        one.store !== undefined && !used.has(one.header.index),
    )
    .filter(({ header, store }) => !(store.texts && timeRole(header.name) !== null));
  const { map } = gathered.options;
  const recognised = recogniseColumns(
    channels.map(({ header, store }) => ({ header, numbers: store.texts ? null : store.numbers })),
    map,
  );
  questions.push(...recognised.questions);
  const seconds = built.time?.seconds ?? new Float64Array(0);
  return {
    file,
    sha256: gathered.options.sha256,
    rows: seconds.length,
    time: built.time ?? {
      seconds,
      startUtcMs: null,
      start: null,
      zone: 'unknown',
      durationSeconds: 0,
      sampleRateHz: 0,
      segments: [],
    },
    flags: [],
    channels: channels.map(({ header, store }, i): LogChannel => {
      const one = recognised.channels[i] ?? { quantity: null, unit: null, confidence: 0, why: '', flags: [] };
      return channelOf(header, store, one, seconds);
    }),
  };
}

function channelOf(
  header: HeaderColumn,
  store: ColumnStore,
  one: { quantity: string | null; unit: string | null; confidence: number; why: string; flags: Flag[] },
  seconds: Float64Array,
): LogChannel {
  const flags = [...one.flags];
  if (store.odd.count > 0) {
    const span = { fromSeconds: seconds[store.odd.firstRow] ?? 0, toSeconds: seconds[store.odd.lastRow] ?? 0 };
    flags.push(flag('non-numeric', `${store.odd.count} cells hold text, such as "${store.odd.example}"`, span));
  }
  let values = store.texts ? new Float64Array(seconds.length).fill(Number.NaN) : store.numbers;
  const angle = one.quantity === 'latitude' ? 90 : one.quantity === 'longitude' ? 180 : null;
  const unpacked = angle === null ? null : unpackDegrees(values, angle);
  if (unpacked) {
    values = unpacked;
    flags.push(flag('method-note', 'read as degrees and minutes packed in one number'));
  }
  if (one.quantity !== null && one.unit !== null && quantityOf(one.quantity)) {
    const { factor, offset } = unitOf(one.unit);
    if (factor !== 1 || offset !== 0) values = values.map((value) => value * factor + offset);
  }
  let there = 0;
  for (const value of values) if (!Number.isNaN(value)) there += 1;
  return {
    column: header.column,
    index: header.index,
    name: header.name,
    quantity: one.quantity,
    unit: one.unit,
    confidence: one.confidence,
    why: one.why,
    values,
    ...(store.texts ? { texts: store.texts } : {}),
    valid: values.length > 0 ? (store.texts ? 1 : there / values.length) : 0,
    flags,
  };
}

function fileFlags({ rows, columns, nulBytes }: Gathered, layout: Layout): Flag[] {
  const flags: Flag[] = [];
  const counts = rows?.counts;
  if (counts && counts.ragged > 0)
    flags.push(
      flag(
        'ragged-rows',
        `${counts.ragged} rows are short, the first in line ${counts.firstRaggedLine}; what lacks is missing`,
      ),
    );
  if (counts && counts.repeatedHeaders > 0)
    flags.push(flag('repeated-header', `the header stands ${counts.repeatedHeaders} more times in the file`));
  if (counts?.truncated) flags.push(flag('truncated-last-line', 'the last line is cut and was left out'));
  if (nulBytes > 0) flags.push(flag('nul-bytes', `${nulBytes} empty bytes were left out`));
  if (layout.duplicates.length > 0)
    flags.push(flag('duplicate-columns', `these names stand more than once: ${layout.duplicates.join(', ')}`));
  const formulas = columns.reduce((sum, column) => sum + column.formulas, 0);
  if (formulas > 0)
    flags.push(flag('formula-text', `${formulas} cells start like a spreadsheet formula; they are kept as text`));
  return flags;
}

const decimalQuestion = (): ReadQuestion => ({
  id: 'decimal',
  question: 'Is the comma in the figures a decimal mark?',
  choices: [',', '.'],
  because: 'nothing in the file tells a decimal comma from a thousands mark',
  concerns: ['all'],
});
