/** The sequenced program, of a book or of a description that stands in none. */
import { type Airplane, readAirplane } from '../../analysis/airplane/index.ts';
import type { PlanOptions, Program } from '../../analysis/program/index.ts';
import { InputProblem } from '../../analysis/remarks/index.ts';
import type { Desk } from '../desk.ts';
import { planOf } from './book-plan.ts';

/** @throws InputProblem when the stored description no longer fits the schema */
export async function programOf(desk: Desk, bookId: string): Promise<Program> {
  return (await planOf(desk, bookId)).program;
}

/**
 * The program of a description that stands in no book.
 * @param json an airplane's description, as in AIRPLANE.json
 * @throws InputProblem when it does not fit the schema
 */
export async function programOfDescription(json: unknown): Promise<Program> {
  const { airplane, problems } = readAirplane(json);
  if (!airplane) throw new InputProblem(problems);
  return planFor(airplane);
}

/** The program as worked out from an airplane alone; the same description is planned once. */
export async function planFor(airplane: Airplane): Promise<Program> {
  return planOnce(JSON.stringify(airplane), airplane);
}

const plans = new Map<string, Program>();
const KEPT = 8;

/** A program by what it is made from; the same is planned once. */
export async function planOnce(key: string, airplane: Airplane, options?: PlanOptions): Promise<Program> {
  const known = plans.get(key);
  if (known) return known;
  // the catalogue is large, and most commands do without it
  const { planProgram } = await import('../../analysis/program/index.ts');
  const program = planProgram(airplane, options);
  plans.set(key, program);
  for (const old of [...plans.keys()].slice(0, -KEPT)) plans.delete(old);
  return program;
}
