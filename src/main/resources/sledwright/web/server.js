// What every script of the page asks the server with.
const token = document.querySelector('meta[name=token]');

/** Headers of a question; who changes something shows by the token that the page was given to them. */
export function headers(more) { return { ...(token ? { 'Sledwright-Token': token.content } : {}), ...more }; }

/** What a refusal says, one line for each fault. */
export async function refusal(reply) {
  try { return (await reply.json()).faults.map(fault => fault.message).join('\n'); } catch (none) { return `The server answered ${reply.status}.`; }
}

export const GONE = 'The server does not answer. Is it still running?';
