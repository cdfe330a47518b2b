/**
 * The entry page of a card: every change is kept at once, doubts are told as they are typed, Enter and the arrows move
 * as the hand moves on the paper, and what was changed can be taken back. Without it the form saves by its button.
 */
import { type AboutBox, clockText, DOUBT_MARKS, doubtReading } from '../../analysis/cards/doubt-reading.ts';
import { typedNumber } from '../words/typed-number.ts';

type Box = HTMLInputElement | HTMLSelectElement;

/** Changes made within this time are kept by one entry of the record, ms. */
const TOGETHER = 1500;

const form = document.querySelector<HTMLFormElement>('form.written');
if (form) follow(form);

function follow(form: HTMLFormElement): void {
  const boxes = [...form.querySelectorAll<Box>('[name^="box."]')];
  const said = form.querySelector('.saved');
  const undo = form.querySelector<HTMLButtonElement>('button.undo');
  const kept = new Map(boxes.map((box) => [box, box.value]));
  const steps: { box: Box; before: string }[] = [];
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let sending: Promise<void> = Promise.resolve();

  const dirty = () => boxes.filter((box) => box.value.trim() !== kept.get(box));
  const say = (words: string) => {
    const filled = boxes.filter((box) => box.value.trim() !== '').length;
    if (said) said.textContent = `${filled} of ${boxes.length} boxes filled. ${words}`;
  };

  async function keep(): Promise<void> {
    const changed = dirty();
    if (changed.length === 0) return;
    const values = changed.map((box) => [box, box.value.trim()] as const);
    const body = {
      boxes: Object.fromEntries(values.map(([box, text]) => [box.name.slice('box.'.length), text])),
      ...whoIn(form),
    };
    say('Keeping …');
    const { api = '', page = '', number = '', test = '', document: card = '' } = form.dataset;
    const fresh = number === '';
    const beginning = { test, ...(card === '' ? {} : { document: card }) };
    try {
      const answer = await fetch(fresh ? api : `${api}/${number}`, {
        method: fresh ? 'POST' : 'PUT',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(fresh ? { ...body, ...beginning } : body),
        keepalive: true,
      });
      if (!answer.ok) throw new Error(`${answer.status}`);
      const { number: given } = (await answer.json()) as { number: number };
      for (const [box, text] of values) kept.set(box, text);
      if (fresh) {
        form.dataset.number = String(given);
        form.action = `${page}${given}`;
        history.replaceState(null, '', `${page}${given}`);
        if (undo) undo.disabled = false;
      }
      say('Kept.');
    } catch {
      say(
        'Not kept yet: the service does not answer. What you typed stays here; it is tried again with the next change.',
      );
    }
  }

  const keepSoon = () => {
    clearTimeout(waiting);
    waiting = setTimeout(keepNow, TOGETHER);
  };
  function keepNow(): void {
    clearTimeout(waiting);
    // one after the other: the first one gives the card its number
    sending = sending.then(keep);
  }

  for (const box of boxes) {
    let before = box.value;
    box.addEventListener('focus', () => {
      before = box.value;
      if (box instanceof HTMLInputElement) box.select();
    });
    box.addEventListener('change', () => {
      if (aboutOf(box).input === 'clock') box.value = clockText(box.value);
      steps.push({ box, before });
      before = box.value;
      if (undo) undo.disabled = false;
      tellDoubt(box);
      keepSoon();
    });
    box.addEventListener('input', () => tellDoubt(box));
  }

  form.addEventListener('keydown', (event) => {
    const at = event.target instanceof HTMLElement ? boxes.indexOf(event.target as Box) : -1;
    if (at < 0 || !(event.target instanceof HTMLInputElement)) return;
    const to =
      event.key === 'Enter'
        ? boxes[at + (event.shiftKey ? -1 : 1)]
        : event.key === 'ArrowDown' || event.key === 'ArrowUp'
          ? neighbour(event.target, event.key === 'ArrowDown' ? 1 : -1)
          : undefined;
    if (event.key === 'Enter') event.preventDefault();
    if (!to) return;
    event.preventDefault();
    to.focus();
  });

  undo?.addEventListener('click', (event) => {
    const step = steps.pop();
    // what an earlier visit wrote is taken back by the service
    if (!step) return;
    event.preventDefault();
    step.box.value = step.before;
    step.box.focus();
    tellDoubt(step.box);
    keepNow();
  });

  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') keepNow();
  });
  window.addEventListener('beforeunload', (event) => {
    if (dirty().length === 0 || leaving) return;
    keepNow();
    event.preventDefault();
  });
  let leaving = false;
  form.addEventListener('submit', () => {
    clearTimeout(waiting);
    leaving = true;
  });
}

function whoIn(form: HTMLFormElement): { who?: string } {
  const who = form.elements.namedItem('who');
  return who instanceof HTMLInputElement && who.value.trim() !== '' ? { who: who.value.trim() } : {};
}

function aboutOf(box: Box): AboutBox {
  return JSON.parse(box.dataset.about ?? '{}') as AboutBox;
}

function tellDoubt(box: Box): void {
  const place = document.getElementById(`${box.id}-d`);
  if (!place) return;
  const doubt = doubtReading(aboutOf(box), box.value, typedNumber(box.value));
  const words = doubt ? `${DOUBT_MARKS[doubt.kind]} ${doubt.words}` : '';
  if (place.textContent !== words) place.textContent = words;
}

/** The box above or below in the same column of the same table. */
function neighbour(box: HTMLInputElement, way: 1 | -1): Box | undefined {
  const [table, , column] = box.name.slice('box.'.length).split('.');
  const all = [...(box.form?.querySelectorAll<Box>(`[name^="box.${table}."]`) ?? [])];
  const same = all.filter((one) => column !== undefined && one.name.endsWith(`.${column}`));
  return same[same.indexOf(box) + way];
}
