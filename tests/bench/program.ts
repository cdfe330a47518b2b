/** The program of each demo airplane and a re-plan, beside the floor of judging every test's condition once. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { type Airplane, readAirplane } from '../../analysis/airplane/index.ts';
import { applicable, CATALOGUE } from '../../analysis/catalogue/index.ts';
import { planProgram, replan } from '../../analysis/program/index.ts';

const RUNS = 15;

export async function benchProgram(): Promise<void> {
  for (const name of ['ouzel', 'wrenlet']) {
    const path = join(import.meta.dirname, '..', '..', 'sample-tests', name, 'airplane.json');
    const text = readFileSync(path, 'utf8');
    const fresh = (): Airplane => {
      const { airplane } = readAirplane(JSON.parse(text));
      if (!airplane) throw new Error(`${name} does not fit its schema`);
      return airplane;
    };
    const first = timed(() => planProgram(fresh()));
    const airplane = fresh();
    const program = planProgram(airplane);
    const floor = median(() => {
      const once = fresh();
      return CATALOGUE.filter((test) => applicable(test, once).applies);
    });
    const plan = median(() => planProgram(fresh()));
    const again = median(() => replan(airplane, program, { kind: 'repeat', test: 'airspeed-calibration-first' }));
    const figures = [
      `first ${first.toFixed(0)} ms`,
      `plan ${plan.toFixed(1)} ms (${(plan / floor).toFixed(1)} x reading it and judging every condition, ${floor.toFixed(1)} ms)`,
      `re-plan ${again.toFixed(1)} ms (${(again / plan).toFixed(1)} x plan)`,
    ];
    process.stdout.write(`${name}: ${figures.join('; ')}\n`);
  }
}

function timed(run: () => unknown): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

function median(run: () => unknown): number {
  const times = Array.from({ length: RUNS }, () => timed(run)).sort((a, b) => a - b);
  return times[Math.floor(RUNS / 2)] ?? Number.NaN;
}
