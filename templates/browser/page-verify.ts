/** Checking the whole book, with progress; what is broken is said, nothing is mended behind anyone's back. */
import { followJob, sayProblems } from './follow-progress.ts';

for (const home of document.querySelectorAll<HTMLElement>('[data-verify]')) {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = 'Check the whole book';
  const place = document.createElement('div');
  place.className = 'progress';
  home.append(button, place);
  button.addEventListener('click', async () => {
    button.disabled = true;
    const job = await followJob(home.dataset.verify ?? '', { deed: 'verify' }, place);
    button.disabled = false;
    if (job.state !== 'done') return sayProblems(place, job.problems);
    const found = job.outcome as { entries: number; documents: number; logs: number; head: string; broken: string[] };
    if (found.broken.length > 0) {
      return sayProblems(
        place,
        found.broken.map((message) => ({ message, mend: 'Restore the book from an export.' })),
      );
    }
    place.setAttribute('role', 'status');
    place.textContent = `All holds: ${found.entries} entries, ${found.documents} documents, ${found.logs} logs. The last entry’s hash is ${found.head}; written down elsewhere, it proves the record later.`;
  });
}
