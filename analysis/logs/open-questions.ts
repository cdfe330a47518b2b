/** Questions about a file as a whole: which column is the time, what the columns are, what the comma means. */
import type { LogMap } from './log-map.ts';
import type { ReadQuestion } from './read-outcome.ts';
import { numbersOf } from './rows/column-store.ts';
import { allNumbers } from './rows/kept-numbers.ts';
import type { RowStore } from './rows/row-store.ts';
import type { LogChannel } from './table.ts';
import type { Layout } from './text/layout.ts';

/**
 * Which column is the time? Asked where no name tells, but a column rises as time does.
 * @param layout how the file is built, object
 * @param store its rows, object
 * @returns the question, or none where no column can be the time
 */
export function timeQuestion(layout: Layout, store: RowStore): ReadQuestion[] {
  const named = layout.headerLine !== null && layout.columns.some(({ name }) => /[A-Za-z]{3}/.test(name));
  const rising = layout.columns.filter((_, i) => {
    const column = store.columns[i];
    return column?.kind === 'number' && rises(allNumbers(numbersOf(column)));
  });
  if (rising.length === 0 || named) return [];
  return [
    {
      id: 'time-column',
      question: 'Which column is the time, and in which unit?',
      choices: rising.map((one) => one.column),
      because: 'no column has a name that tells; these rise from row to row as time does',
      concerns: ['time'],
    },
  ];
}

function rises(values: Float64Array): boolean {
  if (values.length < 3) return false;
  for (let i = 1; i < values.length; i += 1) if (!((values[i] ?? 0) > (values[i - 1] ?? 0))) return false;
  return true;
}

/**
 * What are the columns? Asked where the file names none, or none of the names says anything.
 * @param layout how the file is built, object
 * @param channels what was recognised
 * @param asked questions already asked about single columns, count
 * @param map what a person confirmed
 * @returns the question, or none
 */
export function columnsQuestion(
  layout: Layout,
  channels: readonly LogChannel[],
  asked: number,
  map: LogMap | undefined,
): ReadQuestion[] {
  const numeric = channels.filter((one) => !one.texts && one.valid > 0);
  const silent = numeric.every((one) => one.quantity === null) && asked === 0;
  const confirmed = numeric.every((one) => map && Object.hasOwn(map.columns, one.column));
  if (confirmed || numeric.length === 0 || (layout.headerLine !== null && !silent)) return [];
  return [
    {
      id: 'columns',
      question: 'What do the columns of this file hold?',
      choices: numeric.map((one) => one.column),
      because:
        layout.headerLine === null
          ? 'the file has no line of names'
          : `none of the names is known: ${numeric
              .slice(0, 8)
              .map((one) => one.column)
              .join(', ')}`,
      concerns: ['all'],
    },
  ];
}

/**
 * Is the comma a decimal mark?
 * @returns the question
 */
export function decimalQuestion(): ReadQuestion {
  return {
    id: 'decimal',
    question: 'Is the comma in the figures a decimal mark?',
    choices: [',', '.'],
    because: 'nothing in the file tells a decimal comma from a thousands mark',
    concerns: ['all'],
  };
}
