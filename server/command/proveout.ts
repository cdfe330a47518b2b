/** The command: one file a verb, loaded when it is asked for, and one way to say what went wrong. */
import { InputProblem } from '../../analysis/remarks/index.ts';
import { complain, complainAll, type Io, printJson, type Verb, WrongUsage } from './verb.ts';

const VERBS: Record<string, { says: string; load: () => Promise<Verb> }> = {
  serve: { says: 'open the service on this computer', load: async () => (await import('./serve.ts')).serve },
  program: { says: 'the sequenced program of an airplane', load: async () => (await import('./program.ts')).program },
  cards: { says: 'cards or a flight packet as a PDF', load: async () => (await import('./cards.ts')).cards },
  read: { says: 'what a log is: layout, channels, time, quality', load: async () => (await import('./read.ts')).read },
  reduce: { says: 'one reduction of logs or written figures', load: async () => (await import('./reduce.ts')).reduce },
  predict: { says: 'a prediction from a result', load: async () => (await import('./predict.ts')).predict },
  handbook: { says: 'the handbook from a book', load: async () => (await import('./handbook.ts')).handbook },
  export: { says: 'a whole book into one file', load: async () => (await import('./export.ts')).exportVerb },
  import: { says: 'a whole book out of one file', load: async () => (await import('./import.ts')).importVerb },
};

const HELP = `proveout VERB ... [--json] [--help]

${Object.entries(VERBS)
  .map(([verb, { says }]) => `  ${verb.padEnd(9)} ${says}`)
  .join('\n')}

"proveout VERB --help" says more. With --json, JSON alone is printed on stdout, SI with the unit in every record.
Exit codes: 0 done; 1 the input cannot be used; 2 wrong usage; 3 a question must be answered first.
`;

/**
 * Run the command.
 * @param argv arguments, the verb first
 * @param io where it reads and prints
 * @returns exit code
 */
export async function run(argv: string[], io: Io): Promise<number> {
  quietWhenCutOff(io);
  const [name = '', ...rest] = argv;
  if (name === '--help' || name === '-h' || name === 'help') {
    io.stdout.write(HELP);
    return 0;
  }
  const known = Object.hasOwn(VERBS, name) ? VERBS[name] : undefined;
  if (!known) {
    complain(io, name === '' ? 'a verb is wanted.' : `there is no verb "${name}".`);
    io.stderr.write(`\n${HELP}`);
    return 2;
  }
  const verb = await known.load();
  if (rest.includes('--help') || rest.includes('-h')) {
    io.stdout.write(verb.help);
    return 0;
  }
  try {
    return await verb.run(rest, io);
  } catch (error) {
    if (error instanceof WrongUsage) {
      complain(io, error.message);
      io.stderr.write(`\n${verb.help}`);
      return 2;
    }
    if (!(error instanceof InputProblem)) throw error;
    complainAll(io, error.problems);
    if (rest.includes('--json')) printJson(io, { problems: error.problems });
    return 1;
  }
}

/** `proveout program ... | head` closes the pipe early; that is no fault. */
function quietWhenCutOff({ stdout }: Io): void {
  stdout.on('error', (error: Error) => {
    if (!('code' in error) || error.code !== 'EPIPE') throw error;
  });
}
