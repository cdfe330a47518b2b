/** `proveout program`: stages, cards, order, outings, hours, gates. */
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { Program } from '../../analysis/program/index.ts';
import { PLAN_PAPERS, type PlanPaper } from '../../templates/plan/plan-options.ts';
import { planFor } from '../actions/program-of.ts';
import { airplaneFrom } from './airplane-from.ts';
import { printJson, printLines, readArguments, type Verb, WrongUsage } from './verb.ts';
import { writeBytes } from './write-bytes.ts';

export const program: Verb = {
  help: `proveout program AIRPLANE.json [--out PLAN.pdf [--paper letter | a4]] [--json]

The sequenced program of an airplane: stages, cards, order, flights, hours, gates. With --out the whole plan is
printed as a PDF for an inspector or insurer, on letter unless said otherwise. "-" reads standard input.
`,
  run: async (argv, io) => {
    const { values, positionals } = readArguments(argv, { out: { type: 'string' }, paper: { type: 'string' } });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new WrongUsage('one AIRPLANE.json is wanted.');
    if (values.paper !== undefined && values.out === undefined) throw new WrongUsage('--paper goes with --out.');
    const paper = paperFrom(values.paper);
    const airplane = await airplaneFrom(path, io);
    const plan = await planFor(airplane);
    if (values.out !== undefined) {
      const { pdf, pages } = await printOnce(airplane, plan, paper);
      await writeBytes(values.out, pdf);
      if (values.json) printJson(io, { file: values.out, paper, pages, tests: plan.order.length });
      else printLines(io, [`${values.out}: the plan of ${plan.order.length} tests, ${pages} pages`]);
    } else if (values.json) printJson(io, plan);
    else printLines(io, inWords(plan));
    return 0;
  },
};

async function printOnce(airplane: Airplane, plan: Program, paper: PlanPaper) {
  const [{ openPrinter }, { printPlan }, { dayInWords }] = await Promise.all([
    import('../printing/print.ts'),
    import('../actions/print-plan.ts'),
    import('../actions/print-cards.ts'),
  ]);
  const printer = openPrinter();
  try {
    const input = { airplane, program: plan, revision: null, printed: dayInWords(new Date()) };
    return await printPlan(input, paper, {}, printer);
  } finally {
    await printer.close();
  }
}

function paperFrom(text = 'letter'): PlanPaper {
  const known = PLAN_PAPERS.find((one) => one === text);
  if (!known) throw new WrongUsage(`there is no paper "${text}"; there are ${PLAN_PAPERS.join(', ')}.`);
  return known;
}

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
