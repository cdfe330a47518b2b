export * from './airspeed.ts';
export * from './altimetry.ts';
export * from './density-altitude.ts';
export * from './humidity.ts';
export * from './standard-atmosphere.ts';
export * from './temperature-probe.ts';
export * from './wind-triangle.ts';
