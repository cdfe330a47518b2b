/** From a written return sheet to the record: the hours of the outing and its squawks, each once. */
import { InputProblem, type Problem, problem } from '../../analysis/remarks/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import { typedNumber } from '../../templates/words/typed-number.ts';
import type { By } from '../book/journal.ts';
import { hoursLedger, storedSquawks } from '../book/read-state.ts';
import { type WrittenCard, writtenCard } from '../book/written-cards.ts';
import type { Desk } from '../desk.ts';
import { logHours } from './log-hours.ts';
import { openSquawk } from './open-squawk.ts';

export interface FiledReturn {
  hours: number;
  squawks: number[];
}

/**
 * @param date day of the outing, `2031-05-04`
 * @throws InputProblem `bad-request` where times lack or contradict each other, or where it was done before
 */
export function fileReturn(desk: Desk, bookId: string, number: number, date: string, by: By = {}): FiledReturn {
  const book = desk.shelf.open(bookId);
  const written = writtenCard(book, number);
  const mark = `Return sheet ${number}:`;
  const done = hoursLedger(book).entries.find((one) => one.note.startsWith(mark));
  if (done) {
    throw new InputProblem([
      problem('bad-request', `The hours of this return sheet stand in the record already, on ${done.date}.`),
    ]);
  }
  const { hours, problems } = hoursOf(written, date);
  if (problems.length > 0) throw new InputProblem(problems);
  const line = {
    ...hours,
    date,
    outing: written.card.identity.outing,
    note: `${mark} ${figuresOf(written)}`.slice(0, 2000),
  };
  const known = new Set(storedSquawks(book).map((one) => one.text));
  const squawks = Object.entries(written.boxes)
    .filter(([key]) => key.startsWith('t1.'))
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([, { text }]) => text)
    .filter((text) => !known.has(text));
  return {
    hours: logHours(desk, bookId, line, by),
    squawks: squawks.map((text) => openSquawk(desk, bookId, text, by)),
  };
}

function hoursOf(written: WrittenCard, date: string) {
  const problems: Problem[] = [];
  const wrong = (field: string, message: string) => problems.push(problem('bad-request', message, { field }));
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(Date.parse(date))) wrong('date', `“${date}” is not a day.`);
  const has = (key: string) => written.card.boxes.some((box) => box.key === key);
  const clock = (key: string): number | null => {
    const text = written.boxes[key]?.text ?? '';
    const found = /^(\d{1,2}):(\d{2})$/.exec(text);
    if (found) return toSi(Number(found[1]), 'h') + toSi(Number(found[2]), 'min');
    wrong(
      key,
      text === '' ? `The time of ${key.replace('-', ' ')} is not written.` : `“${text}” is not a time of day.`,
    );
    return null;
  };
  const span = (from: string, to: string): number => {
    const [start, end] = [clock(from), clock(to)];
    if (start === null || end === null) return 0;
    // past midnight
    return end >= start ? end - start : end + toSi(24, 'h') - start;
  };
  const engineSeconds = span('engine-start', 'engine-stop');
  const flightSeconds = has('takeoff') ? span('takeoff', 'landing') : 0;
  if (problems.length === 0 && flightSeconds > engineSeconds)
    wrong('landing', 'More time in the air than with the engine running: one of the four times is wrong.');
  const landings = has('landings') ? typedNumber(written.boxes.landings?.text ?? '') : 0;
  if (landings === null || landings < 0 || !Number.isInteger(landings))
    wrong('landings', 'Landings are counted whole; write their number.');
  return { hours: { engineSeconds, flightSeconds, landings: landings ?? 0 }, problems };
}

/** The figures that are no times, in the order of the sheet. */
function figuresOf({ card, boxes }: WrittenCard): string {
  return card.boxes
    .filter((box) => box.write !== 'clock' && boxes[box.key] !== undefined && box.key !== 'landings')
    .map((box) => `${box.label} ${boxes[box.key]?.text ?? ''} ${box.unit}`.trim())
    .join(', ');
}
