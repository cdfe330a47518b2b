export * from './recording.ts';
export * from './table.ts';
export * from './values-at.ts';
