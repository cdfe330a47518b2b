export * from './configuration.ts';
export * from './default-accuracy.ts';
export * from './facts.ts';
export * from './read-airplane.ts';
export * from './stated.ts';
