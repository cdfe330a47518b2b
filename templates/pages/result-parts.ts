/** The values of a result in words: each quantity with its parts, grouped as one reads them. */
import * as z from 'zod';
import type { Condition, Result, ResultQuantity } from '../../analysis/results/index.ts';
import { show } from '../../analysis/units/index.ts';
import { type FlagPart, flagPart, flagsInWords } from '../parts/remarks.view.ts';
import { nameInWords } from '../words/list.ts';
import {
  conditionPart,
  conditionsInWords,
  quantityInWords,
  quantityPart,
  quantityText,
  whyNone,
} from '../words/quantity.ts';
import { type InstrumentUnits, unitShown } from '../words/unit-shown.ts';
import { type Apart, HEADS, toldApart } from './told-apart.ts';

export const quantityRow = z.strictObject({
  head: z.string(),
  quantity: quantityPart,
  interval: z.string(),
  parts: z.array(z.string()),
  conditions: z.array(conditionPart),
  flags: z.array(flagPart),
});

export const quantityGroup = z.strictObject({
  name: z.string(),
  summary: z.string(),
  open: z.boolean(),
  rows: z.array(quantityRow),
});
export type QuantityGroup = z.infer<typeof quantityGroup>;

/** Address of the samples of a span in a file; empty where there are none. */
export type SampleLink = (fromSeconds: number, toSeconds: number, file?: string) => string;

/** Conditions told by the head of a row, or by the link to its samples. */
const HIDDEN = ['file', 'from-seconds', 'to-seconds', ...HEADS];

/** Quantities grouped by name, each with its conditions, U95 parts, and the way to its samples. */
export function quantityGroups({ quantities }: Result, units: InstrumentUnits, link: SampleLink): QuantityGroup[] {
  const groups = new Map<string, QuantityGroup>();
  for (const one of quantities) {
    const group = groups.get(one.name) ?? {
      name: nameInWords(one.name),
      summary: '',
      open: groups.size === 0,
      rows: [],
    };
    groups.set(one.name, group);
    group.rows.push(quantityInRow(one, units, link));
  }
  const reason = (name: string) =>
    quantities.find((one) => one.value === null && nameInWords(one.name) === name)?.flags[0]?.message ?? '';
  return [...groups.values()].map((group) => {
    const apart = toldApart(
      quantities.filter((one) => nameInWords(one.name) === group.name),
      units,
    );
    return { ...group, summary: groupInWords(group, apart, reason(group.name)) };
  });
}

/** Values that stand in a line before it says how many more there are. */
const IN_LINE = 3;

/** The values of a group in one line, for when it is folded; where there is none at all, the reason. */
function groupInWords({ rows }: QuantityGroup, apart: readonly Apart[], reason: string): string {
  let named = '';
  const values = rows.flatMap(({ quantity }, i) => {
    if (quantity.none) return [];
    const { which = '', name = '', at = '' } = apart[i] ?? {};
    const where = at ? `at ${name === named ? '' : `${name} `}${at}` : '';
    named = name;
    return [[unbroken(quantityText(quantity)), unbroken(where), which && `(${which})`].filter(Boolean).join(' ')];
  });
  const without = rows.length - values.length;
  if (values.length === 0 && reason) return `none: ${reason}`;
  const more = values.length > IN_LINE ? ` and ${values.length - IN_LINE} more` : '';
  const open = without > 0 ? `${without} without a value` : '';
  return [`${values.slice(0, IN_LINE).join(', ')}${more}`, open].filter(Boolean).join('; ');
}

/** A number keeps its uncertainty and its unit in its line. */
const unbroken = (text: string) => text.replaceAll(' ', '\u00a0');

function quantityInRow(one: ResultQuantity, units: InstrumentUnits, link: SampleLink): z.infer<typeof quantityRow> {
  const { name, value, unit, u95, parts, conditions } = one;
  const at = (key: string) => numberAt(conditions[key]);
  const [from, to] = [at('from-seconds'), at('to-seconds')];
  const file = typeof conditions.file === 'string' ? conditions.file : undefined;
  const href = from === undefined || to === undefined ? '' : link(from, to, file);
  const shown = unitShown(name, unit, units);
  const half = (part: number) => show(0, shown, { u95: part }).half ?? '';
  return {
    head: String(HEADS.map((key) => conditions[key]).find((text) => typeof text === 'string') ?? ''),
    quantity: quantityInWords(value, unit, { name, u95, href, why: whyNone(one) }, units),
    interval: intervalInWords(one, shown),
    parts: Object.entries(parts).flatMap(([part, size]) => (size === undefined ? [] : [`${part} ${half(size)}`])),
    conditions: conditionsInWords(
      Object.fromEntries(Object.entries(conditions).filter(([key]) => !HIDDEN.includes(key))),
      units,
    ),
    flags: flagsInWords(one.flags),
  };
}

function numberAt(condition: Condition | undefined): number | undefined {
  return typeof condition === 'object' ? condition.value : undefined;
}

/** Both ends, where they say more than the half-width does. */
function intervalInWords({ value, u95, interval }: ResultQuantity, unit: string): string {
  if (!interval) return '';
  const [low, high] = interval;
  const even = value !== null && u95 !== null && low !== null && high !== null;
  if (even && Math.abs(high - value - (value - low)) < 0.1 * u95) return '';
  if (low !== null && high !== null) return `${show(low, unit).number} to ${show(high, unit).text}`;
  if (low !== null) return `at least ${show(low, unit).text}`;
  return high === null ? '' : `at most ${show(high, unit).text}`;
}

/** What was left out, told apart from the other flags. */
export function exclusions(flags: readonly FlagPart[], result: Result): FlagPart[] {
  const out = new Set(result.flags.filter((one) => one.kind === 'excluded').map((one) => one.message));
  return flags.filter((one) => out.has(one.message));
}
