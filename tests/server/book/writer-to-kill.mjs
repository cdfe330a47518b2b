// Writes squawks into a book until it is killed, and says each one's number once it is stored.
import process from 'node:process';
import { register } from 'tsx/esm/api';

register();
const { openBookFolder } = await import('../../../server/book/book.ts');
const { nextNumber } = await import('../../../server/book/current-state.ts');
const book = openBookFolder(process.argv[2], 'killed', () => new Date());
process.stdout.write('open\n');
for (;;) {
  const number = nextNumber(book.database, 'squawk');
  book.record({ kind: 'squawk-opened', number, text: `squawk ${number} ${'x'.repeat(number % 500)}` });
  process.stdout.write(`${number}\n`);
}
