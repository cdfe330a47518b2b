/** Several columns of one quantity: numbered where an airplane has several, else the surest is taken. */
import type { Draft } from './recognise.ts';

/**
 * Glossary names with their numbers. A column that loses to a surer one of its quantity loses its quantity here.
 * @param drafts columns on their way; changed
 * @returns one name a column, null where it has no quantity
 */
export function numberColumns(drafts: Draft[]): (string | null)[] {
  const names = drafts.map((draft) => (draft.quantity ? draft.name : null));
  const groups = new Map<string, number[]>();
  drafts.forEach(({ quantity, confirmed }, i) => {
    if (!quantity || (confirmed && names[i]?.includes('#'))) return;
    groups.set(quantity.name, [...(groups.get(quantity.name) ?? []), i]);
  });
  for (const [name, members] of groups) {
    const [first] = members;
    const indexed = first !== undefined && drafts[first]?.quantity?.indexed === true;
    if (indexed) giveNumbers(name, members, drafts, names);
    else if (members.length > 1) keepSurest(name, members, drafts, names);
  }
  return names;
}

/** Of these an airplane has one as a rule, and the one has no number. */
const SELDOM_SEVERAL = ['battery-current', 'gear-position', 'vibration'];

function giveNumbers(
  name: string,
  members: readonly number[],
  drafts: readonly Draft[],
  names: (string | null)[],
): void {
  const [only] = members;
  if (members.length === 1 && only !== undefined && SELDOM_SEVERAL.includes(name)) {
    names[only] = name;
    return;
  }
  const taken = new Set(names.filter((one) => one?.includes('#')));
  const numbers = members.map((i) => drafts[i]?.match.number ?? null);
  const own = new Set(numbers).size === numbers.length && !numbers.includes(null);
  let next = 1;
  members.forEach((i, k) => {
    let number = own || members.length === 1 ? (numbers[k] ?? 1) : next;
    while (taken.has(`${name}#${number}`)) number += 1;
    next = number + 1;
    names[i] = `${name}#${number}`;
    taken.add(`${name}#${number}`);
  });
}

function keepSurest(name: string, members: readonly number[], drafts: Draft[], names: (string | null)[]): void {
  const worth = (i: number) => {
    const draft = drafts[i];
    if (!draft) return 0;
    if (draft.confirmed) return 10;
    const alive = draft.values ? 1 : 0;
    return alive + draft.match.confidence + 0.2 * (draft.choice?.confidence ?? 0) + (draft.choice?.stated ? 0.05 : 0);
  };
  const best = members.reduce((a, b) => (worth(b) > worth(a) ? b : a));
  for (const i of members) {
    const draft = drafts[i];
    if (i === best || !draft || draft.confirmed) continue;
    const other = drafts[best]?.header.column ?? '';
    draft.match = {
      ...draft.match,
      quantities: [],
      why: `${draft.match.why}, but "${other}" is taken as ${name.replaceAll('-', ' ')}; name this one by hand to use it`,
    };
    draft.quantity = null;
    names[i] = null;
  }
}
