/** What a plan is made from. */
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { CatalogueTest, Known } from '../../analysis/catalogue/index.ts';
import type { Program } from '../../analysis/program/index.ts';

export interface PlanInput {
  airplane: Airplane;
  program: Program;
  /** revision of the description, or null where it stands in no book */
  revision: number | null;
  /** day printed, in words */
  printed: string;
  ownTests?: readonly CatalogueTest[];
  /** results accepted so far: numbers worked out from them */
  known?: Known;
  /** where each test stands, by id; planned where it is not named */
  status?: ReadonlyMap<string, string>;
}
