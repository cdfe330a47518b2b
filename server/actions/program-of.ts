/** The sequenced program of a book's airplane. */
import { type Airplane, readAirplane } from '../../analysis/airplane/index.ts';
import type { Program } from '../../analysis/program/index.ts';
import { InputProblem } from '../../analysis/remarks/index.ts';
import { airplaneOf } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';

/** @throws InputProblem when the stored description no longer fits the schema */
export async function programOf(desk: Desk, bookId: string): Promise<Program> {
  const { parsed, problems } = airplaneOf(desk.shelf.open(bookId));
  if (!parsed) throw new InputProblem(problems);
  return planFor(parsed);
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

const plans = new Map<string, Program>();
const KEPT = 8;

/** The program of an airplane; the same description is planned once. */
export async function planFor(airplane: Airplane): Promise<Program> {
  const key = JSON.stringify(airplane);
  const known = plans.get(key);
  if (known) return known;
  // the catalogue is large, and most commands do without it
  const { planProgram } = await import('../../analysis/program/index.ts');
  const program = planProgram(airplane);
  plans.set(key, program);
  for (const old of [...plans.keys()].slice(0, -KEPT)) plans.delete(old);
  return program;
}
