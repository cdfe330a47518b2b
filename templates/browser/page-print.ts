/** Printing with progress and a way to cancel; without script the form sends for the same PDF. */
import { followJob, sayProblems } from './follow-progress.ts';

for (const form of document.querySelectorAll<HTMLFormElement>('form[data-print]')) {
  const place = document.createElement('div');
  place.className = 'progress';
  form.append(place);
  form.addEventListener('submit', async (event) => {
    event.preventDefault();
    const button = form.querySelector('button');
    if (button) button.disabled = true;
    const job = await followJob(form.dataset.jobs ?? '', JSON.parse(form.dataset.print ?? '{}'), place);
    if (button) button.disabled = false;
    if (job.state === 'done') offer(place, form.dataset.book ?? '', job.outcome as { print: string; pages: number });
    else if (job.state === 'failed') sayProblems(place, job.problems);
    else place.textContent = 'Cancelled. Nothing was printed.';
  });
}

function offer(place: HTMLElement, book: string, { print, pages }: { print: string; pages: number }): void {
  const link = document.createElement('a');
  link.href = `/api/books/${encodeURIComponent(book)}/prints/${print}`;
  link.target = '_blank';
  link.rel = 'noopener';
  link.className = 'button main';
  link.textContent = `Open the PDF, ${pages} ${pages === 1 ? 'page' : 'pages'}`;
  place.replaceChildren(link);
  link.focus();
}
