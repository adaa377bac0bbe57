// An order in the making: lines of wishes, kept for this tab until they are answered together.
import { yaml as asQuote } from './request.js';

const KEY = 'sledwright-order';
const OF_A_LINE = /^(platforms|machines|workload|require|worth|licence|extras|enclosure|forbid|use|limit)(\.|$)/;
const OF_NONE = /^limit\.price(_with_tax)?$/;

export function lines() { return JSON.parse(sessionStorage.getItem(KEY) || '[]'); }

export function keep(all) { sessionStorage.setItem(KEY, JSON.stringify(all)); }

/** Whether a wish is one of a line; what is not is the order's, or nobody's. */
function isOfLine([key, value]) {
  return OF_A_LINE.test(key) && !OF_NONE.test(key) || key === 'objective' && /^(cheapest|best-value)$/.test(value);
}

/** A line with its own number of machines, which may have been changed since it was wished. */
export function wishesOf(line) { return [['machines', line.machines], ...line.wishes.filter(([key]) => key !== 'machines')]; }

const HEAD = 'kind: order\nlines:\n';

function head(line) { return `  ${JSON.stringify(line.name)}:\n    machines: ${line.machines}\n`; }

/** What stands in an order of one line. */
function block(line) {
  return [`  ${JSON.stringify(line.name)}:`, ...asQuote(new Map(wishesOf(line))).text.trimEnd().split('\n').slice(1).map(each => '    ' + each)].join('\n') + '\n';
}

/** The order as YAML. */
export function yaml(all) { return HEAD + all.map(block).join(''); }

/**
 * The text of an order after its lines have changed, in which all stays that somebody has written by hand.
 *
 * @returns null where the text of a line that has changed was itself changed by hand
 */
export function amended(text, was, now) {
  let made = text;
  for (const line of was) {
    const next = now.find(each => each.name === line.name);
    const [old, other] = [block(line), next ? block(next) : ''];
    if (old === other) { continue; }
    const onlyCount = next && other === block({ ...line, machines: next.machines });
    const [from, to] = made.includes(old) ? [old, other] : onlyCount ? [head(line), head(next)] : [null, null];
    if (from === null || !made.includes(from)) { return null; }
    made = made.replace(from, () => to);
  }
  const added = now.filter(line => !was.some(each => each.name === line.name)).map(block).join('');
  if (added === '') { return made; }
  const lines = /^lines:\n(?:[ #].*\n|\n)*/m;
  if (!made.endsWith('\n')) { made += '\n'; }
  return lines.test(made) ? made.replace(lines, found => found + added) : null;
}

function freeName(all) {
  let number = all.length + 1;
  while (all.some(line => line.name === `line ${number}`)) { number++; }
  return `line ${number}`;
}

/** What a line asks for, in few words. */
export function gist(line) {
  const words = { 'require.cores': 'cores', 'require.memory_gb': 'GB of memory', 'require.throughput': 'of throughput', 'require.bandwidth_gbs': 'GB/s' };
  const said = line.wishes.filter(([key]) => key !== 'machines').map(([key, value]) => words[key] ? `${value} ${words[key]}` : `${key.split('.').slice(1).join(' ') || key} ${value}`);
  return said.slice(0, 4).join(', ') + (said.length > 4 ? ' \u2026' : '');
}

/** On the page of one machine: what is wished there becomes a line, or the line that the page was opened for is changed. */
export function wire(wishes) {
  const form = document.querySelector('#to-order');
  const field = document.querySelector('#line-name');
  const asked = new URLSearchParams(location.search).get('line');
  let changing = lines().some(line => line.name === asked) ? asked : null;
  if (changing !== null) { field.value = changing; }
  form.addEventListener('submit', event => {
    event.preventDefault();
    const all = lines();
    const name = field.value.trim() || changing || freeName(all);
    const pairs = [...wishes()].filter(([, value]) => value !== '');
    const line = { name, machines: wishes().get('machines') || '1', wishes: pairs.filter(isOfLine) };
    const at = all.findIndex(each => each.name === (changing ?? name));
    if (at >= 0 && all.some((each, other) => other !== at && each.name === name)) {
      document.querySelector('#ordered').replaceChildren(`${name} is another line of the order already; choose another name.`);
      return;
    }
    if (at < 0) { all.push(line); } else { all[at] = line; }
    keep(all);
    const rest = pairs.filter(pair => !isOfLine(pair)).map(([key]) => key);
    const link = document.createElement('a');
    link.href = '/work';
    link.textContent = all.length === 1 ? 'the order of 1 line' : `the order of ${all.length} lines`;
    document.querySelector('#ordered').replaceChildren(at < 0 ? `${name} stands in ` : `${name} is changed in `, link, '.',
      rest.length > 0 ? ` Left out, for a line has none: ${rest.join(', ')}.` : '');
    field.value = '';
    changing = null;
    history.replaceState(history.state, '', location.pathname + location.hash);
  });
}
