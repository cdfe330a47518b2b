/** How a test's readings are laid out: which rows stand ready, with their targets printed. Data, one entry a table. */
import type { Condition } from '../../catalogue/index.ts';
import type { Layout } from '../card.ts';

/** Things the airplane's own description counts and names. */
export type Own = 'tank' | 'battery' | 'wheel' | 'radio' | 'recorder' | 'flap' | 'blade' | 'source' | 'surface';

export type Rows =
  /** numbered runs */
  | { count: number }
  /** heads in words; a piece that names what is not fitted is left out */
  | { names: readonly (string | { when: Condition; name: string })[] }
  /** heads to be written */
  | { blank: number }
  | { minutes: { every: number; to: number } }
  /** so many levels upward from the field, each by so many steps of 500 ft or 150 m */
  | { levels: number; by?: number }
  | { headings: { every: number } }
  /** indicated airspeeds from, by, up to the red line */
  | { airspeeds: { from: number; every: number } }
  /** rows under group heads */
  | { groups: readonly { name: string; when?: Condition; rows: number | readonly string[] }[] }
  /** speeds to be set down at the briefing, each with its legs */
  | { speeds: number; legs: number }
  | { own: Own }
  /** growing amounts of a tank's capacity */
  | { pours: true };

export interface TablePlan {
  /** readings it takes, by when they are read */
  at: readonly string[];
  layout: Layout;
  head: string;
  /** unit of the heads, where they are numbers */
  unit?: string;
  rows: Rows;
  /** above the table: what the rows are */
  title?: string;
  when?: Condition;
  /** quantities that the heads already give */
  without?: readonly string[];
  /** moments, among `at`, at which one reading stands for all rows of a group */
  perGroup?: readonly string[];
  /** what holds for all its rows, by quantity */
  holds?: Readonly<Record<string, string>>;
  /** one table for each tank, named in the title */
  eachTank?: true;
}

export type RowPlans = Readonly<Record<string, readonly TablePlan[]>>;
