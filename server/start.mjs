// `npm start`: set up what is missing, then the service. One process, so that Ctrl-C reaches it.
import process from 'node:process';
import { setUp } from './setup.mjs';

setUp({ browser: 'wanted' });
const { register } = await import('tsx/esm/api');
register();
const { main } = await import('./main.ts');
process.exitCode = await main(process.argv.slice(2));
