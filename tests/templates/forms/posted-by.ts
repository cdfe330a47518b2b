/** What a browser posts for a form left as it was shown. */
import type { FormGroup } from '../../../templates/forms/airplane-form.ts';
import type { FieldPart, OptionPart } from '../../../templates/parts/field.view.ts';

export function postedBy(groups: readonly Pick<FormGroup, 'fields'>[]): Map<string, string[]> {
  const form = new Map<string, string[]>();
  for (const field of groups.flatMap((group) => group.fields)) {
    for (const [name, value] of posted(field)) form.set(name, [...(form.get(name) ?? []), value]);
  }
  return form;
}

function posted({ name, text, tick, choice, ticks, stated }: FieldPart): [string, string][] {
  if (text) return [[name, text.value]];
  if (tick) return [[name, ''], ...(tick.checked ? [[name, 'yes'] as [string, string]] : [])];
  if (choice) return [[name, selected(choice.options)]];
  if (ticks) {
    return [
      [name, ''],
      ...ticks.options.filter((one) => one.checked).map(({ value }): [string, string] => [name, value]),
    ];
  }
  if (!stated) return [];
  return [
    [`${name}.value`, stated.value],
    [`${name}.unit`, selected(stated.units)],
    [`${name}.u95`, stated.half],
    [`${name}.status`, selected(stated.statuses)],
    [`${name}.source`, stated.source],
    ...(stated.scales.length > 0 ? [[`${name}.scale`, selected(stated.scales)] as [string, string]] : []),
  ];
}

/** A select without a selected option posts its first. */
function selected(options: readonly OptionPart[]): string {
  return (options.find((one) => one.selected) ?? options[0])?.value ?? '';
}
