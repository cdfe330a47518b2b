/** Every test's reading tables, by the id of the test. */
import { FLIGHT_PLANS } from './flight.ts';
import { GROUND_PLANS } from './ground.ts';
import { PERFORMANCE_PLANS } from './performance.ts';
import type { RowPlans } from './row-plan.ts';
import { SHOP_PLANS } from './shop.ts';

export type { Own, RowPlans, Rows, TablePlan } from './row-plan.ts';
export const ROW_PLANS: RowPlans = { ...SHOP_PLANS, ...GROUND_PLANS, ...FLIGHT_PLANS, ...PERFORMANCE_PLANS };
