/** One result: the number first, doubt beside it, reason below. */
import * as z from 'zod';
import type { Airplane } from '../../analysis/airplane/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { show } from '../../analysis/units/index.ts';
import type { Chart } from '../charts/chart.ts';
import { chartsOf } from '../charts/index.ts';
import { chartInPage, chartPart } from '../parts/chart.view.ts';
import { envelopeDrawing, envelopePart } from '../parts/envelope.view.ts';
import { fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { flagGroup, flagsByKind, flagsInWords, type ProblemPart, problemsPart } from '../parts/remarks.view.ts';
import { tablePart } from '../parts/table.view.ts';
import { count, nameInWords } from '../words/list.ts';
import { outcomePart } from '../words/outcome.ts';
import { quantityPart } from '../words/quantity.ts';
import { resultTableInWords } from '../words/result-table.ts';
import { momentInWords } from '../words/time.ts';
import { methodPath } from './help.view.ts';
import type { KeptConsequences, KeptResult, PageContext } from './kept.ts';
import { loadCases } from './load-cases.ts';
import { logPath } from './logs.view.ts';
import {
  againstLimits,
  besideRules,
  comparisonInRow,
  comparisonRow,
  comparisonsInWords,
  comparisonsPart,
  yardsticksPart,
} from './result-comparisons.ts';
import { calibrationUnder, consequencePart, consequencesInWords } from './result-consequences.ts';
import { headlineOf } from './result-headline.ts';
import { paperUnder } from './result-paper.ts';
import { exclusions, quantityGroup, quantityGroups, type SampleLink } from './result-parts.ts';
import { type AskedPrediction, prediction, predictPart } from './result-prediction.ts';
import { segmentsPart } from './result-segments.ts';
import { resultInRow, resultPath, resultRow, standingOf } from './results.view.ts';
import { testPath } from './test.view.ts';

const link = z.strictObject({ text: z.string(), href: z.string() });

export const resultView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  status: outcomePart,
  about: z.string(),
  stale: z.array(z.string()),
  refused: z.strictObject({ reason: z.string(), mend: z.string() }).nullable(),
  headline: z
    .strictObject({
      label: z.string(),
      quantity: quantityPart,
      comparison: comparisonRow.nullable(),
      tally: z.string(),
    })
    .nullable(),
  short: z.array(z.strictObject({ name: z.string(), text: z.string() })),
  flags: z.array(flagGroup),
  charts: z.array(chartPart),
  envelope: envelopePart.nullable(),
  comparisons: comparisonsPart.nullable(),
  yardsticks: yardsticksPart.nullable(),
  segments: z
    .strictObject({
      action: z.string(),
      roles: z.array(z.strictObject({ role: z.string(), meaning: z.string() })),
      files: z.array(z.string()),
      rows: z.array(
        z.strictObject({
          index: z.int(),
          number: z.int(),
          file: z.string(),
          from: z.string(),
          to: z.string(),
          span: z.string(),
          href: z.string(),
          role: z.string(),
          label: z.string(),
          roles: z.array(z.strictObject({ value: z.string(), text: z.string(), selected: z.boolean() })),
          isNew: z.boolean(),
        }),
      ),
      fields: z.array(fieldPart),
    })
    .nullable(),
  quantities: z.array(quantityGroup),
  tables: z.array(z.strictObject({ table: tablePart, count: z.string(), open: z.boolean() })),
  excluded: z.array(flagGroup),
  decide: z.strictObject({
    action: z.string(),
    accept: z.boolean(),
    fields: z.array(fieldPart),
    decided: z.string(),
    consequence: consequencePart.nullable(),
  }),
  predict: predictPart,
  others: z.array(resultRow),
  provenance: z.strictObject({
    method: link,
    version: z.string(),
    revision: link.nullable(),
    files: z.array(z.strictObject({ name: z.string(), sha256: z.string(), href: z.string() })),
    alignment: z.array(z.strictObject({ file: z.string(), text: z.string() })),
    tests: z.array(link),
    card: link.nullable(),
    flown: z.string(),
    calibration: link.nullable(),
    json: z.string(),
    away: z.string(),
  }),
});
export type ResultView = z.infer<typeof resultView>;

export interface ResultShown {
  /** titles of tests, by id */
  titles: ReadonlyMap<string, string>;
  /** as it is now: its envelope is drawn behind load cases */
  airplane?: Airplane | null;
  /** the traces its segments lie on, where its own charts do not show them */
  traces?: readonly Chart[];
  /** what a decision on it would do to other results */
  consequences?: KeptConsequences;
  /** other results of its kind, newest first */
  others?: readonly KeptResult[];
  done?: string;
  problems?: ProblemPart[];
  prediction?: AskedPrediction;
}

