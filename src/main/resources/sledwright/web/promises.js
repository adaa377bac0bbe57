// All promises drawn anew: looked at first, and kept as they were seen.
import { fresh } from './fresh.js';
import { GONE, change, headers, once, parsed, refusal } from './server.js';
import { busy, listen, stopping } from './stream.js';

const $ = selector => document.querySelector(selector);
const running = fresh();
let proposal = null;

/** What can be kept; nothing once it is. */
function offer(name) {
  proposal = name;
  if ($('#apply')) { $('#apply').hidden = name === null; }
}

async function draw() {
  busy(true, $('#draw'), $('#answer'));
  offer(null);
  $('#fault').textContent = '';
  $('#progress').textContent = 'Working on it.';
  try {
    const reply = await fetch('/page/allocate', { method: 'POST', headers: headers({ 'Sledwright-Line': running }) });
    if (!reply.ok) { $('#progress').textContent = ''; $('#fault').textContent = await refusal(reply); return; }
    await listen(reply, (name, data) => {
      if (name === 'progress') { $('#progress').textContent = data.doing; return; }
      $('#drawn').replaceChildren(...parsed(data.html).childNodes);
      $('#progress').textContent = 'Done.';
      const verdict = $('#drawn .verdict');
      offer(verdict && verdict.dataset.changes === 'true' ? data.proposal : null);
    });
  } catch (gone) {
    $('#progress').textContent = '';
    $('#fault').textContent = GONE;
  } finally {
    busy(false, $('#draw'), $('#answer'));
  }
}

async function apply() {
  $('#fault').textContent = '';
  try {
    const reply = await change('/api/book/allocate/apply?' + new URLSearchParams({ proposal }));
    if (!reply.ok) { $('#fault').textContent = await refusal(reply); return; }
    $('#progress').textContent = 'The book keeps these units from now on.';
    $('#draw').focus();
    offer(null);
  } catch (gone) {
    $('#fault').textContent = GONE;
  }
}

$('#draw').addEventListener('click', draw);
stopping(running);
if ($('#apply')) { $('#apply').addEventListener('click', event => once([event.currentTarget], apply)); }
$('[data-to]').addEventListener('click', () => $('#answer').focus());
