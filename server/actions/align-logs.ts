/** One recording of several logs: each shift worked out from a signal they share, set by hand, or asked for. */
import type { LogTable, Recording } from '../../analysis/logs/index.ts';
import type { Alignment } from '../../analysis/results/index.ts';
import type { AskedQuestion } from './reduce-recording.ts';

export type Aligned =
  | { answer: 'recording'; recording: Recording; alignment: Alignment[] }
  | { answer: 'questions'; questions: AskedQuestion[] };

/**
 * @param tables the logs; the first one sets the clock
 * @param byHand shifts set by hand, s, by file name
 */
export async function alignLogs(tables: LogTable[], byHand: Record<string, number> = {}): Promise<Aligned> {
  const { alignTables, recordingOf } = await import('../../analysis/logs/index.ts');
  const { shifts, drifts, alignment, questions } = alignTables(tables, byHand);
  if (questions.length === 0) return { answer: 'recording', recording: recordingOf(tables, shifts, drifts), alignment };
  // the question of a log is named after it, and answered by its shift
  const fileOf = (id: string) => id.replace(/^alignment:/, '');
  return { answer: 'questions', questions: questions.map((one) => ({ ...one, file: fileOf(one.id) })) };
}
