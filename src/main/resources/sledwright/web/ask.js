import { fresh } from './fresh.js';
import { address, fromAddress, fromPairs, isList, items, yaml } from './request.js';
import { wire as wireMail } from './mail.js';
import { wire as wireKeeping } from './keep.js';
import { wire as wireLink } from './link.js';
import { wire as wireOrder } from './order.js';
import { GONE, faultsOf, headers, opening, parsed, save, sentences } from './server.js';

const $ = (selector, within = document) => within.querySelector(selector);
const $$ = (selector, within = document) => Array.from(within.querySelectorAll(selector));
const line = fresh();
const form = $('#wishes');
const answer = $('#answer');
/** The request whose answer is shown. */
let answered = '';
const chart = $('#chart');
const said = $('#said');
const COMPOSITE = ['require.storage', 'require.cards', 'extras', 'on_hand'];
const FIRST = { 'require.storage': { name: '', usable_gb: '400', level: '1' }, 'require.cards': { kind: 'network', ports: '2', port_gbit: '10', count: '1' } };
// Keys that come at once, as of somebody who pastes, are one change; then whoever types sees the answer to each figure.
const TYPING_MS = 25;
// What is said aloud, and what is wrong in a field, waits until somebody rests.
const RESTS_MS = 350;
const BY = 'limit.by';

let wishes = new Map();
let asked = [];
let steps = 0;
let lines = [];
let timer = 0;
let rest = 0;
let running = null;
// What depends on what is wished, such as whether it can be kept, is looked at with each question.
const renewed = [];

// --- the form -------------------------------------------------------------

const template = key => $(`template[data-wish="${CSS.escape(key)}"]`);

/** The wish that a key belongs to: a volume's keys are of one wish, an extra's are too. */
function rowOf(key) {
  const section = COMPOSITE.find(name => key.startsWith(name + '.'));
  if (!section) { return { id: key, wish: key }; }
  const rest = key.slice(section.length + 1);
  return section.startsWith('require.') ? { id: section + '.' + rest.split('.')[0], wish: section } : { id: key, wish: section };
}

function place(row, wish) {
  const order = $$('template[data-wish]').map(each => each.dataset.wish);
  const at = order.indexOf(wish);
  const next = $$('.wish', form).find(other => order.indexOf(other.dataset.wish) > at);
  form.insertBefore(row, next || null);
}

function make(id, wish) {
  const found = template(wish) || template('*');
  const row = found.content.firstElementChild.cloneNode(true);
  row.dataset.id = id;
  row.dataset.wish = found.dataset.wish;
  row.dataset.label = found.dataset.label;
  if (found.dataset.wish === '*') {
    $('label', row).textContent = id;
    $('input', row).dataset.path = id;
  }
  for (const field of $$('[data-sub]', row)) { field.dataset.path = id + '.' + field.dataset.sub; }
  const fault = $('.fault', row);
  fault.id = 'fault-' + id;
  for (const field of $$('input, select, textarea', row)) {
    field.setAttribute('aria-describedby', fault.id);
    if (!field.id) { field.id = 'field-' + (field.dataset.path || field.dataset.list && field.dataset.list + '-' + field.value || id + '-' + Object.keys(field.dataset).join('-')); }
  }
  for (const label of $$('label', row)) {
    if (!$('input, select', label)) {
      const field = label.nextElementSibling && (label.nextElementSibling.matches('input, textarea') ? label.nextElementSibling : $('input, select', label.nextElementSibling));
      if (field) { label.htmlFor = field.id; }
    }
  }
  place(row, row.dataset.wish);
  return row;
}

function rowFor(id, wish) {
  return $$('.wish', form).find(row => row.dataset.id === id) || make(id, wish);
}

