package sledwright.report.page;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.GregorianCalendar;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Puts a page on paper: a tagged PDF with its fonts inside. The same page gives the same bytes, whenever it is made. Paper has no scripts,
 * no dark and no phones: of the style sheet it takes what stands outside {@code @media screen}.
 */
public final class Pdf {

    /** The family that the style sheet names first. */
    private static final String FAMILY = "Noto Sans";

    private Pdf() {
    }

    /**
     * @param html a page of {@link Pages}; its drawings are SVG elements that say in {@code aria-label} what they show
     * @param head the head of that page
     */
    public static byte[] of(String html, PageHead head) {
        XRLog.setLoggingEnabled(false);
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.withHtmlContent(html, null);
        builder.withProducer("Sledwright");
        builder.usePdfUaAccessibility(true);
        builder.useUnicodeLineBreaker(new LineBreaks());
        boolean drawn = html.contains("<svg");
        Set<FSFontUseCase> used = drawn ? EnumSet.of(FSFontUseCase.DOCUMENT, FSFontUseCase.SVG) : EnumSet.of(FSFontUseCase.DOCUMENT);
        builder.useFont(() -> Pdf.class.getResourceAsStream("fonts/NotoSans-Regular.ttf"), FAMILY, 400, FontStyle.NORMAL, true, used);
        builder.useFont(() -> Pdf.class.getResourceAsStream("fonts/NotoSans-Bold.ttf"), FAMILY, 700, FontStyle.NORMAL, true, used);
        builder.addDOMMutator(page -> complete(page, head));
        // Nothing is fetched, whatever a page names.
        builder.useUriResolver((base, uri) -> null);
        if (drawn) {
            builder.useSVGDrawer(new BatikSVGDrawer());
        }
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.layout();
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            renderer.createPDFWithoutClosing();
            PDDocument document = renderer.getPdfDocument();
            document.getDocumentInformation().setCreationDate(GregorianCalendar.from(head.day().atStartOfDay(ZoneOffset.UTC)));
            document.setDocumentId((long) html.hashCode());
            document.save(out);
            return out.toByteArray();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    /** Adds what a PDF needs stated separately: what the page holds, and what each drawing shows. */
    private static void complete(Document page, PageHead head) {
        removeWhatOnlyScreensRead(page);
        joinWords(page);
        Element subject = page.createElement("meta");
        subject.setAttribute("name", "subject");
        subject.setAttribute("content", Harmless.text(head.subject()));
        page.getElementsByTagName("head").item(0).appendChild(subject);
        NodeList drawings = page.getElementsByTagName("svg");
        for (int i = 0; i < drawings.getLength(); i++) {
            Element drawing = (Element) drawings.item(i);
            drawing.setAttribute("alt", drawing.getAttribute("aria-label"));
        }
    }

    /** Paper breaks long words where its columns ask for it; see {@link LineBreaks}. */
    private static void joinWords(Document page) {
        NodeList breaks = page.getElementsByTagName("wbr");
        for (int i = breaks.getLength() - 1; i >= 0; i--) {
            breaks.item(i).getParentNode().removeChild(breaks.item(i));
        }
        page.normalize();
    }

    /** Every key that is not known would be kept as one of the document's own. */
    private static void removeWhatOnlyScreensRead(Document page) {
        NodeList all = page.getElementsByTagName("meta");
        for (int i = all.getLength() - 1; i >= 0; i--) {
            Element key = (Element) all.item(i);
            if (!key.getAttribute("name").equals("author")) {
                key.getParentNode().removeChild(key);
            }
        }
    }
}
