/** A change of the plan as an address carries it: what is asked for, read back from a form or a link. */
import type { Happened } from '../../analysis/program/index.ts';
import { bookPath } from '../parts/frame.view.ts';

/** A test moved, an outing moved, something that happened, or back to the order as worked out. */
export type PlanChange =
  | { test: string; part: number; to: number; newOuting: boolean }
  | { outing: number; to: number }
  | { happened: Happened[] }
  | { afresh: true };

/** Name and value of each field that says what the change is. */
export type ChangeFields = { name: string; value: string }[];

/** A change as fields of a form. */
export function changeFields(change: PlanChange): ChangeFields {
  if ('afresh' in change) return [{ name: 'what', value: 'afresh' }];
  if ('outing' in change) {
    return [
      { name: 'what', value: 'turn' },
      { name: 'outing', value: String(change.outing) },
      { name: 'to', value: String(change.to) },
    ];
  }
  if ('test' in change) {
    return [
      { name: 'what', value: 'move' },
      { name: 'test', value: change.test },
      { name: 'part', value: String(change.part) },
      { name: 'to', value: `${change.newOuting ? 'own' : 'join'}-${change.to}` },
    ];
  }
  return change.happened.map((one) =>
    one.kind === 'repeat'
      ? { name: 'repeat', value: `${one.test}*${one.part ?? 1}` }
      : { name: one.kind, value: String(one.outing) },
  );
}

/** Address of the page that shows what a change would do. */
export function changePath(book: string, change: PlanChange): string {
  const query = new URLSearchParams(changeFields(change).map(({ name, value }): [string, string] => [name, value]));
  return bookPath(book, `/program/replan?${query}`);
}

/**
 * A change from the fields of a form or an address.
 * @param all every value of a field
 * @returns the change, or undefined where it says none
 */
export function readChange(all: (name: string) => readonly string[]): PlanChange | undefined {
  const at = (name: string) => all(name).at(-1) ?? '';
  const whole = (name: string) => (/^\d{1,4}$/.test(at(name)) ? Number(at(name)) : undefined);
  if (at('what') === 'afresh') return { afresh: true };
  if (at('what') === 'turn') {
    const [outing, to] = [whole('outing'), whole('to')];
    return outing === undefined || to === undefined ? undefined : { outing, to };
  }
  if (at('what') === 'move') {
    const [, how, to] = /^(own|join)-(\d{1,4})$/.exec(at('to')) ?? [];
    if (at('test') === '' || to === undefined) return undefined;
    return { test: at('test'), part: whole('part') ?? 1, to: Number(to), newOuting: how === 'own' };
  }
  const happened = [
    ...all('repeat').flatMap((value): Happened[] => {
      const [, test, part] = /^([a-z0-9-]+)\*(\d)$/.exec(value) ?? [];
      return test === undefined ? [] : [{ kind: 'repeat', test, part: Number(part) }];
    }),
    ...(['no-go', 'day-lost'] as const).flatMap((kind) =>
      all(kind).flatMap((value): Happened[] => (/^\d{1,4}$/.test(value) ? [{ kind, outing: Number(value) }] : [])),
    ),
  ];
  return happened.length === 0 ? undefined : { happened };
}
