// The book of quotes: found, looked at, taken further.
import { isList, items } from './request.js';
import { GONE, change, headers, money, once, refusal } from './server.js';

const $ = (selector, within = document) => within.querySelector(selector);
const $$ = (selector, within = document) => Array.from(within.querySelectorAll(selector));
const said = $('#said');
let quotes = [];
let shown = null;
/** The version that is looked at, which is what a step is about. */
let last = 0;
let timer = 0;
let asked = 0;

function pays(quote) {
  return quote.asked_price === null ? 'nothing to offer' : money(quote.asked_price, quote.currency);
}

function made(tag, text, className = '') {
  const element = document.createElement(tag);
  element.textContent = text;
  if (className) { element.className = className; }
  return element;
}

async function find() {
  const mine = ++asked;
  const query = new URLSearchParams([...new FormData($('#find'))].filter(([, value]) => value.trim() !== ''));
  try {
    const reply = await fetch('/api/book?' + query);
    if (mine !== asked) { return; }
    $('#find-fault').textContent = reply.ok ? '' : await refusal(reply);
    if (!reply.ok) { return; }
    quotes = (await reply.json()).quotes.reverse();
    $('#found').textContent = quotes.length === 0 ? 'No quote is like that.' : quotes.length === 1 ? '1 quote' : `${quotes.length} quotes, the newest first`;
    $('#quotes').replaceChildren(...quotes.map(line));
  } catch (gone) {
    $('#find-fault').textContent = GONE;
  }
}

function line(quote) {
  const item = document.createElement('li');
  const button = made('button', '', 'entry ' + quote.state);
  button.type = 'button';
  button.dataset.number = quote.number;
  if (shown === quote.number) { button.setAttribute('aria-current', 'true'); }
  button.append(made('span', quote.number, 'sku'), made('span', pays(quote), 'n'), made('span', quote.customer), made('span', quote.state + (quote.held_until ? ', held' : ''), 'mark'));
  item.append(button);
  return item;
}

/** Where it stands, what was done with it, what may be done next. */
async function show(number, version) {
  try { await look(number, version); } catch (gone) { wrong(GONE); }
}

/** Says why a quote cannot be shown, also where none is shown yet. */
function wrong(words) { $($('#quote').hidden ? '#none' : '#fault').textContent = words; }

/** The quote that was chosen last is the one that is shown, whichever comes first. */
let chosen = 0;

async function look(number, version) {
  const mine = ++chosen;
  const reply = await fetch(`/api/book/${number}/history`);
  const quote = reply.ok ? await reply.json() : await refusal(reply);
  if (mine !== chosen) { return; }
  if (!reply.ok) { wrong(quote); return; }
  // What was typed is about the quote that it was typed beside.
  if (shown !== number) { $('#more').reset(); $('#set').reset(); }
  shown = number;
  forget();
  last = quote.version;
  $('#none').hidden = true;
  $('#quote').hidden = false;
  $('#price').textContent = pays(quote);
  $('#state').textContent = `${quote.number}: ${quote.state}${quote.held_until ? ', held until ' + quote.held_until : ''}`;
  const until = quote.valid_until && quote.asked_price !== null ? `, holds until ${quote.valid_until}` : '';
  $('#gist').textContent = `${quote.customer}, ${quote.request}, ${quote.machines === 1 ? '1 machine' : quote.machines + ' machines'}, made on ${quote.made_on}${until}`
      + (quote.note ? `. ${quote.note}` : '') + (quote.reason ? `. Why: ${quote.reason}` : '');
  $$('#life span').forEach(each => each.toggleAttribute('aria-current', each.dataset.state === quote.state));
  $$('[data-step]').forEach(button => { button.hidden = !button.dataset.from.split(' ').includes(quote.state) || button.dataset.step === 'release' && !quote.held_until; });
  $('#hold').closest('label').hidden = quote.state !== 'draft';
  $('#hold-until').closest('label').hidden = !['draft', 'sent'].includes(quote.state);
  $('#would-pay').closest('label').hidden = $('[data-step=decline]').hidden;
  const revisable = ['draft', 'sent', 'expired'].includes(quote.state);
  $('[data-again=revise]').hidden = !revisable;
  $('#version').replaceChildren(...Array.from({ length: quote.version }, (none, at) => made('option', String(at + 1))));
  $('#version').value = String(version || quote.version);
  $('#history tbody').replaceChildren(...quote.history.map(entry => {
    const row = document.createElement('tr');
    const cells = [['th', entry.day, 'Day'], ['td', entry.step, 'Step'], ['td', entry.by, 'By'], ['td', String(entry.version), 'Version'], ['td', entry.detail, 'How']];
    row.append(...cells.map(([tag, text, label]) => {
      const cell = made(tag, text, label === 'Version' ? 'n' : '');
      cell.dataset.label = label;
      if (tag === 'th') { cell.scope = 'row'; }
      return cell;
    }));
    return row;
  }));
  $$('#quotes .entry').forEach(each => { if (each.dataset.number === number) { each.setAttribute('aria-current', 'true'); } else { each.removeAttribute('aria-current'); } });
  if (location.hash !== '#' + number) { history.pushState({}, '', '#' + number); }
  await Promise.all([papers(), choices(quote)]);
}

