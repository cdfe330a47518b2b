/** One log: what was made of it beside its first lines, channels to confirm, quality, traces, and what it can answer. */
import * as z from 'zod';
import type { LogMap } from '../../analysis/logs/log-map.ts';
import type { ReadOutcome } from '../../analysis/logs/read-outcome.ts';
import { baseName, siUnitFor } from '../../analysis/units/index.ts';
import type { Chart } from '../charts/chart.ts';
import { LOOKED_AT_FIRST, type Trace, traceChart, traceDataset, traceGroups } from '../charts/trace.ts';
import { chartInPage, chartPart } from '../parts/chart.view.ts';
import { fieldPart } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import {
  flagGroup,
  flagsByKind,
  flagsInWords,
  type ProblemPart,
  problemsInWords,
  problemsPart,
} from '../parts/remarks.view.ts';
import { count, listInWords, nameInWords } from '../words/list.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { clocksPath } from './clocks.view.ts';
import type { KeptLog, KeptResult, PageContext } from './kept.ts';
import { clockFields, reductionsFor } from './log-clock.ts';
import { quantityChoices, unitChoices } from './log-map.ts';
import { asked, mapFromInWords, readingFacts, summaryOf } from './log-reading.ts';
import { logPath } from './logs.view.ts';
import { qualityMarks } from './quality-strip.ts';
import { resultInRow, resultRow } from './results.view.ts';

const choices = z.array(
  z.strictObject({
    label: z.string(),
    options: z.array(z.strictObject({ value: z.string(), text: z.string(), selected: z.boolean() })),
  }),
);
const question = z.strictObject({ question: z.string(), because: z.string(), choices: z.string() });
const fact = z.strictObject({ name: z.string(), text: z.string() });

export const logView = z.strictObject({
  frame: framePart,
  state: outcomePart,
  summary: z.string(),
  id: z.string(),
  raw: z.string(),
  away: z.string(),
  problems: problemsPart,
  mapFrom: z.string(),
  lines: z.array(z.strictObject({ number: z.int(), text: z.string(), mark: z.string() })),
  reading: z.array(fact),
  timeNotes: z.array(z.string()),
  flags: z.array(flagGroup),
  rejected: z.array(z.strictObject({ line: z.int(), reason: z.string() })),
  rejectedMore: z.string(),
  questions: z.array(question),
  mapAction: z.string(),
  clock: z.array(fieldPart),
  channels: z.array(
    z.strictObject({
      index: z.int(),
      column: z.string(),
      quantities: choices,
      units: choices,
      sure: z.string(),
      why: z.string(),
      valid: z.string(),
      asks: question.nullable(),
      marks: z.array(z.strictObject({ x: z.string(), width: z.string(), light: z.boolean(), title: z.string() })),
      flags: z.array(z.strictObject({ message: z.string(), span: z.string(), href: z.string() })),
    }),
  ),
  more: z.string(),
  chosen: z.array(z.strictObject({ column: z.string(), text: z.string(), id: z.string(), checked: z.boolean() })),
  charts: z.array(chartPart),
  reduceAction: z.string(),
  reductions: z.array(
    z.strictObject({
      kind: z.string(),
      title: z.string(),
      answers: z.string(),
      ready: z.boolean(),
      lacks: z.string(),
      tests: z.array(z.strictObject({ value: z.string(), text: z.string(), id: z.string() })),
    }),
  ),
  others: z.array(z.strictObject({ id: z.string(), name: z.string(), field: z.string(), clocks: z.string() })),
  results: z.array(resultRow),
});
export type LogView = z.infer<typeof logView>;

export interface LogFacts {
  log: KeptLog;
  outcome: ReadOutcome;
  map: LogMap | null;
  mapFrom: 'given' | 'confirmed' | 'saved' | 'none';
  savedOn: string | null;
  /** the other logs of the book, to be merged with this one */
  others: readonly KeptLog[];
  results: readonly KeptResult[];
  titles: ReadonlyMap<string, string>;
}

export interface LogShown {
  /** columns drawn */
  columns: readonly string[];
  traces: readonly Trace[];
  span?: { from: number; to: number } | undefined;
  problems?: ProblemPart[];
  done?: string;
}

/** Channels shown in the table; a file with more is confirmed by its map. */
const SHOWN = 120;
/** Lines of the file shown beside the reading of them. */
const FIRST_LINES = 14;

const STATES = { yes: 'read', ask: 'asks', no: 'not read' } as const;

