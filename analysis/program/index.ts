export * from './applicable.ts';
export * from './check-order.ts';
export * from './gate.ts';
export * from './gates.ts';
export * from './hours.ts';
export * from './plan-program.ts';
export * from './program.ts';
