// What every script of the page asks the server with.
const token = document.querySelector('meta[name=token]');

/** Headers of a question; who changes something shows by the token that the page was given to them. */
export function headers(more) { return { ...(token ? { 'Sledwright-Token': token.content } : {}), ...more }; }

/** What a refusal says, one line for each fault. */
export async function refusal(reply) {
  try { return (await reply.json()).faults.map(fault => fault.message).join('\n'); } catch (none) { return `The server answered ${reply.status}.`; }
}

export const GONE = 'The server does not answer. Is it still running?';

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

/** @param take gets the text of a file that is opened, and its name */
export function opening(button, take) {
  const field = document.querySelector('#file');
  button.addEventListener('click', () => field.click());
  field.addEventListener('change', async () => {
    const [file] = field.files;
    const text = file ? await file.text() : '';
    field.value = '';
    if (file) { take(text, file.name); }
  });
}

/** An amount with its currency. */
export function money(amount, currency) {
  return `${amount.toLocaleString('en', { minimumFractionDigits: 2, maximumFractionDigits: 2 })} ${currency}`;
}