/** Brings the form to what is wished; a field that somebody types in is left alone. */
function show() {
  const stood = document.activeElement.closest('#wishes .wish');
  const wanted = new Set();
  for (const [key, value] of wishes) {
    const { id, wish } = rowOf(key);
    wanted.add(id);
    const row = rowFor(id, wish);
    if (wish === 'extras' || wish === 'on_hand') {
      put($('[data-sku]', row), key.slice(wish.length + 1));
      put($('[data-units]', row), value);
    } else if (isList(key)) {
      for (const box of $$('[data-list]', row)) { box.checked = value.includes(box.value); }
      const chips = $('[data-chips]', row);
      if (chips) { chips.replaceChildren(...value.map(sku => chip(key, sku))); }
      const area = $('[data-lines]', row);
      if (area) { put(area, value.join('\n')); }
    } else {
      const field = $$('[data-path]', row).find(each => each.dataset.path === key);
      if (field) { put(field, value); }
    }
  }
  for (const row of $$('.wish', form)) {
    if (!wanted.has(row.dataset.id)) { row.remove(); } else if (row.classList.contains('card')) { fit(row); }
  }
  for (const button of $$('[data-add]')) {
    const once = !COMPOSITE.includes(button.dataset.add);
    button.hidden = once && wishes.has(button.dataset.add);
  }
  if (stood) { standBy(stood); }
}

/** Whoever works with keys alone and stood on what is gone stands on a button near it; in a field a phone would open its keys. */
function standBy(row) {
  if (document.activeElement !== document.body) { return; }
  (row.isConnected && $('[data-chips] button, .step, .drop', row) || $('#more summary')).focus({ preventScroll: true });
}

function put(field, value) {
  if (field !== document.activeElement && field.value !== value) { field.value = value; }
}

function chip(key, sku) {
  const item = document.createElement('li');
  const drop = document.createElement('button');
  drop.type = 'button';
  drop.dataset.unlist = key;
  drop.dataset.sku = sku;
  drop.textContent = sku + ' \u2715';
  drop.setAttribute('aria-label', `Take ${sku} out`);
  item.append(drop);
  return item;
}

/** A card by kind has no part number, one by part number no ports. */
function fit(row) {
  const kind = $('[data-sub="kind"]', row).value;
  $('.only-sku', row).hidden = kind !== '';
  $$('.only-network', row).forEach(label => { label.hidden = kind !== 'network'; });
}

function freeIndex(section) {
  let index = 0;
  while ([...wishes.keys()].some(key => key.startsWith(`${section}.${index}.`))) { index++; }
  return index;
}

function add(key) {
  let id = key;
  if (FIRST[key]) {
    id = `${key}.${freeIndex(key)}`;
    const first = { ...FIRST[key] };
    if ('name' in first) { first.name = freeIndex(key) === 0 ? 'system' : 'data' + freeIndex(key); }
    for (const [sub, value] of Object.entries(first)) { wishes.set(`${id}.${sub}`, value); }
  } else if (key === 'extras' || key === 'on_hand') {
    const choices = $$('option', template(key).content).map(option => option.value);
    id = `${key}.${choices.find(sku => !wishes.has(`${key}.${sku}`)) || ''}`;
    wishes.set(id, '1');
  } else {
    const choice = $('select option', template(key).content);
    wishes.set(key, isList(key) ? [] : choice ? choice.value : '');
  }
  show();
  const row = rowFor(id, key);
  const field = $('input:not([type=checkbox]):not([data-sub="name"]), select, input, textarea', row);
  field.focus();
  changed(true);
}

function drop(row) {
  const next = row.nextElementSibling || row.previousElementSibling;
  for (const key of [...wishes.keys()]) { if (rowOf(key).id === row.dataset.id) { wishes.delete(key); } }
  show();
  const focus = next && $('input, select, textarea', next) || $('#more summary');
  focus.focus();
  changed(true);
}

/** The date of a day that is called by its name, the next of that name; anything else as it is. */
function day(text) {
  const name = text.toLowerCase();
  const at = name.length < 3 ? -1 : ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'].findIndex(each => each.startsWith(name));
  const ahead = name === 'today' ? 0 : name === 'tomorrow' ? 1 : at < 0 ? -1 : (at - new Date().getDay() + 6) % 7 + 1;
  if (ahead < 0) { return text; }
  const then = new Date();
  then.setDate(then.getDate() + ahead);
  return [then.getFullYear(), then.getMonth() + 1, then.getDate()].map(part => String(part).padStart(2, '0')).join('-');
}

