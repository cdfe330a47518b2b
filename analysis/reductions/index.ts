export * from './reduction.ts';
export * from './registry.ts';
