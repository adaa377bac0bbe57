// A request as a file: answered as it comes, and stopped at any time.
import { fresh } from './fresh.js';
import { wire as wireKeeping } from './keep.js';
import { GONE, change, faultsOf, headers as asking, money, once, opening, parsed, refusal, save } from './server.js';
import { amended, gist, keep, lines, wishesOf, yaml } from './order.js';
import { busy, listen, stopping } from './stream.js';

const $ = (selector, within = document) => within.querySelector(selector);
const running = fresh();

function headers() { return asking({ 'Content-Type': 'application/yaml' }); }

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
  const amount = sum => money(sum, $('#progress').dataset.currency);
  const gap = data.gap === null ? '' : `, at most ${Math.ceil(data.gap * 10000) / 100} % too dear`;
  return `${Math.round(data.seconds)} s: ${data.price === null ? 'nothing yet' : amount(data.price)}${data.bound === null ? '' : ', not below ' + amount(data.bound)}${gap}`;
}

/** What was answered, and at which price where it has one. */
const answered = { request: '', price: null };
/** What the screen shows of an answer or of a sheet; newer than what is still on its way. */
let shown = 0;
let sheetOf = '';

/** Takes away what is shown, so that nobody takes it for what is asked now. */
function clear(words) {
  sheetOf = '';
  Object.assign(answered, { request: '', price: null });
  $('#progress').textContent = '';
  $('#result').textContent = words;
  $('#board').replaceChildren();
  $('#paper').hidden = true;
  return ++shown;
}

function take(request, name, data) {
  if (name === 'progress') { $('#progress').textContent = told(data); return; }
  $('#result').textContent = data.text;
  Object.assign(answered, { request, price: data.price });
  typed();
  draw(request);
}

let asked = 0;
async function answer() {
  const mine = ++asked;
  // A build is judged while it is written; of all else no older answer stands beside a newer question.
  const place = sheetOf === '' && isBuild() ? ++shown : clear('');
  busy(true, $('#go'), $('#answer'));
  $('#fault').textContent = '';
  $('#progress').textContent = 'Working on it.';
  const request = $('#text').value;
  try {
    const reply = await fetch('/page/work', { method: 'POST', headers: { ...headers(), 'Sledwright-Line': running }, body: request });
    if (mine !== asked || place !== shown) { return; }
    if (!reply.ok) {
      clear('');
      faults(await faultsOf(reply));
      return;
    }
    await listen(reply, (name, data) => { if (place === shown) { take(request, name, data); } });
  } catch (gone) {
    if (place === shown) {
      clear('');
      $('#progress').textContent = GONE;
    }
  } finally {
    if (mine === asked) { busy(false, $('#go'), $('#answer')); }
  }
}

