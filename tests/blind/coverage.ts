/** `npm run bench:coverage`: how often the truth lies inside the stated 95 % interval, over many simulated flights.
 *  `-- 500 climb` runs so many of one subject. */
import process from 'node:process';

const [flights = '500', ...wanted] = process.argv.slice(2);
const count = Number(flights);
const parts: Record<string, () => Promise<unknown>> = {
  'segment-means': async () => (await import('./segment-means.ts')).coverageSegmentMeans(10 * count),
  'position-error-curve': async () => (await import('./position-error-curve.ts')).coverageCurvePoints(count),
  airspeed: async () => (await import('./airspeed.ts')).coverageAirspeed(count),
  'cooling-climb': async () => (await import('./cooling-climb.ts')).coverageCoolingClimb(count),
  'cooling-ground': async () => (await import('./cooling-ground.ts')).coverageCoolingGround(count),
  'cooling-flight': async () => (await import('./cooling-flight.ts')).coverageCoolingFlight(count),
  climb: async () => (await import('./climb.ts')).coverageClimb(count),
};

for (const [name, run] of Object.entries(parts)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  process.stdout.write(`\n== ${name}\n`);
  const answer = await run();
  if (answer !== undefined) process.stdout.write(`${JSON.stringify(answer, null, 2)}\n`);
}
process.exit(0);