/** Takes a field into the wishes. */
function take(field) {
  const row = field.closest('.wish');
  if (field.dataset.path) {
    const sub = field.dataset.sub;
    if (sub === 'kind' && row.classList.contains('card')) {
      for (const other of field.value === '' ? ['kind', 'ports', 'port_gbit'] : field.value === 'network' ? ['sku'] : ['sku', 'ports', 'port_gbit']) {
        wishes.delete(`${row.dataset.id}.${other}`);
      }
      if (field.value === '') { wishes.set(row.dataset.id + '.sku', ''); }
      fit(row);
    }
    if (field.dataset.path === BY) { wishes.set(BY, day(field.value.trim())); }
    else if (field.value !== '' || !sub) { wishes.set(field.dataset.path, field.value.trim()); } else { wishes.set(field.dataset.path, ''); }
  } else if (field.dataset.list) {
    wishes.set(field.dataset.list, $$(`[data-list]`, row).filter(box => box.checked).map(box => box.value));
  } else if (field.dataset.lines) {
    wishes.set(field.dataset.lines, field.value.split('\n').map(each => each.trim()).filter(each => each !== ''));
  } else if ('sku' in field.dataset || 'units' in field.dataset) {
    const wish = row.dataset.wish;
    const sku = $('[data-sku]', row).value.trim();
    // Of a part there is one wish, so a second row of it is none until it is of another part.
    const twice = sku !== '' && $$('.wish', form).some(other => other !== row && other.dataset.id === `${wish}.${sku}`);
    row.dataset.wrong = twice ? `${sku} stands in another row; say there how many.` : '';
    wishes.delete(row.dataset.id);
    row.dataset.id = twice ? wish + '.' : `${wish}.${sku}`;
    wishes.set(row.dataset.id, $('[data-units]', row).value.trim() || '1');
  }
}

form.addEventListener('submit', event => event.preventDefault());
form.addEventListener('input', event => {
  if ('part' in event.target.dataset) { return; }
  take(event.target);
  changed(event.target.matches('select, [type=checkbox]'));
});
form.addEventListener('change', event => {
  const key = event.target.dataset.part;
  if (event.target.dataset.path === BY) { event.target.value = wishes.get(BY); }
  if (key === undefined) { commit(); return; }
  const sku = event.target.value.trim();
  event.target.value = '';
  if (sku !== '') { list(key, sku, true); }
});
form.addEventListener('click', event => {
  const button = event.target.closest('button');
  if (!button) { return; }
  if (button.classList.contains('drop')) { drop(button.closest('.wish')); }
  if (button.dataset.unlist) { list(button.dataset.unlist, button.dataset.sku, false); }
  if (button.classList.contains('step')) {
    const room = button.closest('.steps');
    set(button.closest('.wish').dataset.target || room.dataset.key, button.dataset.set);
  }
});
$('#more').addEventListener('click', event => {
  const key = event.target.dataset.add;
  if (key) { $('#more').open = false; add(key); }
});

function list(key, sku, wanted) {
  const left = (wishes.get(key) || []).filter(other => other !== sku);
  if (wanted) { left.push(sku); }
  if (left.length === 0) { wishes.delete(key); } else { wishes.set(key, left); }
  show();
  changed(true);
}

function set(key, value) {
  wishes.set(key, isList(key) ? value.split(' ') : value);
  show();
  const field = $$('[data-path]', form).find(each => each.dataset.path === key);
  if (field) { field.value = value; }
  changed(true);
}

// --- asking ---------------------------------------------------------------

/** @param whole whether somebody has finished a change, and not a letter of it */
function changed(whole) {
  clearTimeout(timer);
  if (whole) { commit(); ask(); } else { timer = setTimeout(ask, TYPING_MS); }
}

function commit() {
  const now = '#' + address(wishes);
  if (now === (location.hash || '#')) { return; }
  steps++;
  history.pushState({ steps }, '', now);
  $('#undo').disabled = steps === 0;
}

async function post(path, name, body, signal) {
  return fetch(path, { method: 'POST', headers: headers({ 'Content-Type': 'application/yaml', 'Sledwright-Line': `${line}-${name}` }), body, signal });
}

