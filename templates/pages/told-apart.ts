/** What tells values of one name apart: the condition, or the few, in which they differ. */
import type { ResultQuantity } from '../../analysis/results/index.ts';
import { conditionsInWords } from '../words/quantity.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';

/** Conditions that name a row rather than qualify it: written so that one is told from the other. */
export const HEADS: readonly string[] = ['segment', 'label', 'case', 'at'];
/** Where samples lie is a link, not a name. */
const HIDDEN = ['file', 'from-seconds', 'to-seconds'];
const MOST = 2;

export interface Apart {
  /** which one it is, `coolant temperature`; empty where a number tells it */
  which: string;
  /** the name of the number that tells it, `indicated airspeed`; empty where there is none */
  name: string;
  /** that number, `65 kt` */
  at: string;
}

/**
 * Words that tell each of some quantities of one name from the others.
 * @param quantities of one name, in their order
 * @param units the airplane's instrument units, object
 * @returns one a quantity; empty texts where there is one alone, or nothing differs
 */
export function toldApart(quantities: readonly ResultQuantity[], units: InstrumentUnits): Apart[] {
  const rows = quantities.map(({ conditions }) => {
    const shown = Object.entries(conditions).filter(([key]) => !HIDDEN.includes(key));
    return conditionsInWords(Object.fromEntries(shown), units).map(({ name, text }, i) => ({
      key: shown[i]?.[0] ?? '',
      name: lower(name),
      text,
      number: typeof shown[i]?.[1] === 'object',
    }));
  });
  const kinds = (key: string) => new Set(rows.map((row) => row.find((one) => one.key === key)?.text ?? '')).size;
  const keys = new Set(rows.flatMap((row) => row.map((one) => one.key)));
  const differing = [...keys].filter((key) => kinds(key) > 1);
  const alone = differing.find((key) => HEADS.includes(key)) ?? differing.find((key) => kinds(key) === rows.length);
  const chosen = alone ? [alone] : differing.slice(0, MOST);
  return rows.map((row) => {
    const told = chosen.flatMap((key) => row.filter((one) => one.key === key));
    const number = told.find((one) => one.number);
    const which = told.filter((one) => !one.number).map((one) => lower(one.text));
    return { which: which.join(', '), name: number?.name ?? '', at: number?.text ?? '' };
  });
}

/** A sentence's first letter, where a word goes on in lower case: `KIAS` stays. */
function lower(words: string): string {
  return /^[A-Z][a-z]/.test(words) ? words.charAt(0).toLowerCase() + words.slice(1) : words;
}
