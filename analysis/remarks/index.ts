export * from './codes.ts';
export * from './remark.ts';
