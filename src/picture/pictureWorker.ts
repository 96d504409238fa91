import type { FromWorker, ToWorker } from './openPicture';
import { readPicture } from './readPicture';
import { pictureIssue } from './types';

/** Tiles given to the page and not yet stored: the reading waits rather than fill the memory with more. */
const MOST_WAITING = 16;

const send = (message: FromWorker) => postMessage(message);
let waiting = 0;
let held: (() => void)[] = [];

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.type === 'stored') {
    waiting -= data.count;
    const freed = held;
    held = [];
    for (const go of freed) go();
    return;
  }
  readPicture(
    data.files,
    data.ids,
    async (tile) => {
      while (waiting >= MOST_WAITING) {
        await new Promise<void>((resolve) => {
          held.push(resolve);
        });
      }
      waiting++;
      send({ type: 'tile', tile });
    },
    (progress) => send({ type: 'progress', progress }),
  ).then(
    (result) =>
      send(result.ok ? { type: 'done', meta: result.meta } : { type: 'failed', issue: result.issue }),
    (error: unknown) => send({ type: 'failed', issue: issueOf(error) }),
  );
});

function issueOf(error: unknown) {
  const reason = error instanceof Error ? error.message : String(error);
  const isBroken = error instanceof DOMException && error.name === 'InvalidStateError';
  return pictureIssue(
    isBroken ? 'picture-broken' : 'picture-failed',
    isBroken
      ? 'The picture is damaged or too large for this browser to decode. Save it anew, or make it smaller.'
      : `The picture could not be read: ${reason}.`,
  );
}
