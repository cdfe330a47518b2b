/** On the first run, the two invented airplanes of the demo as books with their logs. */
import { createReadStream, existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Desk } from '../desk.ts';
import { createBook } from './create-book.ts';
import { receiveLog } from './receive-log.ts';

export const DEMO = ['ouzel', 'wrenlet'];
const BY = { why: 'Invented airplane of the demo' };

/**
 * @returns the ids of the books made; none when there are books already
 */
export async function layOutDemo(desk: Desk): Promise<string[]> {
  if (desk.shelf.ids().length > 0) return [];
  const made: string[] = [];
  for (const id of DEMO) {
    const folder = join(desk.settings.samplesFolder, id);
    const description = join(folder, 'airplane.json');
    if (!existsSync(description)) continue;
    const airplane: unknown = JSON.parse(readFileSync(description, 'utf8'));
    createBook(desk, { id, airplane, demo: true }, BY);
    for (const name of logsIn(folder)) {
      await receiveLog(desk, id, createReadStream(join(folder, 'logs', name)), name, BY);
    }
    made.push(id);
  }
  return made;
}

function logsIn(folder: string): string[] {
  const logs = join(folder, 'logs');
  return existsSync(logs) ? readdirSync(logs).filter((name) => name.endsWith('.csv')) : [];
}
