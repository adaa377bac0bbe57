// A customer's mail: read by the server's fixed grammar; each wish stands beside the words that it comes from, and so does what was not understood.
import { GONE, headers, refusal } from './server.js';

const $ = (selector, within = document) => within.querySelector(selector);

function item(parts) {
  const line = document.createElement('li');
  for (const [kind, text] of parts) {
    if (text === '') { continue; }
    const piece = document.createElement(kind === 'q' ? 'q' : 'span');
    piece.className = kind;
    piece.textContent = text;
    line.append(piece, ' ');
  }
  return line;
}

/** Several wishes that come from the same words stand in one line. */
function byWords(wishes) {
  const lines = new Map();
  for (const wish of wishes) { lines.set(wish.words, [...(lines.get(wish.words) || []), wish]); }
  return lines;
}

function shown(wish, label) {
  const name = label(wish.key);
  const free = /^(extras|on_hand)\.(.*)$/.exec(wish.key);
  const sub = /^require\.(storage|cards)\.\d+\.(.*)$/.exec(wish.key);
  const what = free ? `${name} ${free[2]}` : sub ? `${name}, ${sub[2].replace(/_gb$/, ' GB').replaceAll('_', ' ')}` : name;
  const unit = sub ? null : document.querySelector(`template[data-wish="${CSS.escape(wish.key)}"]`)?.content.querySelector('.unit');
  return `${what}: ${wish.value}${unit ? ` ${unit.textContent}` : ''}`;
}

/**
 * @param label what people call a key
 * @param fill  takes the pairs of key and value that the form is to hold
 * @returns how many wishes there are
 */
function tell(answered, label, fill) {
  const wishes = $('#mail-wishes');
  wishes.replaceChildren(...[...byWords(answered.wishes)].map(([words, all]) => item([['q', words],
    ['to', all.filter(wish => wish.remark !== 'a name of its own').map(wish => shown(wish, label)).join('; ')],
    ['remark', [...new Set(all.map(wish => wish.remark).filter(remark => remark !== '' && remark !== 'a name of its own'))].join('; ')]])));
  $('#mail-rest').replaceChildren(...answered.unread.map(each => item([['q', each.words], ['remark', each.why]])));
  $('#mail-none').hidden = answered.wishes.length > 0;
  $('#mail-all').hidden = answered.unread.length > 0;
  $('#mail-said').hidden = false;
  if (answered.wishes.length > 0) { fill(answered.wishes.map(wish => [wish.key, wish.value])); }
}

export function wire(label, fill) {
  $('#mail-form').addEventListener('submit', async event => {
    event.preventDefault();
    const fault = $('#mail-fault');
    fault.textContent = '';
    try {
      const reply = await fetch('/api/mail', { method: 'POST', headers: headers({ 'Content-Type': 'application/json' }), body: JSON.stringify({ mail: $('#mail').value }) });
      if (!reply.ok) { fault.textContent = await refusal(reply); return; }
      const answered = await reply.json();
      tell(answered, label, fill);
      $('#mail-title').focus();
    } catch (gone) {
      fault.textContent = GONE;
    }
  });
}
