/** `npm run accuracy`: the accuracy table, on the screen; with --write also into the README between its marks. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { accuracyTable } from './outside/accuracy-table.ts';

const table = accuracyTable();
process.stdout.write(`${table}\n`);
if (process.argv.includes('--write')) {
  const path = join(import.meta.dirname, '..', 'README.md');
  const text = readFileSync(path, 'utf8');
  const written = text.replace(/(<!-- accuracy -->\n)[\s\S]*?(<!-- end of accuracy -->)/, `$1${table}\n$2`);
  writeFileSync(path, written);
}
