/** Several recorder files at once: dropped or chosen, sent one after the other with progress, each one cancellable. */
import { followJob, sayProblems } from './follow-progress.ts';

interface Received {
  log: { id: string; name: string };
  known: boolean;
  problems?: { message: string; mend: string }[];
}

for (const form of document.querySelectorAll<HTMLFormElement>('form[data-uploads]')) {
  const input = form.querySelector<HTMLInputElement>('input[type=file]');
  if (!input) continue;
  input.multiple = true;
  const list = document.createElement('ul');
  list.className = 'plain lines';
  list.setAttribute('aria-live', 'polite');
  form.append(list);
  const hint = form.querySelector('.hint');
  if (hint) hint.textContent += ' Drop several here, or choose them.';

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void takeIn(form, list, [...(input.files ?? [])]);
    input.value = '';
  });
  for (const name of ['dragover', 'dragenter']) {
    form.addEventListener(name, (event) => {
      event.preventDefault();
      form.classList.add('over');
    });
  }
  form.addEventListener('dragleave', () => form.classList.remove('over'));
  form.addEventListener('drop', (event) => {
    event.preventDefault();
    form.classList.remove('over');
    void takeIn(form, list, [...(event.dataTransfer?.files ?? [])]);
  });
}

async function takeIn(form: HTMLFormElement, list: HTMLElement, files: File[]): Promise<void> {
  for (const file of files) {
    const line = document.createElement('li');
    list.append(line);
    await takeInOne(form, line, file);
  }
}

async function takeInOne(form: HTMLFormElement, line: HTMLElement, file: File): Promise<void> {
  const name = document.createElement('b');
  name.textContent = file.name;
  const place = document.createElement('div');
  place.className = 'progress';
  line.append(name, place);
  const received = await send(form.dataset.uploads ?? '', file, place);
  if (!received) {
    place.textContent = 'Cancelled. Nothing was kept of it.';
    return;
  }
  if (received.problems) return sayProblems(place, received.problems);
  const job = await followJob(form.dataset.jobs ?? '', { deed: 'read-log', log: received.log.id }, place);
  const link = document.createElement('a');
  link.href = `${location.pathname}/${received.log.id}`;
  link.textContent = received.log.name;
  name.replaceChildren(link);
  if (job.state === 'failed') return sayProblems(place, job.problems);
  const outcome = (job.outcome ?? {}) as { accepted?: string; rows?: number };
  const says = {
    yes: `read, ${outcome.rows} rows`,
    ask: 'read; it has questions for you',
    no: 'kept, but it could not be read',
  };
  const words = says[outcome.accepted as keyof typeof says] ?? 'kept; reading was cancelled';
  place.textContent = `${received.known ? 'It was in the book already: ' : ''}${words}.`;
}

/** Send a file, telling how far it is; nothing when it was cancelled. */
function send(address: string, file: File, place: HTMLElement): Promise<Received | undefined> {
  const bar = document.createElement('progress');
  bar.max = 1;
  bar.setAttribute('aria-label', `Sending ${file.name}`);
  const cancel = document.createElement('button');
  cancel.type = 'button';
  cancel.textContent = 'Cancel';
  place.replaceChildren(bar, cancel);
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    cancel.addEventListener('click', () => request.abort());
    request.upload.addEventListener('progress', ({ loaded, total }) => {
      bar.value = total > 0 ? loaded / total : 0;
    });
    request.addEventListener('abort', () => resolve(undefined));
    request.addEventListener('error', () => resolve(failed('The connection to the service was lost.')));
    request.addEventListener('load', () => {
      try {
        resolve(JSON.parse(request.responseText) as Received);
      } catch {
        resolve(failed('The service did not answer as expected.'));
      }
    });
    const body = new FormData();
    body.append('log', file, file.name);
    request.open('POST', address);
    request.send(body);
  });
}

function failed(message: string): Received {
  return { log: { id: '', name: '' }, known: false, problems: [{ message, mend: 'Send the file again.' }] };
}
