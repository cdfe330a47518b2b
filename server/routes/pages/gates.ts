/** Gates and their evidence. */
import * as z from 'zod';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { gatePage, gateView } from '../../../templates/pages/gate.view.ts';
import { gatesPage, gatesView } from '../../../templates/pages/gates.view.ts';
import { gateAnswers } from '../../actions/gate-answers.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { bookFor, planIn, sendPage } from './pages.ts';

export function gateRoutes(app: Api, { desk }: Service): void {
  app.get('/books/:book/gates', { schema: { hide: true, params: bookParams } }, async ({ params }, reply) => {
    const opened = await bookFor(desk, params.book);
    const answers = gateAnswers(planIn(opened).program, opened.state);
    return sendPage(reply, 'gates', gatesView, gatesPage(answers, opened.context));
  });

  app.get(
    '/books/:book/gates/:gate',
    { schema: { hide: true, params: bookParams.extend({ gate: z.string() }) } },
    async ({ params }, reply) => {
      const opened = await bookFor(desk, params.book);
      const program = planIn(opened).program;
      const answer = gateAnswers(program, opened.state).find((one) => one.id === params.gate);
      if (!answer) throw new InputProblem([problem('not-found', `The program has no gate ${params.gate}.`)]);
      return sendPage(reply, 'gate', gateView, gatePage(answer, program, opened.state.squawks, opened.context));
    },
  );
}
