// An order in the making: lines of wishes, kept for this tab until they are answered together.
import { yaml as asQuote } from './request.js';

const KEY = 'sledwright-order';
const OF_A_LINE = /^(platforms|machines|require|worth|licence|extras|enclosure|forbid|use|limit)(\.|$)/;
const OF_NONE = /^limit\.price(_with_tax)?$/;

export function lines() { return JSON.parse(sessionStorage.getItem(KEY) || '[]'); }

export function keep(all) { sessionStorage.setItem(KEY, JSON.stringify(all)); }

/** Whether a wish is one of a line; what is not is the order's, or nobody's. */
function isOfLine([key, value]) {
  return OF_A_LINE.test(key) && !OF_NONE.test(key) || key === 'objective' && /^(cheapest|best-value)$/.test(value);
}

/** The order as YAML. */
export function yaml(all) {
  const text = ['kind: order', 'lines:'];
  for (const line of all) {
    text.push(`  ${JSON.stringify(line.name)}:`);
    const own = asQuote(new Map([['machines', line.machines], ...line.wishes.filter(([key]) => key !== 'machines')])).text;
    text.push(...own.trimEnd().split('\n').slice(1).map(each => '    ' + each));
  }
  return text.join('\n') + '\n';
}

/** What a line asks for, in few words. */
export function gist(line) {
  const words = { 'require.cores': 'cores', 'require.memory_gb': 'GB of memory', 'require.throughput': 'of throughput', 'require.bandwidth_gbs': 'GB/s' };
  const said = line.wishes.filter(([key]) => key !== 'machines').map(([key, value]) => words[key] ? `${value} ${words[key]}` : `${key.split('.').slice(1).join(' ') || key} ${value}`);
  return said.slice(0, 4).join(', ') + (said.length > 4 ? ' \u2026' : '');
}

/** On the page of one machine: what is wished there becomes a line. */
export function wire(wishes) {
  const form = document.querySelector('#to-order');
  form.addEventListener('submit', event => {
    event.preventDefault();
    const all = lines();
    const name = document.querySelector('#line-name').value.trim() || `line ${all.length + 1}`;
    const pairs = [...wishes()].filter(([, value]) => value !== '');
    const line = { name, machines: wishes().get('machines') || '1', wishes: pairs.filter(isOfLine) };
    const at = all.findIndex(each => each.name === name);
    if (at < 0) { all.push(line); } else { all[at] = line; }
    keep(all);
    const rest = pairs.filter(pair => !isOfLine(pair)).map(([key]) => key);
    const link = document.createElement('a');
    link.href = '/work';
    link.textContent = all.length === 1 ? 'the order of 1 line' : `the order of ${all.length} lines`;
    document.querySelector('#ordered').replaceChildren(at < 0 ? `${name} stands in ` : `${name} is changed in `, link, '.',
      rest.length > 0 ? ` Left out, for a line has none: ${rest.join(', ')}.` : '');
    document.querySelector('#line-name').value = '';
  });
}
