/** How a program is counted, and what the operating limitations say: a new revision of the airplane's description. */
import type { Airplane } from '../../analysis/airplane/index.ts';
import { InputProblem } from '../../analysis/remarks/index.ts';
import type { By } from '../book/journal.ts';
import { airplaneOf } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';
import { saveAirplane } from './save-airplane.ts';

export interface CountedAs {
  counting: Airplane['plan']['program'];
  /** the operating limitations, as issued */
  limitations: string;
}

/** @throws InputProblem where the description does not take it; nothing is stored then */
export function countProgram(desk: Desk, bookId: string, { counting, limitations }: CountedAs, by: By = {}): void {
  const { file } = airplaneOf(desk.shelf.open(bookId));
  const whole = recordOf(file);
  const changed = {
    ...whole,
    plan: { ...recordOf(whole.plan), program: counting },
    limits: { ...recordOf(whole.limits), operatingLimitations: limitations },
  };
  const why = by.why ?? 'how the program is counted';
  const saved = saveAirplane(desk, bookId, changed, { ...by, why });
  if (!saved.saved) throw new InputProblem(saved.problems);
}

function recordOf(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? { ...value } : {};
}
