/** The shape of an airplane's description. */
import { airplaneSchema } from '../../analysis/airplane/index.ts';
import { type Field, schemaFields } from './schema-shape.ts';

let shape: Field[] | undefined;

/** The whole description, top level first. */
export function airplaneShape(): Field[] {
  // what is to be confirmed is kept by the forms, not typed into one
  shape ??= schemaFields(airplaneSchema).filter((field) => field.key !== 'toConfirm');
  return shape;
}

/** The field at a path, places of a list left aside. */
export function fieldAt(path: string): Field | undefined {
  let fields = airplaneShape();
  let found: Field | undefined;
  for (const key of path.split('.').filter((one) => !/^\d+$/.test(one))) {
    found = fields.find((one) => one.key === key);
    if (!found) return undefined;
    const { shape: inner } = found;
    fields = inner.is === 'variants' ? [...inner.variants.values()].flat() : 'fields' in inner ? inner.fields : [];
  }
  return found;
}
