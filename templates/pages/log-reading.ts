/** How a log was read, in words: its letters and marks, its clock, and where its channel table came from. */
import type { ReadOutcome, ReadQuestion } from '../../analysis/logs/read-outcome.ts';
import { quantityOf } from '../../analysis/units/index.ts';
import { count, nameInWords } from '../words/list.ts';
import { clockInWords, minutesInWords, momentInWords, spanInWords } from '../words/time.ts';
import type { PageContext } from './kept.ts';
import type { LogFacts } from './log.view.ts';
import { sizeInWords } from './logs.view.ts';

export function summaryOf({ log, outcome }: LogFacts, { zone }: PageContext): string {
  const { time, rows } = outcome;
  const parts = [sizeInWords(log.size)];
  if (rows > 0) parts.push(count(rows, 'row'));
  if (time.sampleRateHz > 0) parts.push(`${Number(time.sampleRateHz.toPrecision(3))} a second`);
  if (time.durationSeconds > 0)
    parts.push(`${clockInWords(time.durationSeconds)} long (${minutesInWords(time.durationSeconds / 60)})`);
  if (time.start !== null && time.zone !== 'unknown') {
    const moment = momentInWords(time.start, zone);
    parts.push(`from ${moment.local} (${moment.utc})`);
  }
  return parts.join(' · ');
}

export function mapFromInWords({ mapFrom, savedOn }: LogFacts): string {
  if (mapFrom === 'confirmed') return 'Read by the channel table you confirmed for this file.';
  if (mapFrom === 'saved')
    return `Read by the channel table you confirmed for ${savedOn ?? 'another file'}, which has the same header.`;
  return '';
}

export function readingFacts(outcome: ReadOutcome, { zone }: PageContext) {
  const { dialect, time } = outcome;
  const delimiters: Record<string, string> = {
    ',': 'comma',
    ';': 'semicolon',
    tab: 'tab',
    '|': 'bar',
    spaces: 'spaces',
    fixed: 'fixed columns',
  };
  const start = time.start === null ? null : time.zone === 'unknown' ? null : momentInWords(time.start, zone);
  return [
    { name: 'Letters', text: dialect.encoding ?? 'not known' },
    {
      name: 'Between columns',
      text: dialect.delimiter === null ? 'not found' : (delimiters[dialect.delimiter] ?? dialect.delimiter),
    },
    {
      name: 'Decimal mark',
      text: dialect.decimal === null ? 'not found' : dialect.decimal === ',' ? 'comma' : 'point',
    },
    { name: 'Names in line', text: dialect.headerLine === null ? 'none found' : String(dialect.headerLine) },
    {
      name: 'Units',
      text: dialect.unitsLine === null ? 'with the names, or not stated' : `in line ${dialect.unitsLine}`,
    },
    {
      name: 'Starts',
      text: start ? `${start.local} (${start.utc})` : startByItself(outcome),
    },
    { name: 'Zone', text: time.zone === 'unknown' ? 'not stated' : time.zone },
    {
      name: 'Recorded',
      text:
        time.segments.length > 1
          ? time.segments.map((one) => spanInWords(one.fromSeconds, one.toSeconds)).join(', ')
          : clockInWords(time.durationSeconds),
    },
  ];
}

function choiceInWords(choice: string): string {
  if (choice === 'ignore') return 'leave it aside';
  return quantityOf(choice) ? nameInWords(choice).toLowerCase() : choice;
}

/** Where date or zone is missing, what the file's own clock shows all the same. */
function startByItself({ clockStart, time, questions }: ReadOutcome): string {
  if (questions.some((one) => one.concerns.includes('date'))) return 'the date is asked for below';
  if (clockStart === undefined) return time.zone === 'unknown' ? 'date and time not stated' : 'date not stated';
  const hasDate = clockStart.length > 8;
  return `${clockStart} by its own clock; ${hasDate ? 'its zone is' : 'date and zone are'} not stated`;
}

export function asked({ question, because, choices }: ReadQuestion) {
  return {
    question,
    because,
    choices: choices.length === 0 ? '' : `It may be: ${choices.map(choiceInWords).join(', ')}.`,
  };
}
