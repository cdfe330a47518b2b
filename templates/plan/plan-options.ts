/** Paper of the plan: it is filed, not flown, so it is set on whole sheets. */
import * as z from 'zod';

export const PLAN_PAPERS = ['letter', 'a4'] as const;
export type PlanPaper = (typeof PLAN_PAPERS)[number];
export const planPaperSchema = z.enum(PLAN_PAPERS);
