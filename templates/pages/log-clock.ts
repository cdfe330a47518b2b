/** The fields by which a person settles a log's clock, and what the log can be reduced to. */
import { REDUCTIONS } from '../../analysis/reductions/index.ts';
import { baseName } from '../../analysis/units/index.ts';
import { choiceField, textField } from '../parts/field.view.ts';
import { listInWords, nameInWords } from '../words/list.ts';
import type { LogFacts, LogView } from './log.view.ts';

/** How a map says that the figures of a date begin with the year. */
export const YEAR_FIRST = 'yymmdd';

export function clockFields({ map, outcome }: LogFacts) {
  const time = map?.time;
  const dayFirst =
    time?.format === YEAR_FIRST ? 'year' : time?.dayFirst === undefined ? '' : time.dayFirst ? 'yes' : 'no';
  return [
    textField(
      {
        name: 'offset',
        label: 'Clock ahead of UTC',
        hint: 'Such as +01:00, or UTC. Needed where the file does not say its zone.',
      },
      time?.offset ?? '',
    ),
    textField(
      {
        name: 'date',
        label: 'Day of the first record',
        hint: 'Such as 2031-05-04, where the file has only a time of day.',
      },
      time?.date ?? '',
    ),
    choiceField(
      { name: 'dayFirst', label: 'Day and month' },
      [
        { value: '', text: 'as the file shows' },
        { value: 'yes', text: 'day first: 04/05 is 4 May' },
        { value: 'no', text: 'month first: 04/05 is 5 April' },
        { value: 'year', text: 'year first: 310504 is 4 May 2031' },
      ],
      dayFirst,
    ),
    choiceField(
      { name: 'decimal', label: 'Decimal mark' },
      [
        { value: '', text: 'as the file shows' },
        { value: '.', text: 'point' },
        { value: ',', text: 'comma' },
      ],
      map?.decimal ?? '',
    ),
    textField(
      {
        name: 'timeColumns',
        label: 'Columns of the clock',
        hint: `Names separated by commas, where the wrong ones were taken.${outcome.table ? '' : ' None was found.'}`,
      },
      (time?.columns ?? []).join(', '),
    ),
  ];
}

/** What this log can be reduced to, what it lacks for the rest. Those that need no log stand elsewhere. */
export function reductionsFor({ outcome, titles }: LogFacts): LogView['reductions'] {
  const there = new Set(
    (outcome.table?.channels ?? []).flatMap((one) => (one.quantity ? [baseName(one.quantity)] : [])),
  );
  return REDUCTIONS.filter((one) => one.needs.length > 0)
    .map(({ kind, title, answers, needs, serves }) => {
      const lacks = needs.filter((name) => !there.has(baseName(name)));
      return {
        kind,
        title,
        answers,
        ready: lacks.length === 0,
        lacks:
          lacks.length === 0
            ? ''
            : `Alone it lacks: ${listInWords(lacks.map((one) => nameInWords(one).toLowerCase()))}.`,
        tests: serves.flatMap((test) => {
          const text = titles.get(test);
          return text === undefined ? [] : [{ value: test, text, id: `for-${kind}-${test}` }];
        }),
        missing: lacks.length,
      };
    })
    .sort((a, b) => a.missing - b.missing)
    .map(({ missing: _, ...one }) => one);
}
