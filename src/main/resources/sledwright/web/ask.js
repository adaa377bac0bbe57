import { fresh } from './fresh.js';
import { follow, form, hear, label, list, room, rowOf, set, wish, wishes } from './form.js';
import { address, fromAddress, fromPairs, yaml } from './request.js';
import { wire as wireMail } from './mail.js';
import { wire as wireKeeping } from './keep.js';
import { wire as wireLink } from './link.js';
import { wire as wireOrder } from './order.js';
import { GONE, faultsOf, headers, opening, parsed, save, sentences } from './server.js';

const $ = (selector, within = document) => within.querySelector(selector);
const $$ = (selector, within = document) => Array.from(within.querySelectorAll(selector));
const line = fresh();
const answer = $('#answer');
/** The request whose answer is shown. */
let answered = '';
const chart = $('#chart');
const said = $('#said');
// Keys that come at once, as of somebody who pastes, are one change; then whoever types sees the answer to each figure.
const TYPING_MS = 25;
// What is said aloud, and what is wrong in a field, waits until somebody rests.
const RESTS_MS = 350;

let asked = [];
let steps = 0;
let lines = [];
let timer = 0;
let rest = 0;
let running = null;
// What depends on what is wished, such as whether it can be kept, is looked at with each question.
const renewed = [];

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
  way: follow,
};

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
$('#clear').addEventListener('click', () => { asked = []; wish(new Map()); changed(true); });
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
    wish(fromPairs((await reply.json()).wishes));
    changed(true);
  } catch (gone) {
    $('#load-fault').textContent = GONE;
  }
});

// A mail fills the whole form: what stood in it before is no wish of this customer; Undo brings it back.
if ($('#keep')) { renewed.push(wireKeeping(() => yaml(wishes).text, () => answered === yaml(wishes).text ? $('.answer', answer).dataset.price : null)); }
wireOrder(() => wishes);
if ($('#link')) { renewed.push(wireLink(() => yaml(wishes).text, () => wishes, label)); }
wireMail(label, pairs => { asked = []; wish(fromPairs(pairs)); changed(true); });

/** How many changes can be taken back; also after the page was loaded anew. */
function counted() {
  steps = history.state && history.state.steps || 0;
  const stood = document.activeElement === $('#undo');
  $('#undo').disabled = steps === 0;
  if (stood && steps === 0) { answer.focus({ preventScroll: true }); }
}

function restore() {
  counted();
  if (document.activeElement && form.contains(document.activeElement)) { document.activeElement.blur(); }
  wish(fromAddress(location.hash));
  ask();
}
window.addEventListener('popstate', restore);
// Whoever was out of reach, as on a phone, need not change a wish to be answered again.
window.addEventListener('online', () => { if (!$('.answer', answer)) { ask(); } });

hear(changed, commit);
const first = fromAddress(location.hash);
wish(first.size > 0 ? first : fromPairs([['require.cores', '16'], ['require.memory_gb', '64']]));
counted();
ask();
document.documentElement.dataset.ready = 'yes';
