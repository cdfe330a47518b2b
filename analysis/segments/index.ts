export * from './segment.ts';
