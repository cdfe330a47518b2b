/** One recording of several logs: each shift worked out from a signal they share, set by hand, or asked for. */

import type { LogTable, Recording } from '../../analysis/logs/index.ts';
import type { AskedQuestion } from './reduce-recording.ts';

export type Aligned = { recording: Recording } | { questions: AskedQuestion[] };

/**
 * @param tables the logs; the first one sets the clock
 * @param byHand shifts set by hand, s, by file name
 */
export async function alignLogs(tables: LogTable[], byHand: Record<string, number> = {}): Promise<Aligned> {
  const { recordingOf } = await import('../../analysis/logs/index.ts');
  const [first, ...others] = tables;
  const unknown = others.filter((table) => byHand[table.file] === undefined);
  if (first && unknown.length > 0) return { questions: unknown.map((table) => shiftQuestion(first, table)) };
  return { recording: recordingOf(tables, [0, ...others.map((table) => byHand[table.file] ?? 0)]) };
}

function shiftQuestion(first: LogTable, table: LogTable): AskedQuestion {
  return {
    id: `shift:${table.file}`,
    question: `How many seconds after ${first.file} does ${table.file} start?`,
    choices: [],
    because: 'Each recorder has a clock of its own, and nothing they share settles the shift between them.',
    concerns: ['time'],
    file: table.file,
  };
}
