/** The channel table of a log as a form, and what was confirmed in it as a map. */

import type { LogChannel } from '../../analysis/logs/index.ts';
import type { LogMap } from '../../analysis/logs/log-map.ts';
import type { ReadQuestion } from '../../analysis/logs/read-outcome.ts';
import { QUANTITIES, quantityOf, UNITS, unitsOf } from '../../analysis/units/index.ts';
import type { Typed } from '../forms/airplane-form.ts';
import { nameInWords } from '../words/list.ts';
import { YEAR_FIRST } from './log-clock.ts';

export interface Choice {
  value: string;
  text: string;
  selected: boolean;
}

export interface ChoiceGroup {
  label: string;
  options: Choice[];
}

/** Cylinders, tanks and buses a light airplane may have. */
const INDEXES = 6;

const ALL_QUANTITIES = QUANTITIES.flatMap(({ name, indexed }) =>
  indexed ? Array.from({ length: INDEXES }, (_, i) => `${name}#${i + 1}`) : [name],
)
  .map((value) => ({ value, text: nameInWords(value) }))
  .sort((a, b) => a.text.localeCompare(b.text, 'en'));

/** What a column may be: what was asked first, then everything. */
export function quantityChoices(
  channel: LogChannel,
  question: ReadQuestion | undefined,
  chosen: string,
): ChoiceGroup[] {
  const option = (value: string, text = nameInWords(value)) => ({ value, text, selected: value === chosen });
  const likely = (question?.choices ?? []).filter((one) => one !== 'ignore' && quantityOf(one));
  const known = ALL_QUANTITIES.some((one) => one.value === chosen);
  const extra = chosen === '' || chosen === 'ignore' || known ? [] : [chosen];
  return [
    {
      label: 'Not decided',
      options: [
        option('', channel.quantity === null ? 'not known, kept' : 'not known'),
        option('ignore', 'leave it aside'),
      ],
    },
    ...(likely.length > 0 ? [{ label: 'Likely', options: likely.map((one) => option(one)) }] : []),
    {
      label: 'All quantities',
      options: [
        ...extra.map((one) => option(one)),
        ...ALL_QUANTITIES.filter((one) => !likely.includes(one.value)).map((one) => option(one.value, one.text)),
      ],
    },
  ];
}

/** The units a column may be in: those of its quantity first. */
export function unitChoices(
  quantity: string | null,
  question: ReadQuestion | undefined,
  chosen: string,
): ChoiceGroup[] {
  const option = (value: string) => ({ value, text: unitText(value), selected: value === chosen });
  const dimension = quantity === null ? undefined : quantityOf(quantity)?.dimension;
  const own = dimension ? unitsOf(dimension).map((unit) => unit.id) : [];
  const asked = (question?.choices ?? []).filter((one) => UNITS.some((unit) => unit.id === one));
  const first = [...new Set([...asked, ...own])];
  const rest = UNITS.map((unit) => unit.id).filter((id) => !first.includes(id));
  return [
    { label: 'Not decided', options: [{ value: '', text: 'not known', selected: chosen === '' }] },
    ...(first.length > 0 ? [{ label: 'Of this quantity', options: first.map(option) }] : []),
    { label: 'Others', options: rest.map(option) },
  ];
}

function unitText(id: string): string {
  const unit = UNITS.find((one) => one.id === id);
  return !unit || unit.symbol === '' ? (id === 'none' ? 'no unit' : id) : unit.symbol;
}

/**
 * The map that a posted channel table means.
 * @param typed the form: `column.N.name`, `.quantity`, `.unit`, and the clock's fields
 * @returns a map as MAP.json writes it; what was left undecided is not in it
 */
export function readLogMap(typed: Typed): LogMap {
  const at = (name: string) => typed.get(name)?.at(-1)?.trim() ?? '';
  const columns: [string, { quantity: string; unit?: string }][] = [];
  for (let i = 0; typed.has(`column.${i}.name`); i++) {
    const name = typed.get(`column.${i}.name`)?.at(-1) ?? '';
    const quantity = at(`column.${i}.quantity`);
    const unit = at(`column.${i}.unit`);
    if (quantity === '') continue;
    columns.push([name, { quantity, ...(unit === '' || quantity === 'ignore' ? {} : { unit }) }]);
  }
  const time = {
    ...(at('offset') === '' ? {} : { offset: at('offset') }),
    ...(at('date') === '' ? {} : { date: at('date') }),
    ...(at('dayFirst') === 'yes' || at('dayFirst') === 'no' ? { dayFirst: at('dayFirst') === 'yes' } : {}),
    ...(at('dayFirst') === 'year' ? { format: YEAR_FIRST } : at('format') === '' ? {} : { format: at('format') }),
    ...(at('timeColumns') === ''
      ? {}
      : {
          columns: at('timeColumns')
            .split(',')
            .map((one) => one.trim()),
        }),
  } as NonNullable<LogMap['time']>;
  const decimal = at('decimal');
  return {
    columns: Object.fromEntries(columns.filter(([name]) => name !== '__proto__')),
    ...(Object.keys(time).length > 0 ? { time } : {}),
    ...(decimal === ',' || decimal === '.' ? { decimal } : {}),
  };
}
