/** `npm run bench`: every figure as a ratio inside one run, because machines differ and are shared. */
import process from 'node:process';

const wanted = process.argv.slice(2);
const parts: Record<string, () => Promise<unknown>> = {
  program: async () => (await import('./program.ts')).benchProgram(),
  reading: async () => (await import('./reading.ts')).benchReading(),
  printing: async () => (await import('./printing.ts')).benchPrinting(),
  'reduce-20-mb': async () => (await import('./ground-run.ts')).benchGroundRun(),
  'log-regression': async () => (await import('./log-regression.ts')).benchLogRegression(),
  'least-squares': async () => (await import('./least-squares.ts')).benchLeastSquares(),
};

for (const [name, run] of Object.entries(parts)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  process.stdout.write(`\n== ${name}\n`);
  await run();
}
process.exit(0);
