// What a question that takes long is answered with: how far it is, and at last the answer.
import { headers } from './server.js';

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

/** The button that stops what is worked on: a newer question of the same line ends it, and it gives the best found. */
export function stopping(line) {
  document.querySelector('#stop').addEventListener('click', () => fetch('/page/load', { method: 'POST', headers: headers({ 'Content-Type': 'application/yaml', 'Sledwright-Line': line }), body: 'kind: quote' })
    // Where nobody answers, what is worked on says so.
    .catch(() => {}));
}
