export * from './comparison.ts';
export * from './result.ts';
