/** Outings by name: a flight has its own count, sessions on the ground and in the shop share theirs. */
import type { Outing } from '../../analysis/program/index.ts';
import { bookPath } from '../parts/frame.view.ts';

const KINDS = { shop: 'Shop session', ground: 'Ground session', flight: 'Flight' } as const;

/** `Flight 3`, `Ground session 37`. */
export function outingName({ kind, flight, number }: Pick<Outing, 'kind' | 'flight' | 'number'>): string {
  return `${KINDS[kind]} ${kind === 'flight' && flight !== null ? flight : number}`;
}

/** Address of an outing's page. */
export function outingPath(book: string, number: number): string {
  return bookPath(book, `/outings/${number}`);
}
