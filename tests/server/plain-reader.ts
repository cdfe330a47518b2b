/** A reader of logs that knows one layout only: it stands for the real one where the test is about what is passed on. */
import { readFileSync } from 'node:fs';
import type { ReadOutcome } from '../../analysis/logs/index.ts';
import { mappedColumn } from '../../analysis/logs/log-map.ts';
import { problem } from '../../analysis/remarks/index.ts';
import type { LogReader } from '../../server/desk.ts';

export interface CountingReader {
  read: LogReader;
  /** how many times a file was read */
  count(): number;
}

const quantityNamed = (name: string) => (name === 'Speed' ? 'indicated-airspeed' : 'coolant-temperature');

/** First line header, then numbers; the first column is time in seconds. Asks for the unit of a column not mapped. */
export function plainReader(): CountingReader {
  let reads = 0;
  const read: LogReader = async (path, { file, sha256, map }) => {
    reads += 1;
    const lines = readFileSync(path, 'utf8').trim().split('\n');
    const columns = lines[0]?.split(',') ?? [];
    const cells = lines.slice(1).map((line) => line.split(',').map(Number));
    const column = (index: number) => Float64Array.from(cells, (row) => row[index] ?? Number.NaN);
    const seconds = column(0);
    const time = { start: null, zone: 'unknown', durationSeconds: seconds.at(-1) ?? 0, sampleRateHz: 1, segments: [] };
    const usable = columns.length > 1 && cells.length > 0;
    const asked = columns.slice(1).filter((name) => !mappedColumn(map, name));
    const fits = Object.keys(map?.columns ?? {}).every((name) => columns.includes(name));
    const outcome: ReadOutcome = {
      file,
      sha256,
      accepted: !usable || !fits ? 'no' : asked.length > 0 ? 'ask' : 'yes',
      problems: !usable ? [problem('not-a-log', 'No table.')] : fits ? [] : [problem('bad-map', 'Other columns.')],
      questions: asked.map((name) => ({
        id: `unit:${name}`,
        question: `Which unit has ${name}?`,
        choices: ['degC', 'degF'],
        because: 'the header does not say',
        column: name,
        concerns: [quantityNamed(name)],
      })),
      dialect: { encoding: 'utf-8', delimiter: ',', decimal: '.', headerLine: 1, unitsLine: null, preamble: [] },
      rows: cells.length,
      rowsRejected: [],
      rowsRejectedCount: 0,
      time,
      timeNotes: [],
      flags: [],
      firstLines: lines.slice(0, 5),
      table: usable
        ? {
            file,
            sha256,
            rows: cells.length,
            flags: [],
            time: { ...time, seconds, startUtcMs: null },
            channels: columns.slice(1).map((name, at) => ({
              column: name,
              index: at + 1,
              name,
              quantity: mappedColumn(map, name)?.quantity ?? quantityNamed(name),
              unit: mappedColumn(map, name)?.unit ?? null,
              confidence: 1,
              why: 'the test says so',
              values: column(at + 1),
              valid: 1,
              flags: [],
            })),
          }
        : null,
    };
    return outcome;
  };
  return { read, count: () => reads };
}
