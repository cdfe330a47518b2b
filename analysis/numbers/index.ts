export * from './measured.ts';
