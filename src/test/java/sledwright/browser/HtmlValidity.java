package sledwright.browser;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import nu.validator.client.EmbeddedValidator;
import org.xml.sax.SAXException;

/** Whether a document is HTML as the standard has it, by the Nu Html Checker. */
public final class HtmlValidity {

    private HtmlValidity() {
    }

    /** Errors and warnings, a line each. That elements are closed as in XML is no fault: pages are read as that, too. */
    public static List<String> faults(String html) {
        try {
            EmbeddedValidator validator = new EmbeddedValidator();
            validator.setOutputFormat(EmbeddedValidator.OutputFormat.GNU);
            return validator.validate(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8))).lines()
                    .filter(line -> !line.isBlank() && !line.contains("Trailing slash on void elements")).toList();
        } catch (IOException | SAXException broken) {
            throw new IllegalStateException(broken);
        }
    }
}
