/** `proveout serve` */
import { main, SERVE_HELP } from '../main.ts';
import type { Verb } from './verb.ts';

export const serve: Verb = {
  help: SERVE_HELP,
  run: (argv, io) => main(argv, io.stdout, io.stderr),
};
