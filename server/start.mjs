// `npm start`: set up what is missing, then the service. One process, so that Ctrl-C reaches it.
import process from 'node:process';
import { load } from './load.mjs';
import { setUp } from './setup.mjs';

setUp({ browser: 'wanted' });
const { main } = await load('main.ts');
process.exitCode = await main(process.argv.slice(2));
