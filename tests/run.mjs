// `npm test`: everything a push is judged by, in one order. Set-up first, so that it works on a bare clone. The last
// line is the plain total; the exit code is that of the first step that failed.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { setUp } from '../server/setup.mjs';

const HOME = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const OUT = path.join(HOME, 'tests', '.out');
const TOTALS = path.join(OUT, 'totals.json');

setUp({ browser: 'required' });
mkdirSync(OUT, { recursive: true });
rmSync(TOTALS, { force: true });

let passed = 0;
let failed = 0;
let exitCode = 0;

/** @param {string} title @param {string} script @param {string[]} args */
function step(title, script, args) {
  process.stdout.write(`\n== ${title}\n`);
  const done = spawnSync(process.execPath, [path.join(HOME, 'node_modules', script), ...args], {
    cwd: HOME,
    stdio: ['ignore', 1, 2],
  });
  const code = done.status ?? 1;
  if (code !== 0 && exitCode === 0) exitCode = code;
  return code;
}

/** @param {string} title @param {string} script @param {string[]} args */
function check(title, script, args) {
  if (step(title, script, args) === 0) passed += 1;
  else failed += 1;
}

const only = process.argv.slice(2);
if (only.length === 0) {
  check('types', 'typescript/bin/tsc', ['--noEmit']);
  check('types of what runs in the browser', 'typescript/bin/tsc', ['--noEmit', '-p', 'tsconfig.browser.json']);
  check('lint and format', '@biomejs/biome/bin/biome', ['check']);
}
step('tests', 'vitest/vitest.mjs', [
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${TOTALS}`,
  ...only,
]);
if (existsSync(TOTALS)) {
  const totals = JSON.parse(readFileSync(TOTALS, 'utf8'));
  passed += totals.numPassedTests;
  failed += totals.numFailedTests;
  // a file that failed to load counts no test of its own
  failed += totals.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length;
} else {
  failed += 1;
}
if (failed > 0 && exitCode === 0) exitCode = 1;
process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
process.exitCode = exitCode;
