// A request as the form holds it: keys with their values, in order; as an address, and as YAML.

const LISTS = new Set(['platforms', 'use', 'forbid', 'limit.conditions', 'customer']);
const FREE = ['extras', 'on_hand'];
const ROWS = ['require.storage', 'require.cards'];
const PLAIN = /^[A-Za-z0-9][A-Za-z0-9 ._/+-]*$/;
const WORDS = /^(null|Null|NULL|true|false)$/;

export function isList(key) { return LISTS.has(key); }

/** The steps from section to section that lead to a key. */
function trail(key) {
  const free = FREE.find(section => key.startsWith(section + '.'));
  if (free) { return [free, key.slice(free.length + 1)]; }
  const rows = ROWS.find(section => key.startsWith(section + '.'));
  if (rows) {
    const [row, ...rest] = key.slice(rows.length + 1).split('.');
    return [...rows.split('.'), Number(row), rest.join('.')];
  }
  return key.split('.');
}

function scalar(value) {
  return PLAIN.test(value) && !value.endsWith(' ') && !WORDS.test(value) || /^(true|false)$/.test(value) ? value : JSON.stringify(value);
}

/** YAML, and for each of its lines the key that stands there. */
export function yaml(wishes) {
  const tree = new Map();
  for (const [key, value] of wishes) {
    if (value === '' || Array.isArray(value) && value.length === 0 || FREE.some(section => key === section + '.')) { continue; }
    let at = tree;
    const steps = trail(key);
    steps.slice(0, -1).forEach(step => {
      if (!at.has(step)) { at.set(step, new Map()); }
      at = at.get(step);
    });
    at.set(steps[steps.length - 1], { key, value });
  }
  const lines = ['kind: quote'];
  const keys = ['kind'];
  function put(text, key) { lines.push(text); keys.push(key); }
  function write(map, indent, path) {
    for (const [step, inner] of map) {
      const name = scalar(String(step));
      if (!(inner instanceof Map)) {
        const text = Array.isArray(inner.value) ? '[' + inner.value.map(item => JSON.stringify(item)).join(', ') + ']' : scalar(inner.value);
        put(`${indent}${name}: ${text}`, inner.key);
      } else if ([...inner.keys()].every(key => typeof key === 'number')) {
        put(`${indent}${name}:`, path + step);
        for (const [row, fields] of [...inner].sort((one, other) => one[0] - other[0])) {
          let dash = '- ';
          for (const [field, leaf] of fields) {
            put(`${indent}  ${dash}${scalar(field)}: ${scalar(leaf.value)}`, leaf.key);
            dash = '  ';
          }
        }
      } else {
        put(`${indent}${name}:`, path + step);
        write(inner, indent + '  ', path + step + '.');
      }
    }
  }
  write(tree, '', '');
  return { text: lines.join('\n') + '\n', keys };
}

/** What stands behind # in the address. */
export function address(wishes) {
  const query = new URLSearchParams();
  for (const [key, value] of wishes) {
    for (const one of Array.isArray(value) ? value : [value]) { query.append(key, one); }
  }
  return query.toString();
}

export function fromPairs(pairs) {
  const wishes = new Map();
  for (const [key, value] of pairs) {
    if (isList(key)) { wishes.set(key, [...(wishes.get(key) || []), value]); } else { wishes.set(key, value); }
  }
  return wishes;
}

export function fromAddress(text) {
  return fromPairs(new URLSearchParams(text.replace(/^#/, '')));
}

/** A list as a request writes it, such as [new, used], or one word. */
export function items(text) {
  return text.replace(/^\[|\]$/g, '').split(',').map(item => item.trim().replace(/^"|"$/g, '')).filter(item => item !== '');
}
