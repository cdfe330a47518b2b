/** Writes every generated sample file beside the airplanes: `npm run samples`. The same code gives the same bytes. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sampleFiles } from './files.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

let bytes = 0;
for (const [path, text] of sampleFiles()) {
  const target = join(root, path);
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, text);
  bytes += text.length;
  process.stdout.write(`${path}  ${(text.length / 1000).toFixed(0)} kB\n`);
}
process.stdout.write(`${(bytes / 1e6).toFixed(2)} MB in all\n`);