async function ask() {
  clearTimeout(timer);
  clearTimeout(rest);
  if (running) { running.abort(); }
  running = new AbortController();
  const { signal } = running;
  renewed.forEach(renew => renew());
  const request = yaml(wishes);
  lines = request.keys;
  answer.setAttribute('aria-busy', 'true');
  try {
    const query = new URLSearchParams(asked.map(sku => ['why-not', sku]));
    const reply = await post('/page/answer?' + query, 'answer', request.text, signal);
    if (reply.ok) {
      clearFaults();
      const html = await reply.text();
      const drawn = boards();
      swap(answer, html);
      answered = request.text;
      const words = $('[data-say]', answer).dataset.say;
      const wrong = $$('[data-wrong]', form).map(row => row.dataset.wrong);
      rest = setTimeout(() => { said.textContent = [words, ...wrong].join(' '); }, RESTS_MS);
      brief();
      answer.removeAttribute('aria-busy');
      drawn.forEach(redraw);
      await beside(request.text, signal);
    } else if (reply.status !== 409) {
      answer.removeAttribute('aria-busy');
      const found = await faultsOf(reply);
      if (!signal.aborted) { rest = setTimeout(() => faults(found), RESTS_MS); }
    }
  } catch (gone) {
    if (gone.name !== 'AbortError') {
      answer.removeAttribute('aria-busy');
      none(GONE);
    }
  }
}

/** There is no answer to what is wished, so no price may be read or heard any more. */
function none(words) {
  clearTimeout(rest);
  note(answer, words);
  sight.disconnect();
  $('#brief').hidden = true;
  $('#brief').textContent = '';
  said.textContent = words;
}

// Only while the verdict itself cannot be seen.
const sight = new IntersectionObserver(seen => $('#brief').classList.toggle('away', seen.at(-1).isIntersecting));

/** Boards that are shown: the rank of the build and its drawing. */
function boards() {
  return $$('.board', answer).filter(each => $('svg', each)).map(each => [$('[data-do=board]', each.closest('.inside')).dataset.rank, [...each.childNodes]]);
}

/** A board that was shown is shown of the new build of its rank; until it comes, the old one keeps its place. */
function redraw([rank, drawing]) {
  const button = $(`[data-do=board][data-rank="${rank}"]`, answer);
  if (!button) { return; }
  $('.board', button.closest('.inside')).replaceChildren(...drawing);
  DO.board(button);
}

/** The price where the answer itself is below the screen. */
function brief() {
  sight.disconnect();
  sight.observe($('.verdict', answer));
  const sum = $('.sum', answer);
  $('#brief').hidden = false;
  $('#brief').textContent = (sum ? sum.textContent + ' \u2013 ' : '') + $('.seal', answer).textContent.split(':')[0];
}

/** What may come a little later: steps and the curve. */
async function beside(text, signal) {
  const [costs, curve] = await Promise.all([post('/page/steps', 'steps', text, signal),
    post('/page/chart?figure=' + $('#figure').value, 'chart', text, signal)]);
  if (costs.ok) { room(await costs.text()); }
  if (curve.ok) { swap(chart, await curve.text()); }
}

async function refused(reply) { return sentences((await faultsOf(reply)).map(fault => fault.message)); }

function note(target, words) {
  const text = document.createElement('p');
  text.className = 'note';
  text.textContent = words;
  target.replaceChildren(text);
}

/** New content in the place of old; what was open stays open, and who stood on a button stands there again. */
function swap(target, html) {
  const open = new Map($$('details[data-keep]', target).map(each => [each.dataset.keep, each.open]));
  const focus = target.contains(document.activeElement) ? document.activeElement.getAttribute('aria-label') || document.activeElement.textContent : null;
  target.replaceChildren(...parsed(html).childNodes);
  if ([...open.values()].includes(true) || target === chart) {
    for (const each of $$('details[data-keep]', target)) { if (open.has(each.dataset.keep)) { each.open = open.get(each.dataset.keep); } }
  }
  if (focus !== null) {
    const again = $$('button, summary', target).find(each => (each.getAttribute('aria-label') || each.textContent) === focus);
    (again || target).focus();
  }
}

function room(html) {
  const made = $$('.steps', parsed(html));
  for (const row of $$('.wish', form)) {
    const found = made.find(each => matches(each, row));
    const target = $('.room', row);
    const at = $$('.step', target).indexOf(document.activeElement);
    target.replaceChildren(...(found ? [found] : []));
    if (at >= 0) { ($$('.step', target)[at] || $$('.step', target).at(-1) || $('.drop', row)).focus({ preventScroll: true }); }
    if (found && row.dataset.id !== found.dataset.key) { row.dataset.target = `${row.dataset.id}.${found.dataset.key === 'require.storage' ? 'usable_gb' : 'count'}`; }
  }
}

function matches(each, row) {
  if (!each.dataset.name) { return each.dataset.key === row.dataset.id; }
  const is = sub => wishes.get(`${row.dataset.id}.${sub}`) === each.dataset.name;
  return row.dataset.wish === each.dataset.key && (is('name') || is('sku') || is('kind'));
}

