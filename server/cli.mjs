#!/usr/bin/env node
// `proveout`: set up what is missing, then the command. A browser is looked for only by the commands that print.
import process from 'node:process';
import { load } from './load.mjs';
import { setUp } from './setup.mjs';

const argv = process.argv.slice(2);
const prints = argv[0] === 'cards' || argv[0] === 'handbook' || argv[0] === 'serve';
setUp({ browser: prints ? 'wanted' : 'no' });
const { run } = await load('command/proveout.ts');
process.exitCode = await run(argv, { stdout: process.stdout, stderr: process.stderr, stdin: process.stdin });
