package sledwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Pattern;

/** What every document of the program must be, whatever it is about. */
public final class DocumentChecks {

    /** Attributes and style that make a browser fetch something; a place on the page itself and a script within it do not. */
    private static final Pattern FETCHES = Pattern.compile("(?i)\\s(?:src|srcset|data|action|poster|background)\\s*=|\\shref\\s*=\\s*[^\\s\"#]|\\shref\\s*=\\s*\"(?!#)|url\\(|@import|<script\\s|<(?:link|iframe|object|embed|base)\\b");

    private DocumentChecks() {
    }

    /** Valid, without barriers, readable on a phone and in the dark, and loads nothing. */
    public static void assertSound(Browser browser, String html) {
        assertThat(HtmlValidity.faults(html)).isEmpty();
        assertLoadsNothing(html);
        browser.show(html);
        assertThat(browser.loaded()).isEmpty();
        assertThat(browser.barriers()).as("barriers in the light").isEmpty();
        assertThat(browser.sidewaysScroll()).as("sideways scroll of a wide screen").isZero();
        browser.screen(Browser.PHONE, true);
        assertThat(browser.sidewaysScroll()).as("sideways scroll of a phone").isZero();
        assertThat(browser.brokenWords()).as("words that a phone breaks").isEmpty();
        assertThat(browser.barriers()).as("barriers on a phone in the dark").isEmpty();
    }

    /** Every address that the document names is mere text: nothing refers to it but names of vocabularies. */
    static void assertLoadsNothing(String html) {
        assertThat(html).contains("http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';");
        List<String> fetching = FETCHES.matcher(html.replaceAll("xmlns(:\\w+)?=\"[^\"]*\"", "")).results().map(found -> found.group().strip()).toList();
        assertThat(fetching).isEmpty();
    }
}