function clearFaults() {
  for (const row of $$('.wish', form)) {
    $('.fault', row).textContent = row.dataset.wrong || '';
    $$('[aria-invalid]', row).forEach(field => field.removeAttribute('aria-invalid'));
  }
  $('#part-fault').textContent = '';
}

function faults(found) {
  clearFaults();
  const rest = [];
  for (const fault of found) {
    const key = fault.line ? lines[fault.line - 1] : null;
    const row = key && $$('.wish', form).find(each => each.dataset.id === rowOf(key).id);
    if (fault.place === 'why-not') {
      asked = asked.filter(sku => sku !== fault.value);
      $('#part-fault').textContent = sentences([fault.message]);
    } else if (row) {
      const before = $('.fault', row).textContent;
      // The field shows its key and its value, which may have quotation marks of its own.
      const named = `"${fault.value}": `;
      const words = fault.message.slice(fault.value && fault.message.includes(named) ? fault.message.indexOf(named) + named.length : 0);
      $('.fault', row).textContent = before === '' ? words : sentences([before, words]);
      const field = $$('[data-path]', row).find(each => each.dataset.path === key);
      if (field) { field.setAttribute('aria-invalid', 'true'); }
    } else {
      rest.push(fault.message);
    }
  }
  if (rest.length > 0) { none(sentences(rest)); }
  said.textContent = sentences(found.map(fault => fault.message));
}

// --- what is done with an answer --------------------------------------------

const DO = {
  use: button => { asked = asked.filter(sku => sku !== button.dataset.sku); list('use', button.dataset.sku, true); },
  forbid: button => list('forbid', button.dataset.sku, true),
  why: button => about(button.dataset.sku),
  forget: button => { asked = asked.filter(sku => sku !== button.dataset.sku); ask(); },
  point: button => set(button.dataset.key, button.dataset.set),
  board: async button => {
    const target = $('.board', button.closest('.inside'));
    try {
      const reply = await post('/page/board?rank=' + button.dataset.rank, 'board', yaml(wishes).text);
      if (reply.ok) { target.replaceChildren(...parsed(await reply.text()).childNodes); } else { note(target, await refused(reply)); }
    } catch (gone) {
      note(target, GONE);
    }
  },
  hand: button => {
    const judged = new Map([...wishes].filter(([key]) => /^(require|limit|licence|on_hand)\.|^(machines|name|workload)$/.test(key)));
    const file = button.dataset.file + yaml(judged).text.split('\n').slice(1).join('\n');
    location.assign('/board#' + new URLSearchParams({ came: $('.answer', answer).classList.contains('proved') ? 'proved' : 'found', file }));
  },
  paper: async button => {
    const { paper, rank } = button.dataset;
    const target = $('.board', button.closest('.inside'));
    try {
      const reply = await post(`/page/${paper}${rank ? '?rank=' + rank : ''}`, paper, yaml(wishes).text);
      if (!reply.ok) {
        note(target, `No paper: ${await refused(reply)}`);
        return;
      }
      save(await reply.blob(), (paper === 'sheet' ? 'bench-sheet' : 'quote') + '.pdf');
    } catch (gone) {
      note(target, GONE);
    }
  },
  way: button => { $$attributes(button).forEach(apply); show(); changed(true); },
};

function $$attributes(button) {
  return Object.keys(button.dataset).filter(key => key.startsWith('change')).sort().map(key => button.dataset[key].split('|'));
}

function apply([key, name, from, to]) {
  const spares = key === 'require.storage.hot_spares';
  if (spares || key === 'require.storage' || key === 'require.cards') {
    const section = spares ? 'require.storage' : key;
    const sub = spares ? 'hot_spares' : key === 'require.storage' ? 'usable_gb' : 'count';
    const owner = [...wishes].find(([path, value]) => path.startsWith(section + '.') && value === name && /\.(name|sku|kind)$/.test(path));
    const id = owner ? owner[0].replace(/\.[^.]*$/, '') : `${section}.0`;
    if (spares) { wishes.set(`${id}.${sub}`, to); return; }
    if (to !== '' && to !== '0') { wishes.set(`${id}.${sub}`, to); return; }
    for (const path of [...wishes.keys()]) { if (path.startsWith(id + '.')) { wishes.delete(path); } }
  } else if (key === 'extras') {
    if (to === '' || to === '0') { wishes.delete(`extras.${name}`); } else { wishes.set(`extras.${name}`, to); }
  } else if (isList(key)) {
    const left = items(to);
    if (left.length === 0) { wishes.delete(key); } else { wishes.set(key, left); }
  } else if (to === '') {
    wishes.delete(key);
  } else {
    wishes.set(key, to);
  }
}

