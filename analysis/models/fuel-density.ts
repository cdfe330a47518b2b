/** Density of a fuel by its stated kind, for weight and balance and for flows given by mass. */
import { toSi } from '../units/index.ts';

/** Gasoline as handbooks reckon it; other kinds are entered by the person. */
const GASOLINE = toSi(6, 'lb/gal');
/** Kind and temperature together, as a share. */
const SPREAD = 0.02;

/**
 * Density of gasoline.
 * @returns density in kg/m3 with its U95
 * @source 6 lb per US gallon [faa-h-8083-25]; 2 % for kind and temperature [practice]
 */
export function gasolineDensity(): { value: number; u95: number } {
  return { value: GASOLINE, u95: SPREAD * GASOLINE };
}
