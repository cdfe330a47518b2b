/** Every part of a page, once, with what it is for. */
import * as z from 'zod';
import { type Airplane, airplaneSchema } from '../../analysis/airplane/index.ts';
import { flag, problem } from '../../analysis/remarks/index.ts';
import { chartInPage, chartPart } from '../parts/chart.view.ts';
import { envelopeDrawing, envelopePart } from '../parts/envelope.view.ts';
import { choiceField, fieldPart, statedField, textField, tickField, ticksField } from '../parts/field.view.ts';
import { frameOf, framePart } from '../parts/frame.view.ts';
import { flagGroup, flagsByKind, flagsInWords, problemsInWords, problemsPart } from '../parts/remarks.view.ts';
import { tablePart } from '../parts/table.view.ts';
import { CHART, COMPARISONS, KEPT_RESULT, OUTCOMES } from '../specimens.ts';
import { outcomeInWords, outcomePart } from '../words/outcome.ts';
import { quantityInWords, quantityPart } from '../words/quantity.ts';
import { resultTableInWords } from '../words/result-table.ts';
import { USUAL_UNITS } from '../words/unit-shown.ts';
import { HELP_CRUMB } from './help.view.ts';
import { comparisonInRow, comparisonRow } from './result-comparisons.ts';
import { resultInRow, resultRow } from './results.view.ts';

export const specimensView = z.strictObject({
  frame: framePart,
  outcomes: z.array(outcomePart),
  quantities: z.array(quantityPart),
  comparisons: z.array(comparisonRow),
  results: z.array(resultRow),
  table: tablePart,
  emptyTable: tablePart,
  flags: z.array(flagGroup),
  problems: problemsPart,
  fields: z.array(fieldPart),
  chart: chartPart,
  envelope: envelopePart.nullable(),
});
export type SpecimensView = z.infer<typeof specimensView>;

const PART = { name: 'equilibrium', u95: 1.2 };
const UNITS = [
  { value: 'degC', text: '°C', selected: true },
  { value: 'degF', text: '°F', selected: false },
];

/** The specimen page. */
export function specimensPage(airplane: Airplane | null): SpecimensView {
  const [segments] = KEPT_RESULT.result.tables;
  const table = resultTableInWords(segments ?? { name: '', columns: [], rows: [] }, USUAL_UNITS, {
    samples: (from, to) => `#${from}-${to}`,
    csv: '/specimens',
  });
  const book = { id: 'specimen', name: 'Specimen', registration: '0X-SPC', invented: true };
  return {
    frame: frameOf('Specimens', {
      question: 'Every part of a page, once. The figures are invented.',
      crumbs: [HELP_CRUMB],
      modules: ['page-charts'],
    }),
    outcomes: OUTCOMES.map(outcomeInWords),
    quantities: [
      quantityInWords(371.4, 'K', PART, USUAL_UNITS),
      quantityInWords(371.4, 'K', { ...PART, href: '#samples', title: 'to its samples' }, USUAL_UNITS),
      quantityInWords(null, 'K', { ...PART, why: 'too short a run' }, USUAL_UNITS),
    ],
    comparisons: COMPARISONS.map((one) => comparisonInRow(one, USUAL_UNITS)),
    results: [resultInRow(KEPT_RESULT, { book, units: USUAL_UNITS, zone: 'UTC' })],
    table,
    emptyTable: { ...table, rows: [] },
    flags: flagsByKind(
      flagsInWords([...KEPT_RESULT.result.flags, flag('gap', 'rows are missing', { fromSeconds: 5, toSeconds: 9 })]),
    ),
    problems: {
      heading: 'What was wrong',
      items: problemsInWords([
        problem('empty-file', 'log.csv holds no bytes.', { file: 'log.csv', line: 1, column: 'Oil temp' }),
      ]),
    },
    fields: [
      textField({ name: 'plain', label: 'A line of text', hint: 'What one should know first.' }, 'as typed'),
      textField({ name: 'long', label: 'Several lines' }, '', { long: true }),
      textField({ name: 'number', label: 'A number', wrong: '“12 kts” is not a number.', required: true }, '12 kts', {
        number: true,
      }),
      tickField({ name: 'tick', label: 'Fitted' }, true),
      choiceField({ name: 'choice', label: 'One of several' }, UNITS, 'degC'),
      ticksField({ name: 'ticks', label: 'Any of several' }, UNITS, ['degF']),
      statedField(
        { name: 'stated', label: 'A limit' },
        {
          value: '112',
          half: '',
          source: 'engine builder’s manual',
          enteredBy: 'Ines Corbeau',
          needsSource: true,
          brief: false,
          units: UNITS,
          statuses: [{ value: 'designer', text: 'designer’s or maker’s figure', selected: true }],
          scales: [],
        },
      ),
    ],
    chart: chartInPage(CHART),
    envelope:
      airplane &&
      envelopeDrawing(airplane, USUAL_UNITS, [
        { label: 'take-off', mass: 1010, massU95: 4, arm: 2.4, armU95: 0.008 },
        { label: 'landing', mass: 940, massU95: 4, arm: 2.38, armU95: 0.009 },
      ]),
  };
}

/** The envelope's airplane, from a description; null where it does not fit. */
export function specimenAirplane(json: unknown): Airplane | null {
  const read = airplaneSchema.safeParse(json);
  return read.success ? read.data : null;
}
