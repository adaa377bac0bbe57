// A machine put together by hand: parts are taken up, put elsewhere, taken out or replaced on the drawing, and each change is judged by
// the server. The build and the one that it was before stand in the address, so that a link, the back button and Undo bring them back.
import { GONE, headers, opening, parsed, refusal, save } from './server.js';

const $ = (selector, within = document) => within.querySelector(selector);
const $$ = (selector, within = document) => Array.from(within.querySelectorAll(selector));
const PLACES = { module: 'memory slots', drive: 'drive bays', card: 'slots for cards' };
const BACK = { proved: 'Back to the proved build', found: 'Back to the best build found', file: 'Back to the build as it was opened' };
const TYPING_MS = 350;
const said = $('#said');
let before = null;
let build = null;
let came = 'file';
let amount = '';
let steps = 0;
let chosen = null;
let stand = '';
let running = null;

// --- asking -----------------------------------------------------------------

async function judged(body, type, query) {
  if (running) { running.abort(); }
  running = new AbortController();
  return fetch('/page/hand?' + new URLSearchParams(query), { method: 'POST', headers: headers({ 'Content-Type': type }), body, signal: running.signal });
}

/** @param words what was done, for a listener */
async function show(words) {
  $('#fault').textContent = '';
  try {
    const changed = JSON.stringify(build) !== JSON.stringify(before);
    const reply = await judged(JSON.stringify(build), 'application/json', changed && amount !== '' ? { beside: amount, came } : {});
    if (!reply.ok) { $('#fault').textContent = await refusal(reply); return; }
    draw(parsed(await reply.text()), words);
  } catch (gone) {
    if (gone.name !== 'AbortError') { $('#fault').textContent = GONE; }
  }
}

// Only while the verdict itself cannot be seen.
const sight = new IntersectionObserver(seen => $('#brief').classList.toggle('away', seen.at(-1).isIntersecting));

function draw(made, words) {
  const verdict = $('.hand-verdict', made);
  const field = document.activeElement && document.activeElement.closest('#rest') ? document.activeElement.id : '';
  const onBoard = document.activeElement && document.activeElement.closest('#board');
  $('#verdict').replaceChildren(verdict);
  $('#board').replaceChildren(...$('.hand-board', made).childNodes);
  $('#rest').replaceChildren(...$('.hand-rest', made).childNodes);
  sight.disconnect();
  sight.observe($('.sum', verdict));
  $('#brief').textContent = `${$('.sum', verdict).textContent} \u2013 ${$('.seal', verdict).textContent}`;
  said.textContent = (words ? words + ' ' : '') + verdict.dataset.say;
  $('#save').disabled = false;
  $('#sheet').disabled = $('.broken li', verdict) !== null;
  $('#proved').textContent = BACK[came];
  $('#proved').disabled = JSON.stringify(build) === JSON.stringify(before);
  reach(placed(stand) || $('.place'));
  if (onBoard) { placed(stand)?.focus({ preventScroll: true }); }
  if (field) { document.getElementById(field)?.focus({ preventScroll: true }); }
  choose(chosen && placed(chosen) ? chosen : null);
  document.documentElement.dataset.ready = 'yes';
}

/** The build of a file: the server says how it is written. */
async function open(text, from) {
  $('#fault').textContent = '';
  const reply = await judged(text, 'application/yaml', {});
  if (!reply.ok) { $('#fault').textContent = await refusal(reply); return false; }
  const made = parsed(await reply.text());
  const verdict = $('.hand-verdict', made);
  build = JSON.parse(verdict.dataset.build);
  before = build;
  came = from;
  amount = verdict.dataset.amount;
  chosen = null;
  draw(made, '');
  return true;
}

// --- the address ------------------------------------------------------------

function address() {
  const parts = { came, before: JSON.stringify(before) };
  if (JSON.stringify(build) !== JSON.stringify(before)) { parts.build = JSON.stringify(build); }
  return '#' + new URLSearchParams(parts);
}

function change(next, words) {
  build = next;
  steps++;
  history.pushState({ steps }, '', address());
  $('#undo').disabled = false;
  show(words);
}

