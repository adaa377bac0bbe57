// A customer's page: every change within the limits is answered by itself.
import { fresh } from './fresh.js';

const TYPING_MS = 300;
// What is wrong in a field, or comes too fast, leaves the last answer; nothing else does.
const WRONG = 400;
const BUSY = 429;
const OVER = 404;
const $ = (selector, within = document) => within.querySelector(selector);
const form = $('#wishes');
const answer = $('#answer');
/** The page's own words, in its language. */
const words = $('#fault').dataset;
const line = fresh();
let timer;
let asked = 0;

function wanted() {
  const query = new URLSearchParams();
  for (const [key, value] of new FormData(form)) { if (value !== '') { query.append(key, value); } }
  return query.toString();
}

function faults(said) {
  $('#fault').replaceChildren(...said.map(each => { const item = document.createElement('li'); item.textContent = each; return item; }));
}

async function ask() {
  clearTimeout(timer);
  const mine = ++asked;
  const garbled = [...form.elements].filter(field => field.validity.badInput);
  if (garbled.length > 0) {
    answer.removeAttribute('aria-busy');
    faults(garbled.map(field => sentence(field.name, words.figure)));
    return;
  }
  const query = wanted();
  answer.setAttribute('aria-busy', 'true');
  try {
    const reply = await fetch(location.pathname + '/answer?' + query, { headers: { 'Sledwright-Line': line } });
    if (mine !== asked) { return; }
    if (reply.ok) {
      const body = new DOMParser().parseFromString(await reply.text(), 'text/html').body;
      answer.replaceChildren(...body.childNodes);
      faults([]);
      history.replaceState(null, '', location.pathname + (query ? '?' + query : ''));
      const sum = $('.sum', answer);
      $('#said').textContent = sum ? sum.textContent + '.' : $('.gist', answer).textContent;
    } else {
      if (reply.status !== WRONG && reply.status !== BUSY) { answer.replaceChildren(); }
      const known = reply.status === OVER ? words.over : reply.status === BUSY ? words.busy : null;
      faults(known ? [known] : (await reply.json()).faults.map(fault => sentence(fault.place, fault.message)));
    }
  } catch (gone) {
    if (mine !== asked) { return; }
    answer.replaceChildren();
    faults([words.gone]);
  }
  answer.removeAttribute('aria-busy');
}

/** What is said of a field, or of the whole; what begins with a colon stands at the name itself. */
function sentence(key, said) {
  const field = form.elements.namedItem(key);
  return (field ? field.labels[0].textContent : words.this) + (said.startsWith(':') ? '' : ' ') + said + '.';
}

if (form) {
  form.addEventListener('submit', event => { event.preventDefault(); ask(); });
  form.addEventListener('input', () => { clearTimeout(timer); timer = setTimeout(ask, TYPING_MS); });
  form.addEventListener('change', ask);
  $('#again').hidden = true;
}
$('.skip').addEventListener('click', () => answer.focus());