/** The page of a result. */
export function resultPage(kept: KeptResult, shown: ResultShown, context: PageContext): ResultView {
  const { result, number } = kept;
  const { book, units, zone } = context;
  const reduction = reductionOf(kept.kind);
  const samples = sampleLink(kept, book.id);
  const path = resultPath(book.id, number);
  const headline = headlineOf(result, units, '#numbers');
  const flags = flagsInWords(result.flags, (from, to) => samples(from, to));
  const excluded = exclusions(flags, result);
  const quantities = quantityGroups(result, units, samples);
  const moment = momentInWords(kept.at, zone);
  return {
    frame: frameOf(`${number}. ${reduction?.title ?? nameInWords(kept.kind)}`, {
      question: reduction?.answers ?? '',
      book,
      way: 'results',
      crumbs: [{ text: 'Results', href: bookPath(book.id, '/results') }],
      done: shown.done ?? '',
      modules: ['page-charts', 'page-log'],
    }),
    problems: { heading: 'Not reduced again. What you typed is kept here', items: shown.problems ?? [] },
    status: standingOf(kept),
    about: [
      kept.logNames.length > 0 ? `from ${kept.logNames.join(' and ')}` : 'from written figures',
      `${moment.local} (${moment.utc})`,
      kept.who,
    ]
      .filter(Boolean)
      .join(' · '),
    stale: [...kept.stale],
    refused: result.status === 'refused' ? { reason: result.reason ?? '', mend: result.mend ?? '' } : null,
    headline:
      result.status === 'refused'
        ? null
        : {
            label: headline.label,
            quantity: headline.quantity,
            comparison: headline.comparison ? comparisonInRow(headline.comparison, units) : null,
            tally: comparisonsInWords(result.comparisons.filter((one) => !one.reference)),
          },
    short: quantities.slice(0, 6).map(({ name, summary }) => ({ name, text: summary })),
    flags: flagsByKind(flags.filter((one) => !excluded.includes(one))),
    charts: [...chartsOf(result, units), ...(shown.traces ?? [])].map(chartInPage),
    envelope:
      shown.airplane && kept.kind === 'weight-balance'
        ? envelopeDrawing(shown.airplane, units, loadCases(result))
        : null,
    comparisons: againstLimits(result, units),
    yardsticks: besideRules(result, units),
    segments: segmentsPart(kept, path, samples),
    quantities,
    tables: result.tables.map((table, i) => ({
      table: resultTableInWords(table, units, {
        samples: (from, to) => samples(from, to),
        csv: `${path}/tables/${i}.csv`,
      }),
      count: count(table.rows.length, 'row'),
      open: i === 0,
    })),
    excluded: flagsByKind(excluded),
    decide: {
      action: `${path}/decide`,
      accept: result.status === 'reduced',
      fields: [
        textField(
          { name: 'note', label: 'Note', hint: 'What makes you accept it, or what must be different next time.' },
          kept.note,
          { long: true },
        ),
        textField({ name: 'who', label: 'Your name' }, ''),
      ],
      decided: decidedInWords(kept, zone),
      consequence: consequencesInWords(kept, shown.consequences, book.id),
    },
    predict: prediction(kept, shown.prediction, context, path),
    others: (shown.others ?? []).map((one) => resultInRow(one, context)),
    provenance: {
      method: { text: reduction?.title ?? kept.kind, href: methodPath(kept.kind) },
      version: result.provenance.methodVersion,
      revision:
        result.provenance.configurationRevision === null
          ? null
          : {
              text: `revision ${result.provenance.configurationRevision}`,
              href: bookPath(book.id, `/airplane/revisions/${result.provenance.configurationRevision}`),
            },
      files: kept.input.logs.map((id, i) => ({
        name: kept.logNames[i] ?? id,
        sha256: id,
        href: logPath(book.id, id),
      })),
      alignment: (result.alignment ?? []).map(({ file, shiftSeconds, u95, by }) => ({
        file,
        text: `moved by ${show(shiftSeconds, 's', { u95 }).text}, found from ${by}`,
      })),
      tests: kept.tests.map((test) => ({ text: shown.titles.get(test) ?? test, href: testPath(book.id, test) })),
      ...paperUnder(kept, book.id),
      calibration: calibrationUnder(kept, book.id),
      json: `/api${path}`,
      away: `${path}/away`,
    },
  };
}

function sampleLink(kept: KeptResult, book: string): SampleLink {
  return (from, to, file) => {
    const at = file === undefined ? 0 : kept.logNames.indexOf(file);
    const log = kept.input.logs[Math.max(0, at)];
    return log === undefined ? '' : logPath(book, log, { from, to });
  };
}

function decidedInWords(kept: KeptResult, zone: string): string {
  if (kept.decision === 'proposed' || kept.decidedAt === null) return '';
  const word = kept.decision === 'accepted' ? 'Accepted' : 'To be repeated';
  const by = kept.decidedBy ? `, ${kept.decidedBy}` : '';
  const note = kept.note === '' ? '' : ` ${kept.note}`;
  return `${word}, ${momentInWords(kept.decidedAt, zone).local}${by}.${note}`;
}
