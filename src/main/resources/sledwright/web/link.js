// Makes a customer's link of what is asked: which wishes the customer may change, how far, until when.
import { GONE, change, once, refusal } from './server.js';

const $ = selector => document.querySelector(selector);
const FIGURES = /^(machines|require\.(cores|memory_gb|bandwidth_gbs|throughput|work|base_ghz|all_core_ghz|gb_per_core|gbs_per_core|spare_slots|processors)|limit\.(price|lead_days|power_w))$/;
const FIGURE = /^\d{1,9}(\.\d{1,6})?$/;

/** How far most let somebody go: from half of a figure to twice as much. */
function row(key, label, value) {
  const wrap = document.createElement('div');
  wrap.className = 'leeway';
  wrap.dataset.key = key;
  wrap.dataset.value = value;
  const tick = document.createElement('label');
  const box = document.createElement('input');
  box.type = 'checkbox';
  box.checked = true;
  tick.append(box, ' ' + label);
  wrap.append(tick);
  const whole = Number.isInteger(value);
  for (const [name, figure] of [['from', whole ? Math.ceil(value / 2) : value / 2], ['to', value * 2]]) {
    const field = document.createElement('label');
    const input = document.createElement('input');
    input.inputMode = 'decimal';
    input.value = String(figure);
    input.dataset.end = name;
    field.append(name + ' ', input);
    wrap.append(field);
  }
  return wrap;
}

function show(link) {
  const address = document.createElement('input');
  address.readOnly = true;
  address.className = 'long';
  address.value = link.address;
  address.setAttribute('aria-label', 'The address for the customer');
  const end = document.createElement('button');
  end.type = 'button';
  end.textContent = 'End it now';
  end.addEventListener('click', () => once([end], async () => {
    $('#link-fault').textContent = '';
    try {
      const reply = await change(`/api/links/${link.id}/end`);
      if (reply.ok) { $('#link-made').replaceChildren('The address is no longer answered.'); } else { $('#link-fault').textContent = await refusal(reply); }
    } catch (gone) {
      $('#link-fault').textContent = GONE;
    }
  }));
  $('#link-made').replaceChildren(address, ` Answered until ${link.until}. It is shown here only this once. `, end);
  address.select();
}

/**
 * @param request gives the request as YAML
 * @param wishes  gives its keys and values
 * @param label   gives what people call a key
 * @returns what is to be called when the wishes may be others
 */
export function wire(request, wishes, label) {
  /** A row for each wish; one whose wish is the same stays as somebody has filled it in. */
  function list() {
    if (!$('#link').open) { return; }
    const had = [...document.querySelectorAll('.leeway')];
    const stood = document.activeElement;
    $('#leeways').replaceChildren(...[...wishes()].filter(([key, value]) => FIGURES.test(key) && Number(value) > 0)
      .map(([key, value]) => had.find(each => each.dataset.key === key && Number(each.dataset.value) === Number(value)) || row(key, label(key), Number(value))));
    if (stood.isConnected) { stood.focus({ preventScroll: true }); }
  }
  $('#link').addEventListener('toggle', () => {
    if ($('#link').open) { $('#link-made').replaceChildren(); }
    list();
  });
  $('#link-form').addEventListener('submit', event => {
    event.preventDefault();
    const button = $('#link-form button');
    if (!button.disabled) { once([button], make); }
  });
  async function make() {
    $('#link-fault').textContent = '';
    const query = new URLSearchParams([['until', $('#link-until').value]]);
    for (const one of document.querySelectorAll('.leeway')) {
      if (one.querySelector('[type=checkbox]').checked) {
        const [from, to] = ['from', 'to'].map(end => one.querySelector(`[data-end=${end}]`).value.trim());
        if (![from, to].every(end => FIGURE.test(end)) || Number(from) > Number(to)) {
          $('#link-fault').textContent = `${label(one.dataset.key)} needs two figures, the least first.`;
          return;
        }
        query.append('may', `${one.dataset.key}=${from}..${to}`);
      }
    }
    try {
      const reply = await change('/api/links?' + query, { 'Content-Type': 'application/yaml' }, request());
      if (reply.ok) { show(await reply.json()); } else { $('#link-fault').textContent = await refusal(reply); }
    } catch (gone) {
      $('#link-fault').textContent = GONE;
    }
  }
  return list;
}
