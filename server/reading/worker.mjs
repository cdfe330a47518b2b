// Starts the reading worker: the modules it needs, loaded as the service loads its own.
import { load } from '../load.mjs';

await load('reading/worker.ts');
