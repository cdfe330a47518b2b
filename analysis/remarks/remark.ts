/** Three kinds of bad news, each with a code from one list: problem, refusal, flag (see codes.ts). */
import { CODES, type CodeOf } from './codes.ts';

/** Where in the input something stands, as far as it can be told. */
export interface Where {
  file?: string;
  line?: number;
  column?: string;
  field?: string;
  fromSeconds?: number;
  toSeconds?: number;
}

/** Input that cannot be used: what, where, and how to mend it. */
export interface Problem {
  code: CodeOf<'problem'>;
  message: string;
  mend: string;
  where: Where;
}

/** Data that do not support the result asked for. */
export interface Refusal {
  code: CodeOf<'refusal'>;
  message: string;
  mend: string;
}

/** A result that stands, with a remark. `kind` is the code: the JSON of interfaces calls it so. */
export interface Flag {
  kind: CodeOf<'flag'>;
  message: string;
  fromSeconds?: number;
  toSeconds?: number;
}

/**
 * A problem with the text of this case.
 * @param code problem code, text
 * @param message what was wanted and what came, text
 * @param where place in the input, object
 * @returns the problem, with the mend of the list
 */
export function problem(code: CodeOf<'problem'>, message: string, where: Where = {}): Problem {
  return { code, message, mend: CODES[code].mend, where };
}

/**
 * A refusal with the text of this case.
 * @param code refusal code, text
 * @param message why the data do not support the result, text
 * @returns the refusal, with the mend of the list
 */
export function refusal(code: CodeOf<'refusal'>, message: string): Refusal {
  return { code, message, mend: CODES[code].mend };
}

/**
 * A flag with the text of this case.
 * @param kind flag code, text
 * @param message the remark, text
 * @param span seconds from the first record it holds for, object
 * @returns the flag
 */
export function flag(
  kind: CodeOf<'flag'>,
  message: string,
  span: { fromSeconds?: number; toSeconds?: number } = {},
): Flag {
  return { kind, message, ...span };
}

/** Input that cannot be used, thrown at a border and turned into an answer there. */
export class InputProblem extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map((one) => `${one.message} ${one.mend}`).join('\n'));
    this.name = 'InputProblem';
    this.problems = problems;
  }
}

/** An argument outside the domain of a formula; the reduction that called it makes a refusal or a flag of it. */
export class OutOfRange extends Error {
  readonly quantity: string;
  readonly value: number;
  readonly range: string;
  constructor(quantity: string, value: number, range: string) {
    super(`${quantity} ${value} is outside ${range}`);
    this.name = 'OutOfRange';
    this.quantity = quantity;
    this.value = value;
    this.range = range;
  }
}
