// What to stock: a plan written from the book or brought as a file, and answered as it comes.
import { fresh } from './fresh.js';
import { GONE, faultsOf, headers, opening, parsed } from './server.js';
import { busy, listen, stopping } from './stream.js';

const $ = selector => document.querySelector(selector);
const running = fresh();

function faults(found) {
  $('#progress').textContent = '';
  $('#fault').textContent = found.map(fault => `${fault.line ? 'line ' + fault.line + ': ' : ''}${fault.message}`).join('\n');
}

async function write() {
  $('#fault').textContent = '';
  const file = $('#supply').files[0];
  const query = new URLSearchParams({ months: $('#months').value, horizon: $('#horizon').value, budget: $('#budget').value.trim(), name: file.name });
  try {
    const reply = await fetch('/page/demand?' + query, { method: 'POST', headers: headers(), body: await file.arrayBuffer() });
    if (!reply.ok) { faults(await faultsOf(reply)); return; }
    $('#plan').value = await reply.text();
    $('#progress').textContent = 'The plan is written; look it over, then have it answered.';
    $('#plan').focus();
  } catch (gone) {
    $('#fault').textContent = GONE;
  }
}

async function answer() {
  busy(true, $('#go'), $('#answer'));
  $('#planned').replaceChildren();
  $('#fault').textContent = '';
  $('#progress').textContent = 'Working on it.';
  try {
    const reply = await fetch('/page/plan', { method: 'POST', headers: headers({ 'Content-Type': 'application/yaml', 'Sledwright-Line': running }), body: $('#plan').value });
    if (!reply.ok) { faults(await faultsOf(reply)); return; }
    await listen(reply, (name, data) => {
      if (name === 'progress') { $('#progress').textContent = data.doing; return; }
      $('#planned').replaceChildren(...parsed(data.html).childNodes);
      $('#progress').textContent = 'Done.';
      $('#planned').focus();
    });
  } catch (gone) {
    $('#progress').textContent = '';
    $('#fault').textContent = GONE;
  } finally {
    busy(false, $('#go'), $('#answer'));
  }
}

$('#from-book').addEventListener('submit', event => { event.preventDefault(); write(); });
$('#bring').addEventListener('submit', event => { event.preventDefault(); answer(); });
stopping(running);
opening($('#open'), text => {
  $('#plan').value = text;
  $('#planned').replaceChildren();
  $('#progress').textContent = '';
});
$('[data-to]').addEventListener('click', () => $('#answer').focus());