function about(sku) {
  if (sku !== '' && !asked.includes(sku)) { asked.push(sku); }
  ask();
}

document.addEventListener('click', event => {
  const button = event.target.closest('[data-do]');
  if (button) { DO[button.dataset.do](button); }
});
$('#why').addEventListener('submit', event => {
  event.preventDefault();
  const field = $('#part');
  about(field.value.trim());
  field.value = '';
});
$('#figure').addEventListener('change', ask);

// Points of the curve: pointer and keys say what they are; choosing one chooses its entry of the list.
function tip(spot) {
  const words = $('.tip', chart);
  if (!words) { return; }
  words.hidden = !spot;
  if (spot) { words.textContent = spot.getAttribute('aria-label'); }
}
for (const button of $$('[data-to]')) {
  button.addEventListener('click', () => {
    answer.scrollIntoView({ block: 'start' });
    answer.focus({ preventScroll: true });
  });
}
const spotOf = event => event.target.closest && event.target.closest('.spot[data-link]');
chart.addEventListener('pointerover', event => tip(spotOf(event)));
chart.addEventListener('pointerleave', () => tip(null));
chart.addEventListener('click', event => {
  const spot = spotOf(event);
  if (spot) { $(`button[data-link="${CSS.escape(spot.dataset.link)}"]`, chart).click(); }
});

// --- tools ------------------------------------------------------------------

$('#undo').addEventListener('click', () => history.back());
$('#clear').addEventListener('click', () => { wishes = new Map(); asked = []; show(); changed(true); });
$('#save').addEventListener('click', () => {
  save(new Blob([yaml(wishes).text], { type: 'application/yaml' }), (wishes.get('name') || 'request').replace(/[^A-Za-z0-9 _-]/g, '') + '.yaml');
});
opening($('#load'), async (text, name) => {
  // What cannot be loaded changes no wish, so the answer stays.
  $('#load-fault').textContent = '';
  try {
    const reply = await post('/page/load', 'load', text);
    if (!reply.ok) {
      $('#load-fault').textContent = (await faultsOf(reply)).map(fault => `${name}${fault.line ? ', line ' + fault.line : ''}: ${fault.message}`).join('\n');
      return;
    }
    wishes = fromPairs((await reply.json()).wishes);
    show();
    changed(true);
  } catch (gone) {
    $('#load-fault').textContent = GONE;
  }
});

/** What people call a key. */
function label(key) {
  const found = template(rowOf(key).wish);
  return found ? found.dataset.label : key;
}
// A mail fills the whole form: what stood in it before is no wish of this customer; Undo brings it back.
if ($('#keep')) { renewed.push(wireKeeping(() => yaml(wishes).text, () => answered === yaml(wishes).text ? $('.answer', answer).dataset.price : null)); }
wireOrder(() => wishes);
if ($('#link')) { renewed.push(wireLink(() => yaml(wishes).text, () => wishes, label)); }
wireMail(label, pairs => { wishes = fromPairs(pairs); asked = []; show(); changed(true); });

/** How many changes can be taken back; also after the page was loaded anew. */
function counted() {
  steps = history.state && history.state.steps || 0;
  const stood = document.activeElement === $('#undo');
  $('#undo').disabled = steps === 0;
  if (stood && steps === 0) { answer.focus({ preventScroll: true }); }
}

function restore() {
  counted();
  wishes = fromAddress(location.hash);
  if (document.activeElement && form.contains(document.activeElement)) { document.activeElement.blur(); }
  show();
  ask();
}
window.addEventListener('popstate', restore);
// Whoever was out of reach, as on a phone, need not change a wish to be answered again.
window.addEventListener('online', () => { if (!$('.answer', answer)) { ask(); } });

wishes = fromAddress(location.hash);
if (wishes.size === 0) { wishes = fromPairs([['require.cores', '16'], ['require.memory_gb', '64']]); }
counted();
show();
ask();
document.documentElement.dataset.ready = 'yes';
