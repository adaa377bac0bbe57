// A customer's page: every change within the limits is answered by itself.
import { fresh } from './fresh.js';

const TYPING_MS = 300;
// What is wrong in a field, or comes too fast, leaves the last answer; nothing else does.
const WRONG = 400;
const BUSY = 429;
const $ = (selector, within = document) => within.querySelector(selector);
const form = $('#wishes');
const answer = $('#answer');
const line = fresh();
let timer;
let asked = 0;

function wanted() {
  const query = new URLSearchParams();
  for (const [key, value] of new FormData(form)) { if (value !== '') { query.append(key, value); } }
  return query.toString();
}

function faults(said) {
  $('#fault').replaceChildren(...said.map(words => { const item = document.createElement('li'); item.textContent = words; return item; }));
}

async function ask() {
  clearTimeout(timer);
  const mine = ++asked;
  const garbled = [...form.elements].filter(field => field.validity.badInput);
  if (garbled.length > 0) {
    answer.removeAttribute('aria-busy');
    faults(garbled.map(field => `${named(field.name)} must be a number.`));
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
      faults((await reply.json()).faults.map(fault => `${named(fault.place)} ${fault.message}.`));
    }
  } catch (gone) {
    if (mine !== asked) { return; }
    answer.replaceChildren();
    faults(['The shop does not answer at the moment.']);
  }
  answer.removeAttribute('aria-busy');
}

function named(key) {
  const field = form.elements.namedItem(key);
  return field ? field.labels[0].textContent : 'This';
}

if (form) {
  form.addEventListener('submit', event => { event.preventDefault(); ask(); });
  form.addEventListener('input', () => { clearTimeout(timer); timer = setTimeout(ask, TYPING_MS); });
  form.addEventListener('change', ask);
  $('#again').hidden = true;
}
$('.skip').addEventListener('click', () => answer.focus());
