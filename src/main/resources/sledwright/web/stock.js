// What to stock: a plan written from the book or brought as a file, and answered as it comes.
import { GONE, headers } from './server.js';
import { listen } from './stream.js';

const $ = selector => document.querySelector(selector);
const running = crypto.randomUUID();

function busy(on) {
  $('#go').disabled = on;
  $('#stop').disabled = !on;
}

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
    if (!reply.ok) { faults((await reply.json()).faults); return; }
    $('#plan').value = await reply.text();
    $('#progress').textContent = 'The plan is written; look it over, then have it answered.';
    $('#plan').focus();
  } catch (gone) {
    $('#fault').textContent = GONE;
  }
}

async function answer() {
  busy(true);
  $('#fault').textContent = '';
  $('#progress').textContent = 'Working on it.';
  try {
    const reply = await fetch('/page/plan', { method: 'POST', headers: headers({ 'Content-Type': 'application/yaml', 'Sledwright-Line': running }), body: $('#plan').value });
    if (!reply.ok) { faults((await reply.json()).faults); return; }
    await listen(reply, (name, data) => {
      if (name === 'progress') { $('#progress').textContent = data.doing; return; }
      $('#planned').replaceChildren(...new DOMParser().parseFromString(data.html, 'text/html').body.childNodes);
      $('#progress').textContent = 'Done.';
      $('#planned').focus();
    });
  } catch (gone) {
    $('#progress').textContent = '';
    $('#fault').textContent = GONE;
  } finally {
    busy(false);
  }
}

$('#from-book').addEventListener('submit', event => { event.preventDefault(); write(); });
$('#bring').addEventListener('submit', event => { event.preventDefault(); answer(); });
// A newer question of the same line ends the one that is being worked on, which then gives the best found.
$('#stop').addEventListener('click', () => fetch('/page/load', { method: 'POST', headers: headers({ 'Content-Type': 'application/yaml', 'Sledwright-Line': running }), body: 'kind: quote' }));
$('#open').addEventListener('click', () => $('#file').click());
$('#file').addEventListener('change', async event => {
  const [file] = event.target.files;
  if (file) { $('#plan').value = await file.text(); }
  event.target.value = '';
});
$('[data-to]').addEventListener('click', () => $('#answer').focus());
