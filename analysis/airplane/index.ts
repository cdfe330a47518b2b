export * from './configuration.ts';
export * from './cross-check.ts';
export * from './default-accuracy.ts';
export * from './facts.ts';
export * from './read-airplane.ts';
export * from './revision.ts';
export * from './stated.ts';
export * from './touched-by-change.ts';
