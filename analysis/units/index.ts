export * from './convert.ts';
export * from './find-unit.ts';
export * from './format.ts';
export * from './quantities.ts';
export * from './units.ts';
