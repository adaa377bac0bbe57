// Keeps what is asked as a quote in the book.
import { GONE, headers, money, refusal } from './server.js';

const $ = selector => document.querySelector(selector);

/** What is said of a quote that is kept: what it comes to, too, where that is not what was shown. */
function said(quote, shown) {
  if (quote.price === null) { return '; there is nothing to offer yet.'; }
  return shown === null || Number(shown) === quote.price ? '.' : `, for ${money(quote.price, quote.currency)}: prices or stock have changed since.`;
}

/**
 * @param request gives the request as YAML
 * @param price   gives the price that is shown of it, as text; null while none of it is
 */
export function wire(request, price) {
  $('#keep').addEventListener('submit', async event => {
    event.preventDefault();
    $('#keep-fault').textContent = '';
    $('#kept').replaceChildren();
    const shown = price();
    try {
      const query = new URLSearchParams([['customer', $('#keep-customer').value.trim()], ['note', $('#keep-note').value.trim()]]);
      const reply = await fetch('/api/book?' + query, { method: 'POST', headers: headers({ 'Content-Type': 'application/yaml' }), body: request() });
      if (!reply.ok) { $('#keep-fault').textContent = await refusal(reply); return; }
      const quote = await reply.json();
      const link = document.createElement('a');
      link.href = '/book#' + quote.number;
      link.textContent = quote.number;
      $('#kept').append('Kept as ', link, said(quote, shown));
    } catch (gone) {
      $('#keep-fault').textContent = GONE;
    }
  });
}
