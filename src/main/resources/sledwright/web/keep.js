// Keeps what is asked as a quote in the book.
import { fresh } from './fresh.js';
import { GONE, change, money, refusal } from './server.js';

const $ = selector => document.querySelector(selector);

/** What is said of a quote that is kept: what it comes to, too, where that is not what was shown. */
function said(quote, shown) {
  if (quote.price === null) { return '; there is nothing to offer yet.'; }
  return shown === null || shown !== '' && Number(shown) === quote.price ? '.' : `, for ${money(quote.price, quote.currency)}, not as it was shown: what is kept is answered anew.`;
}

/**
 * @param request gives the request as YAML
 * @param price   gives the price that is shown of it, as text, empty where the answer has none; null while no answer to it is shown
 * @returns what is to be called when the request may be another
 */
export function wire(request, price) {
  const form = $('#keep');
  const button = form.querySelector('button');
  const query = () => new URLSearchParams([['customer', $('#keep-customer').value.trim()], ['note', $('#keep-note').value.trim()]]);
  const all = () => query() + '\n' + request();
  // Where an answer was lost, the same is asked again by the same name, so that it is not kept twice.
  const once = { of: null, name: '' };
  let kept = null;
  let working = false;
  // What is kept is kept: only something else can be kept after it.
  const renew = () => { button.disabled = working || kept !== null && kept === all(); };
  form.addEventListener('input', renew);
  form.addEventListener('submit', async event => {
    event.preventDefault();
    renew();
    if (button.disabled) { return; }
    const stood = document.activeElement;
    $('#keep-fault').textContent = '';
    $('#kept').textContent = 'Working on it.';
    const shown = price();
    const what = all();
    if (once.of !== what) { Object.assign(once, { of: what, name: fresh() }); }
    working = true;
    renew();
    try {
      const reply = await change(`/api/book?${query()}&once=${once.name}`, { 'Content-Type': 'application/yaml' }, request());
      if (!reply.ok) { $('#keep-fault').textContent = await refusal(reply); return; }
      const quote = await reply.json();
      const link = document.createElement('a');
      link.href = '/book#' + quote.number;
      link.textContent = quote.number;
      $('#kept').replaceChildren('Kept as ', link, said(quote, shown));
      kept = what;
    } catch (gone) {
      $('#keep-fault').textContent = GONE;
    } finally {
      working = false;
      renew();
      if (!$('#kept a')) { $('#kept').replaceChildren(); }
      if (document.activeElement === document.body && stood === button) { (button.disabled ? $('#kept a') : button).focus({ preventScroll: true }); }
    }
  });
  return renew;
}
