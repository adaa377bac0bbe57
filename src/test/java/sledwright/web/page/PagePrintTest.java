package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import sledwright.browser.Browser;
import sledwright.browser.InBrowser;
import sledwright.web.Servers;

/** The page on paper. */
class PagePrintTest {

    @Test
    @InBrowser
    void aSumStandsBelowAListAndNotOnEverySheet(Browser browser) throws IOException {
        String style;
        try (InputStream in = PagePrintTest.class.getResourceAsStream("/sledwright/web/ask.css")) {
            style = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        String html = "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"/><title>parts</title><style>" + style + "</style></head><body><main>"
                + "<table class=\"parts\"><thead><tr><th>Part</th></tr></thead><tbody>" + "<tr><td>RACK-1</td></tr>".repeat(120)
                + "</tbody><tfoot><tr><th>Total 594.04</th></tr></tfoot></table></main></body></html>";
        try (PDDocument printed = Loader.loadPDF(browser.show(html).printed())) {
            assertThat(printed.getNumberOfPages()).isGreaterThan(2);
            assertThat(new PDFTextStripper().getText(printed)).containsOnlyOnce("Total 594.04");
        }
    }

    @Test
    @InBrowser
    void aBoardSaysWhatTheMachineIsAndCosts(Browser browser) throws IOException {
        browser.visit(Servers.small().address() + "board#came=file&file=" + HandPageTest.escaped(HandPageTest.BUILD)).until("document.querySelector('#verdict .sum')")
                .until("document.querySelector('.place.filled')");
        String price = (String) browser.ask("return document.querySelector('#verdict .sum').textContent");
        try (PDDocument printed = Loader.loadPDF(browser.printed())) {
            assertThat(new PDFTextStripper().getText(printed)).contains(price, "Every rule holds", "1A1", "M16");
        }
        browser.paper(700);
        assertThat(browser.ask("return parseFloat(getComputedStyle(document.querySelector('.place')).paddingLeft) > 0")).isEqualTo(true);
    }
}
