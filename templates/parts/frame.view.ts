/** What stands around every page: whose book it is, the ways through it, where the page belongs, what was just done. */
import * as z from 'zod';

export const framePart = z.strictObject({
  title: z.string(),
  /** title of the browser's window */
  windowTitle: z.string(),
  /** the question the page answers */
  question: z.string(),
  airplane: z
    .strictObject({ name: z.string(), registration: z.string(), href: z.string(), invented: z.boolean() })
    .nullable(),
  ways: z.array(z.strictObject({ text: z.string(), href: z.string(), current: z.boolean() })),
  crumbs: z.array(z.strictObject({ text: z.string(), href: z.string() })),
  /** what a deed just did, or empty */
  done: z.string(),
  /** names of the browser modules the page asks for */
  modules: z.array(z.string()),
});
export type FramePart = z.infer<typeof framePart>;

/** A book as the frame needs it. */
export interface BookLabel {
  id: string;
  name: string;
  registration: string;
  invented: boolean;
}

export type Way = 'home' | 'airplane' | 'program' | 'outings' | 'logs' | 'results' | 'gates';

const WAYS: readonly { way: Way; text: string; path: string }[] = [
  { way: 'home', text: 'Home', path: '' },
  { way: 'airplane', text: 'Airplane', path: '/airplane' },
  { way: 'program', text: 'Program', path: '/program' },
  { way: 'outings', text: 'Outings', path: '/outings' },
  { way: 'logs', text: 'Logs', path: '/logs' },
  { way: 'results', text: 'Results', path: '/results' },
  { way: 'gates', text: 'Gates', path: '/gates' },
];

/** Address of a page of a book. */
export function bookPath(book: string, path = ''): string {
  return `/books/${encodeURIComponent(book)}${path}`;
}

/**
 * The frame of a page.
 * @param title the page's heading, text
 * @param more book and way place it; crumbs name the pages above it; done is what a deed just did
 * @returns the part
 */
export function frameOf(
  title: string,
  more: {
    question?: string;
    book?: BookLabel | undefined;
    way?: Way;
    crumbs?: { text: string; href: string }[];
    done?: string;
    modules?: string[];
  } = {},
): FramePart {
  const { book } = more;
  return {
    title,
    windowTitle: book ? `${title} · ${book.name} ${book.registration}` : `${title} · Proveout`,
    question: more.question ?? '',
    airplane: book
      ? { name: book.name, registration: book.registration, href: bookPath(book.id), invented: book.invented }
      : null,
    ways: book
      ? WAYS.map(({ way, text, path }) => ({ text, href: bookPath(book.id, path), current: way === more.way }))
      : [],
    crumbs: more.crumbs ?? [],
    done: more.done ?? '',
    modules: more.modules ?? [],
  };
}
