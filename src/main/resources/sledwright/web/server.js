// What every script of the page asks the server with.
const token = document.querySelector('meta[name=token]');
const TOKEN = 'Sledwright-Token';
const NOBODY = 401;
const REFUSED = 403;
// What begins like this is said of a place; all else is a sentence of its own.
const SAID_OF_A_PLACE = /^(is|are|was|has|must|can|cannot|could|did|comes|names|leads|stands|ends|changes) /;

/** Headers of a question; who changes something shows by the token that the page was given to them. */
export function headers(more) { return { ...(token ? { [TOKEN]: token.content } : {}), ...more }; }

/** A fault whose message says, too, what it is about, unless a line of what was sent is. */
function told(fault) {
  if (fault.place === TOKEN) { return { ...fault, message: 'Somebody else is logged in here by now. Load the page again to go on as them.' }; }
  if (fault.line || !SAID_OF_A_PLACE.test(fault.message)) { return fault; }
  const unnamed = fault.value === null || fault.place.startsWith('the ') || fault.message.startsWith('must ');
  const subject = fault.place === 'why-not' ? fault.value : unnamed ? fault.place.replace('--set ', '') : `${fault.place} "${fault.value}"`;
  return { ...fault, message: `${subject} ${fault.message}` };
}

/** What is wrong; whose session is over can go on where they are. */
export async function faultsOf(reply) {
  if (reply.status === NOBODY) { return [{ place: '', line: null, value: null, message: 'You are logged in no longer. Log in again in another window, then go on here.' }]; }
  try { return (await reply.json()).faults.map(told); } catch (none) { return [{ place: '', line: null, value: null, message: `The server answered ${reply.status}.` }]; }
}

/** What a refusal says, one line for each fault. */
export async function refusal(reply) { return (await faultsOf(reply)).map(fault => fault.message).join('\n'); }

export const GONE = 'The server does not answer. Is it still running?';

/** Whether there is a newer token for whoever the page was given to: a server that was started anew no longer knows the old one. */
async function renewed() {
  const reply = await fetch('/api/me');
  if (!reply.ok) { return false; }
  const me = await reply.json();
  const newer = me.token !== token.content && me.name === (document.querySelector('.who span')?.textContent || '');
  if (newer) { token.content = me.token; }
  return newer;
}

/** Sends a change. One that is refused has changed nothing, so it is sent once more where only the token was too old. */
export async function change(path, more = {}, body = undefined) {
  const send = () => fetch(path, { method: 'POST', headers: headers(more), body });
  const reply = await send();
  return reply.status === REFUSED && await renewed() ? send() : reply;
}

/** What is said, as whole sentences one after the other. */
export function sentences(said) { return said.map(each => /[.?!]$/.test(each) ? each : each + '.').join(' '); }

/** Does what a button is for; until it is done, the button cannot be pressed again. */
export async function once(buttons, act) {
  const all = [...buttons].filter(button => !button.disabled);
  const stood = all.find(button => button === document.activeElement);
  all.forEach(button => { button.disabled = true; });
  try { return await act(); } finally {
    all.forEach(button => { button.disabled = false; });
    if (stood && document.activeElement === document.body) { stood.focus({ preventScroll: true }); }
  }
}

/** What a piece of a page consists of. */
export function parsed(html) { return new DOMParser().parseFromString(html, 'text/html').body; }

/** Hands a file to whoever is at the page. */
export function save(blob, name) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}

/** @param take gets the text of a file that is opened, or dropped anywhere on the page, and its name */
export function opening(button, take) {
  const field = document.querySelector('#file');
  async function read([file]) { if (file) { take(await file.text(), file.name); } }
  button.addEventListener('click', () => field.click());
  field.addEventListener('change', async () => {
    await read(field.files);
    field.value = '';
  });
  document.addEventListener('dragover', event => { if (event.dataTransfer.types.includes('Files')) { event.preventDefault(); } });
  document.addEventListener('drop', event => {
    if (event.dataTransfer.files.length === 0 || event.target.closest('[type=file]')) { return; }
    event.preventDefault();
    read(event.dataTransfer.files);
  });
}

/** An amount as the pages that the server makes write it. */
export function money(amount, currency) {
  return amount.toLocaleString('en', { style: 'currency', currency });
}
