// Starts the reading worker: registers the TypeScript loader in this thread, then loads the worker itself.
import { register } from 'tsx/esm/api';

register();
await import('./worker.ts');
