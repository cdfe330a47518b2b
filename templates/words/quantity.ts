/** A number as a page shows it: value, U95, unit, and the way back to the samples behind it. */
import * as z from 'zod';
import type { Cell, Condition, ResultQuantity } from '../../analysis/results/index.ts';
import { isUnit, show, unitOf } from '../../analysis/units/index.ts';
import { nameInWords, sentence } from './list.ts';
import { type InstrumentUnits, unitShown } from './unit-shown.ts';

export const quantityPart = z.strictObject({
  /** number alone, or why there is none */
  number: z.string(),
  /** ` ± 1.2`, or empty */
  half: z.string(),
  unit: z.string(),
  /** true where the data gave no value */
  none: z.boolean(),
  /** link to the samples; empty where there is none */
  href: z.string(),
  /** read out and shown on hover */
  title: z.string(),
});
export type QuantityPart = z.infer<typeof quantityPart>;

/**
 * An SI value ready to print.
 * @param value SI, or null where not resolved
 * @param unit id of the unit it is stored in, text
 * @param more name decides the unit shown; u95 as a difference in SI; decimals overrides; why names what is missing
 * @param units the airplane's instrument units, object
 * @returns the part
 * @throws UnknownUnit when the unit id is unknown
 */
export function quantityInWords(
  value: number | null,
  unit: string,
  more: { name: string; u95?: number | null; why?: string; href?: string; title?: string; decimals?: number },
  units: InstrumentUnits,
): QuantityPart {
  const rest = { href: more.href ?? '', title: more.title ?? '' };
  if (value === null || !Number.isFinite(value)) {
    return { number: more.why ?? 'not resolved', half: '', unit: '', none: true, ...rest };
  }
  const shown = show(value, unitShown(more.name, unit, units), {
    ...(more.u95 === undefined ? {} : { u95: more.u95 }),
    ...(more.decimals === undefined ? {} : { decimals: more.decimals }),
  });
  return { number: shown.number, half: shown.half ?? '', unit: shown.unit, none: false, ...rest };
}

/** Plain text of a value with unit and U95, for a sentence, a caption or a label. */
export function quantityText(part: QuantityPart): string {
  const half = part.half === '' ? '' : ` ± ${part.half}`;
  const space = part.unit === '' || part.unit === '°' ? '' : ' ';
  return `${part.number}${half}${space}${part.unit}`;
}

export const conditionPart = z.strictObject({ name: z.string(), text: z.string() });
export type ConditionPart = z.infer<typeof conditionPart>;

/**
 * The conditions a value holds for.
 * @param conditions name to value, as a result carries them
 * @param units the airplane's instrument units, object
 * @returns one name and text each
 */
export function conditionsInWords(conditions: Record<string, Condition>, units: InstrumentUnits): ConditionPart[] {
  return Object.entries(conditions).map(([name, one]) => ({
    name: nameInWords(name),
    text:
      typeof one === 'object'
        ? quantityText(quantityInWords(one.value, one.unit, { name }, units))
        : cellText(one, 'none', name, units),
  }));
}

const FILE_NAME = /^\S+\.[A-Za-z]{2,4}$/;

/** One cell of a result table as text; numbers in the unit `unitShown` gives, without repeating it. */
export function cellText(cell: Cell, unit: string, name: string, units: InstrumentUnits, u95?: number | null): string {
  if (cell === null) return '—';
  if (typeof cell === 'boolean') return isSwitch(name) ? (cell ? 'on' : 'off') : cell ? 'yes' : 'no';
  // The name of a file is written as it is, not as words.
  if (typeof cell === 'string')
    return name === 'file' || FILE_NAME.test(cell) ? cell : sentence(cell.replaceAll('-', ' '));
  if (!isUnit(unit) || unitOf(unit).dimension === 'none') return String(cell);
  const shown = show(cell, unitShown(name, unit, units), u95 === undefined || u95 === null ? {} : { u95 });
  return shown.half === undefined ? shown.number : `${shown.number} ± ${shown.half}`;
}

/** Things that are on or off, not yes or no. */
function isSwitch(name: string): boolean {
  return /fan|pump|valve|state/.test(name);
}

/** Why there is no value: the first flag's words, else plain. */
export function whyNone(quantity: ResultQuantity): string {
  return quantity.flags[0]?.message ?? 'not resolved by these data';
}
