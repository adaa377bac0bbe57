package sledwright.report.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import sledwright.browser.Browser;
import sledwright.browser.DocumentChecks;
import sledwright.browser.InBrowser;
import sledwright.domain.Paper;

/** A page is filled in with everything escaped, and paper shows the same. */
class PagesTest {

    /** What a catalogue could name. */
    public record Row(String name, String price) {
    }

    private static final String DRAWING = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 20\" role=\"img\" aria-label=\"a bar\">"
            + "<rect x=\"1\" y=\"1\" width=\"80\" height=\"12\" fill=\"#0f5257\"/><text x=\"4\" y=\"18\" font-size=\"4\" font-family=\"Noto Sans\">drawn</text></svg>";
    private static final String HOSTILE = "<script>alert('1')</script> \"a\" & b \u0007\u202edesrever\u202c \ud800";

    private static PageHead head(String title) {
        return new PageHead(title, "What it holds", "Reedmere <Stores>", LocalDate.of(2025, 3, 31), Paper.A4);
    }

    private static String page(String title, String name) {
        Wording words = new Wording(Locale.FRANCE, Currency.getInstance("EUR"));
        return Pages.html("sample.ftlh", head(title), Map.of("title", title, "day", words.day(LocalDate.of(2025, 3, 31)), "missing", Optional.empty(),
                "rows", List.of(new Row(name, words.money(new BigDecimal("1234567.50")))), "drawing", new Markup(DRAWING)));
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    @Test
    void textsAreEscapedAndShown() throws IOException {
        String html = page(HOSTILE, HOSTILE);

        assertThat(html).doesNotContain("<script").doesNotContain("\u202e").doesNotContain("\u0007")
                .contains("&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt; &quot;a&quot; &amp; b \ufffd\ufffddesrever\ufffd \ufffd").contains(DRAWING);
        assertThat(text(Pdf.of(html, head(HOSTILE)))).contains("<script>alert('1')</script> \"a\" & b");
    }

    @Test
    @InBrowser
    void isSoundInABrowser(Browser browser) {
        DocumentChecks.assertSound(browser, page(HOSTILE, HOSTILE));
    }

    @Test
    void missingValuesAndFigures() {
        assertThat(page("Sample", "A")).contains("<dd>none</dd>").contains("31 March 2025").contains("1\u202f234\u202f567,50\u00a0\u20ac");
    }

    @Test
    void paperHoldsItsFontsAndSaysWhatItIs() throws IOException {
        byte[] pdf = Pdf.of(page("\u0391\u03b8\u03ae\u03bd\u03b1 \u041c\u0438\u0440 \u0141\u00f3d\u017a \u2264 \u2192 \u2713", "A"), head("Sample"));

        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(new PDFTextStripper().getText(document)).contains("\u0391\u03b8\u03ae\u03bd\u03b1 \u041c\u0438\u0440 \u0141\u00f3d\u017a \u2264 \u2192 \u2713")
                    .contains("1\u202f234\u202f567,50").contains("1 / 1");
            for (PDPage page : document.getPages()) {
                for (var name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertThat(font.isEmbedded()).as(font.getName()).isTrue();
                }
                assertThat(page.getMediaBox().getWidth()).isBetween(595f, 596f);
            }
            assertThat(document.getDocumentInformation().getAuthor()).isEqualTo("Reedmere <Stores>");
            assertThat(document.getDocumentInformation().getSubject()).isEqualTo("What it holds");
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
        }
    }

    @Test
    void samePageGivesSameBytes() {
        assertThat(Pdf.of(page("Sample", "A"), head("Sample"))).isEqualTo(Pdf.of(page("Sample", "A"), head("Sample")));
    }
}
