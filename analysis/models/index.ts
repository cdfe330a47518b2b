export * from './climb-physics.ts';
export * from './coolant-boiling.ts';
export * from './default-repeatability.ts';
export * from './heat-balance.ts';
export * from './hot-day.ts';
