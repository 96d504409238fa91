import type { AppController, Message } from '../app-controller';

/** What of the app it takes: the document now, its undo, a word to the person. */
interface Undoable {
  readonly session: Pick<AppController['session'], 'yard' | 'undo'>;
  note(code: string, message: string): void;
}

/** "Undo" for a note of the step just done: it takes back that step alone, while it is still the newest. */
export function undoStep(app: Undoable): NonNullable<Message['action']> {
  const made = app.session.yard;
  const run = () => {
    if (app.session.yard === made) app.session.undo();
    else app.note('undo-passed', 'Something else was changed since then: undo goes back step by step.');
  };
  return { label: 'Undo', run };
}
