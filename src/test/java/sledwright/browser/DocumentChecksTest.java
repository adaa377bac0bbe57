package sledwright.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** The checks find what they are there for. */
@InBrowser
class DocumentChecksTest {

    private static String page(String body) {
        return "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
                + "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">"
                + "<title>a page</title></head><body><main><h1>A page</h1>" + body + "</main></body></html>";
    }

    @Test
    void soundPagePasses(Browser browser) {
        DocumentChecks.assertSound(browser, page("<p>Nothing amiss.</p>"));
    }

    @Test
    void faultsAreFound(Browser browser) {
        assertThat(HtmlValidity.faults(page("<p><div>in a paragraph</div></p>"))).isNotEmpty();
        assertThat(browser.show(page("<p style=\"color: #cccccc\">pale</p>")).barriers()).singleElement().asString().startsWith("color-contrast: p");
        assertThat(browser.show(page("<p style=\"width: 900px\">wide</p>")).screen(Browser.PHONE, false).sidewaysScroll()).isGreaterThan(500);
        assertThat(browser.show(page("<p style=\"width: 60px; overflow-wrap: break-word\">in unbreakable parts</p>")).brokenWords()).containsExactly("unbreakable");
        assertThatThrownBy(() -> DocumentChecks.assertLoadsNothing(page("<img alt=\"\" src=\"https://example.org/a.png\">")))
                .isInstanceOf(AssertionError.class);
        assertThat(browser.show(page("")).screen(Browser.PHONE, true).ask("return matchMedia('(prefers-color-scheme: dark)').matches")).isEqualTo(true);
    }

    @Test
    void pageHasTheFocusWhateverElseIsOpen(Browser browser) {
        for (int page = 1; page <= 2; page++) {
            browser.show(page("<a href=\"#here\" id=\"here\">here</a>"));
            browser.ask("window.other = window.open('about:blank'); window.other.focus()");
            assertThat(browser.ask("return document.hasFocus()")).isEqualTo(true);
            assertThat(browser.ask("""
                    let heard = 0;
                    const link = document.getElementById('here');
                    link.addEventListener('focus', () => heard++);
                    link.addEventListener('blur', () => heard++);
                    link.focus();
                    link.blur();
                    window.other.close();
                    return heard;""")).isEqualTo(2L);
        }
    }
}
