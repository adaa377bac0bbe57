/**
 * The page and its API: what comes over HTTP is asked at the desk, and what the desk answers is rendered; nothing is searched or judged
 * here.
 */
package sledwright.web;