async function restore() {
  steps = history.state && history.state.steps || 0;
  $('#undo').disabled = steps === 0;
  const parts = new URLSearchParams(location.hash.slice(1));
  const from = BACK[parts.get('came')] ? parts.get('came') : 'file';
  chosen = null;
  try {
    if (parts.has('file')) {
      if (await open(parts.get('file'), from)) { history.replaceState({ steps }, '', address()); }
    } else if (parts.has('before')) {
      const first = JSON.parse(parts.get('before'));
      if (JSON.stringify(first) !== JSON.stringify(before) || from !== came) { if (!await open(parts.get('before'), from)) { return; } }
      before = first;
      build = parts.has('build') ? JSON.parse(parts.get('build')) : first;
      await show('');
    }
  } catch (broken) {
    if (broken.name !== 'AbortError') { $('#fault').textContent = broken instanceof SyntaxError ? 'The address holds no build.' : GONE; }
  }
}

// --- what a build is ----------------------------------------------------------

const copy = () => JSON.parse(JSON.stringify(build));
const placed = id => id ? $$('.place').find(each => each.dataset.place === id) : null;

/** Where a part stands in the build: the list or map that holds it, and its key there. */
function home(next, place) {
  if (place.dataset.kind === 'drive') {
    const volume = next.volumes[Number(place.dataset.volume)];
    const seat = Number(place.dataset.seat);
    const data = volume.drives.length;
    return seat < data ? [volume.drives, seat] : [volume.hot_spares, seat - data];
  }
  const section = place.dataset.kind + 's';
  next[section] = next[section] || {};
  return [next[section], place.dataset.name];
}

/** The same without empty lists, as a file would be written. */
function tidy(next) {
  for (const section of ['modules', 'cards', 'extras']) { if (next[section] && Object.keys(next[section]).length === 0) { delete next[section]; } }
  if (next.volumes) {
    next.volumes = next.volumes.filter(volume => volume.drives.length + (volume.hot_spares || []).length > 0);
    if (next.volumes.length === 0) { delete next.volumes; }
  }
  return next;
}

function groupOf(place) { return place.dataset.name.replace(/ \d+$/, ''); }

function move(from, to) {
  if (from.dataset.kind !== to.dataset.kind) { tell(`${from.dataset.sku} goes into ${PLACES[from.dataset.kind]} alone.`); return; }
  const next = copy();
  const taken = to.dataset.sku !== '';
  if (from.dataset.kind === 'drive' && !taken) {
    const volume = next.volumes[Number(from.dataset.volume)];
    if (groupOf(from) === groupOf(to)) { tell(`The drives of ${groupOf(to)} sit side by side from its first bay on; there is no gap to leave.`); return; }
    volume.group = groupOf(to);
    settle(to.dataset.place);
    change(next, `All drives of ${volume.name} go to ${groupOf(to)}: a volume sits together.`);
    return;
  }
  const [there, at] = home(next, from);
  const [here, into] = home(next, to);
  const part = there[at];
  if (taken) { there[at] = here[into]; } else { delete there[at]; }
  here[into] = part;
  if (from.dataset.kind === 'card' && next.driver === from.dataset.name) { next.driver = to.dataset.name; }
  else if (from.dataset.kind === 'card' && taken && next.driver === to.dataset.name) { next.driver = from.dataset.name; }
  settle(to.dataset.place);
  change(tidy(next), taken ? `${part} and ${to.dataset.sku} have changed places.` : `${part} is in ${to.dataset.name}.`);
}

function takeOut(place) {
  if (!place || place.dataset.sku === '') { return; }
  const next = copy();
  const [there, at] = home(next, place);
  if (Array.isArray(there)) { there.splice(at, 1); } else { delete there[at]; }
  settle(place.dataset.place);
  change(tidy(next), `${place.dataset.sku} is out of ${place.dataset.name}.`);
}

/** @param alike whether the same goes into every place like it, too */
function putIn(place, sku, alike, into) {
  const next = copy();
  const old = place.dataset.sku;
  if (old === '' && place.dataset.kind === 'drive') { serve(next, place, sku, into); }
  else {
    const places = alike && old !== '' ? like(place) : [place];
    for (const each of places) { const [there, at] = home(next, each); there[at] = sku; }
  }
  settle(place.dataset.place);
  change(next, old === '' ? `${sku} is in ${place.dataset.name}.` : `${sku} is in the place of ${old}.`);
}

/** A further drive serves a volume of its group, as data drive or hot spare, or one of its own. */
function serve(next, place, sku, into) {
  const [what, name] = into.split(' ', 2);
  next.volumes = next.volumes || [];
  if (what === 'new') { next.volumes.push({ name, level: '0', group: groupOf(place), drives: [sku] }); return; }
  const volume = next.volumes.find(each => each.name === into.slice(what.length + 1));
  if (what === 'data') { volume.drives.push(sku); } else { volume.hot_spares = [...(volume.hot_spares || []), sku]; }
}

