export * from './recording.ts';
export * from './table.ts';
