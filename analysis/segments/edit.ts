/** Segments changed by hand: moved, split, dropped, added. The reason stays with each; nothing is thrown away. */
import { onCommonClock, type Recording } from '../logs/index.ts';
import { InputProblem, problem } from '../remarks/index.ts';
import { DROPPED, type Excluded, type Segment, type SegmentEdit } from './segment.ts';

/**
 * Move the ends of a segment.
 * @param list segments as edited so far
 * @param index which one, from 0
 * @param ends new start and end, seconds from the first record of its file
 * @param reason why, text
 * @returns the new list
 * @throws InputProblem when there is no such segment, the end is not after the start, or no reason is given
 */
export function moveSegment(
  list: readonly SegmentEdit[],
  index: number,
  ends: { fromSeconds: number; toSeconds: number },
  reason: string,
): SegmentEdit[] {
  const one = checked(list, index, reason);
  if (!(ends.toSeconds > ends.fromSeconds)) throw bad('A segment ends after it starts.', 'toSeconds');
  return list.toSpliced(index, 1, { ...one, ...ends, reason });
}

/**
 * Split a segment in two at a time inside it.
 * @param list segments as edited so far
 * @param index which one, from 0
 * @param atSeconds where, seconds from the first record of its file
 * @param reason why, text
 * @returns the new list
 * @throws InputProblem when there is no such segment, the time lies outside it, or no reason is given
 */
export function splitSegment(
  list: readonly SegmentEdit[],
  index: number,
  atSeconds: number,
  reason: string,
): SegmentEdit[] {
  const one = checked(list, index, reason);
  if (!(atSeconds > one.fromSeconds && atSeconds < one.toSeconds))
    throw bad(
      `A segment is split between ${one.fromSeconds} and ${one.toSeconds} s, not at ${atSeconds} s.`,
      'atSeconds',
    );
  return list.toSpliced(index, 1, { ...one, toSeconds: atSeconds, reason }, { ...one, fromSeconds: atSeconds, reason });
}

/**
 * Take a segment out of the reduction; it stays in the list as dropped, with what it was.
 * @param list segments as edited so far
 * @param index which one, from 0
 * @param reason why, text
 * @returns the new list
 * @throws InputProblem when there is no such segment or no reason is given
 */
export function dropSegment(list: readonly SegmentEdit[], index: number, reason: string): SegmentEdit[] {
  const one = checked(list, index, reason);
  return list.toSpliced(index, 1, { ...one, role: DROPPED, label: one.label ?? one.role, reason });
}

/**
 * Add a segment.
 * @param list segments as edited so far
 * @param segment the new one, with its reason
 * @returns the new list, in the order of time within a file
 * @throws InputProblem when the end is not after the start, or no reason is given
 */
export function addSegment(list: readonly SegmentEdit[], segment: SegmentEdit): SegmentEdit[] {
  if (!segment.reason?.trim()) throw bad('A change by hand needs a reason.', 'reason');
  if (!(segment.toSeconds > segment.fromSeconds)) throw bad('A segment ends after it starts.', 'toSeconds');
  return [...list, segment].sort((a, b) => a.file.localeCompare(b.file) || a.fromSeconds - b.fromSeconds);
}

/**
 * Segments set by hand on the recording's clock, those dropped apart.
 * @param recording aligned logs, object
 * @param edits segments as edited, seconds from the first record of the file each names
 * @returns segments to use, in order of time, and dropped ones with their reason
 * @throws InputProblem when an edit names a file that is not in the recording
 */
export function placeSegments(
  recording: Recording,
  edits: readonly SegmentEdit[],
): { segments: Segment[]; dropped: Excluded[] } {
  const segments: Segment[] = [];
  const dropped: Excluded[] = [];
  for (const edit of edits) {
    const at = recording.tables.findIndex((table) => table.file === edit.file);
    if (at < 0) {
      const names = recording.tables.map((table) => table.file).join(', ');
      throw bad(`A segment names ${edit.file}; the logs here are ${names}.`, 'file');
    }
    const common = (seconds: number) => onCommonClock(recording, at, seconds);
    const span = { fromSeconds: common(edit.fromSeconds), toSeconds: common(edit.toSeconds) };
    const reason = edit.reason?.trim() || 'set by hand, no reason given';
    if (edit.role === DROPPED) dropped.push({ ...span, reason: `dropped by hand: ${reason}` });
    else
      segments.push({
        ...span,
        role: edit.role,
        reason,
        byHand: true,
        ...(edit.label === undefined ? {} : { label: edit.label }),
      });
  }
  return { segments: segments.sort((a, b) => a.fromSeconds - b.fromSeconds), dropped };
}

function checked(list: readonly SegmentEdit[], index: number, reason: string): SegmentEdit {
  const one = list[index];
  if (!one) throw bad(`There are ${list.length} segments; number ${index} is not among them.`, 'index');
  if (!reason.trim()) throw bad('A change by hand needs a reason.', 'reason');
  return one;
}

function bad(message: string, field: string): InputProblem {
  return new InputProblem([problem('bad-segments', message, { field })]);
}