function paper() { return `/api/book/${shown}?version=${$('#version').value}`; }

async function papers() {
  const at = paper();
  $('#pdf').href = at + '&format=pdf&for=customer';
  $('#bench').href = `/api/book/${shown}/sheet?format=pdf`;
  $('#inner').href = at + '&format=pdf&for=shop';
  $('#page').href = at + '&format=html&for=customer';
  const text = await fetch(at + '&format=text');
  const words = text.ok ? await text.text() : await refusal(text);
  if (at === paper()) { $('#paper').textContent = words; }
}

/** The alternatives of the last version, of which one is meant. */
async function choices(quote) {
  const mine = chosen;
  const reply = await fetch(`/api/book/${quote.number}`);
  const answer = reply.ok ? await reply.json() : {};
  if (mine !== chosen) { return; }
  // An order is no wish for the form.
  $('#reopen').hidden = !answer.alternatives;
  const saved = answer.alternatives || [];
  const field = $('#options');
  $$('label', field).forEach(each => each.remove());
  field.hidden = saved.length < 2;
  for (const option of saved) {
    const label = made('label', '', 'tick');
    const radio = document.createElement('input');
    radio.type = 'radio';
    radio.name = 'option';
    radio.value = option.rank;
    radio.checked = option.rank === quote.option;
    label.append(radio, ` ${option.rank}: ${money(option.net ?? option.price, quote.currency)}, ${option.platform} with ${option.processors} x ${option.processor}`);
    field.append(label);
  }
}

/** Gives whether it was done; where not, whoever typed something finds it as it was. */
async function step(name, query) {
  $('#fault').textContent = '';
  $('#answer').setAttribute('aria-busy', 'true');
  try {
    const reply = await change(`/api/book/${shown}/${name}?${new URLSearchParams([...query, ['version', last]])}`);
    if (!reply.ok) {
      $('#fault').textContent = await refusal(reply);
      if (reply.status === 409) { await Promise.all([look(shown).catch(() => {}), find()]); }
      return false;
    }
    const quote = await reply.json();
    said.textContent = `${quote.number}: ${quote.state}`;
    await Promise.all([show(quote.number), find()]);
    return true;
  } catch (gone) {
    $('#fault').textContent = GONE;
    return false;
  } finally {
    $('#answer').removeAttribute('aria-busy');
  }
}

/** Whether a step is meant: one that cannot be taken back is pressed twice. */
function isMeant(button) {
  const again = 'words' in button.dataset;
  forget();
  if (again || !('last' in button.dataset)) { return true; }
  button.dataset.words = button.textContent;
  button.textContent += ': press once more, for it cannot be taken back';
  said.textContent = button.textContent;
  return false;
}

function forget() {
  $$('[data-words]').forEach(button => { button.textContent = button.dataset.words; delete button.dataset.words; });
}

/** One step after the other: a second click is none. */
async function act(name, query) {
  const done = await once($$('[data-step], [data-again]'), () => step(name, query));
  if (document.activeElement === document.body) { $('#answer').focus({ preventScroll: true }); }
  return done;
}

