/** The layout of a log: files whose header line is the same share one, and with it a saved map. */
import type { ReadOutcome } from '../../analysis/logs/index.ts';
import { sha256Of } from '../book/documents.ts';

/** @returns a hash of the header, or null for a file without one */
export function layoutOf({ dialect, firstLines, table }: ReadOutcome): string | null {
  const { headerLine, delimiter } = dialect;
  if (headerLine === null) return null;
  const line = firstLines[headerLine - 1];
  if (line !== undefined) return sha256Of(JSON.stringify([delimiter, line.trim()]));
  return table && sha256Of(JSON.stringify([delimiter, table.channels.map((channel) => channel.column)]));
}
