export * from './default-repeatability.ts';