/** Places that hold the same part: of a drive, those of its volume. */
function like(place) {
  return $$('.place').filter(each => each.dataset.kind === place.dataset.kind && each.dataset.sku === place.dataset.sku && each.dataset.volume === place.dataset.volume);
}

function tell(words) {
  said.textContent = words;
  $('#panel-hint').textContent = words;
}

// --- choosing -----------------------------------------------------------------

/** The one place of the board that the tabulator reaches. */
function reach(place) {
  if (!place) { return; }
  $$('.place').forEach(each => { each.tabIndex = -1; });
  place.tabIndex = 0;
  stand = place.dataset.place;
}

/** Nothing is taken up any more; the focus stays at a place. */
function settle(id) {
  chosen = null;
  stand = id;
}

function choose(id) {
  chosen = id;
  $$('.place').forEach(each => { each.removeAttribute('aria-pressed'); });
  const place = placed(id);
  $('#panel').hidden = !place;
  $('#brief').hidden = !!place;
  if (!place) { return; }
  place.setAttribute('aria-pressed', 'true');
  fillPanel(place);
  // What the panel would cover moves above it.
  place.scrollIntoView({ block: 'nearest' });
}

function fillPanel(place) {
  const { kind, name, sku } = place.dataset;
  $('#panel-title').textContent = sku === '' ? `${name} is ${place.dataset.state}` : `${sku} of ${name}`;
  $('#panel-hint').textContent = sku === '' ? '' : `Choose one of the ${PLACES[kind]} for it, or something else in its place.`;
  const shelf = $(`template[data-shelf="${CSS.escape(kind === 'module' ? kind : `${kind} ${kind === 'drive' ? groupOf(place) : name}`)}"]`);
  $('#part').replaceChildren(...(shelf ? shelf.content.cloneNode(true).childNodes : []));
  const none = $$('#part option').length === 0;
  $('#part').disabled = none;
  $('#put').disabled = none;
  if ($$('#part option').some(option => option.value === sku)) { $('#part').value = sku; }
  $('#part-label').textContent = sku === '' ? 'Put in' : 'Instead';
  $('#put').textContent = sku === '' ? 'Put it in' : 'Replace';
  const count = sku === '' ? 1 : like(place).length;
  $('#alike-label').hidden = count < 2;
  $('#alike').checked = false;
  $('#alike-label span').textContent = `all ${count} of them`;
  $('#out').hidden = sku === '';
  const serves = kind === 'drive' && sku === '';
  $('#into-label').hidden = !serves;
  if (serves) { $('#into').replaceChildren(...volumesFor(groupOf(place)).map(([value, text]) => new Option(text, value))); }
}

function volumesFor(group) {
  const all = build.volumes || [];
  const names = all.filter(volume => volume.group === group).map(volume => volume.name);
  let number = 1;
  while (all.some(volume => volume.name === 'volume' + number)) { number++; }
  return [...names.flatMap(name => [['data ' + name, name], ['spare ' + name, name + ', as hot spare']]), ['new volume' + number, 'a volume of its own, volume' + number]];
}

function pressed(place) {
  reach(place);
  const from = placed(chosen);
  if (chosen === place.dataset.place) { leave(); }
  else if (from && from.dataset.sku !== '') { move(from, place); }
  else {
    choose(place.dataset.place);
    said.textContent = place.dataset.sku === '' ? `${place.dataset.name}: choose what goes in.` : `${place.dataset.sku} is taken up. Choose a place for it, or something in its place.`;
  }
}

function leave() {
  const place = placed(chosen);
  choose(null);
  place?.focus();
  said.textContent = 'Nothing has changed.';
}

/** The next place in a direction: near along it, and not far aside. */
function beside(place, key) {
  const box = place.getBoundingClientRect();
  const middle = { x: box.left + box.width / 2, y: box.top + box.height / 2 };
  const across = key === 'ArrowLeft' || key === 'ArrowRight';
  const sign = key === 'ArrowLeft' || key === 'ArrowUp' ? -1 : 1;
  let best = null;
  let least = Infinity;
  for (const other of $$('.place')) {
    const room = other.getBoundingClientRect();
    const dx = room.left + room.width / 2 - middle.x;
    const dy = room.top + room.height / 2 - middle.y;
    const along = sign * (across ? dx : dy);
    const aside = Math.abs(across ? dy : dx);
    if (other !== place && along > 4 && (!across || aside < box.height) && along + 2 * aside < least) { best = other; least = along + 2 * aside; }
  }
  return best;
}

