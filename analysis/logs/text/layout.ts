/** How a file is built, as its head shows: what parts the cells, where the names, the units and the rows stand. */
import type { Decimal } from './cell.ts';
import type { Encoding } from './encoding.ts';
import type { Delimiter } from './split-line.ts';

export interface HeaderColumn {
  /** header text as told apart in the file (`Header`, `Header#2`) */
  column: string;
  index: number;
  /** header text without its unit */
  name: string;
  /** unit as written in the header or in the units row, or empty */
  unitText: string;
  /** a second units row that says something else, or empty */
  otherUnitText: string;
}

export interface Layout {
  encoding: Encoding;
  delimiter: Delimiter;
  decimal: Decimal;
  /** true where the comma may be a decimal or a thousands mark and nothing in the head tells */
  decimalOpen: boolean;
  /** from 1, null where there is none */
  headerLine: number | null;
  unitsLine: number | null;
  /** line of the first row of readings, from 1 */
  firstRowLine: number;
  preamble: string[];
  columns: HeaderColumn[];
  /** cells of the header and the units row, for meeting them again */
  headerCells: string[];
  unitsCells: string[];
  /** for fixed columns: first character of each column after the first */
  cuts: number[];
  /** rows end with a delimiter that has no column */
  trailingDelimiter: boolean;
  /** header texts that stood more than once */
  duplicates: string[];
  /** first lines as text */
  firstLines: string[];
}
