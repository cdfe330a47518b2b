/** The segments of a result as a form. */
import { reductionOf } from '../../analysis/reductions/index.ts';
import { textField } from '../parts/field.view.ts';
import { nameInWords } from '../words/list.ts';
import { spanInWords } from '../words/time.ts';
import type { KeptResult } from './kept.ts';
import type { ResultView } from './result.view.ts';
import type { SampleLink } from './result-parts.ts';

/** The segments as a form: moved, relabelled, left out, added, each with one reason for all. */
export function segmentsPart(kept: KeptResult, path: string, samples: SampleLink): ResultView['segments'] {
  const { result } = kept;
  if (kept.input.logs.length === 0) return null;
  const roles = reductionOf(kept.kind)?.roles ?? [];
  const options = (selected: string) =>
    [...new Set([...roles.map((one) => one.role), selected])]
      .filter(Boolean)
      .map((value) => ({ value, text: nameInWords(value), selected: value === selected }));
  const rows = result.segments.map(({ file, fromSeconds, toSeconds, role, label }, index) => ({
    index,
    number: index + 1,
    file,
    from: plain(fromSeconds),
    to: plain(toSeconds),
    span: spanInWords(fromSeconds, toSeconds),
    href: samples(fromSeconds, toSeconds, file),
    role,
    label: label ?? '',
    roles: options(role),
    isNew: false,
  }));
  const index = rows.length;
  const blank = {
    index,
    number: index + 1,
    file: kept.logNames[0] ?? '',
    from: '',
    to: '',
    span: '',
    href: '',
    role: '',
    label: '',
    roles: options(roles[0]?.role ?? ''),
    isNew: true,
  };
  return {
    action: `${path}/segments`,
    roles: roles.map(({ role, meaning }) => ({ role: nameInWords(role), meaning })),
    files: [...kept.logNames],
    rows: [...rows, blank],
    fields: [
      textField(
        {
          name: 'reason',
          label: 'Why they are moved',
          hint: 'Kept with the segments and shown with the result.',
          required: true,
        },
        '',
      ),
      textField({ name: 'who', label: 'Your name' }, ''),
    ],
  };
}

function plain(seconds: number): string {
  return String(Math.round(seconds * 10) / 10);
}
