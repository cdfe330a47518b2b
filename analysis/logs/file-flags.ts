/** Remarks on a file as a whole, apart from its clock. */
import { type Flag, flag } from '../remarks/index.ts';
import type { Gathered } from './gathered.ts';

/**
 * What was odd about the text of a file.
 * @param gathered what reading the rows left, object
 * @returns flags
 */
export function fileFlags({ store, layout, nulBytes }: Gathered): Flag[] {
  const flags: Flag[] = [];
  if (!store || !layout) return flags;
  if (store.shortRows > 0) {
    const rows = store.shortRows === 1 ? '1 row has' : `${store.shortRows} rows have`;
    const first = `the first in line ${store.firstShortLine}`;
    flags.push(flag('ragged-rows', `${rows} another count of cells than the header, ${first}; what lacks is missing`));
  } else if (store.rejected.some((one) => /cells where the header/.test(one.reason))) {
    flags.push(flag('ragged-rows', 'rows with more or fewer cells than the header were left out; they are listed'));
  }
  if (store.repeatedHeaders > 0) {
    flags.push(flag('repeated-header', `the header stands ${store.repeatedHeaders} more times in the file`));
  }
  if (store.cutLine !== null) {
    const what = store.cutLine === 'left out' ? 'it was left out' : 'its last cell may be cut and was left out';
    flags.push(flag('truncated-last-line', `the last line has no end; ${what}`));
  }
  if (nulBytes > 0) flags.push(flag('nul-bytes', `${nulBytes} empty bytes were left out`));
  if (layout.duplicates.length > 0) {
    flags.push(flag('duplicate-columns', `these names stand more than once: ${layout.duplicates.join(', ')}`));
  }
  const formulas = store.columns.reduce((sum, column) => sum + column.formulas, 0);
  const names = layout.columns.filter((one) => /^[=@]|^[+-][A-Za-z(]/.test(one.column)).length;
  if (formulas + names > 0) {
    const cells = formulas + names === 1 ? '1 cell starts' : `${formulas + names} cells start`;
    flags.push(flag('formula-text', `${cells} like a spreadsheet formula; kept as text`));
  }
  return flags;
}
