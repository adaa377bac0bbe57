// A supplier's list: what it changes is shown before anything is written.
import { GONE, change, opening, parsed, refusal } from './server.js';

const $ = selector => document.querySelector(selector);
let brought = null;

async function base64(file) {
  const url = await new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(reader.result);
    reader.onerror = failed;
    reader.readAsDataURL(file);
  });
  return url.slice(url.indexOf(',') + 1);
}

async function ask(path, body) {
  $('#fault').textContent = '';
  $('#answer').setAttribute('aria-busy', 'true');
  try {
    const reply = await change(path, { 'Content-Type': 'application/json' }, JSON.stringify(body));
    if (!reply.ok) { $('#fault').textContent = await refusal(reply); return; }
    $('#moves').replaceChildren(...parsed(await reply.text()).childNodes);
    $('#said').textContent = $('#moves .seal').textContent;
    $('#answer').focus({ preventScroll: true });
  } catch (gone) {
    $('#fault').textContent = GONE;
  } finally {
    $('#answer').removeAttribute('aria-busy');
  }
}

$('#bring').addEventListener('submit', async event => {
  event.preventDefault();
  const [list] = $('#list').files;
  if (!list) { return; }
  brought = { table: $('#table').value, name: list.name, list: await base64(list), mapping: $('#mapping').value, sheet: $('#sheet').value.trim() };
  await ask('/page/import', brought);
});
$('#moves').addEventListener('click', event => {
  if (event.target.id !== 'apply') { return; }
  const { seen } = event.target.dataset;
  event.target.disabled = true;
  ask('/page/import/apply', { ...brought, seen, rest: 'rest' in event.target.dataset }).finally(() => { event.target.disabled = false; });
});
opening($('#open'), text => { $('#mapping').value = text; });
$('[data-to]').addEventListener('click', () => $('#answer').focus());
