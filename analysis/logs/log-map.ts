/** MAP.json: what a person confirmed for a layout. It overrides every guess and answers every question of a reading. */
import * as z from 'zod';
import { baseName, isUnit, quantityOf } from '../units/index.ts';

const columnSchema = z.strictObject({
  quantity: z
    .string()
    .refine(
      (name) => name === 'ignore' || quantityOf(baseName(name)) !== undefined,
      'a quantity of the glossary or "ignore" was wanted',
    ),
  unit: z.string().refine(isUnit, 'a unit id of the list was wanted').optional(),
});

export const mapSchema = z.strictObject({
  columns: z.record(z.string(), columnSchema).default({}),
  time: z
    .strictObject({
      columns: z.array(z.string()).optional(),
      format: z.string().optional(),
      dayFirst: z.boolean().optional(),
      offset: z
        .string()
        .regex(/^(Z|UTC|[+-]\d{2}:?\d{2})$/, 'an offset such as +01:00 or UTC was wanted')
        .optional(),
      date: z
        .string()
        .regex(/^\d{4}-\d{2}-\d{2}$/, 'a date such as 2031-05-04 was wanted')
        .optional(),
    })
    .optional(),
  /** for a file in which a comma may be a decimal or a thousands mark */
  decimal: z.enum(['.', ',']).optional(),
});

/** What a person confirmed for a file layout. */
export type LogMap = z.infer<typeof mapSchema>;
export type MappedColumn = z.infer<typeof columnSchema>;

/**
 * The confirmed meaning of a column.
 * @param map the map, or none
 * @param column header text as told apart in the file, text
 * @returns the confirmed quantity and unit, or undefined
 */
export function mappedColumn(map: LogMap | undefined, column: string): MappedColumn | undefined {
  return map && Object.hasOwn(map.columns, column) ? map.columns[column] : undefined;
}
