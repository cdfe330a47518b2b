/** A long work followed: its words and share as it goes, a way to cancel it, and what came of it. */

export interface Followed {
  id: string;
  state: 'working' | 'done' | 'failed' | 'cancelled';
  progress: { done: number; total: number; words: string };
  outcome: unknown;
  problems: { message: string; mend: string }[];
}

/**
 * Start a job and show how far it is.
 * @param jobs address of the book's jobs
 * @param deed what to do, as the API takes it
 * @param place where to show it
 * @returns the job as it ended
 */
export async function followJob(jobs: string, deed: unknown, place: HTMLElement): Promise<Followed> {
  const answer = await fetch(jobs, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(deed),
  });
  const started = (await answer.json()) as Followed;
  if (!answer.ok) return { ...started, state: 'failed' };
  const { words, bar, cancel } = progressBox(place);
  cancel.addEventListener('click', () => void fetch(`/api/jobs/${started.id}`, { method: 'DELETE' }));
  return new Promise((resolve) => {
    const events = new EventSource(`/api/jobs/${started.id}/events`);
    events.addEventListener('job', (event) => {
      const job = JSON.parse((event as MessageEvent<string>).data) as Followed;
      words.textContent = job.progress.words;
      if (job.progress.total > 0) bar.value = job.progress.done / job.progress.total;
      if (job.state === 'working') return;
      events.close();
      place.replaceChildren();
      resolve(job);
    });
  });
}

/** What went wrong, said where the work was shown. */
export function sayProblems(place: HTMLElement, problems: readonly { message: string; mend: string }[]): void {
  const box = document.createElement('div');
  box.className = 'problems';
  box.setAttribute('role', 'alert');
  for (const { message, mend } of problems) {
    const line = document.createElement('p');
    line.textContent = `${message} ${mend}`;
    box.append(line);
  }
  place.replaceChildren(box);
}

function progressBox(place: HTMLElement) {
  const words = document.createElement('p');
  words.setAttribute('role', 'status');
  const bar = document.createElement('progress');
  bar.setAttribute('aria-label', 'Progress');
  const cancel = document.createElement('button');
  cancel.type = 'button';
  cancel.textContent = 'Cancel';
  place.replaceChildren(words, bar, cancel);
  return { words, bar, cancel };
}
