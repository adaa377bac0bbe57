// Keeps what is asked as a quote in the book.
import { GONE, headers, refusal } from './server.js';

const $ = selector => document.querySelector(selector);

/** @param request gives the request as YAML */
export function wire(request) {
  $('#keep').addEventListener('submit', async event => {
    event.preventDefault();
    $('#keep-fault').textContent = '';
    $('#kept').replaceChildren();
    try {
      const query = new URLSearchParams([['customer', $('#keep-customer').value.trim()], ['note', $('#keep-note').value.trim()]]);
      const reply = await fetch('/api/book?' + query, { method: 'POST', headers: headers({ 'Content-Type': 'application/yaml' }), body: request() });
      if (!reply.ok) { $('#keep-fault').textContent = await refusal(reply); return; }
      const quote = await reply.json();
      const link = document.createElement('a');
      link.href = '/book#' + quote.number;
      link.textContent = quote.number;
      $('#kept').append('Kept as ', link, quote.price === null ? '; there is nothing to offer yet.' : '.');
    } catch (gone) {
      $('#keep-fault').textContent = GONE;
    }
  });
}