/** The page of a log. */
export function logPage(facts: LogFacts, shown: LogShown, context: PageContext): LogView {
  const { log, outcome } = facts;
  const { book } = context;
  const table = outcome.table;
  const channels = table?.channels ?? [];
  const ofColumn = (column: string) => outcome.questions.find((one) => one.column === column);
  const link = (from: number, to: number) => logPath(book.id, log.id, { from, to });
  return {
    frame: frameOf(log.name, {
      question: 'What did the recorder say?',
      book,
      way: 'logs',
      crumbs: [{ text: 'Logs', href: bookPath(book.id, '/logs') }],
      done: shown.done ?? '',
      modules: ['page-charts', 'page-log'],
    }),
    state: outcomeInWords(STATES[outcome.accepted]),
    summary: summaryOf(facts, context),
    id: log.id,
    raw: `/api${bookPath(book.id, `/logs/${log.id}/raw`)}`,
    away: bookPath(book.id, `/logs/${log.id}/away`),
    problems: {
      heading: shown.problems
        ? 'The table could not be kept. What you chose is shown below'
        : 'This file could not be used as a log',
      items: shown.problems ?? problemsInWords(outcome.problems),
    },
    mapFrom: mapFromInWords(facts),
    lines: outcome.firstLines.slice(0, FIRST_LINES).map((text, i) => ({
      number: i + 1,
      text: text.length > 400 ? `${text.slice(0, 400)}…` : text,
      mark: i + 1 === outcome.dialect.headerLine ? 'names' : i + 1 === outcome.dialect.unitsLine ? 'units' : '',
    })),
    reading: readingFacts(outcome, context),
    timeNotes: outcome.timeNotes,
    flags: flagsByKind(flagsInWords(outcome.flags, link)),
    rejected: outcome.rowsRejected.slice(0, 10),
    rejectedMore: outcome.rowsRejectedCount > 10 ? `and ${count(outcome.rowsRejectedCount - 10, 'row')} more` : '',
    questions: outcome.questions
      .filter((one) => !one.column || !channels.some((c) => c.column === one.column))
      .map(asked),
    mapAction: bookPath(book.id, `/logs/${log.id}/map`),
    clock: clockFields(facts),
    channels: channels.slice(0, SHOWN).map((channel, index) => {
      const asks = ofColumn(channel.column);
      const mapped = facts.map?.columns[channel.column];
      const quantity = mapped?.quantity ?? channel.quantity ?? '';
      return {
        index,
        column: channel.column,
        quantities: quantityChoices(channel, asks, quantity),
        units: unitChoices(quantity === '' ? null : quantity, asks, mapped?.unit ?? channel.unit ?? ''),
        sure:
          channel.quantity === null && channel.confidence === 0 ? '' : `${Math.round(channel.confidence * 100)} % sure`,
        why: channel.why,
        valid: channel.texts ? 'text' : `${(channel.valid * 100).toFixed(channel.valid > 0.999 ? 0 : 1)} %`,
        asks: asks ? asked(asks) : null,
        marks: qualityMarks(channel, outcome.time),
        flags: flagsInWords(channel.flags, link).map(({ message, span, href }) => ({ message, span, href })),
      };
    }),
    more:
      channels.length > SHOWN ? `${channels.length - SHOWN} more columns are kept and can be mapped by a file.` : '',
    chosen: channels
      .filter((channel) => !channel.texts)
      .slice(0, SHOWN)
      .map((channel, index) => ({
        column: channel.column,
        text: channel.quantity === null ? channel.column : nameInWords(channel.quantity),
        id: `draw-${index}`,
        checked: shown.columns.includes(channel.column),
      })),
    charts: table ? charts(facts, shown, context).map(chartInPage) : [],
    reduceAction: bookPath(book.id, '/results'),
    reductions: reductionsFor(facts),
    others: facts.others.map((one, i) => ({
      id: one.id,
      name: one.name,
      field: `other-${i}`,
      clocks: clocksPath(book.id, log.id, one.id),
    })),
    results: facts.results.filter((one) => one.input.logs.includes(log.id)).map((one) => resultInRow(one, context)),
  };
}

/** Columns drawn when none was chosen: what burns first, what flies it, what it was done with. */
export function usualColumns(outcome: ReadOutcome): string[] {
  const channels = outcome.table?.channels ?? [];
  const found = LOOKED_AT_FIRST.flatMap((name) =>
    channels.filter((one) => one.quantity && baseName(one.quantity) === name),
  );
  return (found.length > 0 ? found : channels.filter((one) => !one.texts)).slice(0, 4).map((one) => one.column);
}

function charts({ log, outcome }: LogFacts, shown: LogShown, { book, units }: PageContext): Chart[] {
  const channels = (outcome.table?.channels ?? [])
    .filter((one) => shown.columns.includes(one.column))
    .map(({ column, quantity, unit }) => ({
      column,
      quantity,
      unit: quantity !== null && unit !== null ? siUnitFor(unit) : null,
    }));
  const power = outcome.time.segments.length > 1 ? outcome.time.segments : [];
  return traceGroups(channels, units).map(({ unit, columns }) => {
    const datasets = shown.traces.filter((one) => columns.includes(one.column)).map((one) => traceDataset(one, units));
    const query = new URLSearchParams(columns.map((column): [string, string] => ['columns', column]));
    return traceChart(listInWords(datasets.map((one) => one.label)), datasets, unit, {
      samples: bookPath(book.id, `/logs/${log.id}/samples?${query}`),
      spans: power.map((one) => ({ label: one.reason, from: one.fromSeconds, to: one.toSeconds })),
      seconds: outcome.time.durationSeconds,
      view: shown.span,
    });
  });
}