$('#board').addEventListener('click', event => {
  const place = event.target.closest('.place');
  if (place) { pressed(place); }
});
$('#board').addEventListener('focusin', event => { if (event.target.matches('.place')) { reach(event.target); } });
$('#board').addEventListener('keydown', event => {
  const place = event.target.closest('.place');
  if (!place) { return; }
  if (event.key.startsWith('Arrow')) {
    event.preventDefault();
    beside(place, event.key)?.focus();
  } else if (event.key === 'Home' || event.key === 'End') {
    event.preventDefault();
    const all = $$('.place');
    all[event.key === 'Home' ? 0 : all.length - 1].focus();
  } else if (event.key === 'Delete') {
    takeOut(place);
  }
});
$('#answer').addEventListener('keydown', event => { if (event.key === 'Escape' && chosen) { leave(); } });
$('#panel-form').addEventListener('submit', event => {
  event.preventDefault();
  const place = placed(chosen);
  if (!place || $('#part').value === place.dataset.sku) { tell(`${$('#part').value} is there already.`); return; }
  back(() => putIn(place, $('#part').value, $('#alike').checked, $('#into').value));
});
$('#out').addEventListener('click', () => back(() => takeOut(placed(chosen))));
$('#leave').addEventListener('click', leave);

/** From the panel, which closes, the focus goes to the place that it was about. */
function back(act) {
  placed(chosen)?.focus({ preventScroll: true });
  act();
}

// --- what has no place on the board -----------------------------------------------

// A list that somebody types in changes with every letter: the change counts when they have done so.
let waiting = 0;
$('#rest').addEventListener('change', event => {
  clearTimeout(waiting);
  waiting = setTimeout(() => { if (event.target.isConnected) { changed(event.target); } }, event.target.matches('select') ? TYPING_MS : 0);
});

function changed(field) {
  const next = copy();
  if (field.dataset.key === 'supply') {
    const [sku, count] = field.value.split(' ');
    delete next.supply;
    delete next.supply_count;
    if (sku) { next.supply = sku; next.supply_count = count; }
  } else if (field.dataset.key === 'driver') {
    if (field.value === '') { delete next.driver; } else { next.driver = field.value; }
  } else if (field.dataset.key === 'processors') {
    if (Array.isArray(next.processor)) { [next.processor] = next.processor; }
    next.processors = field.value;
  } else if (field.dataset.key === 'processor') {
    next.processors = next.processors || String(next.processor.length);
    next.processor = field.value;
  } else if (field.dataset.key) {
    next[field.dataset.key] = field.value;
  } else if (field.dataset.level) {
    next.volumes[Number(field.dataset.level)].level = field.value;
  } else {
    const sku = field.dataset.extra || field.value;
    const units = field.dataset.extra ? field.value.trim() : '1';
    next.extras = next.extras || {};
    if (units === '0' || units === '') { delete next.extras[sku]; } else { next.extras[sku] = units; }
  }
  change(tidy(next), '');
}

// --- tools ------------------------------------------------------------------

/** YAML of which each key of the build is a line. */
function yaml() {
  return Object.entries(build).map(([key, value]) => `${key}: ${JSON.stringify(value)}`).join('\n') + '\n';
}

$('#undo').addEventListener('click', () => history.back());
$('#proved').addEventListener('click', () => { settle(stand); change(before, 'The build is as it was before it was changed.'); });
$('#save').addEventListener('click', () => save(new Blob([yaml()], { type: 'application/yaml' }), 'build.yaml'));
opening($('#open'), async text => {
  try {
    if (text !== '' && await open(text, 'file')) {
      steps++;
      history.pushState({ steps }, '', address());
      $('#undo').disabled = false;
    }
  } catch (gone) {
    if (gone.name !== 'AbortError') { $('#fault').textContent = GONE; }
  }
});
$('#sheet').addEventListener('click', async () => {
  $('#fault').textContent = '';
  try {
    const reply = await fetch('/page/sheet', { method: 'POST', headers: headers({ 'Content-Type': 'application/json' }), body: JSON.stringify(build) });
    if (!reply.ok) { $('#fault').textContent = await refusal(reply); return; }
    save(await reply.blob(), 'bench-sheet.pdf');
  } catch (gone) {
    $('#fault').textContent = GONE;
  }
});
for (const button of $$('[data-to]')) { button.addEventListener('click', () => { document.getElementById(button.dataset.to).scrollIntoView(); $('#answer').focus({ preventScroll: true }); }); }
window.addEventListener('popstate', restore);
restore();
