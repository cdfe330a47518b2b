/** Every test's reading tables, by the id of the test. */
import { ENVELOPE_PLANS } from './envelope.ts';
import { GROUND_PLANS } from './ground.ts';
import { HANDLING_PLANS } from './handling.ts';
import { MEASURED_FLIGHT_PLANS } from './measured-flight.ts';
import type { RowPlans } from './row-plan.ts';
import { SHOP_PLANS } from './shop.ts';
import { SHOP_SYSTEM_PLANS } from './shop-systems.ts';
import { SYSTEMS_FLIGHT_PLANS } from './systems-flight.ts';

export type { Own, RowPlans, Rows, TablePlan } from './row-plan.ts';
export const ROW_PLANS: RowPlans = {
  ...SHOP_PLANS,
  ...SHOP_SYSTEM_PLANS,
  ...GROUND_PLANS,
  ...ENVELOPE_PLANS,
  ...SYSTEMS_FLIGHT_PLANS,
  ...MEASURED_FLIGHT_PLANS,
  ...HANDLING_PLANS,
};
