// What is wished, as rows of the form.
import { isList, items } from './request.js';
import { parsed } from './server.js';

const $ = (selector, within = document) => within.querySelector(selector);
const $$ = (selector, within = document) => Array.from(within.querySelectorAll(selector));
export const form = $('#wishes');
const COMPOSITE = ['require.storage', 'require.cards', 'extras', 'on_hand'];
const FIRST = { 'require.storage': { name: '', usable_gb: '400', level: '1' }, 'require.cards': { kind: 'network', ports: '2', port_gbit: '10', count: '1' } };
const BY = 'limit.by';

/** Key -> value, in the order in which they were wished. */
export let wishes = new Map();
/** Whether somebody has finished a change, and not a letter of it, is told with each. */
let changed = () => {};
/** Somebody has left a field that was changed. */
let left = () => {};

/** Says who hears of changes. */
export function hear(ofChanges, ofFields) {
  changed = ofChanges;
  left = ofFields;
}

/** Other wishes in the place of all. */
export function wish(others) {
  wishes = others;
  show();
}

const template = key => $(`template[data-wish="${CSS.escape(key)}"]`);

/** The wish that a key belongs to: a volume's keys are of one wish, an extra's are too. */
export function rowOf(key) {
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
  if (key === undefined) { left(); return; }
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

export function list(key, sku, wanted) {
  const others = (wishes.get(key) || []).filter(other => other !== sku);
  if (wanted) { others.push(sku); }
  if (others.length === 0) { wishes.delete(key); } else { wishes.set(key, others); }
  show();
  changed(true);
}

export function set(key, value) {
  wishes.set(key, isList(key) ? value.split(' ') : value);
  show();
  const field = $$('[data-path]', form).find(each => each.dataset.path === key);
  if (field) { field.value = value; }
  changed(true);
}

/** Does what a way out changes, as its button has it. */
export function follow(way) {
  Object.keys(way.dataset).filter(key => key.startsWith('change')).sort().forEach(key => apply(way.dataset[key].split('|')));
  show();
  changed(true);
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
    const others = items(to);
    if (others.length === 0) { wishes.delete(key); } else { wishes.set(key, others); }
  } else if (to === '') {
    wishes.delete(key);
  } else {
    wishes.set(key, to);
  }
}

/** Steps of a figure stand beside it. */
export function room(html) {
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

/** What people call a key. */
export function label(key) {
  const found = template(rowOf(key).wish);
  return found ? found.dataset.label : key;
}
