/** One recording of several logs: each shift worked out from a signal they share, set by hand, or asked for. */
import type { LogAlignment, LogTable, Recording } from '../../analysis/logs/index.ts';
import type { AskedQuestion } from './reduce-recording.ts';

export type Aligned = { recording: Recording; alignment: LogAlignment[] } | { questions: AskedQuestion[] };

/**
 * @param tables the logs; the first one sets the clock
 * @param byHand shifts set by hand, s, by file name
 */
export async function alignLogs(tables: LogTable[], byHand: Record<string, number> = {}): Promise<Aligned> {
  const { alignTables, recordingOf } = await import('../../analysis/logs/index.ts');
  const { shifts, alignment, questions } = alignTables(tables, byHand);
  if (questions.length === 0) return { recording: recordingOf(tables, shifts), alignment };
  return { questions: questions.map((one) => ({ ...one, file: one.id.slice(one.id.indexOf(':') + 1) })) };
}
