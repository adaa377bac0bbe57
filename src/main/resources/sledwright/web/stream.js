// What a question that takes long is answered with: how far it is, and at last the answer.
import { headers } from './server.js';

const stop = document.querySelector('#stop');
const NAME = /^event: (.*)$/m;

/** @param hear takes the name of each event and its data */
export async function listen(reply, hear) {
  const reader = reply.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) { return; }
    const events = (rest + value).split('\n\n');
    rest = events.pop();
    for (const event of events) {
      const name = NAME.exec(event);
      const lines = event.split('\n').filter(line => line.startsWith('data: ')).map(line => line.slice(6));
      if (name) { hear(name[1], JSON.parse(lines.join('\n'))); }
    }
  }
}

/**
 * @param on   whether it is being worked on
 * @param go   the button that begins it
 * @param came where its answer comes
 */
export function busy(on, go, came) {
  const stood = document.activeElement;
  stop.disabled = !on;
  go.disabled = on;
  // A button that can be pressed no longer would leave whoever works with keys alone nowhere.
  if (stood.disabled) { (on ? stop : came).focus({ preventScroll: true }); }
  came.toggleAttribute('aria-busy', on);
}

/** The button that stops what is worked on: a newer question of the same line ends it, and it gives the best found. */
export function stopping(line) {
  stop.addEventListener('click', () => fetch('/page/load', { method: 'POST', headers: headers({ 'Content-Type': 'application/yaml', 'Sledwright-Line': line }), body: 'kind: quote' })
    // Where nobody answers, what is worked on says so.
    .catch(() => {}));
}
