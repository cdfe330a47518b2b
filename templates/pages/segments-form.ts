/** Segments as they were typed: those in use, each with the reason the person gave. */
import type { SegmentEdit } from '../../analysis/segments/index.ts';
import type { Typed } from '../forms/airplane-form.ts';
import type { ProblemPart } from '../parts/remarks.view.ts';
import { typedNumber } from '../words/typed-number.ts';

export interface ReadSegments {
  segments: SegmentEdit[];
  problems: ProblemPart[];
}

/** The segments of a posted form. */
export function readSegments(typed: Typed): ReadSegments {
  const at = (name: string) => typed.get(name)?.at(-1)?.trim() ?? '';
  const reason = at('reason');
  const read: ReadSegments = { segments: [], problems: [] };
  const wrong = (message: string, where: string, mend: string) => read.problems.push({ message, where, mend });
  if (reason === '')
    wrong('No reason is given.', 'Why they are moved', 'A segment set by hand carries its reason; write one.');
  for (let i = 0; typed.has(`segments.${i}.fromSeconds`); i++) {
    if (at(`segments.${i}.use`) !== 'yes') continue;
    const from = typedNumber(at(`segments.${i}.fromSeconds`));
    const to = typedNumber(at(`segments.${i}.toSeconds`));
    const where = `segment ${i + 1}`;
    if (from === null || to === null)
      wrong('The seconds are not numbers.', where, 'Write seconds from the first record.');
    else if (to <= from) wrong('It ends before it starts.', where, 'Write the start first.');
    else {
      const label = at(`segments.${i}.label`);
      read.segments.push({
        file: at(`segments.${i}.file`),
        fromSeconds: from,
        toSeconds: to,
        role: at(`segments.${i}.role`) || at(`segments.${i}.was`),
        ...(label === '' ? {} : { label }),
        reason,
      });
    }
  }
  if (read.segments.length === 0 && read.problems.length === 0) {
    wrong('No segment is in use.', '', 'Tick at least one, or repeat the test.');
  }
  return read;
}