// A build is judged with every change of it, and drawn while it breaks no rule.
async function draw(body) {
  const place = shown;
  let drawn = [];
  try {
    const reply = /^kind: *order|^kind: *restock/m.test(body) ? null : await fetch('/page/board', { method: 'POST', headers: headers(), body });
    if (reply && reply.ok) { drawn = parsed(await reply.text()).childNodes; }
  } catch (gone) {
    $('#fault').textContent = GONE;
  }
  if (place === shown) { $('#board').replaceChildren(...drawn); }
}
let timer = 0;
function isBuild() { return /^kind: *build/m.test($('#text').value); }
let renew = () => {};
/** Says, too, whether an answer that is shown is still one to the text. */
function typed() {
  $('#onboard').hidden = !isBuild();
  renew();
  if (answered.request !== '') { $('#progress').textContent = answered.request === $('#text').value ? 'Done.' : 'The text has changed since it was answered.'; }
}
$('#text').addEventListener('input', () => {
  clearTimeout(timer);
  typed();
  if (isBuild()) { timer = setTimeout(answer, 400); }
  if (lines().length > 0) { draft(); }
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
  const called = new URLSearchParams({ line: line.name });
  const counted = line.machines === '1' ? line.wishes.filter(([key]) => key !== 'machines') : wishesOf(line);
  const wishes = new URLSearchParams(counted.flatMap(([key, value]) => (Array.isArray(value) ? value : [value]).map(one => [key, one])));
  item.append(units, made('span', ' x '), made('b', line.name), made('span', ' ' + gist(line), { class: 'called' }), ' ',
    made('a', 'Change', { href: `/?${called}#${wishes}`, 'aria-label': `Change ${line.name}` }), ' ',
    made('button', '\u2715', { type: 'button', class: 'drop', 'data-out': at, 'aria-label': `Without ${line.name}`, title: 'Without this' }));
  return item;
}

const DRAFT = 'sledwright-order-text';

/** The text as it stands, and the lines of which it is; kept for this tab, for whoever goes to another page for a line. */
function draft() { sessionStorage.setItem(DRAFT, JSON.stringify({ text: $('#text').value, of: lines() })); }

/** Brings the text of the order to its lines; what was written into it by hand stays. Gives whether it could be. */
function bring(was, text, all) {
  keep(all);
  const made = amended(text, was, all);
  $('#text').value = made === null ? text : all.length === 0 && made === yaml([]) ? '' : made;
  draft();
  typed();
  $('#fault').textContent = made === null ? 'The text of this line was changed by hand, so change it there, too.' : '';
  return made !== null;
}

function ordered(all) {
  const brought = bring(lines(), $('#text').value, all);
  list(all);
  if (all.length === 0) { clear('Nothing has been asked yet.'); }
  return brought;
}

function list(all) {
  $('#order').hidden = all.length === 0;
  $('#lines').replaceChildren(...all.map(row));
}

$('#lines').addEventListener('change', event => {
  const was = lines();
  const all = lines();
  all[Number(event.target.dataset.line)].machines = event.target.value.trim();
  if (bring(was, $('#text').value, all)) { answer(); }
  const at = Number(event.target.dataset.line);
  $('a', $('#lines').children[at]).href = $('a', row(all[at], at)).href;
});
$('#lines').addEventListener('click', event => {
  const button = event.target.closest('[data-out]');
  if (!button) { return; }
  const all = lines().filter((line, at) => at !== Number(button.dataset.out));
  const brought = ordered(all);
  ($('#lines input') || $('#text')).focus();
  if (brought && all.length > 0) { answer(); }
});
$('#empty').addEventListener('click', () => { ordered([]); $('#text').focus(); });
if (lines().length > 0) {
  const left = JSON.parse(sessionStorage.getItem(DRAFT) || 'null');
  list(lines());
  if (bring(left ? left.of : [], left && left.of.length > 0 ? left.text : yaml([]), lines())) { answer(); }
}

$('#bring').addEventListener('submit', event => { event.preventDefault(); answer(); });
stopping(running);
opening($('#open'), text => {
  $('#text').value = text;
  typed();
  if (isBuild()) { answer(); }
});
$('#sheet').addEventListener('click', () => once([$('#sheet')], async () => {
  $('#fault').textContent = '';
  try {
    const reply = await fetch('/page/sheet', { method: 'POST', headers: headers(), body: $('#text').value });
    if (!reply.ok) { faults(await faultsOf(reply)); return; }
    save(await reply.blob(), 'bench-sheet.pdf');
  } catch (gone) {
    $('#fault').textContent = GONE;
  }
}));
// --- the bench: sheets of what is in the book --------------------------------------

function number() { return $('#number').value.trim(); }

/** What is done at the bench is about one number: nothing of another is left on the screen. */
async function bench(act) {
  $('#bench-fault').textContent = '';
  if (sheetOf !== '' && number() !== sheetOf) { clear(''); }
  if (!/^\d{4}-\d{4,9}$/.test(number())) {
    $('#bench-fault').textContent = 'A quote or an order has a number such as 2026-0001.';
    $('#number').focus();
    return;
  }
  try { await act(number()); } catch (gone) { $('#bench-fault').textContent = GONE; }
}

$('#bench').addEventListener('submit', event => {
  event.preventDefault();
  bench(async asked => {
    const mine = clear('');
    const at = `/api/book/${asked}/sheet?format=`;
    const [sheet, drawing] = await Promise.all([fetch(at + 'text'), fetch(at + 'svg')]);
    const said = sheet.ok ? await sheet.text() : await refusal(sheet);
    const drawn = drawing.ok ? await drawing.text() : '<svg/>';
    if (mine !== shown) { return; }
    if (!sheet.ok) { $('#bench-fault').textContent = said; return; }
    sheetOf = asked;
    $('#paper').hidden = false;
    $('#paper').href = at + 'pdf';
    $('#result').textContent = said;
    $('#board').replaceChildren(document.importNode(new DOMParser().parseFromString(drawn, 'image/svg+xml').documentElement, true));
    $('#progress').textContent = 'The sheet is there.';
  });
});
for (const button of document.querySelectorAll('#bench [data-step]')) {
  button.addEventListener('click', () => bench(asked => once(document.querySelectorAll('#bench [data-step]'), async () => {
    const reply = await change(`/api/book/${asked}/${button.dataset.step}`);
    if (!reply.ok) { $('#bench-fault').textContent = await refusal(reply); return; }
    const quote = await reply.json();
    $('#progress').textContent = `${quote.number}: ${quote.state}.`;
  })));
}
if ($('#keep')) { renew = wireKeeping(() => $('#text').value, () => answered.request === $('#text').value ? String(answered.price ?? '') : null); }
$('[data-to]').addEventListener('click', () => $('#answer').focus());