/** What is set, one after the other; a value may have blanks, so only what looks like the next key begins the next. */
function sets() { return $('#sets').value.trim().split(/\s+(?=[a-z][\w.-]*=)/).filter(set => set !== '').map(set => ['set', set]); }

$('#find').addEventListener('submit', event => event.preventDefault());
$('#find').addEventListener('input', () => { clearTimeout(timer); timer = setTimeout(find, 200); });
$('#quotes').addEventListener('click', event => {
  const button = event.target.closest('[data-number]');
  if (button) { $('#fault').textContent = ''; show(button.dataset.number).then(() => $('#answer').focus({ preventScroll: true })); }
});
$('#version').addEventListener('change', () => { $('#fault').textContent = ''; papers().catch(() => { $('#fault').textContent = GONE; }); });
document.addEventListener('click', event => {
  const button = event.target.closest('[data-step]');
  if (!button || !isMeant(button)) { return; }
  const query = [];
  const option = $('#options input:checked');
  if ('option' in button.dataset && option) { query.push(['option', option.value]); }
  if (button.dataset.step === 'send' && $('#hold').checked) { query.push(['hold', 'true']); }
  if (button.dataset.step === 'hold' && $('#hold-until').value !== '') { query.push(['until', $('#hold-until').value]); }
  if ($('#reason').value.trim() !== '' && !['hold', 'release'].includes(button.dataset.step)) { query.push(['reason', $('#reason').value.trim()]); }
  if (button.dataset.step === 'decline' && $('#would-pay').value.trim() !== '') { query.push(['would-pay', $('#would-pay').value.trim()]); }
  act(button.dataset.step, query).then(done => { if (done) { $('#more').reset(); } });
});
$('#more').addEventListener('submit', event => event.preventDefault());
$('#set').addEventListener('submit', event => {
  event.preventDefault();
  // Enter beside another customer's name is about that customer; the browser takes the first button for meant.
  const again = document.activeElement === $('#other') ? 'copy' : event.submitter ? event.submitter.dataset.again : 'revise';
  if ($(`[data-again=${again}]`).disabled) { return; }
  const other = $('#other').value.trim();
  act(again, again === 'copy' && other !== '' ? [...sets(), ['customer', other]] : sets()).then(done => { if (done) { $('#sets').value = ''; $('#other').value = ''; } });
});
$('#reopen').addEventListener('click', () => {
  $('#fault').textContent = '';
  reopen().catch(() => { $('#fault').textContent = GONE; });
});
async function reopen() {
  const reply = await fetch(`/api/book/${shown}/request`);
  if (!reply.ok) { $('#fault').textContent = await refusal(reply); return; }
  const saved = await reply.json();
  const loaded = await fetch('/page/load', { method: 'POST', headers: headers({ 'Content-Type': 'application/yaml' }), body: saved.request });
  if (!loaded.ok) { $('#fault').textContent = await refusal(loaded); return; }
  const set = saved.sets.map(each => [each.slice(0, each.indexOf('=')), each.slice(each.indexOf('=') + 1)]);
  const pairs = (await loaded.json()).wishes.filter(([key]) => !set.some(([other]) => other === key)).concat(set.filter(([, value]) => value !== '')
    .flatMap(([key, value]) => isList(key) && value.startsWith('[') ? items(value).map(each => [key, each]) : [[key, value]]));
  location.assign('/#' + new URLSearchParams(pairs));
}
$('[data-to]').addEventListener('click', () => $('#answer').focus());

function here() { return /^#(\d{4}-\d{4,9})$/.exec(location.hash); }
window.addEventListener('popstate', () => {
  if (here()) { show(here()[1]); return; }
  chosen++;
  shown = null;
  $('#quote').hidden = true;
  $('#none').hidden = false;
  $$('#quotes [aria-current]').forEach(each => each.removeAttribute('aria-current'));
  if (!document.activeElement.checkVisibility()) { $('#answer').focus({ preventScroll: true }); }
});
find().then(() => { if (here()) { show(here()[1]); } });
