// A request as a file: answered as it comes, and stopped at any time.
import { wire as wireKeeping } from './keep.js';
import { GONE, headers as asking, opening, parsed, refusal, save } from './server.js';
import { gist, keep, lines, yaml } from './order.js';
import { listen, stopping } from './stream.js';

const $ = selector => document.querySelector(selector);
const running = crypto.randomUUID();

function headers() { return asking({ 'Content-Type': 'application/yaml' }); }

function busy(on) {
  $('#stop').disabled = !on;
  $('#go').disabled = on;
  $('#answer').toggleAttribute('aria-busy', on);
}

function faults(found) {
  $('#fault').textContent = found.map(fault => `${fault.line ? 'line ' + fault.line + ': ' : ''}${fault.message}`).join('\n');
  const line = found.find(fault => fault.line);
  if (line) {
    const lines = $('#text').value.split('\n');
    const from = lines.slice(0, line.line - 1).join('\n').length + (line.line > 1 ? 1 : 0);
    $('#text').focus();
    $('#text').setSelectionRange(from, from + lines[line.line - 1].length);
  }
}

function told(data) {
  if (data.doing) { return data.doing; }
  if (data.missing) { return `${data.missing} missing so far`; }
  const gap = data.gap === null ? '' : `, at most ${Math.round(data.gap * 10000) / 100} % too dear`;
  return `${Math.round(data.seconds)} s: ${data.price === null ? 'nothing yet' : data.price}${data.bound === null ? '' : ', not below ' + data.bound}${gap}`;
}

/** What was answered, and at which price where it has one. */
const shown = { request: '', price: null };
function take(request, name, data) {
  if (name === 'progress') { $('#progress').textContent = told(data); return; }
  $('#result').textContent = data.text;
  Object.assign(shown, { request, price: data.price });
  $('#progress').textContent = 'Done.';
  draw();
}

let asked = 0;
async function answer() {
  const mine = ++asked;
  busy(true);
  $('#fault').textContent = '';
  $('#progress').textContent = 'Working on it.';
  const request = $('#text').value;
  try {
    const reply = await fetch('/page/work', { method: 'POST', headers: { ...headers(), 'Sledwright-Line': running }, body: request });
    if (mine !== asked) { return; }
    if (!reply.ok) {
      $('#progress').textContent = '';
      $('#board').replaceChildren();
      faults((await reply.json()).faults);
      return;
    }
    await listen(reply, (name, data) => take(request, name, data));
  } catch (gone) {
    $('#progress').textContent = 'The server does not answer. Is it still running?';
  } finally {
    if (mine === asked) { busy(false); }
  }
}

// A build is judged with every change of it, and drawn while it breaks no rule.
async function draw() {
  const body = $('#text').value;
  const reply = /^kind: *order|^kind: *restock/m.test(body) ? null : await fetch('/page/board', { method: 'POST', headers: headers(), body });
  const drawn = reply && reply.ok ? parsed(await reply.text()).childNodes : [];
  $('#board').replaceChildren(...drawn);
}
let timer = 0;
function isBuild() { return /^kind: *build/m.test($('#text').value); }
function typed() { $('#onboard').hidden = !isBuild(); }
$('#text').addEventListener('input', () => {
  clearTimeout(timer);
  typed();
  if (isBuild()) { timer = setTimeout(answer, 400); }
});
$('#onboard').addEventListener('click', () => location.assign('/board#' + new URLSearchParams({ came: 'file', file: $('#text').value })));

// --- the order that was put together from single machines ---------------------

function made(tag, text, attributes = {}) {
  const element = document.createElement(tag);
  element.textContent = text;
  for (const [key, value] of Object.entries(attributes)) { element.setAttribute(key, value); }
  return element;
}

function row(line, at) {
  const item = made('li', '', { class: 'line' });
  const units = made('input', '', { inputmode: 'numeric', value: line.machines, 'aria-label': `Machines of ${line.name}`, 'data-line': at });
  const wishes = new URLSearchParams(line.wishes.flatMap(([key, value]) => (Array.isArray(value) ? value : [value]).map(one => [key, one])));
  item.append(units, made('span', ' x '), made('b', line.name), made('span', ' ' + gist(line), { class: 'called' }), ' ',
    made('a', 'Change', { href: '/#' + wishes, 'aria-label': `Change ${line.name}` }), ' ',
    made('button', '\u2715', { type: 'button', class: 'drop', 'data-out': at, 'aria-label': `Without ${line.name}`, title: 'Without this' }));
  return item;
}

function ordered(all) {
  keep(all);
  $('#order').hidden = all.length === 0;
  $('#lines').replaceChildren(...all.map(row));
  if (all.length > 0) { $('#text').value = yaml(all); }
}

$('#lines').addEventListener('change', event => {
  const all = lines();
  const line = all[Number(event.target.dataset.line)];
  line.machines = event.target.value.trim();
  keep(all);
  $('#text').value = yaml(all);
  answer();
});
$('#lines').addEventListener('click', event => {
  const button = event.target.closest('[data-out]');
  if (!button) { return; }
  const all = lines().filter((line, at) => at !== Number(button.dataset.out));
  ordered(all);
  ($('#lines input') || $('#text')).focus();
  if (all.length > 0) { answer(); }
});
$('#empty').addEventListener('click', () => { ordered([]); $('#text').focus(); });
if (lines().length > 0) { ordered(lines()); answer(); }

$('#bring').addEventListener('submit', event => { event.preventDefault(); answer(); });
stopping(running);
opening($('#open'), text => { $('#text').value = text; typed(); });
$('#sheet').addEventListener('click', async () => {
  $('#fault').textContent = '';
  const reply = await fetch('/page/sheet', { method: 'POST', headers: headers(), body: $('#text').value });
  if (!reply.ok) { faults((await reply.json()).faults); return; }
  save(await reply.blob(), 'bench-sheet.pdf');
});
// --- the bench: sheets of what is in the book --------------------------------------

function number() { return encodeURIComponent($('#number').value.trim()); }

async function bench(act) {
  $('#bench-fault').textContent = '';
  if (!$('#bench').reportValidity()) { return; }
  try { await act(); } catch (gone) { $('#bench-fault').textContent = GONE; }
}

$('#bench').addEventListener('submit', event => {
  event.preventDefault();
  bench(async () => {
    const at = `/api/book/${number()}/sheet?format=`;
    const [sheet, drawing] = await Promise.all([fetch(at + 'text'), fetch(at + 'svg')]);
    $('#paper').hidden = !sheet.ok;
    if (!sheet.ok) { $('#bench-fault').textContent = await refusal(sheet); return; }
    $('#paper').href = at + 'pdf';
    $('#result').textContent = await sheet.text();
    const svg = new DOMParser().parseFromString(drawing.ok ? await drawing.text() : '<svg/>', 'image/svg+xml').documentElement;
    $('#board').replaceChildren(document.importNode(svg, true));
    $('#progress').textContent = 'The sheet is there.';
  });
});
for (const button of document.querySelectorAll('#bench [data-step]')) {
  button.addEventListener('click', () => bench(async () => {
    const reply = await fetch(`/api/book/${number()}/${button.dataset.step}`, { method: 'POST', headers: asking({}) });
    if (!reply.ok) { $('#bench-fault').textContent = await refusal(reply); return; }
    const quote = await reply.json();
    $('#progress').textContent = `${quote.number}: ${quote.state}.`;
  }));
}
if ($('#keep')) { wireKeeping(() => $('#text').value, () => shown.request === $('#text').value ? shown.price : null); }
$('[data-to]').addEventListener('click', () => $('#answer').focus());
