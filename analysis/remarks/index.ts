export * from './codes.ts';
export * from './parsed-by.ts';
export * from './remark.ts';
