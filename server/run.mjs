// Runs one TypeScript file of the project: `node server/run.mjs tests/accuracy.ts`.
import path from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { setUp } from './setup.mjs';

const [file, ...rest] = process.argv.slice(2);
if (!file) {
  process.stderr.write('usage: node server/run.mjs FILE.ts [arguments]\n');
  process.exit(2);
}
setUp({ browser: file.includes('bench') || file.includes('pictures') ? 'wanted' : 'no' });
const { register } = await import('tsx/esm/api');
register();
process.argv = [process.execPath, path.resolve(file), ...rest];
await import(pathToFileURL(path.resolve(file)).href);
