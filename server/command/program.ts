/** `proveout program`: stages, cards, order, outings, hours, gates. */
import type { Program } from '../../analysis/program/index.ts';
import { planFor } from '../actions/program-of.ts';
import { airplaneFrom } from './airplane-from.ts';
import { printJson, printLines, readArguments, type Verb, WrongUsage } from './verb.ts';

export const program: Verb = {
  help: `proveout program AIRPLANE.json [--json]

The sequenced program of an airplane: stages, cards, order, flights, hours, gates. "-" reads standard input.
`,
  run: async (argv, io) => {
    const { values, positionals } = readArguments(argv, {});
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new WrongUsage('one AIRPLANE.json is wanted.');
    const plan = await planFor(await airplaneFrom(path, io));
    if (values.json) printJson(io, plan);
    else printLines(io, inWords(plan));
    return 0;
  },
};

function inWords({ airplane, stages, outings, hours, notApplicable, gates }: Program): string[] {
  return [
    `Program of ${airplane.name}, ${airplane.registration}`,
    hours.words,
    ...stages.flatMap(({ title, tests }) => [
      '',
      title,
      ...tests.map((test) => `  ${String(test.position).padStart(3)}  ${test.id}  ${test.title}`),
    ]),
    '',
    'Outings',
    ...outings.map((one) => `  ${String(one.number).padStart(3)}  ${one.kind.padEnd(6)}  ${one.title}`),
    '',
    'Gates',
    ...gates.map((gate) => `  ${gate.id}  ${gate.title}`),
    '',
    `Not applicable: ${notApplicable.length}`,
    ...notApplicable.map((test) => `  ${test.id}  ${test.title}: ${test.reason}`),
  ];
}
