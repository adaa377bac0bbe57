/**
 * Documents as a reader gets them: in Chromium, on a phone, in the dark, by a checker of accessibility (axe-core) and by a validator of HTML
 * (the Nu Html Checker). One browser serves the whole run.
 */
package sledwright.browser;
